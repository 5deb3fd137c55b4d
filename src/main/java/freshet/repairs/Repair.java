package freshet.repairs;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;

/** Repair work on a unit, with how it ended when it has; {@code zone} is that of the place where the unit stands. */
public record Repair(
        long id,
        long unitId,
        String tag,
        long siteId,
        String siteName,
        ZoneId zone,
        RepairPlan plan,
        Instant plannedAt,
        String plannedByName,
        @Nullable Ending ending,
        int version) {

    /** How it ended: done with how the pump was left, or given up with a reason. */
    public record Ending(
            boolean done,
            LocalDate on,
            String byName,
            @Nullable String asFound,
            @Nullable String asLeft,
            @Nullable String why) {}

    public RepairState state() {
        if (ending != null) {
            return ending.done() ? RepairState.DONE : RepairState.GIVEN_UP;
        }
        return plan.parts().stream().allMatch(Part::here) ? RepairState.TO_DO : RepairState.WAITING;
    }

    public boolean open() {
        return ending == null;
    }

    public Costs costs() {
        return plan.costs();
    }

    public BigDecimal total() {
        return costs().total();
    }

    /** Whether its day is over, or a part comes too late. */
    public boolean late(LocalDate today) {
        LocalDate day = plan.plannedFor();
        return open()
                && (day != null && day.isBefore(today)
                        || plan.parts().stream().anyMatch(part -> part.late(today, day)));
    }
}
