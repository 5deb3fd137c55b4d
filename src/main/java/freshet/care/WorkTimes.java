package freshet.care;

import static freshet.people.Refused.Wrong.at;

import freshet.people.Refused.Wrong;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** When the work of a task began and ended as it is signed now, and what cannot be about it. */
record WorkTimes(Task task, SignOff signOff, Instant started, Instant ended, Instant now) {

    /** A phone's clock may be ahead by so much. */
    private static final Duration CLOCKS_DIFFER = Duration.ofMinutes(5);

    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

    static WorkTimes of(Task task, SignOff signOff, Instant clock) {
        Instant now = clock.truncatedTo(ChronoUnit.MICROS);
        Instant ended = signOff.endedAt() == null ? now : signOff.endedAt();
        Instant kept = task.startedAt() == null || task.startedAt().isAfter(ended) ? ended : task.startedAt();
        return new WorkTimes(task, signOff, signOff.startedAt() == null ? kept : signOff.startedAt(), ended, now);
    }

    /** Everything wrong, each at its field; {@code last} is when the unit's last record was signed. */
    List<Wrong> wrongs(Optional<Instant> last) {
        List<Wrong> wrongs = new ArrayList<>();
        if (setBack(ended, now)) {
            wrongs.add(at("endedAt", "care.time.future"));
        } else if (LocalDate.ofInstant(ended, task.zone()).isBefore(task.opensOn())) {
            wrongs.add(at("endedAt", "care.time.early", task.opensOn().toString()));
        }
        if (started.isAfter(ended)) {
            wrongs.add(at("startedAt", "care.time.order"));
        }
        boolean byTheClock = signOff.startedAt() == null && signOff.endedAt() == null;
        if (byTheClock && task.startedAt() != null && setBack(task.startedAt(), now)) {
            wrongs.add(before("endedAt", "care.time.beforeFirst", now, task.startedAt(), task.zone()));
        } else if (last.isPresent() && setBack(last.get(), now)) {
            wrongs.add(before("endedAt", "care.time.beforeLast", now, last.get(), task.zone()));
        }
        return wrongs;
    }

    /** Whether something known is later than the clock says that it is now. */
    static boolean setBack(Instant known, Instant now) {
        return known.isAfter(now.plus(CLOCKS_DIFFER));
    }

    /** Says both moments as everybody reads them, whatever the language. */
    static Wrong before(String field, String code, Instant now, Instant known, ZoneId zone) {
        return at(field, code, MINUTE.format(now.atZone(zone)), MINUTE.format(known.atZone(zone)));
    }
}
