package freshet.repairs;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CostsTests {

    private static Part part(String quantity, @Nullable String price) {
        return new Part(
                null,
                "part",
                new BigDecimal(quantity),
                price == null ? null : new BigDecimal(price),
                null,
                null,
                null,
                null);
    }

    /** Worked by hand. */
    @ParameterizedTest
    @CsvSource({"1, 45.00, 90, 60.00, 5.00, 140.00", "3, 0.35, 20, 100.00, 0, 34.38", "0.5, 0.01, 1, 0.30, 0, 0.02"})
    void addsUp(String quantity, String price, int minutes, String rate, String other, String total) {
        Costs costs = Costs.of(List.of(part(quantity, price)), minutes, new BigDecimal(rate), new BigDecimal(other));
        assertThat(costs.total()).isEqualTo(new BigDecimal(total));
    }

    /** Against sums in whole thousandths and more, which lose nothing. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void agreesWithWholeNumbers(long seed) {
        Random random = new Random(seed);
        for (int round = 0; round < 200; round++) {
            List<Part> parts = new ArrayList<>();
            BigInteger cents = BigInteger.ZERO;
            int unpriced = 0;
            for (int i = random.nextInt(6); i > 0; i--) {
                long pieces = 1 + random.nextInt(999_999);
                long price = random.nextInt(99_999_999);
                boolean priced = random.nextInt(4) > 0;
                parts.add(part(
                        BigDecimal.valueOf(pieces, 2).toPlainString(),
                        priced ? BigDecimal.valueOf(price, 2).toPlainString() : null));
                unpriced += priced ? 0 : 1;
                if (priced) {
                    cents = cents.add(rounded(BigInteger.valueOf(pieces).multiply(BigInteger.valueOf(price)), 100));
                }
            }
            int minutes = random.nextInt(10_001);
            long rate = random.nextInt(99_999_999);
            long other = random.nextInt(99_999_999);
            cents = cents.add(rounded(BigInteger.valueOf(minutes).multiply(BigInteger.valueOf(rate)), 60))
                    .add(BigInteger.valueOf(other));
            Costs costs = Costs.of(parts, minutes, BigDecimal.valueOf(rate, 2), BigDecimal.valueOf(other, 2));
            assertThat(costs.total()).isEqualTo(new BigDecimal(cents, 2));
            assertThat(costs.unpriced()).isEqualTo(unpriced);
            Collections.shuffle(parts, random);
            assertThat(Costs.of(parts, minutes, BigDecimal.valueOf(rate, 2), BigDecimal.valueOf(other, 2)))
                    .isEqualTo(costs);
            assertThat(Costs.of(parts, null, BigDecimal.TEN, null).labour().signum())
                    .isZero();
        }
    }

    private static BigInteger rounded(BigInteger number, int by) {
        return new BigDecimal(number)
                .divide(BigDecimal.valueOf(by), 0, RoundingMode.HALF_UP)
                .toBigInteger();
    }

    @ParameterizedTest
    @CsvSource({
        // the opening begins 15 Feb: less 12 days and two weeks is 20 January
        "12, 2027-02-15, 2027-01-20, 2027-01-20, false",
        "12, 2027-02-15, 2027-01-21, 2027-01-20, true",
        "0, 2028-03-14, 2028-02-01, 2028-02-29, false"
    })
    void saysByWhenToOrder(int lead, LocalDate opens, LocalDate today, LocalDate orderBy, boolean late) {
        Part part = new Part(null, "Seal kit", BigDecimal.ONE, null, lead, null, null, null);
        Repair repair = new Repair(
                1,
                1,
                "BF-14",
                1,
                "Yard",
                java.time.ZoneOffset.UTC,
                new RepairPlan(List.of(1L), null, null, List.of(part), null, null, null, null, null),
                java.time.Instant.EPOCH,
                "Ilse",
                null,
                0);
        ToOrder order = ToOrder.of(repair, part, opens, today);
        assertThat(order.orderBy()).isEqualTo(orderBy);
        assertThat(order.late()).isEqualTo(late);
        assertThat(ToOrder.of(repair, part, null, today).orderBy()).isNull();
    }
}
