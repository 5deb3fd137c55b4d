package freshet.hydraulics;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Reads the reference cases and puts their requests to the room. */
final class Cases {

    private static final JsonMapper JSON = new JsonMapper();
    private static final Path FOLDER = Path.of("src/test/resources/freshet/hydraulics/cases");

    private Cases() {}

    static List<JsonNode> all() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.sorted().map(JSON::readTree).toList();
        }
    }

    /** The answer to a request as the tree that a reader of JSON would see. */
    static JsonNode answer(String calculation, JsonNode request) {
        return JSON.valueToTree(ask(calculation, request));
    }

    private static Object ask(String calculation, JsonNode in) {
        return switch (calculation) {
            case "friction-factor" ->
                Map.of("frictionFactor", FrictionFactor.of(number(in, "reynolds"), number(in, "relativeRoughness")));
            case "line-loss" -> LineLoss.of(line(in.get("line")), number(in, "flowM3h"));
            case "duty-point" -> DutyPoint.of(fitted(in), line(in.get("line")));
            case "flow-test" ->
                FlowTestReduction.of(
                        curve(in.get("curve")), container(in), head(in), number(in, "curveUncertaintyFraction", 0));
            case "affinity" ->
                Map.of(
                        "curve",
                        new Affinity(number(in, "speedRatio"))
                                .curve(curve(in.get("curve")))
                                .points());
            case "drawdown" ->
                Drawdown.of(
                        fitted(in),
                        line(in.get("line")),
                        vessel(in.get("vessel")),
                        number(in, "startLevelM"),
                        number(in, "stopLevelM"),
                        number(in, "inflowM3h"));
            case "cycling" -> Cycling.of(number(in, "storageM3"), number(in, "inflowM3h"), number(in, "pumpFlowM3h"));
            case "npsh-available" ->
                NpshAvailable.of(
                        number(in, "altitudeM"),
                        number(in, "waterTemperatureC"),
                        number(in, "suctionLiftM"),
                        number(in, "suctionLossM"));
            case "pump-or-line" ->
                PumpOrLine.of(
                        curve(in.get("curve")),
                        line(in.get("ratedLine")),
                        line(in.get("usedLine")),
                        number(in, "measuredFlowM3h"));
            case "bore-change" -> coefficient(Line.boreChangeCoefficient(number(in, "fromMm"), number(in, "toMm")));
            case "cone" ->
                coefficient(Fitting.coneLossCoefficient(
                        number(in, "fromMm"), number(in, "toMm"), number(in, "includedAngleDeg")));
            case "on-bore" ->
                coefficient(Fitting.onBore(number(in, "coefficient"), number(in, "fromMm"), number(in, "toMm")));
            case "fitting" ->
                coefficient(Fitting.valueOf(in.get("fitting").stringValue()).lossCoefficient(number(in, "boreMm")));
            case "atmosphere" -> Map.of("pressurePa", NpshAvailable.atmospherePa(number(in, "altitudeM")));
            case "water" -> Water.at(number(in, "waterTemperatureC"));
            default -> throw new IllegalArgumentException("no calculation " + calculation);
        };
    }

    private static Map<String, Double> coefficient(double k) {
        return Map.of("lossCoefficient", k);
    }

    /** The curve through the points, or the fit that a case asks for. */
    private static Curve fitted(JsonNode in) {
        return in.has("fit")
                ? CurveFit.of(CurveFit.Form.valueOf(in.get("fit").stringValue()), points(in.get("curve")))
                        .curve()
                : curve(in.get("curve"));
    }

    static Curve curve(JsonNode points) {
        return Curve.of(points(points));
    }

    private static List<Curve.Point> points(JsonNode points) {
        List<Curve.Point> list = new ArrayList<>();
        points.forEach(p -> list.add(new Curve.Point(number(p, "flowM3h"), number(p, "headM"))));
        return list;
    }

    static Line line(JsonNode in) {
        List<Section> sections = new ArrayList<>();
        if (in.has("sections")) {
            in.get("sections")
                    .forEach(s -> sections.add(new Section(
                            number(s, "innerDiameterMm"),
                            number(s, "lengthM"),
                            optional(s, "roughnessMm"),
                            optional(s, "hazenWilliamsC"),
                            number(s, "lossCoefficient", 0))));
        }
        return new Line(
                number(in, "liftM"),
                number(in, "waterTemperatureC", Line.USUAL_TEMPERATURE_C),
                optional(in, "pumpOutletMm"),
                number(in, "exitLossCoefficient", Line.FREE_END),
                sections);
    }

    private static List<Drawdown.Level> vessel(JsonNode rows) {
        List<Drawdown.Level> list = new ArrayList<>();
        rows.forEach(r -> list.add(new Drawdown.Level(number(r, "levelM"), number(r, "areaM2"))));
        return list;
    }

    private static MeasuredFlow container(JsonNode in) {
        List<Double> seconds = new ArrayList<>();
        in.get("seconds").forEach(s -> seconds.add(s.doubleValue()));
        return MeasuredFlow.timedContainer(
                number(in, "containerL"),
                number(in, "containerUncertaintyL"),
                seconds,
                number(in, "timingUncertaintyS"));
    }

    private static MeasuredHead head(JsonNode in) {
        return in.has("line")
                ? new MeasuredHead.ByLine(line(in.get("line")), number(in, "liftUncertaintyM"))
                : new MeasuredHead.ByGauge(
                        number(in, "gaugeKPa"),
                        number(in, "gaugeAboveWaterM"),
                        number(in, "gaugeBoreMm"),
                        number(in, "gaugeUncertaintyKPa"),
                        number(in, "waterTemperatureC", Line.USUAL_TEMPERATURE_C),
                        number(in, "liftUncertaintyM"));
    }

    private static double number(JsonNode in, String name) {
        return in.get(name).doubleValue();
    }

    private static double number(JsonNode in, String name, double usual) {
        return in.has(name) ? number(in, name) : usual;
    }

    private static @Nullable Double optional(JsonNode in, String name) {
        return in.has(name) ? Double.valueOf(number(in, name)) : null;
    }
}
