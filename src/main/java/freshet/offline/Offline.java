package freshet.offline;

import freshet.people.NotAllowed;
import freshet.people.NotFound;
import freshet.people.Person;
import freshet.people.Refused;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.function.LongFunction;
import org.springframework.stereotype.Service;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;

/** The door to work without a signal: what is taken along, what is delivered afterwards, and what did not fit. */
@Service
@Transactional
public class Offline {

    private final Packing packing;
    private final Counter counter;
    private final DeliveryTable table;
    private final TransactionTemplate each;
    private final Clock clock;

    Offline(
            Packing packing,
            Counter counter,
            DeliveryTable table,
            PlatformTransactionManager transactions,
            Clock clock) {
        this.packing = packing;
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
}
