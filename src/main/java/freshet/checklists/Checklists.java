package freshet.checklists;

import freshet.people.NotAllowed;
import freshet.people.NotFound;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Refused.Wrong;
import freshet.people.Stale;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.boot.context.event.ApplicationStartedEvent;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The door to the checklists. */
@Service
@Transactional
public class Checklists {

    private static final int LONGEST_NAME = 80;

    private final ChecklistTable table;
    private final VersionTable versions;
    private final People people;
    private final Clock clock;
    private final ApplicationEventPublisher events;

    Checklists(
            ChecklistTable table, VersionTable versions, People people, Clock clock, ApplicationEventPublisher events) {
        this.table = table;
        this.versions = versions;
        this.people = people;
        this.clock = clock;
        this.events = events;
    }

    /** Gives an install the checklists of the product that it does not have yet; those that are there already stay as they are. */
    @EventListener(ApplicationStartedEvent.class)
    @Order(Ordered.HIGHEST_PRECEDENCE)
    public void installDefaults() {
        Set<String> there = versions.codes();
        DefaultChecklists.all().stream()
                .filter(draft -> !there.contains(draft.code()))
                .forEach(draft -> versions.install(draft, clock.instant()));
    }

    /** All checklists in their current version. */
    @Transactional(readOnly = true)
    public List<Checklist> checklists() {
        return table.current();
    }

    /** A checklist in its current version. */
    @Transactional(readOnly = true)
    public Checklist checklist(long id) {
        return table.current(id).orElseThrow(() -> new NotFound("checklist", id));
    }

    /** A checklist as it stood in the given version. */
    @Transactional(readOnly = true)
    public Checklist version(long versionId) {
        return table.version(versionId).orElseThrow(() -> new NotFound("checklist version", versionId));
    }

    /** A checklist as it stood in its version of this number. */
    @Transactional(readOnly = true)
    public Checklist version(long id, int number) {
        return table.version(id, number).orElseThrow(() -> new NotFound("version " + number + " of checklist", id));
    }

    /** The version that all of these lines belong to, if they belong to one. */
    @Transactional(readOnly = true)
    public Optional<Checklist> versionOfLines(Collection<Long> lineIds) {
        return table.versionOfLines(lineIds).flatMap(table::version);
    }

    /** The newest version of each checklist in the list of its versions, by the checklist's id. */
    @Transactional(readOnly = true)
    public Map<Long, Edition> newestEditions() {
        return table.newestEditions();
    }

    /** Its versions, newest first. */
    @Transactional(readOnly = true)
    public List<Edition> editions(long id) {
        return table.editions(id);
    }

    /** Refuses what {@link #publish} would refuse, and publishes nothing. */
    @Transactional(readOnly = true)
    public void look(long id, int number, ChecklistDraft draft) {
        Revision.lines(version(id, number), draft);
    }

    /**
     * Publishes the next version, unless it says the same as the one that stands, and gives what stands then. Work that was begun keeps
     * the version that it was begun with, and a record the one that it was signed with.
     *
     * @param number of the version that the draft was made from
     * @throws Stale when another was published meanwhile
     */
    public Checklist publish(long id, int number, ChecklistDraft draft, Person by) {
        onlyOwners(by);
        versions.hold(id);
        Checklist stands = checklist(id);
        if (stands.number() != number) {
            throw new Stale("checklist", id);
        }
        List<CheckLine> lines = Revision.lines(stands, draft);
        if (stands.saysTheSameAs(draft.minutes(), lines)) {
            return stands;
        }
        if (draft.note() == null || draft.note().isBlank()) {
            throw Refused.because("note", "checklists.edit.why");
        }
        versions.publish(id, number + 1, draft.minutes(), draft.note(), by.id(), lines, clock.instant());
        people.note(by, "checklist changed", "checklist:" + id, stands.name() + ", version " + (number + 1));
        events.publishEvent(new ChecklistPublished(id, draft.minutes()));
        return checklist(id);
    }

    /** A new checklist with the lines of another, those for safety too; gives its id. */
    public long copy(long fromId, CopyDraft draft, Person by) {
        onlyOwners(by);
        Checklist from = checklist(fromId);
        List<Wrong> wrongs = new ArrayList<>();
        String name = draft.name().strip();
        if (name.isEmpty() || name.length() > LONGEST_NAME) {
            wrongs.add(Wrong.at("name", "checklists.new.name", LONGEST_NAME));
        } else if (versions.named(name)) {
            wrongs.add(Wrong.at("name", "checklists.new.taken"));
        }
        if (draft.minutes() < 1 || draft.minutes() > Revision.LONGEST_DAY) {
            wrongs.add(Wrong.at("minutes", "checklists.edit.minutes", Revision.LONGEST_DAY));
        }
        if (draft.effect() == Effect.LAYS_UP && draft.phase() != Phase.CLOSING) {
            wrongs.add(Wrong.at("effect", "checklists.new.laysUp"));
        }
        Refused.ifAny(wrongs);
        long id = versions.copy(
                from,
                new CopyDraft(name, draft.pumpKind(), draft.phase(), draft.effect(), draft.minutes()),
                by.id(),
                clock.instant());
        people.note(by, "checklist added", "checklist:" + id, name + ", as " + from.name());
        return id;
    }

    private static void onlyOwners(Person by) {
        if (!by.owner()) {
            throw new NotAllowed("only an owner changes checklists");
        }
    }
}
