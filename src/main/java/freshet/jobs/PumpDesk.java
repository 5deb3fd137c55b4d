package freshet.jobs;

import freshet.fleet.Fleet;
import freshet.people.Typed;
import freshet.pumps.Model;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.readings.Readings;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Finds the pump that a form names, by its tag or by its model. */
@Component
class PumpDesk {

    private final Pumps pumps;
    private final Readings readings;
    private final Fleet fleet;

    PumpDesk(Pumps pumps, Readings readings, Fleet fleet) {
        this.pumps = pumps;
        this.readings = readings;
        this.fleet = fleet;
    }

    /** Null when none was named, or when what was named is wrong, which is gathered in {@code typed}. */
    @Nullable
    Chosen find(@Nullable String unitText, @Nullable String modelText, Typed typed) {
        String tag = Typed.text(unitText);
        String modelId = Typed.text(modelText);
        if (tag != null && modelId != null) {
            typed.wrong("model", "jobs.pump.oneOfTwo");
            return null;
        }
        if (tag != null) {
            Unit unit = pumps.unitTagged(tag).orElse(null);
            if (unit == null) {
                typed.wrong("unit", "jobs.unit.unknown", tag);
            }
            return unit == null ? null : of(unit);
        }
        if (modelId != null) {
            Model model = pumps.models().stream()
                    .filter(each -> modelId.equals(String.valueOf(each.id())))
                    .findFirst()
                    .orElse(null);
            if (model == null) {
                typed.wrong("model", "jobs.model.unknown");
            }
            return model == null ? null : new Chosen(model, null, null, null);
        }
        return null;
    }

    private Chosen of(Unit unit) {
        return new Chosen(unit.model(), unit, readings.plot(unit.id()).line(), fleet.readiness(unit.id()));
    }
}
