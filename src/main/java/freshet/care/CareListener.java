package freshet.care;

import freshet.board.Why;
import freshet.checklists.ChecklistPublished;
import freshet.findings.Finding;
import freshet.findings.FindingChanged;
import freshet.findings.FindingClosed;
import freshet.findings.Findings;
import freshet.findings.Hold;
import freshet.findings.UnitHeld;
import org.springframework.context.event.EventListener;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.transaction.event.TransactionPhase;
import org.springframework.transaction.event.TransactionalEventListener;

/** Hears, in the same transaction, that a finding was closed or a unit is held and has the door do what follows. */
@Component
class CareListener {

    // before rooms above look at the tasks, and before any of their rows is touched
    private static final int FIRST = 0;
    private static final int AFTER_PLANNING = 1;

    private final Care care;
    private final Findings findings;

    CareListener(Care care, Findings findings) {
        this.care = care;
        this.findings = findings;
    }

    @EventListener
    @Order(FIRST)
    void on(ChecklistPublished published) {
        care.planWith(published.checklistId(), published.minutes());
    }

    @EventListener
    @Order(FIRST)
    void on(FindingClosed closed) {
        if (closed.severity() >= Finding.STOPS_USE) {
            Finding finding = findings.finding(closed.findingId());
            care.checkAfterRepair(closed.unitId(), closed.findingId(), Why.of("mended", finding.what()));
        }
    }

    @EventListener
    @Order(FIRST)
    void on(UnitHeld held) {
        findings.holdsOf(held.unitId()).stream()
                .filter(hold -> hold.id() == held.holdId())
                .forEach(care::reTest);
    }

    /** What was judged less bad no longer keeps a hold, whose re-test may have been signed while it did. */
    @EventListener
    @Order(FIRST)
    void on(FindingChanged changed) {
        findings.holdsOf(changed.unitId()).stream().filter(Hold::open).forEach(care::reTest);
    }

    /** After planning, which may have opened the same work by a rule. */
    @TransactionalEventListener(phase = TransactionPhase.BEFORE_COMMIT)
    @Order(AFTER_PLANNING)
    void on(FollowUp followUp) {
        care.follow(followUp);
    }
}
