package freshet.api;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** Every calculation by the name in its address. */
final class Calculations {

    static final Map<String, Class<? extends Calculation>> BY_NAME;

    static {
        Map<String, Class<? extends Calculation>> byName = new LinkedHashMap<>();
        byName.put("friction-factor", PumpCalculations.FrictionFactorRequest.class);
        byName.put("line-loss", PumpCalculations.LineLossRequest.class);
        byName.put("duty-point", PumpCalculations.DutyPointRequest.class);
        byName.put("drawdown", PumpCalculations.DrawdownRequest.class);
        byName.put("cycling", PumpCalculations.CyclingRequest.class);
        byName.put("flow-test", FlowTestRequest.class);
        byName.put("pump-or-line", PumpCalculations.PumpOrLineRequest.class);
        byName.put("affinity", PumpCalculations.AffinityRequest.class);
        byName.put("npsh-available", PumpCalculations.NpshAvailableRequest.class);
        byName.put("capacity-trend", WearCalculations.CapacityTrendRequest.class);
        byName.put("pooled-wear", WearCalculations.PooledWearRequest.class);
        byName.put("lives", LifeCalculations.LivesRequest.class);
        byName.put("survival", LifeCalculations.SurvivalRequest.class);
        byName.put("mtbf", LifeCalculations.MtbfRequest.class);
        byName.put("recurrence", FleetCalculations.RecurrenceRequest.class);
        byName.put("failure-trend", WearCalculations.FailureTrendRequest.class);
        byName.put("replacement-age", LifeCalculations.ReplacementAgeRequest.class);
        byName.put("spares", FleetCalculations.SparesRequest.class);
        byName.put("indicators", FleetCalculations.IndicatorsRequest.class);
        BY_NAME = Collections.unmodifiableMap(byName);
    }

    private Calculations() {}
}
