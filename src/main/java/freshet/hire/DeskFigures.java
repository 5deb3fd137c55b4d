package freshet.hire;

import freshet.pumps.PumpKind;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * How the hire desk did from one day to another, both included. Counted are our own pumps that stand now at a yard from which a pump ever
 * went out.
 *
 * @param issued hires that went out in these days
 * @param sameDay of these, those of units that came back on the same day
 * @param wrongPump hires of these days that were swapped since the pump could not do the job
 * @param quarantined quarantines that ended in these days, and how many days each took in the mean
 * @param inQuarantine quarantines that have not ended
 */
public record DeskFigures(
        LocalDate from,
        LocalDate to,
        List<Line> kinds,
        int issued,
        int sameDay,
        int wrongPump,
        int quarantined,
        @Nullable Double meanQuarantineDays,
        int inQuarantine,
        List<TurnAway> turnAways) {

    /**
     * The pumps of one kind.
     *
     * @param neverOut units that were not out in these days
     * @param daysKept days on which they were in care
     * @param daysLeftOut of these, days at the yard on which they were in quarantine, tagged out, or had a finding that stops use
     */
    public record Line(PumpKind kind, int units, int neverOut, int daysKept, int daysOut, int daysLeftOut) {

        public int daysAvailable() {
            return daysKept - daysLeftOut;
        }

        /** Days out as a fraction of days available; null when there were none. */
        public @Nullable Double share() {
            return daysAvailable() == 0 ? null : Double.valueOf((double) daysOut / daysAvailable());
        }
    }

    /** All kinds together; its kind says nothing. */
    public Line all() {
        return new Line(
                PumpKind.UTILITY_SUBMERSIBLE,
                kinds.stream().mapToInt(Line::units).sum(),
                kinds.stream().mapToInt(Line::neverOut).sum(),
                kinds.stream().mapToInt(Line::daysKept).sum(),
                kinds.stream().mapToInt(Line::daysOut).sum(),
                kinds.stream().mapToInt(Line::daysLeftOut).sum());
    }

    /** Swaps for a wrong pump of 100 hires; null when none went out. */
    public @Nullable Double wrongPumpPer100() {
        return issued == 0 ? null : Double.valueOf(100.0 * wrongPump / issued);
    }

    public Map<TurnAwayReason, Integer> turnAwayReasons() {
        Map<TurnAwayReason, Integer> counts = new EnumMap<>(TurnAwayReason.class);
        turnAways.forEach(each -> counts.merge(each.reason(), 1, Integer::sum));
        return counts;
    }
}
