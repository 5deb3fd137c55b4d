package freshet.repairs;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a repair is to be: for which findings, on which day, with which parts, minutes, money an hour and other cost; and what a new pump
 * costs and such a pump lasts, to weigh the repair against.
 */
public record RepairPlan(
        List<Long> findingIds,
        @Nullable String what,
        @Nullable LocalDate plannedFor,
        List<Part> parts,
        @Nullable Integer labourMinutes,
        @Nullable BigDecimal labourRate,
        @Nullable BigDecimal otherCost,
        @Nullable BigDecimal priceNew,
        @Nullable Integer lifeYears) {

    public RepairPlan {
        findingIds = List.copyOf(findingIds);
        parts = List.copyOf(parts);
    }

    public Costs costs() {
        return Costs.of(parts, labourMinutes, labourRate, otherCost);
    }
}
