package freshet.hire;

import freshet.fleet.Reason;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A hire as it stands on its paper: what went out, and once it is back, how. Its days are those of the site it went out from. */
public record Hire(
        long id,
        long unitId,
        String tag,
        String modelName,
        long siteId,
        String siteName,
        ZoneId zone,
        @Nullable Long customerId,
        String hirer,
        @Nullable String phone,
        Instant outAt,
        LocalDate dueBackOn,
        @Nullable BigDecimal hoursOut,
        @Nullable Integer fuelOut,
        @Nullable String conditionOut,
        String takenBy,
        List<Caution> told,
        List<Reason> limits,
        @Nullable LocalDate proofUntil,
        String issuedByName,
        List<Piece> kit,
        @Nullable Back back,
        @Nullable Long swappedFrom,
        @Nullable String swappedFromTag,
        int version) {

    /** How it came back. */
    public record Back(
            Instant at,
            @Nullable BigDecimal hours,
            @Nullable Integer fuel,
            @Nullable String condition,
            Liquid liquid,
            boolean ranDry,
            boolean cordDamaged,
            String byName,
            @Nullable SwapReason swapReason,
            @Nullable Long swappedTo,
            @Nullable String swappedToTag) {}

    public boolean open() {
        return back == null;
    }

    /** Days past its last day; 0 or less when it is not late. */
    public long daysOver(LocalDate today) {
        return ChronoUnit.DAYS.between(dueBackOn, today);
    }

    public LocalDate today(Clock clock) {
        return LocalDate.ofInstant(clock.instant(), zone);
    }

    /** The pieces of which not all came back. */
    public List<Piece> missing() {
        return kit.stream().filter(piece -> piece.missing() > 0).toList();
    }

    /** What the meter ran while it was out; null unless it was read both times. */
    public @Nullable BigDecimal hoursRun() {
        return back == null || back.hours() == null || hoursOut == null
                ? null
                : back.hours().subtract(hoursOut);
    }
}
