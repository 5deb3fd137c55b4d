package freshet.hands;

import freshet.people.NotAllowed;
import freshet.people.NotFound;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The door to who has how much time for care work, and what the work left comes to against it. */
@Service
@Transactional
public class Hands {

    static final int MOST_MINUTES = 6000;
    static final int MOST_PERCENT = 200;

    private final HandsTable table;
    private final People people;

    Hands(HandsTable table, People people) {
        this.table = table;
        this.people = people;
    }

    /** Of everybody who may sign in, by name. */
    @Transactional(readOnly = true)
    public List<Hand> hands() {
        return table.hands();
    }

    @Transactional(readOnly = true)
    public Hand hand(long personId) {
        return hands().stream()
                .filter(hand -> hand.personId() == personId)
                .findFirst()
                .orElseThrow(() -> new NotFound("hand", personId));
    }

    /** Writes a person's minutes a week and weeks off, unless somebody did since the given version; one's own, or anybody's as an owner. */
    public void write(long personId, int version, int minutesAWeek, Set<LocalDate> weeksOff, Person by) {
        Hand before = hand(personId);
        if (!by.owner() && by.id() != personId) {
            throw new NotAllowed("hands of others");
        }
        if (minutesAWeek < 0 || minutesAWeek > MOST_MINUTES) {
            throw Refused.because("hours", "hands.hours.range", MOST_MINUTES / 60);
        }
        Set<LocalDate> mondays = weeksOff.stream().map(Forecast::monday).collect(Collectors.toSet());
        if (before.version() != version || !table.write(personId, version, minutesAWeek, mondays)) {
            throw new Stale("hand", personId);
        }
        people.note(by, "hands written", "person:" + personId, minutesAWeek + " min, " + mondays.size() + " weeks off");
    }

    @Transactional(readOnly = true)
    public FindingsShare findings() {
        return table.findings();
    }

    /** Says how much is added for findings, unless somebody did since the given version. */
    public void writeFindings(int version, int percent, Person by) {
        if (!by.owner()) {
            throw new NotAllowed("findings added");
        }
        if (percent < 0 || percent > MOST_PERCENT) {
            throw Refused.because("percent", "hands.percent.range", MOST_PERCENT);
        }
        if (findings().version() != version || !table.write(version, percent)) {
            throw new Stale("findings added", percent);
        }
        people.note(by, "findings added", "hands", percent + " %");
    }

    /** The work left against the hands, to the day on which the last of what is open now is due. */
    @Transactional(readOnly = true)
    public Outlook outlook() {
        LocalDate today = table.today();
        return new Forecast(today, table.open(today.plusDays(183)), table.hands(), table.findings())
                .outlook(table.signedMinutes(0), table.signedMinutes(7));
    }
}
