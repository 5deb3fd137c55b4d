package freshet.wear;

/** The figures of one model, for its line in the table of all models. */
public record ModelFigures(long modelId, String model, FleetFigures figures) {}
