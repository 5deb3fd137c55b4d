package freshet.care;

import static freshet.care.CareYard.allPass;
import static freshet.care.CareYard.line;
import static freshet.care.CareYard.with;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.checklists.CheckLine;
import freshet.checklists.Phase;
import freshet.checklists.Verdict;
import freshet.findings.Findings;
import freshet.people.NotAllowed;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import freshet.pumps.Unit;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;

@FreshetTest
class RecordTests {

    @Autowired
    Care care;

    @Autowired
    Findings findings;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    @Autowired
    JdbcClient database;

    Person ilse;
    Person teo;
    Unit unit;
    Worksheet sheet;
    long record;

    @BeforeEach
    void signedByTeo() {
        clock.set("2026-03-14T14:00:00Z");
        ilse = yard.ilse();
        teo = yard.teo();
        unit = yard.unit("BF-04");
        Task opening = care.tasksOf(unit.id()).stream()
                .filter(task -> task.phase() == Phase.OPENING)
                .findFirst()
                .orElseThrow();
        sheet = care.worksheet(opening.id());
        record = care.sign(opening.id(), SignOff.of(0, allPass(sheet, teo)), teo);
        clock.advance(Duration.ofDays(1));
    }

    private Correction amps(String amps, String why) {
        CheckLine line = line(sheet, "Running amps");
        return new Correction(with(allPass(sheet, teo), Answer.of(line.id(), amps)), why, null);
    }

    private RecordLine amps(long recordId) {
        return care.record(recordId).lines().stream()
                .filter(line -> line.question().startsWith("Running amps"))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void isRefusedEveryChangeByTheDatabase() {
        for (String change : List.of(
                "update service_record set signed_name = 'Somebody' where id = ?",
                "delete from service_record where id = ?",
                "update record_line set verdict = 'PASS' where record_id = ?",
                "delete from record_line where record_id = ?")) {
            assertThatThrownBy(() -> database.sql(change).param(record).update())
                    .as(change)
                    .isInstanceOf(DataIntegrityViolationException.class)
                    .hasMessageContaining("never changed");
        }
    }

    @Test
    void isCorrectedByANewRecordThatNamesIt() {
        ServiceRecord before = care.record(record);
        long correction = care.correct(record, amps("5.0", "Read the wrong meter"), teo);

        assertThat(amps(correction).number()).isEqualTo(5.0);
        assertThat(amps(correction).verdict()).isEqualTo(Verdict.WATCH);
        assertThat(care.record(correction).correctsId()).isEqualTo(record);
        assertThat(care.record(correction).correctionWhy()).isEqualTo("Read the wrong meter");
        assertThat(care.record(correction).endedAt()).isEqualTo(before.endedAt());
        assertThat(care.record(record))
                .usingRecursiveComparison()
                .ignoringFields("correctedById")
                .isEqualTo(before);
        assertThat(care.record(record).stands()).isFalse();
        assertThat(care.task(before.taskId()).recordId()).isEqualTo(correction);
    }

    @Test
    void isCorrectedOnlyAtItsLatestAndOnlyWithAReasonAndAChange() {
        assertThat(catchThrowableOfType(Refused.class, () -> care.correct(record, amps("5.0", " "), teo))
                        .wrongs())
                .extracting(Refused.Wrong::code)
                .containsExactly("care.correction.why.missing");
        assertThat(catchThrowableOfType(Refused.class, () -> care.correct(record, amps("4.5 A", "None"), teo))
                        .wrongs())
                .extracting(Refused.Wrong::code)
                .containsExactly("care.correction.same");
        long correction = care.correct(record, amps("5.0", "Read the wrong meter"), teo);
        assertThatThrownBy(() -> care.correct(record, amps("4.9", "Again"), teo))
                .isInstanceOf(Stale.class);
        care.correct(correction, amps("4.9", "Again"), teo);
        assertThat(care.recordsOf(unit.id())).hasSize(3);
    }

    @Test
    void isCorrectedByItsSignerOrAnOwnerOnly() {
        Person jonah = yard.jonah();
        assertThatThrownBy(() -> care.correct(record, amps("5.0", "Not mine"), jonah))
                .isInstanceOf(NotAllowed.class);
        care.correct(record, amps("5.0", "Read the wrong meter"), teo);
    }

    @Test
    void keepsMeasurementsOfACompetentPersonWhenAnotherCorrects() {
        Unit other = yard.unit("BF-05");
        Task opening = care.tasksOf(other.id()).stream()
                .filter(task -> task.phase() == Phase.OPENING)
                .findFirst()
                .orElseThrow();
        Worksheet full = care.worksheet(opening.id());
        long signed = care.sign(opening.id(), SignOff.of(0, allPass(full, ilse)), ilse);
        Person freya = yard.ownerWithoutCompetence();

        CheckLine amps = line(full, "Running amps");
        List<Answer> answers = with(allPass(full, freya), Answer.of(amps.id(), "5.0"));
        long correction = care.correct(signed, new Correction(answers, "Typed wrong", null), freya);

        RecordLine earth = care.record(correction)
                .lines()
                .get(line(full, "Earth continuity").ordinal() - 1);
        assertThat(earth.answer()).isEqualTo("0.2");
        assertThat(earth.verdict()).isEqualTo(Verdict.PASS);
    }

    @Test
    void keepsOpenWhatWasLeftToACompetentPersonWhoeverCorrects() {
        long correction = care.correct(record, amps("5.0", "Read the wrong meter"), ilse);
        assertThat(care.record(correction).lines())
                .filteredOn(line -> line.section().startsWith("By meter") && line.unit() != null)
                .hasSize(2)
                .allMatch(line -> line.verdict() == Verdict.LEFT);
    }

    @Test
    void makesAFindingWhereACorrectionFailsAnew() {
        CheckLine runs = line(sheet, "How does it run");
        List<Answer> weak = with(
                allPass(sheet, teo),
                new Answer(runs.id(), "Weak, grinding or leaking", null, "Leaks at the gland", null));
        long correction = care.correct(record, new Correction(weak, "Wrong box ticked", null), teo);
        assertThat(findings.findingsOfRecord(correction))
                .singleElement()
                .satisfies(finding -> assertThat(finding.severity()).isEqualTo(3));

        // the failure is known; correcting something else asks for no second finding
        CheckLine amps = line(sheet, "Running amps");
        List<Answer> further = with(
                with(allPass(sheet, teo), Answer.of(runs.id(), "Weak, grinding or leaking")),
                Answer.of(amps.id(), "4.7"));
        care.correct(correction, new Correction(further, "Amps typed wrong", null), teo);
        assertThat(findings.findingsOf(unit.id())).hasSize(1);
    }

    @Test
    void breaksItsChainWhenSomebodyTampers() {
        care.correct(record, amps("5.0", "Read the wrong meter"), teo);
        assertThat(care.chainHolds(unit.id())).isTrue();
        assertThat(care.recordsOf(unit.id()))
                .extracting(ServiceRecord::digest)
                .doesNotHaveDuplicates()
                .allMatch(digest -> digest.matches("[0-9a-f]{64}"));

        tamper("update record_line set answer = '4.4 A' where record_id = ? and answer = '4.5 A'");
        assertThat(care.chainHolds(unit.id())).isFalse();
        tamper("update record_line set answer = '4.5 A' where record_id = ? and answer = '4.4 A'");
        assertThat(care.chainHolds(unit.id())).isTrue();
        tamper("update service_record set signed_name = 'Somebody' where id = ?");
        assertThat(care.chainHolds(unit.id())).isFalse();
    }

    private void tamper(String change) {
        List<String> tables = List.of("record_line", "service_record");
        tables.forEach(table ->
                database.sql("alter table " + table + " disable trigger user").update());
        try {
            assertThat(database.sql(change).param(record).update()).isOne();
        } finally {
            tables.forEach(table -> database.sql("alter table " + table + " enable trigger user")
                    .update());
        }
    }
}
