package freshet.care;

import freshet.findings.Finding;
import freshet.findings.FindingClosed;
import freshet.findings.Findings;
import freshet.places.SitesChanged;
import freshet.pumps.UnitsChanged;
import freshet.readings.FlowTestRecorded;
import freshet.readings.FlowTestWithdrawn;
import org.springframework.context.event.EventListener;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/** Hears, in the same transaction, what other rooms did and has the door do what follows. */
@Component
class CareListener {

    // before rooms above look at the tasks, and before any of their rows is touched
    private static final int FIRST = 0;

    private final Care care;
    private final Findings findings;

    CareListener(Care care, Findings findings) {
        this.care = care;
        this.findings = findings;
    }

    @EventListener
    @Order(FIRST)
    void on(UnitsChanged changed) {
        care.planUnits(changed.unitIds());
    }

    @EventListener
    @Order(FIRST)
    void on(SitesChanged changed) {
        care.planSites(changed.siteIds());
    }

    @EventListener
    @Order(FIRST)
    void on(FlowTestRecorded recorded) {
        care.openDueTasks(recorded.unitId());
    }

    @EventListener
    @Order(FIRST)
    void on(FlowTestWithdrawn withdrawn) {
        care.openDueTasks(withdrawn.unitId());
    }

    @EventListener
    @Order(FIRST)
    void on(FindingClosed closed) {
        if (closed.severity() >= Finding.STOPS_USE) {
            Finding finding = findings.finding(closed.findingId());
            care.checkAfterRepair(closed.unitId(), closed.findingId(), "Mended: " + finding.what());
        }
    }
}
