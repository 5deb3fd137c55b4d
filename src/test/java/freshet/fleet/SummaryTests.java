package freshet.fleet;

import static freshet.care.CareYard.allPass;
import static freshet.care.CareYard.closing;
import static freshet.care.CareYard.flowTest;
import static freshet.care.CareYard.opening;
import static freshet.care.CareYard.with;
import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.board.Board;
import freshet.care.Answer;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.care.Correction;
import freshet.care.ServiceRecord;
import freshet.care.SignOff;
import freshet.care.Task;
import freshet.care.TaskNotes;
import freshet.care.Worksheet;
import freshet.checklists.AnswerKind;
import freshet.checklists.CheckLine;
import freshet.checklists.Checklists;
import freshet.findings.Finding;
import freshet.findings.FindingDraft;
import freshet.findings.Findings;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.places.Places;
import freshet.places.Site;
import freshet.places.SiteDraft;
import freshet.places.WindowDraft;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.pumps.Whereabouts;
import freshet.readings.FlowTestResult;
import freshet.readings.Readings;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;

/** On a random history, from a seed that a failure names, the summary rows always say what the facts say. */
@FreshetTest
class SummaryTests {

    private static final Set<String> SEEN = new HashSet<>();

    @Autowired
    Fleet fleet;

    @Autowired
    Board board;

    @Autowired
    Care care;

    @Autowired
    Checklists checklists;

    @Autowired
    Findings findings;

    @Autowired
    Readings readings;

    @Autowired
    Places places;

    @Autowired
    Pumps pumps;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    @Autowired
    JdbcClient database;

    private final List<Long> units = new ArrayList<>();
    private final List<String> done = new ArrayList<>();
    private Random random = new Random(0);
    private Person ilse;
    private Person teo;

    @ParameterizedTest
    // these walks come by every word
    @ValueSource(longs = {1, 2, 3, 4, 5, 13, 16})
    void equalWhatIsRebuiltFromTheFacts(long seed) {
        random = new Random(seed);
        clock.set("2026-01-20T15:00:00Z");
        ilse = yard.ilse();
        teo = yard.teo();
        yard.brackenfold();
        yard.site(
                "South", ZoneId.of("Pacific/Auckland"), opening("Spring", 8, 1, 9, 10), closing("Autumn", 4, 1, 5, 20));
        for (int i = 0; i < 5; i++) {
            PumpKind kind = i == 4
                    ? PumpKind.ENGINE_TRASH
                    : i % 2 == 0 ? PumpKind.UTILITY_SUBMERSIBLE : PumpKind.SUMP_WITH_FLOAT;
            units.add(yard.unit("U-" + i, kind, aSite().id(), CareYard.LONG_AGO).id());
        }
        for (int step = 0; step < 60; step++) {
            step();
            List<String> kept = rows();
            fleet.rebuildSummaries();
            assertThat(kept).as("seed %d after %s", seed, done).isEqualTo(rows());
            SEEN.addAll(database.sql("select readiness from unit_summary")
                    .query(String.class)
                    .list());
        }
    }

    @AfterAll
    static void sawEveryWord() {
        assertThat(SEEN).containsExactlyInAnyOrder("READY", "LIMITS", "NOT_READY", "UNKNOWN");
    }

    private List<String> rows() {
        return database.sql("select cast(to_jsonb(y) as text) from unit_summary y order by unit_id")
                .query(String.class)
                .list();
    }

    private void step() {
        Unit unit = pumps.unit(units.get(random.nextInt(units.size())));
        int what = random.nextInt(12);
        done.add(what + " " + unit.tag());
        switch (what) {
            case 0, 1 -> time();
            case 2, 3, 4 -> sign(unit);
            case 5 -> findings.write(FindingDraft.about(unit.id(), random.nextInt(5), "Seen by eye"), teo);
            case 6, 7 -> close(unit);
            case 8 -> readings.recordFlowTest(flowTest(unit.id(), clock.instant(), 20 + random.nextInt(15)), ilse);
            case 9 -> withdraw(unit);
            case 10 -> moveOrRetire(unit);
            default -> correctOrChangeSite(unit);
        }
        clock.advance(Duration.ofMinutes(1));
    }

    /** Time passes, and what runs by itself runs, as at a start or as by the clocks of the places. */
    private void time() {
        clock.advance(Duration.ofHours(random.nextInt(24 * 30)));
        if (done.size() % 3 == 0) {
            board.plan();
        } else {
            Set<ZoneId> zones = places.sites().stream().map(Site::zone).collect(Collectors.toSet());
            zones.forEach(fleet::turnDay);
            zones.forEach(board::planZone);
        }
    }

    private void sign(Unit unit) {
        Person by = random.nextInt(3) == 0 ? teo : ilse;
        List<Task> due = care.tasksOf(unit.id()).stream()
                .filter(task -> task.openOn(LocalDate.ofInstant(clock.instant(), task.zone())))
                .toList();
        for (Task task : due) {
            // signing one may have withdrawn another
            if (care.task(task.id()).open()) {
                sign(task, by);
            }
        }
    }

    private void sign(Task task, Person by) {
        Worksheet sheet = care.worksheet(task.id());
        List<Answer> answers = allPass(sheet, by);
        if (random.nextInt(3) == 0) {
            CheckLine worst = worst(sheet);
            answers = with(answers, new Answer(worst.id(), CheckLine.NO, null, "Nicked", null));
        }
        try {
            care.sign(task.id(), SignOff.of(task.version(), answers), by);
        } catch (Refused allForACompetentPerson) {
            care.sign(task.id(), SignOff.of(task.version(), allPass(sheet, ilse)), ilse);
        }
    }

    private void close(Unit unit) {
        findings.findingsOf(unit.id()).stream()
                .filter(Finding::open)
                .findFirst()
                .ifPresent(finding -> findings.close(finding.id(), finding.version(), "Mended", ilse));
    }

    private void withdraw(Unit unit) {
        readings.flowTests(unit.id()).stream()
                .filter(FlowTestResult::stands)
                .findFirst()
                .ifPresent(test -> readings.withdrawFlowTest(test.id(), "Wrong drum", ilse));
    }

    private void moveOrRetire(Unit unit) {
        Site site = aSite();
        if (unit.retired()) {
            pumps.bringBack(unit.id(), unit.version(), ilse);
        } else if (random.nextInt(3) == 0) {
            LocalDate today = LocalDate.ofInstant(clock.instant(), unit.stand().zone());
            pumps.retire(unit.id(), unit.version(), today, "Worn out", ilse);
        } else if (site.id() != unit.stand().siteId()) {
            pumps.move(unit.id(), Whereabouts.at(site.id()), clock.instant(), null, ilse);
        }
    }

    private void correctOrChangeSite(Unit unit) {
        ServiceRecord record = care.recordsOf(unit.id()).stream()
                .filter(ServiceRecord::stands)
                .reduce((first, second) -> second)
                .orElse(null);
        if (record == null || random.nextBoolean()) {
            Site site = aSite();
            WindowDraft[] windows = {
                opening("Opening", 2 + random.nextInt(7), 3, 10, 5), closing("Closing", 11, 1, 12, 1)
            };
            places.changeSite(
                    site.id(),
                    site.version(),
                    new SiteDraft(site.name(), site.zone(), null, null, List.of(windows)),
                    ilse);
            return;
        }
        Worksheet asBefore = new Worksheet(
                care.task(record.taskId()),
                unit,
                checklists.version(record.checklistVersionId()),
                Map.of(),
                TaskNotes.NONE);
        Answer nick = new Answer(worst(asBefore).id(), CheckLine.NO, null, "Nicked, seen later", null);
        try {
            care.correct(record.id(), new Correction(with(allPass(asBefore, ilse), nick), "Looked again", null), ilse);
        } catch (Refused nothingChanged) {
            done.add("nothing to correct");
        }
    }

    /** The check that is worst to fail. */
    private static CheckLine worst(Worksheet sheet) {
        return sheet.checklist().lines().stream()
                .filter(line -> line.kind() == AnswerKind.YES_NO && line.failSeverity() != null)
                .max(Comparator.comparing(line -> Objects.requireNonNullElse(line.failSeverity(), 0)))
                .orElseThrow();
    }

    private Site aSite() {
        List<Site> sites = places.sites();
        return sites.get(random.nextInt(sites.size()));
    }
}
