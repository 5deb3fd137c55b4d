package freshet.timetable;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.TestClock;
import freshet.care.CareYard;
import freshet.people.People;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.quartz.Scheduler;
import org.quartz.SchedulerException;
import org.quartz.TriggerKey;
import org.quartz.impl.matchers.GroupMatcher;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.CannotAcquireLockException;
import org.springframework.dao.DataAccessResourceFailureException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class TimetablePagesTests {

    private static final RunTable.Key MORNING = new RunTable.Key("board", "morning", "America/Chicago");

    @Autowired
    MockMvc mvc;

    @Autowired
    Timetable timetable;

    @Autowired
    RunTable table;

    @Autowired
    Scheduler scheduler;

    @Autowired
    CareYard yard;

    @Autowired
    People people;

    @Autowired
    TestClock clock;

    @Autowired
    JdbcClient database;

    Pages ilse;

    @BeforeEach
    void aYard() {
        yard.brackenfold();
        timetable.drawUp();
        ilse = Pages.signedIn(mvc, "ilse", "river at thaw");
    }

    /** Nothing fires here, so what was asked for stays until it is taken back. */
    @AfterEach
    void askForNothing() throws SchedulerException {
        for (TriggerKey asked : scheduler.getTriggerKeys(GroupMatcher.triggerGroupEquals("asked"))) {
            scheduler.unscheduleJob(asked);
        }
    }

    private String line(Pages.Page page, String name) {
        return page.html().select("tr:contains(" + name + ")").text();
    }

    @Test
    void saysWhatRunsWhenAndThatItNeverDidYet() {
        Pages.Page page = ilse.open("/timetable");
        assertThat(page.status()).isEqualTo(200);
        assertThat(line(page, "Planning of the day"))
                .contains("1 place by the clock of America/Chicago", "Never so far", ", 04:30", "Run it now");
        assertThat(line(page, "Turn of the day")).contains("America/Chicago");
        assertThat(line(page, "Planning of everything"))
                .contains("At the next start", "Times are those of America/Chicago");
        assertThat(ilse.open("/account").html().select("a[href=/timetable]").text())
                .isEqualTo("What runs by itself");
    }

    @Test
    void saysWhenAZoneHasNoTimesYet() {
        yard.site("South", ZoneId.of("Pacific/Auckland"));
        assertThat(ilse.open("/timetable")
                        .html()
                        .select("tr:contains(Pacific/Auckland)")
                        .text())
                .contains("Gets its time within the hour");
    }

    @Test
    void saysHowItWentInTheTimeOfThePlace() {
        clock.set("2027-03-15T09:30:01Z");
        table.began(MORNING, clock.instant(), "north");
        assertThat(line(ilse.open("/timetable"), "Planning of the day"))
                .contains("Begun, not ended yet", "15 Mar 2027, 04:30");
        clock.advance(Duration.ofSeconds(3));
        table.ended(MORNING, null);
        assertThat(line(ilse.open("/timetable"), "Planning of the day"))
                .contains("Went well", "15 Mar 2027, 04:30, 3 seconds")
                .doesNotContain("made up");
    }

    @Test
    void saysWhatWasMadeUp() {
        clock.set("2027-03-15T12:00:00Z");
        table.began(MORNING, Instant.parse("2027-03-15T09:30:00Z"), "north");
        assertThat(line(ilse.open("/timetable"), "Planning of the day"))
                .contains("15 Mar 2027, 07:00, made up, was due 15 Mar 2027, 04:30");
    }

    @Test
    void saysInPlainWordsWhyItFailedAndWhenItLastWentWell() {
        clock.set("2027-03-14T09:30:00Z");
        table.began(MORNING, clock.instant(), "north");
        table.ended(MORNING, null);
        clock.set("2027-03-15T09:30:00Z");
        table.began(MORNING, clock.instant(), "south");
        table.ended(MORNING, Trouble.of(new IllegalStateException(new DataAccessResourceFailureException("x"))));
        String line = line(ilse.open("/timetable"), "Planning of the day");
        assertThat(line)
                .contains("Failed", "The database did not answer.", "It last went well 14 Mar 2027, 04:30.")
                .doesNotContain("Exception");

        table.ended(MORNING, Trouble.of(new CannotAcquireLockException("x")));
        assertThat(line(ilse.open("/timetable"), "Planning of the day")).contains("Somebody changed the same rows");
        table.ended(MORNING, Trouble.of(new ArithmeticException("x")));
        assertThat(line(ilse.open("/timetable"), "Planning of the day"))
                .contains("does not know", "tried again within the hour");
        database.sql("update run set done_at = null").update();
        assertThat(line(ilse.open("/timetable"), "Planning of the day")).contains("It never went well so far.");
    }

    @Test
    void tellsTheOwnerOnTheFirstPageThatSomethingFailed() {
        yard.unit("BF-01");
        yard.teo();
        assertThat(ilse.open("/").html().select("main a[href=/timetable]")).isEmpty();
        table.began(MORNING, clock.instant(), "north");
        table.ended(MORNING, Trouble.UNFORESEEN);
        assertThat(ilse.open("/").text("main a[href=/timetable]"))
                .isEqualTo("One thing that runs by itself failed. See why.");
        assertThat(Pages.signedIn(mvc, "teo", "mud on boots").open("/").html().select("a[href=/timetable]"))
                .isEmpty();
    }

    @Test
    void forgetsTheRunsOfAZoneWhereNoPlaceIsLeft() {
        table.began(MORNING, clock.instant(), "north");
        table.began(new RunTable.Key("board", "morning", "Pacific/Auckland"), clock.instant(), "north");
        table.began(new RunTable.Key("board", "plan", ""), clock.instant(), "north");
        timetable.drawUp();
        assertThat(table.all().keySet()).containsExactlyInAnyOrder(MORNING, new RunTable.Key("board", "plan", ""));
    }

    @Test
    void asksForARunOnceHoweverOftenItIsPressed() throws SchedulerException {
        for (int press = 0; press < 2; press++) {
            Pages.Page asked = ilse.submit("/timetable/board/morning", "zone", "America/Chicago");
            assertThat(asked.status()).isEqualTo(302);
            assertThat(asked.location()).isEqualTo("/timetable");
        }
        assertThat(scheduler.getTriggerKeys(GroupMatcher.triggerGroupEquals("asked")))
                .hasSize(1);
        Pages.Page page = ilse.open("/timetable");
        assertThat(page.text(".done")).startsWith("It begins as soon as");
        assertThat(line(page, "Planning of the day"))
                .contains("asked for, begins in a moment", ", 04:30")
                .doesNotContain("Run it now");
        assertThat(database.sql("select count(*) from audit_entry where action = 'run asked for'")
                        .query(Integer.class)
                        .single())
                .isEqualTo(2);
    }

    @Test
    void asksOnceMoreWithinTheHourForWhatFailed() throws SchedulerException {
        table.began(MORNING, clock.instant(), "north");
        table.ended(MORNING, Trouble.CROSSED);
        RunTable.Key gone = new RunTable.Key("board", "no longer", "");
        table.began(gone, clock.instant(), "north");
        table.ended(gone, Trouble.CROSSED);
        timetable.drawUp();
        timetable.drawUp();
        assertThat(scheduler.getTriggerKeys(GroupMatcher.triggerGroupEquals("asked")))
                .containsExactly(TriggerKey.triggerKey("board.morning America/Chicago", "asked"));
    }

    @Test
    void isTheOwnersOnly() {
        yard.teo();
        Pages teo = Pages.signedIn(mvc, "teo", "mud on boots");
        assertThat(teo.open("/timetable").status()).isEqualTo(403);
        assertThat(teo.submit("/timetable/board/plan").status()).isEqualTo(403);
        assertThat(teo.open("/account").html().select("a[href=/timetable]")).isEmpty();
    }

    @Test
    void knowsNoRunThatIsNotThere() {
        assertThat(ilse.submit("/timetable/board/nothing").status()).isEqualTo(404);
        assertThat(ilse.submit("/timetable/board/morning", "zone", "Mars/Base").status())
                .isEqualTo(404);
    }
}
