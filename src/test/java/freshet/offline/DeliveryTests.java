package freshet.offline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.TestClock;
import freshet.care.Answer;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.care.ServiceRecord;
import freshet.care.SignOff;
import freshet.care.Task;
import freshet.care.Worksheet;
import freshet.checklists.Phase;
import freshet.findings.Finding;
import freshet.findings.Findings;
import freshet.offline.Delivered.Outcome;
import freshet.people.NotAllowed;
import freshet.people.Person;
import freshet.pumps.Unit;
import freshet.readings.MeterKind;
import freshet.readings.MeterLog;
import freshet.readings.ReadingDraft;
import freshet.readings.Readings;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class DeliveryTests {

    static final Instant MORNING = Instant.parse("2026-03-14T14:00:00Z");

    @Autowired
    Offline offline;

    @Autowired
    Care care;

    @Autowired
    Readings readings;

    @Autowired
    Findings findings;

    @Autowired
    CareYard yard;

    @Autowired
    MockMvc mvc;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TestClock clock;

    Person ilse;
    Person teo;
    Unit unit;
    Task opening;
    Bundle taken;

    @BeforeEach
    void takeAlong() {
        clock.set(MORNING);
        ilse = yard.ilse();
        teo = yard.teo();
        unit = yard.unit("BF-04");
        opening = care.tasksOf(unit.id()).stream()
                .filter(task -> task.phase() == Phase.OPENING
                        && task.openOn(MORNING.atZone(CareYard.CHICAGO).toLocalDate()))
                .findFirst()
                .orElseThrow();
        taken = offline.bundle(Wanted.at(unit.stand().siteId()), teo);
    }

    Map<String, String> fields(Worksheet sheet, List<Answer> answers) {
        Map<String, String> fields = new HashMap<>();
        fields.put("version", String.valueOf(sheet.task().version()));
        fields.put("checklist", String.valueOf(sheet.checklist().versionId()));
        for (Answer answer : answers) {
            String line = "line[c" + answer.lineId() + "].";
            put(fields, line + "answer", answer.answer());
            put(fields, line + "finding", answer.finding());
            put(fields, line + "instrument", answer.instrument());
            put(
                    fields,
                    line + "severity",
                    answer.severity() == null ? null : answer.severity().toString());
        }
        return fields;
    }

    private List<@Nullable String> instruments(int record, String... questions) {
        Worksheet sheet = care.worksheet(opening.id());
        return Stream.of(questions)
                .map(question -> care.recordsOf(unit.id())
                        .get(record)
                        .lines()
                        .get(CareYard.line(sheet, question).ordinal() - 1)
                        .instrument())
                .toList();
    }

    private static void put(Map<String, String> fields, String name, @Nullable String value) {
        if (value != null) {
            fields.put(name, value);
        }
    }

    Entry entry(Entry.Kind kind, long target, Map<String, String> fields) {
        Bundle.UnitRow row = taken.units().stream()
                .filter(each -> each.id() == unit.id())
                .findFirst()
                .orElseThrow();
        return new Entry(
                UUID.randomUUID(),
                1,
                teo.id(),
                kind,
                target,
                "Opening 2026, BF-04",
                MORNING.plus(Duration.ofMinutes(50)),
                MORNING.plus(Duration.ofMinutes(20)),
                0,
                new Entry.Known(row.stand(), row.meters()),
                fields);
    }

    private Entry signing() {
        Worksheet sheet = care.worksheet(opening.id());
        return entry(Entry.Kind.TASK, opening.id(), fields(sheet, CareYard.allPass(sheet, teo)));
    }

    private Entry hours(String value) {
        return entry(Entry.Kind.READING, unit.id(), Map.of("kind", "RUN_HOURS", "value", value, "at", ""));
    }

    private int count(String table) {
        return jdbc.sql("select count(*) from " + table).query(Integer.class).single();
    }

    @Test
    void takesTheUnitsOfAPlaceWithTheirOpenWork() {
        assertThat(taken.now()).isEqualTo(MORNING);
        assertThat(taken.personId()).isEqualTo(teo.id());
        assertThat(taken.units()).extracting(Bundle.UnitRow::tag).containsExactly("BF-04");
        Bundle.TaskRow task = taken.tasks().stream()
                .filter(each -> each.id() == opening.id())
                .findFirst()
                .orElseThrow();
        Worksheet sheet = care.worksheet(opening.id());
        assertThat(task.checklistVersion()).isEqualTo(sheet.checklist().versionId());
        assertThat(task.lines()).hasSameSizeAs(sheet.checklist().lines());
        assertThat(task.lines()).filteredOn(Bundle.LineRow::locked).isNotEmpty();
        assertThat(task.lines().get(0).safety()).as("safety first").isTrue();
    }

    @Test
    void signsWithTheTimeItWasDoneWhateverThePhonesClockSays() {
        Entry right = signing();
        Duration ahead = Duration.ofHours(-7).plusSeconds(11);
        Entry entry = new Entry(
                right.key(),
                right.order(),
                right.person(),
                right.kind(),
                right.target(),
                right.title(),
                right.doneAt().minus(ahead),
                right.begunAt().minus(ahead),
                ahead.toMillis(),
                right.known(),
                right.fields());
        clock.advance(Duration.ofHours(9));

        Delivered delivered = offline.deliver(entry, teo);

        assertThat(delivered.outcome()).isEqualTo(Outcome.DONE);
        ServiceRecord record = care.recordsOf(unit.id()).get(0);
        assertThat(delivered.link()).isEqualTo("/records/" + record.id());
        assertThat(record.startedAt()).isEqualTo(MORNING.plus(Duration.ofMinutes(20)));
        assertThat(record.endedAt()).isEqualTo(MORNING.plus(Duration.ofMinutes(50)));
        assertThat(record.signedAt()).isEqualTo(MORNING.plus(Duration.ofHours(9)));
        assertThat(record.signedName()).isEqualTo("Teo Brandt");
    }

    @Test
    void answersWhatIsSentAgainAsTheFirstTimeAndDoesItOnce() {
        clock.advance(Duration.ofHours(2));
        Entry finding = entry(Entry.Kind.FINDING, unit.id(), Map.of("what", "Cord jacket split", "severity", "4"));
        List<Entry> day = List.of(signing(), hours("412.6"), finding);
        for (Entry entry : day) {
            Delivered first = offline.deliver(entry, teo);
            assertThat(first.outcome()).isEqualTo(Outcome.DONE);
            assertThat(offline.deliver(entry, teo)).isEqualTo(first);
            assertThat(offline.deliver(entry, teo)).isEqualTo(first);
        }
        assertThat(care.recordsOf(unit.id())).hasSize(1);
        assertThat(readings.log(unit.id(), MeterKind.RUN_HOURS).lines())
                .filteredOn(line -> line.readingId() != null)
                .hasSize(1);
        assertThat(findings.findingsOf(unit.id())).hasSize(1);
        assertThat(findings.findingsOf(unit.id()).get(0).openedAt())
                .as("when it was found, not when it came")
                .isEqualTo(finding.byServer(finding.doneAt(), clock.instant()))
                .isBefore(clock.instant().minus(Duration.ofMinutes(30)));
        assertThat(count("delivery")).isEqualTo(3);
    }

    @Test
    void doesItOnceHoweverManySendItAtOnce() throws Exception {
        clock.advance(Duration.ofHours(2));
        for (Entry entry : List.of(
                signing(),
                entry(Entry.Kind.FINDING, unit.id(), Map.of("what", "Seal weeps", "severity", "2")),
                hours("7.5"))) {
            int many = 6;
            CyclicBarrier start = new CyclicBarrier(many);
            ExecutorService phones = Executors.newFixedThreadPool(many);
            List<Future<Delivered>> answers = IntStream.range(0, many)
                    .mapToObj(n -> phones.submit(() -> {
                        start.await();
                        return offline.deliver(entry, teo);
                    }))
                    .toList();
            for (Future<Delivered> answer : answers) {
                assertThat(answer.get()).isEqualTo(answers.get(0).get());
                assertThat(answer.get().outcome()).isEqualTo(Outcome.DONE);
            }
            phones.shutdown();
        }
        assertThat(care.recordsOf(unit.id())).hasSize(1);
        assertThat(findings.findingsOf(unit.id())).hasSize(1);
        assertThat(readings.log(unit.id(), MeterKind.RUN_HOURS).lines()).hasSize(1);
        assertThat(count("delivery")).isEqualTo(3);
    }

    @Test
    void refusesWhatWouldBeRefusedOnlineAndTakesItOnceItIsPutRight() {
        clock.advance(Duration.ofHours(2));
        Entry wrong = hours("12,5");
        Delivered refused = offline.deliver(wrong, teo);
        assertThat(refused.outcome()).isEqualTo(Outcome.REFUSED);
        assertThat(refused.wrongs()).extracting(each -> each.field()).containsExactly("value");
        assertThat(count("delivery")).as("nothing is kept of it").isZero();

        Entry right = new Entry(
                wrong.key(),
                wrong.order(),
                wrong.person(),
                wrong.kind(),
                wrong.target(),
                wrong.title(),
                wrong.doneAt(),
                wrong.begunAt(),
                wrong.offsetMs(),
                wrong.known(),
                Map.of("kind", "RUN_HOURS", "value", "12.5"));
        assertThat(offline.deliver(right, teo).outcome()).isEqualTo(Outcome.DONE);

        Entry gone = entry(Entry.Kind.TASK, 999_999, Map.of("version", "0"));
        assertThat(offline.deliver(gone, teo).outcome()).isEqualTo(Outcome.REFUSED);
        Entry unticked = signing();
        unticked.fields()
                .remove("line[c"
                        + care.worksheet(opening.id())
                                .checklist()
                                .lines()
                                .get(0)
                                .id() + "].answer");
        assertThat(offline.deliver(unticked, teo).wrongs())
                .extracting(each -> each.code())
                .contains("care.line.safetyFirst");
        assertThat(care.recordsOf(unit.id())).isEmpty();
    }

    @Test
    void takesAFlowTestAsItsPageWould() {
        clock.advance(Duration.ofHours(2));
        Entry test = entry(
                Entry.Kind.FLOW_TEST,
                unit.id(),
                Map.of(
                        "by.method",
                        "TIMED_CONTAINER",
                        "container",
                        "60 L",
                        "lap1",
                        "38.1",
                        "lap2",
                        "38.3",
                        "lap3",
                        "38.0",
                        "lift",
                        "3 m",
                        "pieces[0].piece",
                        "SMOOTH_HOSE",
                        "pieces[0].bore",
                        "38 mm",
                        "pieces[0].length",
                        "10 m"));
        Delivered delivered = offline.deliver(test, teo);
        assertThat(delivered.wrongs()).isEmpty();
        assertThat(readings.flowTests(unit.id())).hasSize(1);
        assertThat(readings.flowTests(unit.id()).get(0).facts().at()).isEqualTo(MORNING.plus(Duration.ofMinutes(50)));
        assertThat(readings.flowTests(unit.id()).get(0).facts().pieces()).hasSize(1);
    }

    @Test
    void keepsEachEntryItsWritersOwn() {
        Entry entry = signing();
        assertThatThrownBy(() -> offline.deliver(entry, ilse)).isInstanceOf(NotAllowed.class);
        assertThat(count("delivery")).isZero();
        assertThat(offline.deliver(entry, teo).outcome()).isEqualTo(Outcome.DONE);
    }

    @Test
    void keepsBothWhenSomethingElseHappenedMeanwhile() {
        Entry signing = signing();
        Entry reading = hours("100");
        Worksheet sheet = care.worksheet(opening.id());
        care.sign(opening.id(), SignOff.of(opening.version(), CareYard.allPass(sheet, ilse)), ilse);
        clock.advance(Duration.ofHours(1));
        readings.recordReading(
                ReadingDraft.of(unit.id(), MeterKind.RUN_HOURS, MORNING.plusSeconds(60), new BigDecimal("150")), ilse);

        Delivered first = offline.deliver(signing, teo);
        assertThat(first.outcome()).isEqualTo(Outcome.CONFLICT);
        assertThat(offline.deliver(signing, teo)).isEqualTo(first);
        assertThat(offline.deliver(reading, teo).outcome()).isEqualTo(Outcome.CONFLICT);
        assertThat(jdbc.sql("select why from conflict order by id")
                        .query(String.class)
                        .list())
                .containsExactly("SIGNED", "METER");
        assertThat(care.recordsOf(unit.id()))
                .extracting(ServiceRecord::signedName)
                .containsExactly("Ilse Marrow");
    }

    @Test
    void tellsWhatHappenedToTheTaskOrTheUnit() {
        Entry changed = signing();
        Worksheet sheet = care.worksheet(opening.id());
        care.saveAnswers(
                opening.id(), opening.version(), CareYard.allPass(sheet, ilse).subList(0, 2), ilse);
        assertThat(offline.deliver(changed, teo).outcome()).isEqualTo(Outcome.CONFLICT);

        Entry seen = entry(Entry.Kind.FINDING, unit.id(), Map.of("what", "Scrapes", "severity", "1"));
        clock.advance(Duration.ofHours(2));
        yard.move(unit, yard.site("Dyer Court", CareYard.CHICAGO).id());
        assertThat(offline.deliver(seen, teo).outcome())
                .as("moved before it was done")
                .isEqualTo(Outcome.CONFLICT);
        Entry withdrawn = new Entry(
                UUID.randomUUID(),
                2,
                teo.id(),
                Entry.Kind.TASK,
                opening.id(),
                "",
                MORNING,
                null,
                0,
                seen.known(),
                changed.fields());
        offline.deliver(withdrawn, teo);
        assertThat(jdbc.sql("select why from conflict order by id")
                        .query(String.class)
                        .list()
                        .subList(0, 2))
                .containsExactly("CHANGED", "MOVED");
        assertThat(count("conflict")).isEqualTo(3);
    }

    private long conflictOf(Entry entry) {
        String link = String.valueOf(offline.deliver(entry, teo).link());
        assertThat(link).startsWith("/offline/conflicts/");
        return Long.parseLong(link.substring(link.lastIndexOf('/') + 1));
    }

    /** Ilse signs what Teo is signing; he reads in US units, she in SI. */
    private long signedByBoth() {
        Worksheet sheet = care.worksheet(opening.id());
        Answer bad =
                Answer.of(CareYard.line(sheet, "Is the strainer").id(), "NO").found("Torn at the rim", 2);
        Entry mine =
                entry(Entry.Kind.TASK, opening.id(), fields(sheet, CareYard.with(CareYard.allPass(sheet, teo), bad)));
        care.sign(opening.id(), SignOff.of(opening.version(), CareYard.allPass(sheet, ilse)), ilse);
        clock.advance(Duration.ofHours(1));
        return conflictOf(mine);
    }

    @Test
    void showsBothSidesAndAddsOneAsACorrectionOfTheOther() {
        long id = signedByBoth();
        Pages pages = Pages.signedIn(mvc, "ilse", "river at thaw");
        assertThat(pages.open("/offline/conflicts").text()).contains("Opening 2026, BF-04", "Teo Brandt");
        Pages.Page page = pages.open("/offline/conflicts/" + id);
        assertThat(page.text())
                .contains(
                        "Somebody else signed this task meanwhile",
                        "Ilse Marrow signed it",
                        "Torn at the rim",
                        "Is the strainer");
        assertThat(pages.submit("/offline/conflicts/" + id, "how", "", "why", "")
                        .text())
                .contains("Choose what shall");
        Pages.Page unsaid = pages.submit("/offline/conflicts/" + id, "how", "ADD", "why", " ");
        assertThat(unsaid.status()).isEqualTo(422);
        assertThat(unsaid.wrong("why")).contains("Say why");

        assertThat(pages.submit("/offline/conflicts/" + id, "how", "ADD", "why", "Teo looked closer")
                        .status())
                .isEqualTo(302);
        List<ServiceRecord> records = care.recordsOf(unit.id());
        assertThat(records).hasSize(2);
        assertThat(records.get(1).correctsId()).isEqualTo(records.get(0).id());
        assertThat(records.get(1).correctionWhy()).isEqualTo("Teo looked closer");
        assertThat(findings.findingsOf(unit.id())).extracting(Finding::what).containsExactly("Torn at the rim");
        assertThat(pages.submit("/offline/conflicts/" + id, "how", "KEEP").status())
                .as("settled once")
                .isEqualTo(409);
        assertThat(pages.open("/offline/conflicts/" + id).text()).contains("It was added", "Torn at the rim");
    }

    @Test
    void keepsWhatEachLineWasMeasuredWithFromThePhoneToTheCorrection() {
        Worksheet sheet = care.worksheet(opening.id());
        Map<String, String> typed = fields(sheet, CareYard.allPass(sheet, teo));
        typed.put("instrument", "Plug-in meter 1");
        typed.put("line[c" + CareYard.line(sheet, "Gap between").id() + "].instrument", "Feeler 4");
        Entry mine = entry(Entry.Kind.TASK, opening.id(), typed);
        care.sign(opening.id(), SignOff.of(opening.version(), CareYard.allPass(sheet, ilse)), ilse);
        clock.advance(Duration.ofHours(1));
        long id = conflictOf(mine);
        assertThat(Pages.signedIn(mvc, "ilse", "river at thaw")
                        .open("/offline/conflicts/" + id)
                        .text())
                .contains("(Plug-in meter 1)", "(Feeler 4)", "(Tester 3)");
        offline.settle(id, Conflict.How.ADD, "Teo measured too", ilse);
        String[] lines = {"Gap between", "Running amps", "Earth continuity"};
        assertThat(instruments(1, lines)).containsExactly("Feeler 4", "Plug-in meter 1", "Tester 3");
        assertThat(care.chainHolds(unit.id())).isTrue();
    }

    @Test
    void signsFromThePhoneWithTheInstrumentOfEachLine() {
        Worksheet sheet = care.worksheet(opening.id());
        Map<String, String> typed = fields(sheet, CareYard.allPass(sheet, teo));
        typed.put("instrument", "Plug-in meter 1");
        typed.put("line[c" + CareYard.line(sheet, "Gap between").id() + "].instrument", "Feeler 4");
        clock.advance(Duration.ofHours(1));
        assertThat(offline.deliver(entry(Entry.Kind.TASK, opening.id(), typed), teo)
                        .outcome())
                .isEqualTo(Outcome.DONE);
        assertThat(instruments(0, "Gap between", "Running amps")).containsExactly("Feeler 4", "Plug-in meter 1");
        assertThat(taken.tasks().stream().flatMap(task -> task.lines().stream()))
                .anyMatch(Bundle.LineRow::asksInstrument);
    }

    @Test
    void keepsWhatStandsOrThrowsAwayWithAReasonAndTellsTheTrail() {
        long id = signedByBoth();
        Pages pages = Pages.signedIn(mvc, "teo", "mud on boots");
        Pages.Page page = pages.open("/offline/conflicts/" + id);
        assertThat(page.html().select("input[value=ADD]"))
                .as("he may not correct her record")
                .isEmpty();
        assertThat(page.text()).contains("for Ilse Marrow or an owner");
        assertThat(pages.submit("/offline/conflicts/" + id, "how", "ADD", "why", "all the same")
                        .status())
                .isEqualTo(422);
        assertThat(pages.submit("/offline/conflicts/" + id, "how", "KEEP").status())
                .isEqualTo(302);
        assertThat(jdbc.sql("select detail from audit_entry where action = 'delivery set aside'")
                        .query(String.class)
                        .single())
                .contains("Torn at the rim");
        assertThat(care.recordsOf(unit.id())).hasSize(1);
        Pages jonah = Pages.signedIn(mvc, yard.jonah().signInName(), "new to this work");
        assertThat(jonah.open("/offline/conflicts/" + id).status())
                .as("another's")
                .isEqualTo(403);
        assertThat(jonah.open("/offline/conflicts").text()).contains("Nothing waits");
    }

    @Test
    void writesAReadingInPlaceOfWhatWasReadMeanwhile() {
        Entry reading = hours("100");
        clock.advance(Duration.ofHours(1));
        readings.recordReading(
                ReadingDraft.of(unit.id(), MeterKind.RUN_HOURS, MORNING.plusSeconds(60), new BigDecimal("150")), ilse);
        long id = conflictOf(reading);
        assertThat(Pages.signedIn(mvc, "teo", "mud on boots")
                        .open("/offline/conflicts/" + id)
                        .text())
                .contains("Read on the meter meanwhile", "150", "100");
        offline.settle(id, Conflict.How.ADD, "She read the starts", teo);
        MeterLog.Line last = readings.log(unit.id(), MeterKind.RUN_HOURS).last();
        assertThat(last.value()).isEqualByComparingTo("100");
        assertThat(last.at()).isEqualTo(MORNING.plus(Duration.ofMinutes(50)));
    }

    @Test
    void putsAnswersIntoATaskThatSomebodyElseBegan() {
        Entry mine = signing();
        Worksheet sheet = care.worksheet(opening.id());
        care.saveAnswers(
                opening.id(), opening.version(), CareYard.allPass(sheet, ilse).subList(0, 2), ilse);
        clock.advance(Duration.ofHours(1));
        offline.settle(conflictOf(mine), Conflict.How.ADD, "I did all of it", teo);
        Worksheet now = care.worksheet(opening.id());
        assertThat(now.saved()).hasSameSizeAs(CareYard.allPass(sheet, teo));
        assertThat(now.task().open()).as("signed on its own page").isTrue();
    }
}
