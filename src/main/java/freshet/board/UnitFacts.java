package freshet.board;

import freshet.rules.CareRule;
import freshet.rules.Measure;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * All that planning has to know of a unit in care.
 *
 * @param positionSince the first day on which any unit in care stood in its position
 * @param works its signed tasks
 * @param positionWorks those of all units in its position, of rules that follow the position
 * @param usedOn the last day on which it was seen to be used; null when never
 * @param provedAt its last proving record; null when none
 * @param happenings what touched it, oldest first
 * @param moves to another site or position, oldest first
 * @param figures what its watched measures were, oldest first
 */
record UnitFacts(
        LocalDate inCareFrom,
        SiteDays site,
        @Nullable Long positionId,
        @Nullable LocalDate positionSince,
        List<Work> works,
        List<Work> positionWorks,
        Storage storage,
        boolean onHire,
        @Nullable LocalDate usedOn,
        @Nullable Instant provedAt,
        Series hours,
        Series starts,
        List<Occasion> happenings,
        List<Occasion> moves,
        Map<Measure, List<Figure>> figures) {

    LocalDate today() {
        return site.today();
    }

    boolean byPosition(CareRule rule) {
        return rule.followsPosition() && positionId != null;
    }

    /** From when the rule counts while nothing was done. */
    LocalDate anchor(CareRule rule) {
        return byPosition(rule) && positionSince != null ? positionSince : inCareFrom;
    }

    /** What keys of the rule end with: one unit may come to stand in several positions. */
    String where(CareRule rule) {
        return byPosition(rule) ? "@" + positionId : "";
    }
}
