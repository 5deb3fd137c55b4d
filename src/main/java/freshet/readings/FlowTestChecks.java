package freshet.readings;

import static freshet.people.Refused.Wrong.at;

import freshet.hydraulics.OutOfRange;
import freshet.hydraulics.WornCurve;
import freshet.measures.Quantity;
import freshet.measures.Show;
import freshet.measures.UnitSystem;
import freshet.people.Refused.Wrong;
import freshet.pumps.Model;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What is wrong with a flow test, told in the words and units of the person who measured it. */
final class FlowTestChecks {

    /** A flow this much over the curve's last is no better pump but a mix-up (common practice, no source). */
    static final double MOST_OVER_CURVE = 1.15;

    static final int MOST_REPEATS = 10;

    private static final double MOST_RPM = 100_000;
    private static final double LITRES_PER_GALLON = 3.785411784;
    private static final double MINUTES = 60;

    /** Fields of the page for the inputs of the stone. */
    private static final Map<String, String> FIELDS = Map.ofEntries(
            Map.entry("containerL", "container"),
            Map.entry("containerUncertaintyL", "containerUncertainty"),
            Map.entry("timingUncertaintyS", "timingUncertainty"),
            Map.entry("liftM", "lift"),
            Map.entry("liftUncertaintyM", "heightUncertainty"),
            Map.entry("gaugeKPa", "gauge"),
            Map.entry("gaugeUncertaintyKPa", "gaugeUncertainty"),
            Map.entry("gaugeAboveWaterM", "gaugeHeight"),
            Map.entry("gaugeBoreMm", "gaugeBore"),
            Map.entry("waterTemperatureC", "water"),
            Map.entry("pumpOutletMm", "pumpOutlet"),
            Map.entry("newHz", "frequency"),
            Map.entry("newRpm", "speed"));

    /** Units that are mixed up with the one a meter is asked in: what the number has to be multiplied by. */
    private record MixUp(String unit, double factor) {}

    private static final Map<UnitSystem, List<MixUp>> METER_MIX_UPS = Map.of(
            UnitSystem.US, List.of(new MixUp("gph", 1 / 60.0), new MixUp("L/min", 1 / LITRES_PER_GALLON)),
            UnitSystem.SI,
                    List.of(new MixUp("L/min", 0.06), new MixUp("gpm", Quantity.FLOW.parse("1 gpm", UnitSystem.SI))));

    private final FlowTestDraft draft;
    private final Model model;
    private final Show show;
    private final List<Wrong> wrongs = new ArrayList<>();

    FlowTestChecks(FlowTestDraft draft, Model model, Show show) {
        this.draft = draft;
        this.model = model;
        this.show = show;
    }

    List<Wrong> wrongs(Instant now) {
        Wrong late = MeterHistory.future(draft.at(), now);
        if (late != null) {
            wrongs.add(late);
        }
        if (draft.by() == null && (draft.seconds().isEmpty() || draft.seconds().size() > MOST_REPEATS)) {
            wrongs.add(at("lap1", "readings.laps.count", MOST_REPEATS));
        }
        if (draft.speedRpm() != null && !(draft.speedRpm() >= 1 && draft.speedRpm() <= MOST_RPM)) {
            wrongs.add(at("speed", "readings.outOfRange"));
        }
        if (draft.gauge() == null && draft.liftM() == null) {
            wrongs.add(at("lift", "readings.lift.missing"));
        }
        if (wrongs.isEmpty()) {
            try {
                flows();
                shutOff();
                if (wrongs.isEmpty()) {
                    new FlowTestWorking(model, null).figures(draft);
                }
            } catch (OutOfRange refused) {
                wrongs.add(worded(refused));
            }
        }
        return wrongs;
    }

    /** What keeps a test that was kept from being worked out; the model was changed since. */
    Wrong worded(OutOfRange refused) {
        String head = draft.gauge() == null ? "lift" : "gauge";
        return switch (refused.reason()) {
            case ABOVE_CURVE ->
                at(
                        head,
                        "readings.head.aboveCurve",
                        show.head(FlowTestWorking.headM(draft)),
                        show.head(FlowTestWorking.atSpeed(model, draft).shutOffHeadM()));
            case BEYOND_CURVE ->
                at(
                        head,
                        "readings.head.belowCurve",
                        show.head(FlowTestWorking.headM(draft)),
                        show.head(FlowTestWorking.atSpeed(model, draft).lastHeadM()));
            default -> at(field(refused.field()), "readings.outOfRange");
        };
    }

    private String field(String path) {
        if (path.equals("speedRatio")) {
            return draft.speedRpm() == null ? "frequency" : "speed";
        }
        String other = FlowByForm.field(draft.by(), path);
        if (other != null) {
            return other;
        }
        if (path.startsWith("seconds[")) {
            return "lap" + (Integer.parseInt(path.substring(8, path.indexOf(']'))) + 1);
        }
        return FIELDS.getOrDefault(path.substring(path.lastIndexOf('.') + 1), "");
    }

    private void flows() {
        double flow = FlowTestWorking.flow(draft).flowM3h();
        double most = FlowTestWorking.mostFlowM3h(model, draft);
        double limit = MOST_OVER_CURVE * most;
        FlowTestDraft.Container container = draft.container();
        if (container == null) {
            if (flow > limit) {
                wrongs.add(otherMixUp(flow, most, limit));
            }
            return;
        }
        if (flow > limit) {
            wrongs.add(containerMixUp(container, flow, most, limit));
        }
        Double meter = container.meterFlowM3h();
        if (meter != null && meter > limit) {
            wrongs.add(meterMixUp("meterFlow", meter, flow, most, limit));
        }
    }

    /** Against a shut valve a pump gives its most head: not over the curve's by much, and not less than while it ran. */
    private void shutOff() {
        WornCurve.TestPoint shut = FlowTestWorking.shutOff(draft);
        if (shut == null) {
            return;
        }
        double most = FlowTestWorking.atSpeed(model, draft).shutOffHeadM();
        double running = FlowTestWorking.headM(draft);
        if (shut.headM() > MOST_OVER_CURVE * most) {
            wrongs.add(at("shutOff", "readings.shutOff.tooHigh", show.head(shut.headM()), show.head(most)));
        } else if (shut.headM() + 2 * shut.headUncertaintyM() < running) {
            wrongs.add(at("shutOff", "readings.shutOff.tooLow", show.head(shut.headM()), show.head(running)));
        }
    }

    private Wrong otherMixUp(double flow, double most, double limit) {
        if (draft.by() instanceof FlowBy.LineMeter) {
            return meterMixUp("by.meter", flow, most, most, limit);
        }
        return at(
                draft.by() instanceof FlowBy.Jet ? "by.jetBore" : "by.fall",
                "readings.by.tooMuch",
                show.flow(flow),
                show.flow(most));
    }

    private Wrong containerMixUp(FlowTestDraft.Container container, double flow, double most, double limit) {
        double volume = container.volumeL();
        if (show.system() == UnitSystem.US && flow / LITRES_PER_GALLON <= limit) {
            return at(
                    "container",
                    "readings.flow.tooMuch.litres",
                    show.flow(flow),
                    show.flow(most),
                    Quantity.VOLUME.input(volume, UnitSystem.US),
                    show.flow(flow / LITRES_PER_GALLON));
        }
        return flow / MINUTES <= limit
                ? at(
                        "lap1",
                        "readings.flow.tooMuch.minutes",
                        show.flow(flow),
                        show.flow(most),
                        show.flow(flow / MINUTES))
                : at("container", "readings.flow.tooMuch.unknown", show.flow(flow), show.flow(most));
    }

    /** The unit that brings the meter nearest to the flow that is known or likely is the one that was read. */
    private Wrong meterMixUp(String field, double meter, double flow, double most, double limit) {
        @Nullable
        MixUp read = METER_MIX_UPS.get(show.system()).stream()
                .filter(mixUp -> meter * mixUp.factor() <= limit)
                .min(Comparator.comparingDouble(mixUp -> Math.abs(Math.log(meter * mixUp.factor() / flow))))
                .orElse(null);
        if (read == null) {
            return at(field, "readings.meter.tooMuch", show.flow(meter), show.flow(most));
        }
        String asRead = Quantity.FLOW.input(meter, show.system()) + "\u00a0" + read.unit();
        return at(
                field,
                "readings.meter.tooMuch.unit",
                show.flow(meter),
                show.flow(most),
                read.unit(),
                asRead,
                show.flow(meter * read.factor()));
    }
}
