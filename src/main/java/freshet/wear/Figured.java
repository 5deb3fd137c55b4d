package freshet.wear;

import java.util.List;

/** The figures asked for; those of each model are empty when one model was asked for. */
public record Figured(FleetFigures all, List<ModelFigures> models) {}
