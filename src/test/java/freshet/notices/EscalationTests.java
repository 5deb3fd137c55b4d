package freshet.notices;

import static org.assertj.core.api.Assertions.assertThat;

import com.icegreen.greenmail.junit5.GreenMailExtension;
import com.icegreen.greenmail.util.ServerSetupTest;
import freshet.FreshetTest;
import freshet.TestClock;
import freshet.care.CareYard;
import freshet.findings.FindingDraft;
import freshet.findings.Findings;
import freshet.findings.Judging;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Role;
import freshet.pumps.PumpKind;
import freshet.pumps.Unit;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.support.TransactionTemplate;

@FreshetTest
class EscalationTests {

    /** Noon at Brackenfold, eight days after its opening was over. */
    private static final Instant NOON = Instant.parse("2026-03-28T17:00:00Z");

    private static final Instant NIGHT = Instant.parse("2026-03-28T07:30:00Z");
    private static final LocalDate THIS_YEAR = LocalDate.of(2026, 1, 1);

    @RegisterExtension
    static final GreenMailExtension POST = new GreenMailExtension(ServerSetupTest.SMTP.dynamicPort());

    @Autowired
    Notices notices;

    @Autowired
    MailYard mail;

    @Autowired
    CareYard yard;

    @Autowired
    Findings findings;

    @Autowired
    People people;

    @Autowired
    TestClock clock;

    @Autowired
    TransactionTemplate transaction;

    Person ilse;

    @BeforeEach
    void anOwnerWithAnAddress() {
        clock.set(NOON.minus(Duration.ofDays(2)));
        ilse = yard.ilse();
        mail.reach(ilse, "ilse@ansel.example", POST);
    }

    private Unit unit(String tag) {
        return yard.unit(tag, PumpKind.UTILITY_SUBMERSIBLE, yard.brackenfold().id(), THIS_YEAR);
    }

    private void quietNight(boolean late, int days, boolean danger) {
        mail.want(
                ilse,
                new ChoicesDraft(
                        Rhythm.NONE,
                        DayOfWeek.MONDAY,
                        6,
                        LocalTime.of(22, 0),
                        LocalTime.of(6, 0),
                        true,
                        Set.of(),
                        late,
                        days,
                        danger));
    }

    private void awaitMails(int count) {
        MailYard.await(() -> POST.getReceivedMessages().length >= count
                && notices.mailbag(ilse).waiting() == 0);
    }

    @Test
    void tellsOwnersOfDangerAtOnceAndByNight() {
        Unit unit = unit("BF-03");
        quietNight(true, 7, true);
        Person second = people.addPerson("runa", "Runa Holt", "keys and cords", Role.OWNER, Set.of(), ilse);
        mail.reach(second, "runa@ansel.example", POST);
        Person teo = yard.teo();
        mail.reach(teo, "teo@ansel.example", POST);
        clock.set(NIGHT);

        findings.write(FindingDraft.about(unit.id(), 4, "Cord nicked to the core."), teo);
        awaitMails(2);

        assertThat(MailYard.arrived(POST))
                .extracting(MailYard.Arrived::to)
                .containsExactlyInAnyOrder("ilse@ansel.example", "runa@ansel.example");
        MailYard.Arrived danger = MailYard.arrived(POST).get(0);
        assertThat(danger.title()).isEqualTo("Stop: BF-03 at Brackenfold Pump Yard has a finding of severity 4");
        assertThat(danger.text().replaceAll("http://\\S+", "<link>")).isEqualTo("""
                BF-03 at Brackenfold Pump Yard
                ------------------------------
                Severity 4 means stop, danger. Do not use the pump, plug it in or hand it out until the finding is closed. \
                Unplug or lock out before hands go near. Local code and licensed practice come first.
                Written by Teo Brandt, 28 Mar 2026, 02:30.

                The finding
                  BF-03  Cord nicked to the core.
                    <link>

                You get this at any hour because you are an owner and chose to hear of danger at once.
                Open Freshet:
                <link>
                Choose what you get:
                <link>
                Stop mail about danger, without signing in:
                <link>
                """);
        mail.work();
        assertThat(MailYard.arrived(POST))
                .filteredOn(each -> each.title().startsWith("Stop:"))
                .as("once")
                .hasSize(2);
    }

    @Test
    void tellsNobodyOfWhatIsNoDangerOrWasNeverWritten() {
        Unit unit = unit("BF-03");
        clock.set(NOON.minus(Duration.ofDays(1)));
        findings.write(FindingDraft.about(unit.id(), 3, "Float sticks."), ilse);
        transaction.executeWithoutResult(status -> {
            findings.write(FindingDraft.about(unit.id(), 4, "Cord nicked."), ilse);
            status.setRollbackOnly();
        });

        mail.work();

        assertThat(notices.mailbag(ilse).mails()).extracting(Mail::kind).doesNotContain(MailKind.DANGER);
        assertThat(MailYard.arrived(POST)).isEmpty();
    }

    @Test
    void tellsOfAFindingThatIsJudgedUpToADangerUnlessItIsJudgedDownBeforeMailCanGo() {
        Unit unit = unit("BF-03");
        long id = findings.write(FindingDraft.about(unit.id(), 3, "Cord scuffed."), ilse);
        judge(id, 4, "The core shows");
        awaitMails(1);
        assertThat(MailYard.only(POST).title()).startsWith("Stop: BF-03");
        // said once that day, and nothing when the danger is only described better
        judge(id, 4, null);
        mail.work();
        assertThat(MailYard.arrived(POST)).hasSize(1);

        long other = findings.write(FindingDraft.about(unit.id(), 2, "Plug warm."), ilse);
        POST.stop();
        judge(other, 4, "Burnt pin");
        MailYard.await(() -> notices.mailbag(ilse).mails().get(0).tries() == 1);
        judge(other, 3, "The pin of another pump");
        POST.start();
        mail.use(POST);
        clock.advance(Duration.ofMinutes(2));
        mail.work();
        assertThat(notices.mailbag(ilse).mails().get(0).state()).isEqualTo(MailState.NOTHING);
    }

    private void judge(long id, int severity, String why) {
        findings.judge(id, findings.finding(id).version(), new Judging(null, null, severity, why), ilse);
    }

    @Test
    void saysNothingOfADangerThatIsClosedBeforeMailCanGo() {
        Unit unit = unit("BF-03");
        POST.stop();
        long id = findings.write(FindingDraft.about(unit.id(), 4, "Cord nicked."), ilse);
        MailYard.await(() -> notices.mailbag(ilse).mails().get(0).tries() == 1);
        findings.close(id, findings.finding(id).version(), "New cord, earth measured", ilse);
        POST.start();
        mail.use(POST);
        clock.advance(Duration.ofMinutes(2));

        mail.work();

        assertThat(MailYard.arrived(POST)).isEmpty();
        assertThat(notices.mailbag(ilse).mails().get(0).state()).isEqualTo(MailState.NOTHING);
    }

    @Test
    void tellsOfLateWorkOnceAndTogether() {
        unit("BF-04");
        unit("BF-05");
        clock.set(NOON.minus(Duration.ofDays(1)));
        mail.work();
        assertThat(MailYard.arrived(POST))
                .as("seven days over is not more than seven")
                .isEmpty();

        clock.set(NOON);
        mail.work();
        MailYard.Arrived late = MailYard.only(POST);
        assertThat(late.title()).isEqualTo("2 tasks are more than 7 days late");
        assertThat(late.text())
                .contains("Overdue: 2", "BF-04  Opening 2026, 8 days over, was due Fri 20 Mar", "BF-05")
                .contains("Each task is told once.");

        clock.set(NOON.plus(Duration.ofDays(1)));
        mail.work();
        assertThat(MailYard.arrived(POST)).hasSize(1);
    }

    @Test
    void tellsWhatComesUpLaterThatDayOnTheNext() {
        unit("BF-04");
        clock.set(NOON);
        mail.work();
        unit("BF-05");
        clock.advance(Duration.ofHours(3));
        mail.work();
        assertThat(MailYard.arrived(POST)).as("never a second one a day").hasSize(1);

        clock.set(NOON.plus(Duration.ofDays(1)));
        mail.work();
        assertThat(MailYard.arrived(POST).get(1).title()).isEqualTo("One task is more than 7 days late");
        assertThat(MailYard.arrived(POST).get(1).text()).contains("BF-05").doesNotContain("BF-04");
    }

    @Test
    void letsLateWorkWaitForTheMorning() {
        unit("BF-04");
        quietNight(true, 7, true);
        clock.set(NIGHT);
        mail.work();
        assertThat(MailYard.arrived(POST)).isEmpty();

        clock.set(Instant.parse("2026-03-28T11:00:00Z"));
        mail.work();
        assertThat(MailYard.only(POST).title()).isEqualTo("One task is more than 7 days late");
    }

    @Test
    void tellsNoOwnerWhatThatOwnerDoesNotWant() {
        Unit unit = unit("BF-04");
        quietNight(false, 7, false);
        clock.set(NOON);

        mail.work();
        findings.write(FindingDraft.about(unit.id(), 4, "Cord nicked."), ilse);
        mail.work();

        assertThat(MailYard.arrived(POST)).isEmpty();
        assertThat(notices.mailbag(ilse).dangerReachesAnOwner()).isFalse();
    }

    @Test
    void waitsAsManyDaysAsTheOwnerDoes() {
        unit("BF-04");
        quietNight(true, 0, true);
        clock.set(Instant.parse("2026-03-20T17:00:00Z"));
        mail.work();
        assertThat(MailYard.arrived(POST)).as("the last day is not over").isEmpty();

        clock.set(Instant.parse("2026-03-21T11:00:00Z"));
        mail.work();
        assertThat(MailYard.only(POST).title()).isEqualTo("One task is more than 0 days late");
    }
}
