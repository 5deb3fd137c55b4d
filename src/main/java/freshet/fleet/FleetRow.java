package freshet.fleet;

import freshet.pumps.PumpKind;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * One unit in the list of the fleet; {@code customerName} null is our own. The remaining capacity is a fraction of reference, with its
 * expanded uncertainty and the head it holds at; null when it was never tested.
 */
public record FleetRow(
        long unitId,
        String tag,
        @Nullable String serial,
        String modelName,
        PumpKind kind,
        @Nullable String customerName,
        long siteId,
        String siteName,
        @Nullable String positionName,
        @Nullable String spot,
        @Nullable LocalDate retiredOn,
        Readiness readiness,
        @Nullable Double remainingFraction,
        @Nullable Double expandedUncertainty,
        @Nullable Double statedAtHeadM,
        @Nullable LocalDate nextDueOn,
        int openTasks) {}
