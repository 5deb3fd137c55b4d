package freshet.board;

import freshet.happenings.HappeningReported;
import freshet.places.SitesChanged;
import freshet.pumps.UnitsChanged;
import freshet.readings.FlowTestRecorded;
import freshet.readings.FlowTestWithdrawn;
import freshet.readings.ReadingsRecorded;
import freshet.rules.RulesChanged;
import java.util.Set;
import org.springframework.context.event.EventListener;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.transaction.event.TransactionPhase;
import org.springframework.transaction.event.TransactionalEventListener;

/**
 * Hears, in the same transaction, what other rooms did and has the door do what follows. Units and sites are planned for at its end,
 * and not at all when everything is taken back, as when files are only looked through.
 */
@Component
class BoardListener {

    // before rooms above look at the tasks, and before any of their rows is touched
    private static final int FIRST = 0;

    private final Board board;

    BoardListener(Board board) {
        this.board = board;
    }

    @TransactionalEventListener(phase = TransactionPhase.BEFORE_COMMIT)
    @Order(FIRST)
    void on(UnitsChanged changed) {
        board.planUnits(changed.unitIds());
    }

    @TransactionalEventListener(phase = TransactionPhase.BEFORE_COMMIT)
    @Order(FIRST)
    void on(SitesChanged changed) {
        board.planSites(changed.siteIds());
    }

    @TransactionalEventListener(phase = TransactionPhase.BEFORE_COMMIT)
    @Order(FIRST)
    void on(ReadingsRecorded recorded) {
        board.planUnits(recorded.unitIds());
    }

    @TransactionalEventListener(phase = TransactionPhase.BEFORE_COMMIT)
    @Order(FIRST)
    void on(HappeningReported reported) {
        board.planUnits(reported.unitIds());
    }

    @TransactionalEventListener(phase = TransactionPhase.BEFORE_COMMIT)
    @Order(FIRST)
    void on(RulesChanged changed) {
        board.plan();
    }

    @EventListener
    @Order(FIRST)
    void on(FlowTestRecorded recorded) {
        board.planUnits(Set.of(recorded.unitId()));
    }

    @EventListener
    @Order(FIRST)
    void on(FlowTestWithdrawn withdrawn) {
        board.planUnits(Set.of(withdrawn.unitId()));
    }
}
