package freshet.offline;

import freshet.people.Person;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The door to work without a signal: what is taken along, and what is delivered afterwards. */
@Service
@Transactional
public class Offline {

    private final Packing packing;

    Offline(Packing packing) {
        this.packing = packing;
    }

    /** The units and the open work that one person wants with them, a round in its order. */
    @Transactional(readOnly = true)
    public Bundle bundle(Wanted wanted, Person me) {
        return packing.bundle(wanted, me);
    }
}
