package freshet.offline;

import freshet.people.Person;
import java.util.Set;
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

    /** The units at these places with the work that is open on them, for one person. */
    @Transactional(readOnly = true)
    public Bundle bundle(Set<Long> siteIds, Person me) {
        return packing.bundle(siteIds, me);
    }
}
