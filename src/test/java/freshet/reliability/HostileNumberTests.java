package freshet.reliability;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Whatever is asked, every calculation answers finite numbers and nulls, or refuses; it neither hangs nor breaks. */
class HostileNumberTests {

    private static final double[] NUMBERS = {
        0,
        -0.0,
        1,
        -1,
        0.5,
        0.95,
        1e-6,
        1e-300,
        Double.MIN_VALUE,
        1e308,
        -1e308,
        1e9,
        999_999_999.999,
        1e6,
        1000,
        1000,
        1000.0000001,
        3,
        700,
        Double.NaN,
        Double.POSITIVE_INFINITY,
        Double.NEGATIVE_INFINITY
    };

    /** The same without those that are refused at once, so that the arithmetic is reached. */
    private static final double[] LAWFUL = {
        0, 1, 1, 1e-6, 2e-6, 1e9, 999_999_999.999, 1e6, 1000, 1000, 1000.0000001, 0.9, 0.8, 700, 0.001, 123.456, 7e8
    };

    static IntStream seeds() {
        return IntStream.range(0, 400);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void answersOrRefuses(int seed) {
        Random random = new Random(seed);
        double[] numbers = seed % 4 == 0 ? NUMBERS : LAWFUL;
        Supplier<Double> next = () -> numbers[random.nextInt(numbers.length)];
        int n = random.nextInt(9);
        double level = random.nextBoolean() ? 0.95 : 0.5 + 0.4999 * random.nextDouble();
        List<Supplier<Object>> calculations = List.of(
                () -> CapacityTrend.of(
                        readings(next, random, n), List.of(), next.get(), next.get(), level, List.of(next.get())),
                () -> PooledWear.of(list(n, () -> new PooledWear.OwnSlope(-next.get() / 1e6, next.get() / 1e6))),
                () -> Lives.of(
                        list(
                                n,
                                () -> new Lives.Life(
                                        next.get(), random.nextBoolean(), random.nextBoolean() ? null : next.get())),
                        level),
                () -> Lives.of(list(n, () -> new Lives.Life(next.get(), random.nextInt(3) > 0)), level),
                () -> Lives.of(
                        list(
                                n,
                                () -> new Lives.Life(
                                        1e9 * (1 + random.nextInt(3)) / 3, random.nextBoolean(), next.get())),
                        level),
                () -> Survival.of(next.get(), next.get(), next.get(), next.get()),
                () -> Mtbf.of(next.get(), n, random.nextBoolean() ? Termination.TIME : Termination.FAILURE, level),
                () -> Recurrence.of(units(next, random, n), level),
                () -> FleetFailureTrend.of(units(next, random, n)),
                () -> FailureTrend.of(list(n, next), next.get(), Termination.TIME, level),
                () -> FailureTrend.of(list(n, next), next.get(), Termination.FAILURE, level),
                () -> FailureTrend.of(
                        list(n, () -> Math.max(1e-6, 1e9 * Math.pow(random.nextDouble(), n * n))),
                        1e9,
                        Termination.TIME,
                        level),
                () -> ReplacementAge.of(next.get(), next.get(), next.get(), next.get()),
                () -> ReplacementAge.of(1 + next.get() / 1e7, next.get(), next.get(), next.get()),
                () -> Spares.of(next.get(), level),
                () -> Spares.forLeadTime(next.get(), next.get(), next.get(), level),
                () -> Indicators.of(list(
                        n,
                        () -> new Indicators.UnitRecord(
                                next.get(),
                                next.get(),
                                list(
                                        random.nextInt(3),
                                        () -> new Indicators.Down(
                                                Indicators.DownType.FAILURE,
                                                next.get() / 1e6,
                                                next.get() / 1e7,
                                                null))))));
        for (int i = 0; i < calculations.size(); i++) {
            Supplier<Object> calculation = calculations.get(i);
            String which = "calculation " + i + " of seed " + seed;
            Assertions.assertTimeout(Duration.ofSeconds(10), () -> answerOrRefusal(calculation, which), which);
        }
    }

    private static void answerOrRefusal(Supplier<Object> calculation, String which) {
        Object answer;
        try {
            answer = calculation.get();
        } catch (OutOfRange refusal) {
            assertThat(refusal.field()).as(which).isNotBlank();
            assertThat(refusal).as(which).message().containsPattern(" (is|are) ");
            return;
        }
        ReferenceCase.flat(answer)
                .forEach((path, values) -> values.forEach(value -> {
                    if (value instanceof Double number) {
                        assertThat(number).as(path + " in " + which).isFinite();
                    }
                }));
    }

    private static List<CapacityReading> readings(Supplier<Double> next, Random random, int n) {
        boolean weighted = random.nextBoolean();
        return list(n, () -> new CapacityReading(next.get(), next.get() / 1e3, weighted ? (Double) next.get() : null));
    }

    private static List<Recurrence.WatchedUnit> units(Supplier<Double> next, Random random, int n) {
        return list(n, () -> {
            Double[] hours = list(1 + random.nextInt(4), next).toArray(Double[]::new);
            Arrays.sort(hours);
            return new Recurrence.WatchedUnit(List.of(hours).subList(0, hours.length - 1), hours[hours.length - 1]);
        });
    }

    private static <T> List<T> list(int n, Supplier<T> next) {
        List<T> list = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            list.add(next.get());
        }
        return list;
    }
}
