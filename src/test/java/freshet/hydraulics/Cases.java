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
            case "duty-point" -> DutyPoint.of(curve(in.get("curve")), line(in.get("line")));
            case "flow-test" ->
                FlowTestReduction.of(
                        curve(in.get("curve")), container(in), head(in), number(in, "curveUncertaintyFraction", 0));
            case "affinity" ->
                Map.of(
                        "curve",
                        new Affinity(number(in, "speedRatio"))
                                .curve(curve(in.get("curve")))
                                .points());
            case "water" -> Water.at(number(in, "waterTemperatureC"));
            default -> throw new IllegalArgumentException("no calculation " + calculation);
        };
    }

    static Curve curve(JsonNode points) {
        List<Curve.Point> list = new ArrayList<>();
        points.forEach(p -> list.add(new Curve.Point(number(p, "flowM3h"), number(p, "headM"))));
        return Curve.of(list);
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
