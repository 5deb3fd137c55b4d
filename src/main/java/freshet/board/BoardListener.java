package freshet.board;

import freshet.places.SitesChanged;
import freshet.pumps.UnitsChanged;
import freshet.readings.FlowTestRecorded;
import freshet.readings.FlowTestWithdrawn;
import org.springframework.context.event.EventListener;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/** Hears, in the same transaction, what other rooms did and has the door do what follows. */
@Component
class BoardListener {

    // before rooms above look at the tasks, and before any of their rows is touched
    private static final int FIRST = 0;

    private final Board board;

    BoardListener(Board board) {
        this.board = board;
    }

    @EventListener
    @Order(FIRST)
    void on(UnitsChanged changed) {
        board.planUnits(changed.unitIds());
    }

    @EventListener
    @Order(FIRST)
    void on(SitesChanged changed) {
        board.planSites(changed.siteIds());
    }

    @EventListener
    @Order(FIRST)
    void on(FlowTestRecorded recorded) {
        board.openDueTasks(recorded.unitId());
    }

    @EventListener
    @Order(FIRST)
    void on(FlowTestWithdrawn withdrawn) {
        board.openDueTasks(withdrawn.unitId());
    }
}
