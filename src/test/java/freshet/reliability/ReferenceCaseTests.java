package freshet.reliability;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every published and independently computed case, one file each beside its data. */
class ReferenceCaseTests {

    static Stream<ReferenceCase> cases() {
        return ReferenceCase.all();
    }

    @ParameterizedTest
    @MethodSource("cases")
    void agreesWithItsSource(ReferenceCase reference) {
        reference.check(answer(reference));
    }

    @Test
    void everyCaseNamesItsSourceAndHowSureItIs() {
        assertThat(ReferenceCase.all()).hasSizeGreaterThan(40).allSatisfy(reference -> {
            assertThat(reference.get("source")).isNotBlank();
            assertThat(reference.get("mark")).containsAnyOf("published", "computed", "from memory");
        });
    }

    private static Object answer(ReferenceCase reference) {
        return switch (reference.get("kind")) {
            case "capacity-trend" -> trend(reference);
            case "pooled-wear" -> pooled(reference);
            case "lives" -> lives(reference);
            case "survival" ->
                Survival.of(
                        reference.number("input.shape"),
                        reference.number("input.scaleHours"),
                        reference.number("input.ageHours"),
                        reference.number("input.missionHours"));
            case "mtbf" ->
                Mtbf.of(
                        reference.number("input.totalHours"),
                        (int) reference.number("input.failures"),
                        Termination.valueOf(reference.get("input.termination")),
                        reference.number("input.level"));
            case "recurrence" -> recurrence(reference);
            case "failure-trend" ->
                FailureTrend.of(
                        reference.numbers("input.eventHours"),
                        reference.number("input.endHours"),
                        Termination.valueOf(reference.get("input.termination")),
                        reference.number("input.level"));
            case "fleet-failure-trend" -> FleetFailureTrend.of(units(reference));
            case "replacement-age" ->
                ReplacementAge.of(
                        reference.number("input.shape"),
                        reference.number("input.scaleHours"),
                        reference.number("input.plannedCost"),
                        reference.number("input.failureCost"));
            case "spares" -> spares(reference);
            case "indicators" -> indicators(reference);
            default -> throw new IllegalArgumentException(reference.get("kind"));
        };
    }

    private static CapacityTrend trend(ReferenceCase reference) {
        List<Double> x = reference.hasData() ? reference.numberColumn("data.x") : reference.numbers("input.runHours");
        List<Double> y =
                reference.hasData() ? reference.numberColumn("data.y") : reference.numbers("input.remainingFraction");
        List<Double> u = reference.numbers("input.standardUncertainty");
        List<CapacityReading> readings = new ArrayList<>();
        for (int i = 0; i < x.size(); i++) {
            readings.add(new CapacityReading(x.get(i), y.get(i), u.isEmpty() ? null : u.get(i)));
        }
        return CapacityTrend.of(
                readings,
                List.of(),
                reference.number("input.threshold"),
                reference.number("input.nowHours"),
                reference.number("input.level"),
                reference.numbers("input.atHours"));
    }

    private static PooledWear pooled(ReferenceCase reference) {
        List<Double> slopes = reference.numbers("input.slopePerHour");
        List<Double> errors = reference.numbers("input.standardError");
        List<PooledWear.OwnSlope> own = new ArrayList<>();
        for (int i = 0; i < slopes.size(); i++) {
            own.add(new PooledWear.OwnSlope(slopes.get(i), errors.get(i)));
        }
        return PooledWear.of(own);
    }

    private static Map<String, Object> lives(ReferenceCase reference) {
        List<Double> hours =
                reference.hasData() ? reference.numberColumn("data.hours") : reference.numbers("input.hours");
        List<Boolean> failed = reference.hasData()
                ? reference.flags("data.failed")
                : reference.numbers("input.failed").stream()
                        .map(flag -> flag == 1)
                        .toList();
        List<Double> entries = reference.numbers("input.entryHours");
        List<Lives.Life> lives = new ArrayList<>();
        for (int i = 0; i < hours.size(); i++) {
            lives.add(new Lives.Life(hours.get(i), failed.get(i), entries.isEmpty() ? null : entries.get(i)));
        }
        Lives answer = Lives.of(lives, reference.number("input.level"));
        Map<String, Object> all = new LinkedHashMap<>(ReferenceCase.flat(answer));
        all.put(
                "curve",
                reference.numbers("curve.hours").stream()
                        .map(t -> last(answer.productLimit().stream().filter(step -> step.hours() <= t)))
                        .toList());
        return all;
    }

    private static Map<String, Object> recurrence(ReferenceCase reference) {
        Recurrence answer = Recurrence.of(units(reference), reference.number("input.level"));
        Map<String, Object> all = new LinkedHashMap<>(ReferenceCase.flat(answer));
        all.put(
                "curve",
                reference.numbers("curve.hours").stream()
                        .map(t -> last(answer.table().stream().filter(row -> row.hours() <= t)))
                        .toList());
        return all;
    }

    private static <T> T last(Stream<T> steps) {
        return steps.reduce((a, b) -> b).orElseThrow();
    }

    private static List<Recurrence.WatchedUnit> units(ReferenceCase reference) {
        if (!reference.hasData()) {
            return reference.lines("input.unit").stream()
                    .map(line -> line.stream().map(Double::valueOf).toList())
                    .map(line ->
                            new Recurrence.WatchedUnit(line.subList(0, line.size() - 1), line.get(line.size() - 1)))
                    .toList();
        }
        List<String> ids = reference.column("data.id");
        List<Double> hours = reference.numberColumn("data.hours");
        List<Boolean> failed = reference.flags("data.failed");
        Map<String, List<Double>> events = new LinkedHashMap<>();
        Map<String, Double> ends = new LinkedHashMap<>();
        for (int i = 0; i < ids.size(); i++) {
            ends.merge(ids.get(i), hours.get(i), Math::max);
            List<Double> own = events.computeIfAbsent(ids.get(i), id -> new ArrayList<>());
            if (failed.get(i)) {
                own.add(hours.get(i));
            }
        }
        return ends.keySet().stream()
                .map(id -> new Recurrence.WatchedUnit(events.get(id), ends.get(id)))
                .collect(Collectors.toList());
    }

    private static List<Spares> spares(ReferenceCase reference) {
        List<Double> demands = reference.numbers("input.meanDemand");
        List<Double> levels = reference.numbers("input.serviceLevel");
        List<Spares> answers = new ArrayList<>();
        for (int i = 0; i < demands.size(); i++) {
            answers.add(Spares.of(demands.get(i), levels.get(i)));
        }
        return answers;
    }

    private static Indicators indicators(ReferenceCase reference) {
        List<Indicators.Down> downs = reference.lines("input.down").stream()
                .map(line -> new Indicators.Down(
                        Indicators.DownType.valueOf(line.get(0)),
                        Double.parseDouble(line.get(1)),
                        optional(line.get(2)),
                        optional(line.get(3))))
                .toList();
        return Indicators.of(List.of(new Indicators.UnitRecord(
                reference.number("input.requiredHours"), reference.number("input.operatingHours"), downs)));
    }

    private static Double optional(String word) {
        return word.equals("null") ? null : (Double) Double.parseDouble(word);
    }
}
