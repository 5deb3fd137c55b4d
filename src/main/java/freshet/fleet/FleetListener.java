package freshet.fleet;

import freshet.board.TasksPlanned;
import freshet.care.CareChanged;
import freshet.findings.FindingChanged;
import freshet.findings.FindingClosed;
import freshet.findings.FindingOpened;
import freshet.findings.HoldReleased;
import freshet.findings.UnitHeld;
import freshet.readings.FlowTestRecorded;
import freshet.readings.FlowTestWithdrawn;
import java.util.Set;
import org.springframework.context.event.EventListener;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/**
 * Brings summary rows up to date in the transaction of whatever changed their facts, after the room whose work it is has heard it. Units
 * and sites that were changed are planned anew, so they come here as planned.
 */
@Component
class FleetListener {

    private static final int LAST = Integer.MAX_VALUE;

    private final Fleet fleet;

    FleetListener(Fleet fleet) {
        this.fleet = fleet;
    }

    @EventListener
    @Order(LAST)
    void on(TasksPlanned planned) {
        fleet.summarize(planned.unitIds());
    }

    @EventListener
    @Order(LAST)
    void on(CareChanged changed) {
        fleet.summarize(changed.unitIds());
    }

    @EventListener
    @Order(LAST)
    void on(FindingOpened opened) {
        fleet.summarize(Set.of(opened.unitId()));
    }

    @EventListener
    @Order(LAST)
    void on(FindingClosed closed) {
        fleet.summarize(Set.of(closed.unitId()));
    }

    @EventListener
    @Order(LAST)
    void on(FindingChanged changed) {
        fleet.summarize(Set.of(changed.unitId()));
    }

    @EventListener
    @Order(LAST)
    void on(UnitHeld held) {
        fleet.summarize(Set.of(held.unitId()));
    }

    @EventListener
    @Order(LAST)
    void on(HoldReleased released) {
        fleet.summarize(Set.of(released.unitId()));
    }

    @EventListener
    @Order(LAST)
    void on(FlowTestRecorded recorded) {
        fleet.summarize(Set.of(recorded.unitId()));
    }

    @EventListener
    @Order(LAST)
    void on(FlowTestWithdrawn withdrawn) {
        fleet.summarize(Set.of(withdrawn.unitId()));
    }
}
