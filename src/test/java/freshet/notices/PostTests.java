package freshet.notices;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import com.icegreen.greenmail.junit5.GreenMailExtension;
import com.icegreen.greenmail.util.ServerSetupTest;
import freshet.FreshetTest;
import freshet.Pages;
import freshet.TestClock;
import freshet.care.CareYard;
import freshet.findings.FindingDraft;
import freshet.findings.Findings;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Role;
import freshet.pumps.PumpKind;
import freshet.pumps.Unit;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.hamcrest.Matchers;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.quartz.CronTrigger;
import org.quartz.JobKey;
import org.quartz.Scheduler;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.MessageSource;
import org.springframework.mail.javamail.JavaMailSenderImpl;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class PostTests {

    private static final Instant MONDAY = Instant.parse("2026-03-23T11:05:00Z");

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
    JavaMailSenderImpl sender;

    @Autowired
    MockMvc mvc;

    @Autowired
    Scheduler scheduler;

    @Autowired
    MessageSource messages;

    @Autowired
    TestClock clock;

    Person ilse;
    Unit unit;

    @BeforeEach
    void aDigestIsDueSoon() {
        clock.set(MONDAY.minus(Duration.ofHours(12)));
        ilse = yard.ilse();
        unit = yard.unit(
                "BF-04", PumpKind.UTILITY_SUBMERSIBLE, yard.brackenfold().id(), LocalDate.of(2026, 1, 1));
        mail.reach(ilse, "ilse@ansel.example", POST);
        mail.wantDaily(ilse);
        clock.set(MONDAY);
    }

    private Mail latest() {
        return notices.mailbag(ilse).mails().get(0);
    }

    private String mailPage() {
        return Pages.signedIn(mvc, "ilse", "river at thaw")
                .open("/notices/mail")
                .text()
                .replace('\u00a0', ' ');
    }

    @Test
    void triesAgainAfterGrowingPausesUntilTheServerIsBack() {
        POST.stop();
        mail.work();
        assertThat(latest().tries()).isEqualTo(1);
        assertThat(latest().trouble()).isEqualTo(Trouble.NO_ANSWER);
        assertThat(latest().notBefore()).isEqualTo(MONDAY.plus(Duration.ofMinutes(1)));
        assertThat(mailPage())
                .contains("One mail waits that the server did not take")
                .contains("Waits, next try 23 Mar 2026, 06:06 (tried once)")
                .contains("The mail server cannot be reached, or hung up. Look at its name and port")
                .doesNotContain("Exception", "Connection refused", "Couldn't connect");
        mail.work();
        assertThat(latest().tries()).as("not before its pause is over").isEqualTo(1);

        List<Duration> pauses = new ArrayList<>();
        for (int i = 0; i < 7; i++) {
            Instant now = latest().notBefore();
            clock.set(now);
            notices.sendAll();
            pauses.add(Duration.between(now, latest().notBefore()));
        }
        assertThat(pauses)
                .containsExactly(
                        Duration.ofMinutes(5),
                        Duration.ofMinutes(15),
                        Duration.ofHours(1),
                        Duration.ofHours(3),
                        Duration.ofHours(6),
                        Duration.ofHours(12),
                        Duration.ofHours(12));

        POST.start();
        mail.use(POST);
        clock.set(latest().notBefore());
        notices.sendAll();
        assertThat(MailYard.only(POST).title()).isEqualTo("1 overdue at Brackenfold Pump Yard");
        assertThat(mailPage())
                .contains("No mail waits")
                .contains("Sent 24 Mar 2026, 16:26 to ilse@ansel.example")
                .contains("1 overdue at Brackenfold Pump Yard");
    }

    @Test
    void saysPlainlyWhenNoServerIsSetUpAndPilesNothingUp() {
        sender.setHost(null);
        Pages pages = Pages.signedIn(mvc, "ilse", "river at thaw");
        for (int day = 0; day < 8; day++) {
            clock.set(MONDAY.plus(Duration.ofDays(day)));
            mail.work();
        }
        assertThat(notices.mailbag(ilse).waiting())
                .as("the digest of the day and late work")
                .isEqualTo(2);
        assertThat(pages.open("/notices").text()).contains("This install has no mail server, so no mail goes out.");
        assertThat(pages.open("/notices/mail").text())
                .contains("2 mails wait, and no mail server is set up", "sets spring.mail.host")
                .contains("Not sent: the next digest took its place", "Waits for a mail server");

        mail.use(POST);
        mail.work();
        assertThat(MailYard.arrived(POST))
                .extracting(MailYard.Arrived::title)
                .containsExactlyInAnyOrder("1 overdue at Brackenfold Pump Yard", "One task is more than 7 days late");
    }

    @Test
    void givesUpAfterFiveDaysAndTellsLateWorkAnew() {
        sender.setHost(null);
        notices.choose(ilse, notices.choices(ilse.id()).version(), withoutDigest());
        findings.write(FindingDraft.about(unit.id(), 4, "Cord nicked."), ilse);
        clock.set(MONDAY.plus(Duration.ofDays(8)));
        mail.work();
        assertThat(notices.mailbag(ilse).mails())
                .extracting(Mail::kind, Mail::state)
                .contains(
                        org.assertj.core.groups.Tuple.tuple(MailKind.DANGER, MailState.GIVEN_UP),
                        org.assertj.core.groups.Tuple.tuple(MailKind.OVERDUE, MailState.WAITING));

        clock.set(MONDAY.plus(Duration.ofDays(13).plusMinutes(10)));
        mail.work();
        assertThat(notices.mailbag(ilse).waiting()).isZero();
        mail.work();
        assertThat(latest().kind()).isEqualTo(MailKind.OVERDUE);
        assertThat(latest().waiting()).isTrue();
        assertThat(mailPage()).contains("Given up after five days");
    }

    private static ChoicesDraft withoutDigest() {
        return new ChoicesDraft(Rhythm.NONE, java.time.DayOfWeek.MONDAY, 6, null, null, true, Set.of(), true, 7, true);
    }

    @Test
    void saysInWordsWhatTheTroubleIs() {
        sender.setHost("no-such-host.invalid");
        mail.work();
        assertThat(latest().trouble()).isEqualTo(Trouble.NO_SUCH_HOST);
        assertThat(mailPage()).contains("No mail server of that name is known.");

        mail.use(POST);
        POST.setUser("keeper@ansel.example", "somebody", "right password");
        sender.setUsername("somebody");
        sender.setPassword("wrong");
        try {
            clock.set(latest().notBefore());
            notices.sendAll();
            assertThat(latest().trouble()).isEqualTo(Trouble.SIGN_IN_REFUSED);
            assertThat(mailPage()).contains("does not accept the name or password");
        } finally {
            sender.setUsername(null);
            sender.setPassword(null);
        }
    }

    @Test
    void sendsEachMailOnceThoughTwoSendAtOnce() throws Exception {
        int readers = 12;
        for (int i = 0; i < readers; i++) {
            Person reader =
                    people.addPerson("reader" + i, "Reader " + i, "mud on boots", Role.TECHNICIAN, Set.of(), ilse);
            mail.reach(reader, "reader" + i + "@ansel.example", POST);
            clock.set(MONDAY.minus(Duration.ofHours(1)));
            mail.wantDaily(reader);
            clock.set(MONDAY);
        }
        ExecutorService nodes = Executors.newFixedThreadPool(4);
        CountDownLatch go = new CountDownLatch(1);
        List<Future<?>> work = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            work.add(nodes.submit(() -> {
                go.await();
                mail.work();
                return null;
            }));
        }
        go.countDown();
        for (Future<?> each : work) {
            each.get();
        }
        nodes.shutdown();

        assertThat(MailYard.arrived(POST))
                .extracting(MailYard.Arrived::to)
                .doesNotHaveDuplicates()
                .hasSize(readers + 1);
        assertThat(notices.mailbag(ilse).waiting()).isZero();
    }

    @Test
    void stopsOneKindOfMailByItsLinkWithoutSigningIn() throws Exception {
        mail.work();
        String stop = "/notices/stop/" + MailYard.only(POST).stopSecret();

        mvc.perform(get(stop))
                .andExpect(status().isOk())
                .andExpect(content().string(Matchers.containsString("Stop the digest for Ilse Marrow?")));
        assertThat(notices.choices(ilse.id()).rhythm())
                .as("opening it changes nothing")
                .isEqualTo(Rhythm.DAILY);
        // as a mail program sends it (RFC 8058): no cookies, no token
        mvc.perform(post(stop).param("List-Unsubscribe", "One-Click"))
                .andExpect(status().isOk())
                .andExpect(content().string(Matchers.containsString("No digest comes to Ilse Marrow any more")));

        assertThat(notices.choices(ilse.id()).rhythm()).isEqualTo(Rhythm.NONE);
        assertThat(notices.choices(ilse.id()).tellDanger()).as("only this kind").isTrue();
        clock.set(MONDAY.plus(Duration.ofDays(1)));
        mail.work();
        assertThat(MailYard.arrived(POST)).hasSize(1);
        mvc.perform(post(stop)).andExpect(status().isOk());
        mvc.perform(get("/notices/stop/" + "x".repeat(43))).andExpect(status().isNotFound());
        mvc.perform(post("/notices/stop/" + "x".repeat(43))).andExpect(status().isNotFound());
    }

    @Test
    void dropsMailThatIsStoppedWhileItWaits() {
        POST.stop();
        mail.work();
        notices.choose(ilse, notices.choices(ilse.id()).version(), withoutDigest());
        POST.start();
        mail.use(POST);
        clock.advance(Duration.ofMinutes(5));

        mail.work();

        assertThat(MailYard.arrived(POST)).isEmpty();
        assertThat(latest().state()).isEqualTo(MailState.STOPPED);
    }

    @Test
    void isAliveAndReadyThoughTheServerIsDown() throws Exception {
        POST.stop();
        mail.work();
        for (String probe : List.of("/actuator/health", "/actuator/health/liveness", "/actuator/health/readiness")) {
            mvc.perform(get(probe)).andExpect(status().isOk());
        }
    }

    @Test
    void worksByTheClockOfTheScheduler() throws Exception {
        for (String job : List.of("round", "send")) {
            assertThat(scheduler.getTriggersOfJob(JobKey.jobKey(job, "notices")))
                    .as(job)
                    .singleElement()
                    .satisfies(trigger -> assertThat(trigger.getMisfireInstruction())
                            .isEqualTo(CronTrigger.MISFIRE_INSTRUCTION_FIRE_ONCE_NOW));
        }
        scheduler.start();
        try {
            scheduler.triggerJob(JobKey.jobKey("round", "notices"));
            MailYard.await(() -> latest().kind() == MailKind.DIGEST);
            scheduler.triggerJob(JobKey.jobKey("send", "notices"));
            MailYard.await(() -> POST.getReceivedMessages().length == 1);
        } finally {
            scheduler.standby();
        }
        assertThat(MailYard.only(POST).title()).isEqualTo("1 overdue at Brackenfold Pump Yard");
    }

    @Test
    void hasWordsForEveryTrouble() {
        for (Trouble trouble : Trouble.values()) {
            assertThat(messages.getMessage(trouble.code(), null, Locale.ENGLISH))
                    .endsWith(".");
        }
    }
}
