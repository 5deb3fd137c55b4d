package freshet.board;

import freshet.checklists.Checklists;
import freshet.rules.CareRules;
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The door to what is due: planning it, and the board on which it stands. */
@Service
@Transactional
public class Board {

    private final Checklists checklists;
    private final CareRules rules;
    private final Planner planner;
    private final BoardTable table;
    private final ApplicationEventPublisher events;

    Board(Checklists checklists, CareRules rules, Planner planner, BoardTable table, ApplicationEventPublisher events) {
        this.checklists = checklists;
        this.rules = rules;
        this.planner = planner;
        this.table = table;
        this.events = events;
    }

    /** Makes all tasks agree with register, calendar, readings and rules; doing it again changes nothing. Every unit's day is looked at anew. */
    public void plan() {
        checklists.installDefaults();
        rules.installDefaults();
        planned(planner.plan(null));
    }

    /** The same for these units only, and for those in the same positions. */
    public void planUnits(Set<Long> unitIds) {
        planned(planner.plan(unitIds));
    }

    /** The same after work on these units, told by nobody but the caller; gives all units that were looked at. */
    public Set<Long> planAfterWork(Set<Long> unitIds) {
        return planner.plan(unitIds);
    }

    /** The same for the units of these sites. */
    public void planSites(Set<Long> siteIds) {
        Set<Long> units = planner.unitsAt(siteIds);
        if (!units.isEmpty()) {
            planUnits(units);
        }
    }

    /** The same for the units of all sites in this time zone. */
    public void planZone(ZoneId zone) {
        Set<Long> units = planner.unitsIn(zone);
        if (!units.isEmpty()) {
            planUnits(units);
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
