package freshet.readings;

import freshet.hydraulics.MeasuredFlow;
import freshet.hydraulics.MeasuredFlow.Method;
import freshet.measures.Quantity;
import freshet.measures.UnitSystem;
import freshet.measures.Usual;
import freshet.people.Typed;
import freshet.readings.FlowBy.Jet;
import freshet.readings.FlowBy.LineMeter;
import freshet.readings.FlowBy.PitFall;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Which way the flow was measured, and what was typed about the ways that need no container; only the way chosen is read. */
record FlowByForm(
        @Nullable String method,
        @Nullable String pitDiameter,
        @Nullable String pitArea,
        @Nullable String areaUncertainty,
        @Nullable String displaced,
        @Nullable String fall,
        @Nullable String fallSeconds,
        @Nullable String riseBefore,
        @Nullable String riseBeforeSeconds,
        @Nullable String riseAfter,
        @Nullable String riseAfterSeconds,
        @Nullable String levelUncertainty,
        @Nullable String meter,
        @Nullable String meterPercent,
        @Nullable String meterFixed,
        @Nullable String jetBore,
        @Nullable String jetReach,
        @Nullable String jetFall,
        @Nullable String jetLengths,
        @Nullable String jetPercent) {

    static final List<String> WAYS =
            Arrays.stream(Method.values()).map(Enum::name).toList();

    private static final Map<String, String> FIELDS = Map.ofEntries(
            Map.entry("areaUncertaintyFraction", "by.areaUncertainty"),
            Map.entry("displacedFraction", "by.displaced"),
            Map.entry("drop.changeM", "by.fall"),
            Map.entry("drop.seconds", "by.fallSeconds"),
            Map.entry("levelUncertaintyM", "by.levelUncertainty"),
            Map.entry("flowM3h", "by.meter"),
            Map.entry("ofReadingFraction", "by.meterPercent"),
            Map.entry("fixedM3h", "by.meterFixed"),
            Map.entry("boreMm", "by.jetBore"),
            Map.entry("reachM", "by.jetReach"),
            Map.entry("fallM", "by.jetFall"),
            Map.entry("lengthUncertaintyM", "by.jetLengths"),
            Map.entry("methodUncertaintyFraction", "by.jetPercent"));

    FlowByForm {
        method = method != null && WAYS.contains(method) ? method : Method.TIMED_CONTAINER.name();
    }

    /** A blank one of the way of the unit's latest test, with what of it belongs to the rig. */
    static FlowByForm blank(@Nullable FlowTestDraft latest, UnitSystem system) {
        FlowBy by = latest == null ? null : latest.by();
        PitFall pit = by instanceof PitFall fell ? fell : null;
        Double jetBoreMm = by instanceof Jet jet ? (Double) jet.boreMm() : null;
        return new FlowByForm(
                by == null ? null : by.method().name(),
                pit == null ? null : input(Quantity.BORE, pit.diameterMm(), system),
                pit == null ? null : input(Quantity.AREA, pit.areaM2(), system),
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                input(Quantity.BORE, jetBoreMm, system),
                null,
                null,
                null,
                null);
    }

    private static @Nullable String input(Quantity quantity, @Nullable Double value, UnitSystem system) {
        return value == null ? null : quantity.input(value, system);
    }

    boolean container() {
        return Method.TIMED_CONTAINER.name().equals(method);
    }

    /** The field that the flow hangs on most, of a way without a container. */
    String mainField() {
        return switch (Method.valueOf(method)) {
            case METER -> "by.meter";
            case TRAJECTORY -> "by.jetBore";
            default -> "by.fall";
        };
    }

    /** What was measured; null when a container was filled, or when something is wrong and has been said. */
    @Nullable
    FlowBy read(Typed typed, @Nullable Double timingUncertaintyS) {
        return switch (Method.valueOf(method)) {
            case TIMED_CONTAINER -> null;
            case LEVEL_DROP -> pitFall(typed, timingUncertaintyS);
            case METER -> lineMeter(typed);
            case TRAJECTORY -> jet(typed);
        };
    }

    private @Nullable PitFall pitFall(Typed typed, @Nullable Double timingUncertaintyS) {
        Double diameterMm = typed.usual("by.pitDiameter", pitDiameter, Usual.PIT_DIAMETER);
        Double areaM2 = typed.usual("by.pitArea", pitArea, Usual.PIT_AREA);
        if (Typed.text(pitDiameter) == null && Typed.text(pitArea) == null) {
            typed.wrong("by.pitDiameter", "readings.by.pit.missing");
        } else if (Typed.text(pitDiameter) != null && Typed.text(pitArea) != null) {
            typed.wrong("by.pitArea", "readings.by.pit.both");
        }
        Double area = percent(typed, "by.areaUncertainty", areaUncertainty, PitFall.USUAL_AREA_UNCERTAINTY);
        Double taken = percent(typed, "by.displaced", displaced, 0);
        Double fell = needed(typed, "by.fall", fall);
        Double fellFor = needed(typed, "by.fallSeconds", typed.seconds("by.fallSeconds", fallSeconds));
        Double rose = length(typed, "by.riseBefore", riseBefore);
        Double roseFor = typed.seconds("by.riseBeforeSeconds", riseBeforeSeconds);
        together(typed, "by.riseBefore", riseBefore, riseBeforeSeconds);
        Double roseAfter = length(typed, "by.riseAfter", riseAfter);
        Double roseAfterFor = typed.seconds("by.riseAfterSeconds", riseAfterSeconds);
        together(typed, "by.riseAfter", riseAfter, riseAfterSeconds);
        Double level = length(typed, "by.levelUncertainty", levelUncertainty);
        return area == null || taken == null || fell == null || fellFor == null
                ? null
                : new PitFall(
                        diameterMm,
                        areaM2,
                        area,
                        taken,
                        fell,
                        fellFor,
                        rose,
                        roseFor,
                        roseAfter,
                        roseAfterFor,
                        level == null ? PitFall.USUAL_LEVEL_UNCERTAINTY_MM : level,
                        timingUncertaintyS == null ? FlowTestDraft.USUAL_TIMING_UNCERTAINTY_S : timingUncertaintyS);
    }

    /** A rise goes with its time. */
    private static void together(Typed typed, String field, @Nullable String rise, @Nullable String seconds) {
        if (Typed.text(rise) == null && Typed.text(seconds) != null) {
            typed.wrong(field, "readings.by.missing");
        } else if (Typed.text(rise) != null && Typed.text(seconds) == null) {
            typed.wrong(field + "Seconds", "readings.by.missing");
        }
    }

    private @Nullable LineMeter lineMeter(Typed typed) {
        Double flow = needed(typed, "by.meter", typed.quantity("by.meter", meter, Quantity.FLOW));
        Double part = percent(typed, "by.meterPercent", meterPercent, LineMeter.USUAL_OF_READING);
        Double fixed = typed.quantity("by.meterFixed", meterFixed, Quantity.FLOW);
        return flow == null || part == null ? null : new LineMeter(flow, part, fixed == null ? 0 : fixed);
    }

    private @Nullable Jet jet(Typed typed) {
        Double bore = needed(typed, "by.jetBore", typed.usual("by.jetBore", jetBore, Usual.BORE));
        Double reach = needed(typed, "by.jetReach", jetReach);
        Double drop = needed(typed, "by.jetFall", jetFall);
        Double lengths = length(typed, "by.jetLengths", jetLengths);
        Double part = percent(typed, "by.jetPercent", jetPercent, MeasuredFlow.TRAJECTORY_UNCERTAINTY);
        return bore == null || reach == null || drop == null || part == null
                ? null
                : new Jet(bore, reach, drop, lengths == null ? Jet.USUAL_LENGTH_UNCERTAINTY_MM : lengths, part);
    }

    private static @Nullable Double length(Typed typed, String field, @Nullable String text) {
        return typed.quantity(field, text, Quantity.BORE);
    }

    private static @Nullable Double needed(Typed typed, String field, @Nullable String text) {
        return needed(typed, field, length(typed, field, text));
    }

    private static @Nullable Double needed(Typed typed, String field, @Nullable Double value) {
        return typed.required(field, value, "readings.by.missing");
    }

    /** As a fraction; the usual one when nothing was typed. */
    private static @Nullable Double percent(Typed typed, String field, @Nullable String text, double usual) {
        Double percent = typed.number(field, text);
        return Typed.text(text) == null ? (Double) usual : percent == null ? null : (Double) (percent / 100);
    }

    /** The field of the page for an input of the stone; null when it is none of these. */
    static @Nullable String field(@Nullable FlowBy by, String path) {
        if (by == null) {
            return null;
        }
        if (by instanceof PitFall pit) {
            if (path.equals("areaM2")) {
                return pit.diameterMm() == null ? "by.pitArea" : "by.pitDiameter";
            }
            if (path.startsWith("inflows[")) {
                boolean before = path.startsWith("inflows[0]") && pit.riseBeforeMm() != null;
                return (before ? "by.riseBefore" : "by.riseAfter") + (path.endsWith("seconds") ? "Seconds" : "");
            }
        }
        return FIELDS.get(path);
    }
}
