package freshet.checklists;

import freshet.people.NotFound;
import java.time.Clock;
import java.util.List;
import org.springframework.boot.context.event.ApplicationStartedEvent;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The door to the checklists. */
@Service
@Transactional
public class Checklists {

    private final ChecklistTable table;
    private final Clock clock;

    Checklists(ChecklistTable table, Clock clock) {
        this.table = table;
        this.clock = clock;
    }

    /** Gives a new install the checklists it begins with; those that are there already stay as they are. */
    @EventListener(ApplicationStartedEvent.class)
    @Order(Ordered.HIGHEST_PRECEDENCE)
    public void installDefaults() {
        DefaultChecklists.read().forEach(draft -> table.install(draft, clock.instant()));
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
}
