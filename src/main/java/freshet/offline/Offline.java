package freshet.offline;

import freshet.people.NotAllowed;
import freshet.people.NotFound;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongFunction;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;

/** The door to work without a signal: what is taken along, what is delivered afterwards, and what did not fit. */
@Service
@Transactional
public class Offline {

    static final Set<String> UNTYPED = Set.of("version", "checklist");

    private static final int MOST_CONFLICTS = 100;
    private static final int LONGEST_NOTE = 4000;
    private static final Map<Conflict.How, String> TRAIL = Map.of(
            Conflict.How.KEEP, "delivery set aside",
            Conflict.How.ADD, "delivery added",
            Conflict.How.DISCARD, "delivery discarded");

    private final Packing packing;
    private final Settling settling;
    private final Sides sides;
    private final People people;
    private final Counter counter;
    private final DeliveryTable table;
    private final TransactionTemplate each;
    private final Clock clock;

    Offline(
            Packing packing,
            Settling settling,
            Sides sides,
            People people,
            Counter counter,
            DeliveryTable table,
            PlatformTransactionManager transactions,
            Clock clock) {
        this.packing = packing;
        this.settling = settling;
        this.sides = sides;
        this.people = people;
        this.counter = counter;
        this.table = table;
        this.each = new TransactionTemplate(transactions);
        this.clock = clock;
    }

    /** The units and the open work that one person wants with them, a round in its order. */
    @Transactional(readOnly = true)
    public Bundle bundle(Wanted wanted, Person me) {
        return packing.bundle(wanted, me);
    }

    /**
     * Takes one entry in, once: sent again, it is answered as it was the first time. What it does and its answer are kept in one
     * transaction; one that is refused is kept nowhere, so that it can be put right and sent again.
     *
     * @throws NotAllowed when another person wrote it
     */
    @Transactional(propagation = Propagation.NEVER)
    public Delivered deliver(Entry entry, Person by) {
        if (entry.person() != by.id()) {
            throw new NotAllowed("the entry is of person " + entry.person());
        }
        try {
            return once(entry, by, id -> Delivered.done(counter.take(entry, by)));
        } catch (AtOdds meanwhile) {
            return once(
                    entry,
                    by,
                    id -> Delivered.conflict(
                            table.keep(id, by.id(), counter.unitOf(entry), meanwhile.why(), entry, clock.instant())));
        } catch (Refused refused) {
            return Delivered.refused(refused.wrongs());
        } catch (NotFound gone) {
            return Delivered.refused(List.of(Refused.Wrong.at("", "offline.odd")));
        }
    }

    private Delivered once(Entry entry, Person by, LongFunction<Delivered> work) {
        return each.execute(transaction -> {
            Optional<Long> id = table.begin(entry, by.id(), clock.instant());
            if (id.isEmpty()) {
                return table.answered(entry, by.id()).orElseThrow();
            }
            Delivered delivered = work.apply(id.get());
            table.answer(id.get(), delivered);
            return delivered;
        });
    }

    /** One person's conflicts, an owner's are everybody's: open ones first. */
    @Transactional(readOnly = true)
    public List<Conflict> conflicts(Person me) {
        return table.conflicts(me.owner() ? null : me.id(), MOST_CONFLICTS);
    }

    /** How many this person may settle. */
    @Transactional(readOnly = true)
    public int toSettle(Person me) {
        return table.open(me.owner() ? null : me.id());
    }

    @Transactional(readOnly = true)
    public Conflict conflict(long id, Person me) {
        return theirs(table.conflict(id), id, me);
    }

    private static Conflict theirs(Optional<Conflict> conflict, long id, Person me) {
        Conflict found = conflict.orElseThrow(() -> new NotFound("conflict", id));
        if (found.personId() != me.id() && !me.owner()) {
            throw new NotAllowed("conflict " + id + " is another person's");
        }
        return found;
    }

    /** Both sides of a conflict, line by line. */
    @Transactional(readOnly = true)
    public Beside beside(Conflict conflict, Person me) {
        return sides.of(conflict, settling.mayAdd(conflict, me));
    }

    /**
     * Settles a conflict. What was typed stays with it, and the trail says what became of it.
     *
     * @throws Stale when somebody settled it meanwhile
     * @throws Refused when a reason is wanting, or what was typed cannot be added as it is
     */
    public void settle(long id, Conflict.How how, String why, Person by) {
        Conflict conflict = theirs(table.held(id), id, by);
        if (!conflict.open()) {
            throw new Stale("conflict", id);
        }
        if (how != Conflict.How.KEEP && why.isBlank()) {
            throw Refused.because("why", "offline.why.missing");
        }
        String link = how == Conflict.How.ADD ? add(conflict, why, by) : null;
        table.settle(id, how, why.isBlank() ? null : why, link, by.id(), clock.instant());
        people.note(by, TRAIL.get(how), "unit:" + conflict.unitId(), summary(conflict, why));
    }

    private String add(Conflict conflict, String why, Person by) {
        if (!settling.mayAdd(conflict, by)) {
            throw Refused.because("how", "offline.add.not");
        }
        try {
            return settling.add(conflict, why, by);
        } catch (AtOdds again) {
            throw Refused.because("how", "offline.why." + again.why().name());
        } catch (Refused refused) {
            // its fields are those of another page
            throw new Refused(refused.wrongs().stream()
                    .map(wrong -> new Refused.Wrong("", wrong.code(), wrong.arguments()))
                    .toList());
        }
    }

    private static String summary(Conflict conflict, String why) {
        String typed = conflict.entry().fields().entrySet().stream()
                .filter(field -> !field.getValue().isBlank() && !UNTYPED.contains(field.getKey()))
                .map(field -> field.getKey() + "=" + field.getValue())
                .sorted()
                .collect(Collectors.joining("; "));
        String all = conflict.personName() + ", " + conflict.entry().title() + ", conflict " + conflict.id() + ". "
                + why + " " + typed;
        return all.substring(0, Math.min(all.length(), LONGEST_NOTE));
    }
}
