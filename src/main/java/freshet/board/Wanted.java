package freshet.board;

import freshet.rules.CareRule;
import java.time.LocalDate;

/** A task that a unit should have; {@code label} names the turn of a season in its title. */
record Wanted(CareRule rule, String occurrence, String label, Days days) {

    /** When it is due, and why. */
    record Days(String key, LocalDate opensOn, LocalDate dueOn, boolean predicted, Why why) {

        /** Opens so many days before it is due, but not before {@code earliest}. */
        static Days before(
                String key, LocalDate dueOn, int opensDaysBefore, LocalDate earliest, boolean predicted, Why why) {
            LocalDate opens = dueOn.minusDays(opensDaysBefore);
            LocalDate clipped = opens.isBefore(earliest) ? earliest : opens;
            return new Days(key, clipped.isAfter(dueOn) ? dueOn : clipped, dueOn, predicted, why);
        }

        Days on(LocalDate opens, LocalDate due) {
            return new Days(key, opens.isAfter(due) ? due : opens, due, predicted, why);
        }
    }

    String title() {
        return label.isEmpty() ? rule.name() : rule.name() + " " + label;
    }

    /** Whether a key is that of a turn of a season or of a fixed day, which stand each for itself; of all others a rule has one at a time. */
    static boolean standsForItself(String occurrence) {
        return Character.isDigit(occurrence.charAt(0)) || occurrence.startsWith(FixedDays.KEY);
    }
}
