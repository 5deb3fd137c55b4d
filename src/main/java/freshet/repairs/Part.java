package freshet.repairs;

import java.math.BigDecimal;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** A part that a repair needs: its price each, the days it takes to come, and when it was ordered, is expected and came. */
public record Part(
        @Nullable String number,
        String description,
        BigDecimal quantity,
        @Nullable BigDecimal unitPrice,
        @Nullable Integer leadDays,
        @Nullable LocalDate orderedOn,
        @Nullable LocalDate expectedOn,
        @Nullable LocalDate arrivedOn) {

    public boolean here() {
        return arrivedOn != null;
    }

    public boolean toOrder() {
        return orderedOn == null && arrivedOn == null;
    }

    /** Null when its price is not known. */
    public @Nullable BigDecimal cost() {
        return unitPrice == null ? null : Costs.money(quantity.multiply(unitPrice));
    }

    /** Whether it should be here and is not, or comes after the day on which it is needed. */
    public boolean late(LocalDate today, @Nullable LocalDate neededOn) {
        LocalDate expected = expectedOn;
        return !here()
                && expected != null
                && (expected.isBefore(today) || neededOn != null && expected.isAfter(neededOn));
    }
}
