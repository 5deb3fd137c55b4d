package freshet.happenings;

import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import org.jspecify.annotations.Nullable;

/**
 * What somebody says has happened, when, and to whom: exactly one of a site (all that stood there), a position or a unit.
 *
 * @param at not before 2000, and not in the future, but for five minutes by which clocks may differ
 * @param dueBackOn of a hire that goes out only: its last day at the unit's site
 */
public record HappeningDraft(
        HappeningKind kind,
        Instant at,
        @Nullable Long siteId,
        @Nullable Long positionId,
        @Nullable Long unitId,
        @Nullable LocalDate dueBackOn,
        @Nullable String note) {

    public HappeningDraft {
        at = at.truncatedTo(ChronoUnit.MICROS); // as fine as it is kept
    }

    public static HappeningDraft atSite(HappeningKind kind, Instant at, long siteId, @Nullable String note) {
        return new HappeningDraft(kind, at, siteId, null, null, null, note);
    }

    public static HappeningDraft inPosition(HappeningKind kind, Instant at, long positionId, @Nullable String note) {
        return new HappeningDraft(kind, at, null, positionId, null, null, note);
    }

    public static HappeningDraft toUnit(HappeningKind kind, Instant at, long unitId, @Nullable String note) {
        return new HappeningDraft(kind, at, null, null, unitId, null, note);
    }

    public static HappeningDraft hireOut(Instant at, long unitId, LocalDate dueBackOn) {
        return new HappeningDraft(HappeningKind.HIRE_OUT, at, null, null, unitId, dueBackOn, null);
    }
}
