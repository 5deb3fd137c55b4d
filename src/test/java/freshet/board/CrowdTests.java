package freshet.board;

import static freshet.care.CareYard.allPass;
import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.care.AlreadySigned;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.care.SignOff;
import freshet.care.Task;
import freshet.findings.FindingDraft;
import freshet.findings.Findings;
import freshet.fleet.Fleet;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import freshet.places.Site;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.pumps.Whereabouts;
import freshet.readings.Readings;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.orm.ObjectOptimisticLockingFailureException;

/** Many hands at once: planning, signing, moving, finding and testing never wait for each other in a circle and never do work twice. */
@FreshetTest
class CrowdTests {

    private static final int HANDS = 6;
    private static final int STEPS = 25;

    @Autowired
    Board board;

    @Autowired
    Care care;

    @Autowired
    Findings findings;

    @Autowired
    Readings readings;

    @Autowired
    Fleet fleet;

    @Autowired
    Pumps pumps;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    @Autowired
    JdbcClient database;

    @Test
    void getsAlong() throws Exception {
        clock.set("2026-03-14T14:00:00Z");
        Person ilse = yard.ilse();
        Site other = yard.site("Mill Lane", CareYard.CHICAGO, CareYard.opening("Spring", 3, 1, 4, 10));
        List<Long> sites = List.of(yard.brackenfold().id(), other.id());
        List<Long> units = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            units.add(yard.unit("BF-" + i).id());
        }
        ExecutorService hands = Executors.newFixedThreadPool(HANDS);
        try {
            List<Callable<Void>> work = new ArrayList<>();
            for (int hand = 0; hand < HANDS; hand++) {
                Random random = new Random(hand);
                work.add(() -> {
                    for (int step = 0; step < STEPS; step++) {
                        step(random, units.get(random.nextInt(units.size())), sites, ilse);
                    }
                    return null;
                });
            }
            for (Future<Void> each : hands.invokeAll(work)) {
                each.get();
            }
        } finally {
            hands.shutdownNow();
        }
        List<String> kept = summaries();
        fleet.rebuildSummaries();
        assertThat(kept).isEqualTo(summaries());
        assertThat(units).allMatch(care::chainHolds);
        assertThat(database.sql("""
                        select count(*) from task a join task b on b.unit_id = a.unit_id and b.rule_id = a.rule_id and b.id <> a.id
                        join care_trigger r on r.rule_id = a.rule_id and r.kind = 'SEASON'
                        where a.state = 'SIGNED' and b.state = 'SIGNED' and b.opens_on <= a.due_on and b.due_on >= a.opens_on""").query(Integer.class).single())
                .as("work signed twice")
                .isZero();
    }

    private void step(Random random, long unitId, List<Long> sites, Person ilse) {
        try {
            switch (random.nextInt(5)) {
                case 0 -> board.plan();
                case 1 -> sign(unitId, ilse);
                case 2 -> move(unitId, sites.get(random.nextInt(2)), ilse);
                case 3 -> findings.write(FindingDraft.about(unitId, random.nextInt(3), "Seen by eye"), ilse);
                default ->
                    readings.recordFlowTest(
                            CareYard.flowTest(
                                    unitId,
                                    clock.instant().minusSeconds(random.nextInt(1_000_000)),
                                    20 + random.nextInt(12)),
                            ilse);
            }
        } catch (AlreadySigned | Stale | Refused | ObjectOptimisticLockingFailureException lostTheRace) {
            // as it should be: one of two wins
        }
    }

    private void sign(long unitId, Person ilse) {
        Unit unit = pumps.unit(unitId);
        LocalDate today = LocalDate.ofInstant(clock.instant(), unit.stand().zone());
        care.tasksOf(unitId).stream()
                .filter(task -> task.openOn(today))
                .findFirst()
                .ifPresent((Task task) -> care.sign(
                        task.id(), SignOff.of(task.version(), allPass(care.worksheet(task.id()), ilse)), ilse));
    }

    private void move(long unitId, long siteId, Person ilse) {
        if (pumps.unit(unitId).stand().siteId() != siteId) {
            pumps.move(unitId, Whereabouts.at(siteId), clock.instant(), null, ilse);
        }
    }

    private List<String> summaries() {
        return database.sql("select cast(to_jsonb(y) as text) from unit_summary y order by unit_id")
                .query(String.class)
                .list();
    }
}
