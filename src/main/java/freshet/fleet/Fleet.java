package freshet.fleet;

import freshet.board.Board;
import freshet.pumps.Pumps;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The door to the fleet as a whole: how ready each unit is and why, the list of all units, and the counts. */
@Service
@Transactional
public class Fleet {

    private static final int UNITS_AT_ONCE = 2_000;

    private final Board board;
    private final FactsTable facts;
    private final SummaryTable summaries;
    private final FleetSearch search;
    private final Pumps pumps;
    private final Clock clock;

    Fleet(Board board, FactsTable facts, SummaryTable summaries, FleetSearch search, Pumps pumps, Clock clock) {
        this.board = board;
        this.facts = facts;
        this.summaries = summaries;
        this.search = search;
        this.pumps = pumps;
        this.clock = clock;
    }

    /** How ready a unit is today at its site and why, judged anew from the facts; a retired unit is unknown, without a reason. */
    @Transactional(readOnly = true)
    public Readiness readiness(long unitId) {
        pumps.unit(unitId);
        return worked(List.of(unitId)).stream()
                .findFirst()
                .map(Summary::readiness)
                .orElseGet(() -> new Readiness(Word.UNKNOWN, List.of(), null));
    }

    /** The same of many units at once; retired ones are not in it. */
    @Transactional(readOnly = true)
    public Map<Long, Readiness> readiness(Collection<Long> unitIds) {
        return worked(unitIds).stream().collect(Collectors.toMap(Summary::unitId, Summary::readiness));
    }

    /** Searches the fleet. */
    @Transactional(readOnly = true)
    public FleetPage find(FleetQuery query) {
        return search.find(query);
    }

    /** How many units in care stand at each word, worst first. */
    @Transactional(readOnly = true)
    public Map<Word, Integer> tally() {
        return search.tally(null);
    }

    /** The same at one site. */
    @Transactional(readOnly = true)
    public Map<Word, Integer> tallyAt(long siteId) {
        return search.tally(siteId);
    }

    /** Brings the summary rows of these units up to the facts and the day; rows that fit already are not touched. */
    public void summarize(Set<Long> unitIds) {
        // planning writes these rows too: who means to, comes first to where planning waits, whatever else was written
        // before
        board.holdOffPlanning();
        List<Long> sorted = new ArrayList<>(new TreeSet<>(unitIds));
        for (int from = 0; from < sorted.size(); from += UNITS_AT_ONCE) {
            List<Long> chunk = sorted.subList(from, Math.min(from + UNITS_AT_ONCE, sorted.size()));
            Map<Long, Summary> known = summaries.hold(chunk);
            List<Summary> worked = worked(chunk);
            summaries.put(worked.stream()
                    .filter(summary -> !summary.equals(known.get(summary.unitId())))
                    .toList());
            Set<Long> gone = new HashSet<>(known.keySet());
            worked.forEach(summary -> gone.remove(summary.unitId()));
            if (!gone.isEmpty()) {
                summaries.remove(gone);
            }
        }
    }

    /** Brings the summary rows of all units at sites in this time zone up to the day that it is there. */
    public void turnDay(ZoneId zone) {
        summarize(facts.unitsIn(zone));
    }

    /** Works all summary rows out from the facts alone. */
    public void rebuildSummaries() {
        summaries.removeAll();
        summarize(new HashSet<>(pumps.activeUnitIds()));
    }

    private List<Summary> worked(Collection<Long> unitIds) {
        return facts.facts(unitIds).stream()
                .map(its -> Summary.of(its, LocalDate.ofInstant(clock.instant(), its.zone())))
                .toList();
    }
}
