package freshet.board;

import freshet.checklists.Checklists;
import freshet.pumps.Pumps;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.springframework.boot.context.event.ApplicationStartedEvent;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The door to what is due: planning it, and the board on which it stands. */
@Service
@Transactional
public class Board {

    private final Checklists checklists;
    private final CareRules rules;
    private final Planner planner;
    private final CapacityWatch capacityWatch;
    private final BoardTable table;
    private final Pumps pumps;
    private final ApplicationEventPublisher events;

    Board(
            Checklists checklists,
            CareRules rules,
            Planner planner,
            CapacityWatch capacityWatch,
            BoardTable table,
            Pumps pumps,
            ApplicationEventPublisher events) {
        this.checklists = checklists;
        this.rules = rules;
        this.planner = planner;
        this.capacityWatch = capacityWatch;
        this.table = table;
        this.pumps = pumps;
        this.events = events;
    }

    /** Gives a new install the checklists and rules it begins with. */
    @EventListener(ApplicationStartedEvent.class)
    public void installDefaults() {
        checklists.installDefaults();
        rules.installDefaults();
    }

    /** Makes all tasks agree with register, calendar and readings; doing it again changes nothing. Every unit's day is looked at anew. */
    public void plan() {
        installDefaults();
        planner.plan(null);
        List<Long> active = pumps.activeUnitIds();
        capacityWatch.look(active);
        planned(new HashSet<>(active));
    }

    /** The same for these units only. */
    public void planUnits(Set<Long> unitIds) {
        planner.plan(unitIds);
        planned(unitIds);
    }

    /** The same for the units of these sites. */
    public void planSites(Set<Long> siteIds) {
        Set<Long> units = planner.unitsAt(siteIds);
        if (!units.isEmpty()) {
            planUnits(units);
        }
    }

    /** The same for the units of all sites in this time zone, with what their readings make due. */
    public void planZone(ZoneId zone) {
        Set<Long> units = planner.unitsIn(zone);
        if (!units.isEmpty()) {
            planner.plan(units);
            capacityWatch.look(List.copyOf(units));
            planned(units);
        }
    }

    /** Opens what the readings of a unit make due; once for each occasion. */
    public void openDueTasks(long unitId) {
        planner.holdOff();
        if (capacityWatch.look(unitId)) {
            planned(Set.of(unitId));
        }
    }

    /** Holds planning off until the end of the transaction, so that no task is withdrawn under the hand that works on it. */
    public void holdOffPlanning() {
        planner.holdOff();
    }

    /** What is late or due within so many days, by site, with at most so many lines of each, the latest first. */
    @Transactional(readOnly = true)
    public List<BoardSite> sites(int days, int linesOfEach) {
        return table.sites(days, linesOfEach);
    }

    /** How far the work of each turn of the season windows is, by the day it opens. */
    @Transactional(readOnly = true)
    public List<SeasonCount> seasons() {
        return table.seasons();
    }

    private void planned(Set<Long> unitIds) {
        if (!unitIds.isEmpty()) {
            events.publishEvent(new TasksPlanned(Set.copyOf(unitIds)));
        }
    }
}
