package freshet.repairs;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What a repair costs, each sum rounded to the hundredth, halves up; {@code unpriced} is how many parts have no price, so that the total
 * is at least what it says.
 */
public record Costs(BigDecimal parts, BigDecimal labour, BigDecimal other, int unpriced) {

    private static final BigDecimal MINUTES_AN_HOUR = BigDecimal.valueOf(60);

    static Costs of(
            List<Part> parts, @Nullable Integer minutes, @Nullable BigDecimal ratePerHour, @Nullable BigDecimal other) {
        BigDecimal partsCost =
                parts.stream().map(Part::cost).filter(Objects::nonNull).reduce(money(BigDecimal.ZERO), BigDecimal::add);
        BigDecimal labour = minutes == null || ratePerHour == null
                ? money(BigDecimal.ZERO)
                : ratePerHour.multiply(BigDecimal.valueOf(minutes)).divide(MINUTES_AN_HOUR, 2, RoundingMode.HALF_UP);
        int unpriced =
                (int) parts.stream().filter(part -> part.unitPrice() == null).count();
        return new Costs(partsCost, labour, money(other == null ? BigDecimal.ZERO : other), unpriced);
    }

    public BigDecimal total() {
        return parts.add(labour).add(other);
    }

    static BigDecimal money(BigDecimal amount) {
        return amount.setScale(2, RoundingMode.HALF_UP);
    }
}
