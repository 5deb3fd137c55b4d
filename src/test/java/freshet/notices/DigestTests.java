package freshet.notices;

import static org.assertj.core.api.Assertions.assertThat;

import com.icegreen.greenmail.junit5.GreenMailExtension;
import com.icegreen.greenmail.util.ServerSetupTest;
import freshet.FreshetTest;
import freshet.TestClock;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.care.SignOff;
import freshet.care.Task;
import freshet.findings.FindingDraft;
import freshet.findings.Findings;
import freshet.measures.UnitSystem;
import freshet.people.Language;
import freshet.people.People;
import freshet.people.Person;
import freshet.places.Site;
import freshet.pumps.PumpKind;
import freshet.pumps.Unit;
import freshet.readings.Readings;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Set;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.springframework.beans.factory.annotation.Autowired;

@FreshetTest
class DigestTests {

    /** Monday, 6:05 at Brackenfold: three days after its opening was over. */
    private static final Instant MONDAY = Instant.parse("2026-03-23T11:05:00Z");

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
    Care care;

    @Autowired
    Findings findings;

    @Autowired
    Readings readings;

    @Autowired
    People people;

    @Autowired
    TestClock clock;

    Person teo;

    @BeforeEach
    void theSundayBefore() {
        clock.set(MONDAY.minus(Duration.ofHours(12)));
        yard.ilse();
        teo = yard.teo();
        mail.reach(teo, "teo@ansel.example", POST);
        mail.wantDaily(teo);
    }

    private Unit unit(String tag) {
        return yard.unit(tag, PumpKind.UTILITY_SUBMERSIBLE, yard.brackenfold().id(), THIS_YEAR);
    }

    private Task opening(Unit unit) {
        return care.tasksOf(unit.id()).stream()
                .filter(task -> task.openOn(LocalDate.of(2026, 3, 23)))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void saysWhatIsLateDueSoonAndNotReadyAsAPersonReadsIt() {
        Unit late = unit("BF-04");
        Unit worn = unit("BF-07");
        readings.recordFlowTest(CareYard.flowTest(worn.id(), Instant.parse("2026-02-14T15:00:00Z"), 26), yard.ilse());
        readings.recordFlowTest(CareYard.flowTest(worn.id(), Instant.parse("2026-03-20T15:00:00Z"), 60), yard.ilse());
        Site court = yard.site("Dyer Court", CareYard.CHICAGO, CareYard.opening("Spring", 3, 10, 4, 5));
        Unit soon = yard.unit("DC-1", PumpKind.UTILITY_SUBMERSIBLE, court.id(), THIS_YEAR);
        findings.write(FindingDraft.about(soon.id(), 3, "Handle is cracked"), yard.ilse());
        clock.set(MONDAY);

        mail.work();

        MailYard.Arrived digest = MailYard.only(POST);
        assertThat(digest.to()).isEqualTo("teo@ansel.example");
        assertThat(digest.title()).isEqualTo("2 overdue, 2 due soon, 2 not ready at 2 places");
        assertThat(digest.text().replace('\u00a0', ' ').replaceAll("http://\\S+", "<link>"))
                .isEqualTo("""
                Brackenfold Pump Yard, Monday 23 March 2026
                -------------------------------------------
                One unit is unknown: nothing proves it now.

                Overdue: 2
                  BF-04  Opening 2026, 3 days over, was due Fri 20 Mar, 35 min
                    <link>
                  BF-07  Opening 2026, 3 days over, was due Fri 20 Mar, 35 min
                    <link>

                Due soon: 1
                  BF-07  Clean, measure the gap, test again, due by Fri 3 Apr, 45 min
                    <link>

                Not ready, and why: 1
                  BF-07  43 % ± 1 % of reference at 3.00 m, 2 tests, 20 Mar: below 70 %, repair it first
                    <link>

                Dyer Court, Monday 23 March 2026
                --------------------------------

                Due soon: 1
                  DC-1  Opening 2026, due by Sun 5 Apr, 35 min
                    <link>

                Not ready, and why: 1
                  DC-1  Severity 3: Handle is cracked
                    <link>

                You get this every day at 6:00 because you chose so, and only when there is something to say.
                Open Freshet:
                <link>
                Choose what you get:
                <link>
                Stop the digest, without signing in:
                <link>
                """);
        assertThat(digest.text())
                .contains("  BF-04  Opening 2026", "/tasks/" + opening(late).id() + "\n", "/pumps/" + worn.id() + "\n");
        // the HTML says the same and leads to the same
        var html = Jsoup.parse(digest.html());
        assertThat(html.select("h1").eachText())
                .containsExactly("Brackenfold Pump Yard, Monday 23 March 2026", "Dyer Court, Monday 23 March 2026");
        assertThat(html.select("h2").eachText())
                .containsExactly(
                        "Overdue: 2", "Due soon: 1", "Not ready, and why: 1", "Due soon: 1", "Not ready, and why: 1");
        assertThat(html.select("li").first().text().replace('\u00a0', ' '))
                .isEqualTo("BF-04 Opening 2026, 3 days over, was due Fri 20 Mar, 35 min");
        assertThat(html.select("a").eachAttr("href"))
                .allMatch(address -> digest.text().contains(address))
                .hasSize(9);
        assertThat(html.select("script, img, link, style, [style]")).isEmpty();
        assertThat(digest.header("Auto-Submitted")).isEqualTo("auto-generated");
        assertThat(digest.header("List-Unsubscribe"))
                .isEqualTo("<" + html.select("a").last().attr("href") + ">");
        assertThat(digest.header("List-Unsubscribe-Post")).isEqualTo("List-Unsubscribe=One-Click");
        assertThat(digest.header("From")).isEqualTo("Freshet <freshet@localhost>");
    }

    @Test
    void speaksInTheUnitsOfItsReader() {
        Unit worn = unit("BF-07");
        readings.recordFlowTest(CareYard.flowTest(worn.id(), Instant.parse("2026-02-14T15:00:00Z"), 26), yard.ilse());
        readings.recordFlowTest(CareYard.flowTest(worn.id(), Instant.parse("2026-03-20T15:00:00Z"), 60), yard.ilse());
        people.readIn(teo.id(), UnitSystem.US);
        clock.set(MONDAY);

        mail.work();

        assertThat(MailYard.only(POST).text()).contains("of reference at 9.8\u00a0ft, 2 tests");
    }

    @Test
    void speaksTheLanguageOfItsReader() {
        unit("BF-04");
        people.readIn(teo.id(), Language.ES);
        clock.set(MONDAY);

        mail.work();

        MailYard.Arrived digest = MailYard.only(POST);
        assertThat(digest.title()).isEqualTo("1 atrasada en Brackenfold Pump Yard");
        assertThat(digest.text().replace('\u00a0', ' ').replaceAll("http://\\S+", "<link>"))
                .isEqualTo("""
                Brackenfold Pump Yard, lunes 23 de marzo de 2026
                ------------------------------------------------
                De una unidad no se sabe: nada la prueba ahora.

                Atrasadas: 1
                  BF-04  Apertura 2026, 3 días de atraso, vencía el vie 20 mar, 35 min
                    <link>

                Recibes esto cada día a las 6:00 porque así lo elegiste, y solo cuando hay algo que decir.
                Abrir Freshet:
                <link>
                Elegir lo que recibes:
                <link>
                Parar el resumen, sin entrar:
                <link>
                """);
        assertThat(Jsoup.parse(digest.html()).selectFirst("html").attr("lang")).isEqualTo("es");
    }

    @Test
    void staysSilentWhenThereIsNothingToSay() {
        Site court = yard.site("Dyer Court", CareYard.CHICAGO, CareYard.opening("Summer", 6, 1, 6, 20));
        yard.unit("DC-1", PumpKind.UTILITY_SUBMERSIBLE, court.id(), THIS_YEAR);
        clock.set(MONDAY);

        mail.work();
        assertThat(MailYard.arrived(POST)).isEmpty();
        assertThat(notices.mailbag(teo).mails().get(0).state()).isEqualTo(MailState.NOTHING);

        // nor later that day, when something has come up
        clock.set(MONDAY.plus(Duration.ofHours(5)));
        unit("BF-04");
        mail.work();
        assertThat(MailYard.arrived(POST)).isEmpty();

        clock.set(MONDAY.plus(Duration.ofDays(1)));
        mail.work();
        assertThat(MailYard.only(POST).title()).isEqualTo("1 overdue at Brackenfold Pump Yard");
    }

    @Test
    void comesOnceADay() {
        unit("BF-04");
        clock.set(MONDAY.minus(Duration.ofMinutes(6)));
        mail.work();
        assertThat(MailYard.arrived(POST)).as("before six").isEmpty();

        clock.set(MONDAY);
        mail.work();
        mail.work();
        clock.set(MONDAY.plus(Duration.ofHours(10)));
        mail.work();
        assertThat(MailYard.arrived(POST)).hasSize(1);

        clock.set(MONDAY.plus(Duration.ofDays(1)));
        mail.work();
        assertThat(MailYard.arrived(POST))
                .extracting(MailYard.Arrived::title)
                .containsExactly("1 overdue at Brackenfold Pump Yard", "1 overdue at Brackenfold Pump Yard");
        assertThat(MailYard.arrived(POST))
                .extracting(each -> each.header("Message-ID"))
                .doesNotHaveDuplicates();
    }

    @Test
    void comesOnItsWeekdayOnly() {
        unit("BF-04");
        mail.want(
                teo,
                new ChoicesDraft(Rhythm.WEEKLY, DayOfWeek.WEDNESDAY, 6, null, null, true, Set.of(), true, 7, true));
        clock.set(MONDAY);
        mail.work();
        assertThat(MailYard.arrived(POST)).isEmpty();

        clock.set(MONDAY.plus(Duration.ofDays(2)));
        mail.work();
        clock.set(MONDAY.plus(Duration.ofDays(3)));
        mail.work();
        assertThat(MailYard.only(POST).text()).contains("Wednesday 25 March 2026", "every Wednesday at 6:00");
    }

    @Test
    void tellsOnlyThePlacesThatWereChosenAndThatPersonOnly() {
        unit("BF-04");
        Site court = yard.site("Dyer Court", CareYard.CHICAGO, CareYard.opening("Spring", 3, 10, 4, 5));
        yard.unit("DC-1", PumpKind.UTILITY_SUBMERSIBLE, court.id(), THIS_YEAR);
        mail.want(
                teo,
                new ChoicesDraft(
                        Rhythm.DAILY, DayOfWeek.MONDAY, 6, null, null, false, Set.of(court.id()), true, 7, true));
        clock.set(MONDAY);

        mail.work();

        assertThat(MailYard.only(POST).title()).isEqualTo("1 due soon at Dyer Court");
        assertThat(MailYard.only(POST).text()).doesNotContain("Brackenfold");
    }

    @Test
    void comesAtTheHourOfEachPlace() {
        unit("BF-04");
        ZoneId auckland = ZoneId.of("Pacific/Auckland");
        Site south = yard.site("Kauri Wharf", auckland, CareYard.opening("Autumn", 3, 10, 4, 5));
        yard.unit("KW-1", PumpKind.UTILITY_SUBMERSIBLE, south.id(), THIS_YEAR);
        // 6:05 on Tuesday at the wharf, 12:05 on Monday at Brackenfold
        clock.set(Instant.parse("2026-03-23T17:05:00Z"));

        mail.work();

        assertThat(MailYard.arrived(POST))
                .extracting(MailYard.Arrived::title)
                .containsExactlyInAnyOrder("1 overdue at Brackenfold Pump Yard", "1 due soon at Kauri Wharf");
        assertThat(MailYard.arrived(POST))
                .anySatisfy(each -> assertThat(each.text()).contains("Kauri Wharf, Tuesday 24 March 2026"));
        clock.set(Instant.parse("2026-03-24T10:59:00Z"));
        mail.work();
        assertThat(MailYard.arrived(POST))
                .as("neither has another six o'clock yet")
                .hasSize(2);
    }

    @Test
    void leavesOutWhatWasSignedMeanwhile() {
        Unit late = unit("BF-04");
        clock.set(MONDAY);
        notices.goRound();
        Task opening = opening(late);
        var sheet = care.worksheet(opening.id());
        care.sign(opening.id(), SignOff.of(opening.version(), CareYard.allPass(sheet, yard.ilse())), yard.ilse());

        notices.sendAll();

        assertThat(MailYard.arrived(POST)).isEmpty();
    }

    @Test
    void goesNowhereBeforeTheAddressSaidYesAndNotToWhomMayNotSignIn() {
        unit("BF-04");
        Person jonah = people.addPerson("jonah", "Jonah Pell", "boots of mud", teo.role(), Set.of(), yard.ilse());
        mail.want(jonah, MailYard.daily(null, null));
        people.changePerson(teo.id(), teo.version(), teo.fullName(), teo.role(), Set.of(), false, null, yard.ilse());
        clock.set(MONDAY);

        mail.work();

        assertThat(MailYard.arrived(POST)).isEmpty();
    }

    @Test
    void waitsOutTheQuietHoursWhenItIsLate() {
        unit("BF-04");
        mail.want(teo, MailYard.daily(LocalTime.of(12, 0), LocalTime.of(14, 30)));
        // nothing ran at six; it is 13:05 at the place
        clock.set(MONDAY.plus(Duration.ofHours(7)));
        mail.work();
        assertThat(MailYard.arrived(POST)).isEmpty();

        clock.set(MONDAY.plus(Duration.ofHours(8).plusMinutes(30)));
        mail.work();
        assertThat(MailYard.only(POST).title()).isEqualTo("1 overdue at Brackenfold Pump Yard");
    }
}
