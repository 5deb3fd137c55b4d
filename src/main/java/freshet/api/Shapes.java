package freshet.api;

import freshet.hydraulics.Curve;
import freshet.hydraulics.Line;
import freshet.hydraulics.LineLoss;
import freshet.hydraulics.OutOfRange;
import freshet.hydraulics.Section;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What several requests share: a pump's curve, a line, and limits. */
final class Shapes {

    static final double SMALLEST_BORE_MM = 0.5;
    static final double LARGEST_BORE_MM = 5000;
    static final double HOTTEST_C = 60;
    static final double GREATEST_K = 1e6;

    static final double LONGEST_H = 1e9;
    static final double SHORTEST_H = 1e-6;

    static final String LEVEL = "level of confidence";
    static final double LEAST_LEVEL = 0.5;
    static final double GREATEST_LEVEL = 0.999999;
    static final double USUAL_LEVEL = 0.95;

    private Shapes() {}

    /** One point of a pump's curve. */
    record CurvePoint(
            @Asked(value = "flow, rising from 0", unit = "m³/h", from = 0, to = LineLoss.HIGHEST_FLOW_M3H)
            double flowM3h,

            @Asked(value = "head, falling", unit = "m", from = 0, to = 5000)
            double headM) {}

    /** One length of hose or pipe of one bore; takes one of roughnessMm and hazenWilliamsC. */
    record SectionOfLine(
            @Asked(value = "bore", unit = "mm", from = SMALLEST_BORE_MM, to = LARGEST_BORE_MM)
            double innerDiameterMm,

            @Asked(value = "length", unit = "m", from = 0, to = 100_000)
            double lengthM,

            @Asked(value = "wall roughness, at most half the bore", unit = "mm", from = 0, to = 2500) @Nullable
            Double roughnessMm,

            @Asked(value = "Hazen-Williams coefficient in place of the roughness", from = 10, to = 200) @Nullable
            Double hazenWilliamsC,

            @Asked(value = "sum of K of its fittings, on its own velocity", from = 0, to = GREATEST_K)
            double lossCoefficient) {}

    /** What the pump pushes through. */
    record WholeLine(
            @Asked(
                    value = "discharge point above the water surface, negative below it",
                    unit = "m",
                    from = -500,
                    to = 5000)
            double liftM,

            @Asked(value = "water temperature", unit = "°C", from = 0, to = HOTTEST_C, usual = Line.USUAL_TEMPERATURE_C)
            double waterTemperatureC,

            @Asked(value = "bore at the pump's outlet", unit = "mm", from = SMALLEST_BORE_MM, to = LARGEST_BORE_MM)
            @Nullable
            Double pumpOutletMm,

            @Asked(value = "velocity heads lost at the end", from = 0, to = GREATEST_K, usual = Line.FREE_END)
            double exitLossCoefficient,

            @Asked(value = "hoses, pipes and adapters in flow order", most = Line.MOST_SECTIONS)
            List<SectionOfLine> sections) {

        /** The stone's line; what it refuses is named under the field that holds this one. */
        Line under(String field) {
            return OutOfRange.within(
                    field,
                    () -> new Line(
                            liftM,
                            waterTemperatureC,
                            pumpOutletMm,
                            exitLossCoefficient,
                            sections.stream().map(WholeLine::section).toList()));
        }

        private static Section section(SectionOfLine in) {
            return new Section(in.innerDiameterMm, in.lengthM, in.roughnessMm, in.hazenWilliamsC, in.lossCoefficient);
        }
    }

    /** The stone's curve; what it refuses is named under the field "curve". */
    static Curve curve(List<CurvePoint> points) {
        return OutOfRange.within(
                "curve",
                () -> Curve.of(points.stream()
                        .map(point -> new Curve.Point(point.flowM3h, point.headM))
                        .toList()));
    }
}
