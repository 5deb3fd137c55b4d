package freshet.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.TestClock;
import freshet.care.CareYard;
import freshet.checklists.CheckLine;
import freshet.checklists.Checklists;
import freshet.fleet.Fleet;
import freshet.fleet.Reason;
import freshet.fleet.ReasonKind;
import freshet.fleet.Word;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import freshet.pumps.Unit;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;

/** What is said of a finding after it was written: how it failed, how bad it is, and that its work is put off. */
@FreshetTest
class JudgingTests {

    private static final LocalDate TODAY = LocalDate.of(2026, 3, 14);

    @Autowired
    MockMvc mvc;

    @Autowired
    Findings findings;

    @Autowired
    Fleet fleet;

    @Autowired
    Checklists checklists;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    @Autowired
    JdbcClient database;

    Person ilse;
    Person teo;
    Unit unit;

    @BeforeEach
    void oneUnit() {
        clock.set("2026-03-14T14:00:00Z");
        ilse = yard.ilse();
        teo = yard.teo();
        unit = yard.unit("OS-05");
    }

    private long finding(int severity) {
        return findings.write(FindingDraft.about(unit.id(), severity, "Weeps at the seal"), teo);
    }

    private static Judging severity(int severity, @Nullable String why) {
        return new Judging(null, null, severity, why);
    }

    private static WaiverDraft until(LocalDate day) {
        return new WaiverDraft("The customer declined the repair", "Mrs. Ferrow", day);
    }

    private Reason reason() {
        return fleet.readiness(unit.id()).reasons().stream()
                .filter(each -> each.kind() == ReasonKind.FINDING)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void keepsTheModeByItsCodeAndTellsNotSaidFromNotKnown() {
        long said = findings.write(
                FindingDraft.about(unit.id(), 2, "Milky oil").failed(FailureMode.WATER_IN_OIL, Cause.UNKNOWN), teo);
        assertThat(findings.finding(said).mode()).isEqualTo(FailureMode.WATER_IN_OIL);
        assertThat(findings.finding(said).cause()).isEqualTo(Cause.UNKNOWN);
        assertThat(database.sql("select mode from finding where id = ?")
                        .param(said)
                        .query(String.class)
                        .single())
                .isEqualTo("INL");
        long unsaid = finding(1);
        assertThat(findings.finding(unsaid).mode()).isNull();
        for (FailureMode mode : FailureMode.values()) {
            findings.judge(unsaid, findings.finding(unsaid).version(), new Judging(mode, Cause.AGE, 1, null), teo);
            assertThat(findings.finding(unsaid).mode()).isEqualTo(mode);
        }
        assertThat(Arrays.stream(FailureMode.values()).map(FailureMode::code)).doesNotHaveDuplicates();
        assertThat(findings.severitiesOf(unsaid)).isEmpty();
    }

    @Test
    void changesASeverityWithAReasonAndKeepsTheOldOne() {
        long id = finding(2);
        assertThatThrownBy(() -> findings.judge(id, 0, severity(3, null), teo)).isInstanceOf(Refused.class);
        findings.judge(id, 0, severity(3, "Runs down the cord"), teo);
        assertThat(reason().word()).isEqualTo(Word.NOT_READY);
        assertThatThrownBy(() -> findings.judge(id, 0, severity(1, "Stale"), ilse))
                .isInstanceOf(Stale.class);
        // only an owner lets a unit back to use so
        assertThatThrownBy(() -> findings.judge(id, 1, severity(1, "Not so bad"), teo))
                .isInstanceOf(Refused.class);
        findings.judge(id, 1, severity(1, "It was rain"), ilse);
        assertThat(reason().word()).isEqualTo(Word.READY);
        assertThat(findings.severitiesOf(id))
                .extracting(change -> change.was() + " " + change.became() + " " + change.why())
                .containsExactly("3 1 It was rain", "2 3 Runs down the cord");
        assertThatThrownBy(() ->
                        database.sql("update finding_severity set why = 'x'").update())
                .isInstanceOf(DataAccessException.class);
        assertThatThrownBy(() -> findings.judge(id, 2, severity(5, "x"), ilse)).isInstanceOf(Refused.class);
    }

    @Test
    void neverGoesBelowWhatTheCheckHolds() {
        CheckLine held = checklists.checklists().stream()
                .flatMap(checklist -> checklist.lines().stream())
                .filter(line -> line.heldSeverity() != null && line.competence() == null)
                .findFirst()
                .orElseThrow();
        long id = findings.write(new FindingDraft(unit.id(), null, held.id(), 4, "Cord cut"), ilse);
        assertThatThrownBy(() -> findings.judge(id, 0, severity(3, "I taped it"), ilse))
                .isInstanceOf(Refused.class);
        assertThat(findings.finding(id).severity())
                .isEqualTo(Objects.requireNonNull(held.heldSeverity()).intValue());
    }

    @Test
    void putsWorkOffToADayAndTakesItUpAgainAfterwards() {
        long id = finding(2);
        findings.putOff(id, 0, until(TODAY.plusDays(30)), teo);
        Finding finding = findings.finding(id);
        Waiver runs = Objects.requireNonNull(finding.putOffOn(TODAY.plusDays(30)));
        assertThat(runs.by()).isEqualTo("Mrs. Ferrow");
        assertThat(runs.putOffByName()).isEqualTo("Teo Brandt");
        assertThat(finding.putOffOn(TODAY.plusDays(31))).isNull();
        // it counts as before, and says so
        assertThat(reason().word()).isEqualTo(Word.LIMITS);
        assertThat(reason().putOff()).isEqualTo(new Reason.PutOff(TODAY.plusDays(30), "Mrs. Ferrow"));
        clock.set("2026-04-14T14:00:00Z");
        assertThat(reason().putOff()).isNull();
        assertThatThrownBy(() -> database.sql("delete from waiver").update()).isInstanceOf(DataAccessException.class);
    }

    @Test
    void refusesWaiversWithoutADayOrReasonTooFarOrOfADanger() {
        long id = finding(2);
        assertThatThrownBy(() -> findings.putOff(id, 0, new WaiverDraft("why", null, null), ilse))
                .hasMessageContaining("until.missing");
        assertThatThrownBy(() -> findings.putOff(id, 0, new WaiverDraft(null, null, TODAY), ilse))
                .hasMessageContaining("why.missing");
        assertThatThrownBy(() -> findings.putOff(id, 0, until(TODAY.minusDays(1)), ilse))
                .hasMessageContaining("until.past");
        assertThatThrownBy(
                        () -> findings.putOff(id, 0, until(TODAY.plusMonths(12).plusDays(1)), ilse))
                .hasMessageContaining("until.far");
        findings.putOff(id, 0, until(TODAY.plusMonths(12)), ilse);
        assertThatThrownBy(() -> findings.putOff(id, 0, until(TODAY), ilse)).isInstanceOf(Stale.class);
        findings.putOff(id, 1, until(TODAY), ilse);
        assertThat(findings.waiversOf(id)).hasSize(2);

        long danger = finding(4);
        assertThatThrownBy(() -> findings.putOff(danger, 0, until(TODAY), ilse)).hasMessageContaining("putOff.danger");
        long stops = finding(3);
        assertThatThrownBy(() -> findings.putOff(stops, 0, until(TODAY), teo)).hasMessageContaining("putOff.owner");
        findings.putOff(stops, 0, until(TODAY.plusDays(9)), ilse);
        // what got worse than it was then is no longer put off
        findings.judge(stops, 1, severity(4, "Water in the winding"), teo);
        assertThat(findings.finding(stops).putOffOn(TODAY)).isNull();
        findings.close(stops, 2, "New winding", ilse);
        assertThatThrownBy(() -> findings.putOff(stops, 3, until(TODAY), ilse)).isInstanceOf(RuntimeException.class);
    }

    @Test
    void saysAllThisOnItsPages() {
        long id = finding(3);
        Pages teos = Pages.signedIn(mvc, "teo", "mud on boots");
        Pages ilses = Pages.signedIn(mvc, "ilse", "river at thaw");
        String judge = "/findings/" + id + "/judge";
        String putOff = "/findings/" + id + "/put-off";
        assertThat(teos.open("/findings/" + id).text()).contains("Say how, from what, how bad", "Put it off");
        Page refused = teos.submit(judge, "version", "0", "severity", "4", "mode", "NOISY", "cause", "SAND");
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.wrong("why")).isEqualTo("Say why.");
        assertThat(refused.html().select("#mode option[selected]").val()).isEqualTo("NOISY");
        assertThat(teos.submit(judge, "version", "0", "severity", "3", "mode", "NOISY", "cause", "UNKNOWN")
                        .status())
                .isEqualTo(302);
        assertThat(teos.open("/findings/" + id).text(".finding"))
                .contains("It failed so: noisy", "It came from: not known");
        assertThat(teos.submit(judge, "version", "0", "severity", "3").status()).isEqualTo(409);

        assertThat(teos.open(putOff).text()).contains("Only an owner may put off what stops use.");
        assertThat(teos.submit(putOff, "version", "1", "why", "Later", "until", "2026-04-01")
                        .status())
                .isEqualTo(422);
        Page past = ilses.submit(putOff, "version", "1", "why", "Later", "until", "2026-03-13");
        assertThat(past.wrong("until")).contains("This day is over");
        assertThat(past.html().getElementById("why").text()).isEqualTo("Later");
        assertThat(ilses.submit(putOff, "version", "1", "why", "Later", "until", "no day")
                        .status())
                .isEqualTo(422);
        assertThat(ilses.submit(
                                putOff,
                                "version",
                                "1",
                                "why",
                                "Declined",
                                "until",
                                "2026-04-01",
                                "decidedBy",
                                "Mr. Low")
                        .status())
                .isEqualTo(302);
        assertThat(ilses.open("/findings/" + id).text()).contains("Put off until 1 Apr by Mr. Low: Declined");
        assertThat(ilses.open("/pumps/" + unit.id()).text(".reasons"))
                .contains("Severity 3: Weeps at the seal. Put off until 1 Apr by Mr. Low");
        assertThat(ilses.submit(putOff, "version", "1", "why", "Again", "until", "2026-04-02")
                        .status())
                .isEqualTo(409);
        assertThat(ilses.open("/findings/999999/judge").status()).isEqualTo(404);
    }
}
