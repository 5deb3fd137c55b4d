package freshet.api;

import freshet.api.Shapes.CurvePoint;
import freshet.api.Shapes.WholeLine;
import freshet.hydraulics.Curve;
import freshet.hydraulics.FlowTestReduction;
import freshet.hydraulics.Line;
import freshet.hydraulics.MeasuredFlow;
import freshet.hydraulics.MeasuredHead;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** A flow test as it is asked; every uncertainty is a standard one, the head comes from the line or from a gauge. */
record FlowTestRequest(
        @Asked(value = "the reference curve", fewest = Curve.FEWEST_POINTS, most = Curve.MOST_POINTS)
        List<CurvePoint> curve,

        @Asked(value = "volume of the container", unit = "L", from = 0.01, to = 1e6)
        double containerL,

        @Asked(value = "its uncertainty", unit = "L", from = 0, to = 1e6)
        double containerUncertaintyL,

        @Asked(value = "times to fill it", unit = "s", from = 0.1, to = 1e6, fewest = 1, most = 100)
        List<Double> seconds,

        @Asked(value = "uncertainty of one time", unit = "s", from = 0, to = 1e6)
        double timingUncertaintyS,

        @Asked("the line, when the head is worked out from it") @Nullable
        WholeLine line,

        @Asked(value = "gauge pressure, when the head is gauged", unit = "kPa", from = -100, to = 20_000) @Nullable
        Double gaugeKPa,

        @Asked(value = "height of the gauge above the suction water", unit = "m", from = -500, to = 500) @Nullable
        Double gaugeAboveWaterM,

        @Asked(
                value = "bore where the gauge is tapped",
                unit = "mm",
                from = Shapes.SMALLEST_BORE_MM,
                to = Shapes.LARGEST_BORE_MM)
        @Nullable
        Double gaugeBoreMm,

        @Asked(value = "uncertainty of the pressure", unit = "kPa", from = 0, to = 2000) @Nullable
        Double gaugeUncertaintyKPa,

        @Asked(value = "water temperature at the gauge, 15 when left out", unit = "°C", from = 0, to = Shapes.HOTTEST_C)
        @Nullable
        Double waterTemperatureC,

        @Asked(value = "uncertainty of the lift or of the gauge's height", unit = "m", from = 0, to = 100)
        double liftUncertaintyM,

        @Asked(value = "uncertainty of the curve over its value", from = 0, to = 1, usual = 0)
        double curveUncertaintyFraction)
        implements Calculation {

    @Override
    public FlowTestReduction answer() {
        return FlowTestReduction.of(
                Shapes.curve(curve),
                MeasuredFlow.timedContainer(containerL, containerUncertaintyL, seconds, timingUncertaintyS),
                line == null ? byGauge() : byLine(line),
                curveUncertaintyFraction);
    }

    private MeasuredHead byLine(WholeLine tested) {
        notBesideALine("gaugeKPa", gaugeKPa);
        notBesideALine("gaugeAboveWaterM", gaugeAboveWaterM);
        notBesideALine("gaugeBoreMm", gaugeBoreMm);
        notBesideALine("gaugeUncertaintyKPa", gaugeUncertaintyKPa);
        notBesideALine("waterTemperatureC", waterTemperatureC);
        return new MeasuredHead.ByLine(tested.under("line"), liftUncertaintyM);
    }

    private static void notBesideALine(String field, @Nullable Double value) {
        if (value != null) {
            throw new Refusal(field, Words.of(value, "") + " is given beside a line; give the line or the gauge");
        }
    }

    private MeasuredHead byGauge() {
        if (Stream.of(gaugeKPa, gaugeAboveWaterM, gaugeBoreMm, gaugeUncertaintyKPa)
                .allMatch(value -> value == null)) {
            throw new Refusal("line", "is missing, and no gauge is given in its place");
        }
        return new MeasuredHead.ByGauge(
                ofTheGauge("gaugeKPa", gaugeKPa),
                ofTheGauge("gaugeAboveWaterM", gaugeAboveWaterM),
                ofTheGauge("gaugeBoreMm", gaugeBoreMm),
                ofTheGauge("gaugeUncertaintyKPa", gaugeUncertaintyKPa),
                waterTemperatureC == null ? Line.USUAL_TEMPERATURE_C : waterTemperatureC,
                liftUncertaintyM);
    }

    private static double ofTheGauge(String field, @Nullable Double value) {
        if (value == null) {
            throw new Refusal(field, "is missing; a test without a line needs its whole gauge");
        }
        return value;
    }
}
