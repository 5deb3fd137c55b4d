package freshet.readings;

import static freshet.readings.MeterKind.RUN_HOURS;
import static freshet.readings.MeterKind.STARTS;
import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.TestClock;
import freshet.measures.UnitSystem;
import freshet.people.People;
import freshet.places.Places;
import freshet.pumps.Pumps;
import java.math.BigDecimal;
import java.time.Instant;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class ReadingPagesTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    Readings readings;

    @Autowired
    People people;

    @Autowired
    Places places;

    @Autowired
    Pumps pumps;

    @Autowired
    TestClock clock;

    Yard yard;
    long unit;
    Pages pages;

    @BeforeEach
    void signIn() {
        clock.set("2026-03-14T19:02:30Z");
        yard = new Yard(people, places, pumps, UnitSystem.US);
        unit = yard.unit("BF-19").id();
        pages = Pages.signedIn(mvc, "ilse", Yard.PASSWORD);
    }

    private Page submit(String... namesAndValues) {
        return pages.submit("/pumps/" + unit + "/reading", namesAndValues);
    }

    private void read(String at, String value) {
        readings.recordReading(ReadingDraft.of(unit, RUN_HOURS, Instant.parse(at), new BigDecimal(value)), yard.me);
    }

    private BigDecimal lifetime() {
        return readings.log(unit, RUN_HOURS).lifetime();
    }

    @Test
    void asksWhetherThePointWasLeftOutAndTakesAYes() {
        read("2024-03-12T10:00:00Z", "412.6");
        Page asked = submit("kind", "RUN_HOURS", "value", "4131");
        assertThat(asked.wrong("value")).contains("Is 4,131 so?", "If 413.1 was meant");
        assertThat(asked.value("value")).isEqualTo("4131");
        assertThat(lifetime()).isEqualByComparingTo("412.6");

        submit("kind", "RUN_HOURS", "value", "4131", "asked", "value=4131", "itIsSo", "asked");
        assertThat(lifetime()).isEqualByComparingTo("4131");
    }

    @Test
    void asksForDigitsAndOnePress() {
        Page page = pages.open("/pumps/" + unit + "/reading");

        assertThat(page.status()).isEqualTo(200);
        assertThat(page.text("h1")).isEqualTo("Meter of BF-19");
        assertThat(page.html().select("#value").attr("inputmode")).isEqualTo("decimal");
        assertThat(page.html().select("label[for=value]").text()).isEqualTo("It shows");
        assertThat(page.html().select("[name=kind][checked]").val()).isEqualTo("RUN_HOURS");
        // the place's time, to the minute; the extras are folded away
        assertThat(page.value("at")).isEqualTo("2026-03-14T14:02");
        assertThat(page.html().select("details[open]")).isEmpty();
        assertThat(page.html().select("main form button")).hasSize(1);
        assertThat(page.text(".ways [aria-current]")).isEqualTo("Pumps");
        assertThat(page.html().select("main .with-unit")).isEmpty();
    }

    @Test
    void writesAReadingDownOnceHoweverOftenItIsPressed() {
        for (int press = 0; press < 2; press++) {
            Page page = submit("kind", "RUN_HOURS", "value", "412.6", "at", "2026-03-14T14:02");
            assertThat(page.location()).isEqualTo("/pumps/" + unit);
        }
        assertThat(readings.log(unit, RUN_HOURS).lines()).singleElement().satisfies(line -> {
            assertThat(line.value()).isEqualByComparingTo("412.6");
            assertThat(line.at()).isEqualTo("2026-03-14T19:02:00Z");
            assertThat(line.recordedBy()).isEqualTo(yard.me.id());
        });
        assertThat(pages.open("/pumps/" + unit + "/reading").text("main"))
                .contains("Run hours last: 412.6 on 14 Mar 2026, 14:02");
    }

    @Test
    void takesNowWhenTheTimeIsEmptiedAndThousandsWithTheirComma() {
        assertThat(submit("kind", "STARTS", "value", "1,204", "at", "").status())
                .isEqualTo(302);
        assertThat(readings.log(unit, STARTS).last().at()).isEqualTo("2026-03-14T19:02:30Z");
        assertThat(readings.log(unit, STARTS).lifetime()).isEqualByComparingTo("1204");
        assertThat(pages.open("/pumps/" + unit + "/reading")
                        .html()
                        .select("[name=kind][checked]")
                        .val())
                .isEqualTo("STARTS");
    }

    @Test
    void keepsWhatWasTypedAndSaysWhatIsWrongWithIt() {
        read("2026-03-12T12:00:00Z", "412.6");
        Page page = submit("kind", "RUN_HOURS", "value", "41,26", "at", "2026-03-14T14:02", "note", "dark in there");
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.html().title()).startsWith("Error: Meter of BF-19");
        assertThat(page.text(".wrongs h2")).isEqualTo("One thing to put right");
        assertThat(page.wrong("value")).isEqualTo("\"41,26\" has a comma. Use a point for decimals: 41.26");
        assertThat(page.value("value")).isEqualTo("41,26");
        assertThat(page.value("note")).isEqualTo("dark in there");
        assertThat(page.html().select("#value").attr("aria-invalid")).isEqualTo("true");
        assertThat(page.html().select(".wrongs a").attr("href")).isEqualTo("#value");

        assertThat(submit("kind", "RUN_HOURS", "value", "400", "at", "2026-03-14T14:02")
                        .wrong("value"))
                .startsWith("400 is below the last reading, 412.6 on 12 Mar 2026, 07:00.");
        assertThat(submit("kind", "RUN_HOURS", "value", "512.6", "at", "2026-03-14T14:02")
                        .wrong("value"))
                .startsWith(
                        "That is 100 more than the 412.6 read on 12 Mar 2026, 07:00, and at most 56.14 can have gone by");
        assertThat(submit("kind", "RUN_HOURS", "value", "413", "at", "2026-03-14T15:02")
                        .wrong("at"))
                .isEqualTo("That time has not come yet.");
        assertThat(submit("kind", "RUN_HOURS", "value", "413", "at", "half past two")
                        .wrong("at"))
                .startsWith("\"half past two\" is not a day and time.");
        assertThat(submit("kind", "RUN_HOURS", "value", " ").wrong("value")).isEqualTo("Type what the meter shows.");
        assertThat(lifetime()).isEqualByComparingTo("412.6");
    }

    @Test
    void takesARolloverThatIsDeclared() {
        read("2026-03-12T12:00:00Z", "99990");
        Page page = submit("kind", "RUN_HOURS", "value", "3.5", "at", "2026-03-14T14:02", "rolledOver", "true");
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.wrong("rollsOverAt")).startsWith("Say at which value this meter begins again from 0");
        assertThat(page.html().select("details[open]")).hasSize(1);
        assertThat(page.html().select("#rolledOver").hasAttr("checked")).isTrue();

        submit(
                "kind",
                "RUN_HOURS",
                "value",
                "3.5",
                "at",
                "2026-03-14T14:02",
                "rolledOver",
                "true",
                "rollsOverAt",
                "99999.9");
        assertThat(lifetime()).isEqualByComparingTo("100003.4");
    }

    @Test
    void takesASwapOnItsOwnPage() {
        read("2026-03-12T12:00:00Z", "412.6");
        String address = "/pumps/" + unit + "/meter-swap";
        Page blank = pages.open(address);
        assertThat(blank.value("lastValue")).isEqualTo("412.6");
        assertThat(blank.value("firstValue")).isEqualTo("0");

        Page wrong = pages.submit(
                address, "kind", "RUN_HOURS", "lastValue", "400", "firstValue", "0,0", "at", "2026-03-14T14:02");
        assertThat(wrong.status()).isEqualTo(422);
        assertThat(wrong.wrong("firstValue")).contains("comma");
        wrong = pages.submit(
                address, "kind", "RUN_HOURS", "lastValue", "400", "firstValue", "0", "at", "2026-03-14T14:02");
        assertThat(wrong.wrong("lastValue")).startsWith("400 is below the last reading");

        Page saved = pages.submit(
                address, "kind", "RUN_HOURS", "lastValue", "412.6", "firstValue", "0", "at", "2026-03-14T14:02");
        assertThat(saved.location()).isEqualTo("/pumps/" + unit + "/readings");
        assertThat(pages.open(saved.location()).text("main")).contains("removed", "fitted", "Lifetime 412.6 h");
    }

    @Test
    void showsAllReadingsAndTakesOneBackWithItsReason() {
        read("2026-03-10T12:00:00Z", "412.6");
        read("2026-03-12T12:00:00Z", "420");
        String address = "/pumps/" + unit + "/readings";
        Page page = pages.open(address);
        assertThat(page.text("h1")).isEqualTo("Readings of BF-19");
        assertThat(page.html().select("table").get(0).select("tbody tr").eachText())
                .first()
                .asString()
                .contains("12 Mar 2026, 07:00", "420", "7.4", "Ilse Marrow");
        assertThat(page.text("main")).contains("Never read.");

        String take = page.html().select("tbody tr").first().select("a").attr("href");
        Page asking = pages.open(take);
        assertThat(asking.text("main form")).contains("Run hours: 420, read on 12 Mar 2026, 07:00");
        String withdraw = asking.html().select("main form").attr("action");
        Page wrong = pages.submit(withdraw, "why", "");
        assertThat(wrong.status()).isEqualTo(422);
        assertThat(wrong.wrong("why")).isEqualTo("Say why.");

        Page done = pages.submit(withdraw, "why", "read the neighbour’s");
        assertThat(done.location()).isEqualTo(address);
        assertThat(pages.open(address).text("table")).contains("taken back", "read the neighbour’s");
        assertThat(lifetime()).isEqualByComparingTo("412.6");
        assertThat(pages.submit(address + "/999999/withdraw", "why", "x").status())
                .isEqualTo(404);
    }

    @Test
    void knowsNoPagesOfUnitsThatAreNotThere() {
        assertThat(pages.open("/pumps/999999/reading").status()).isEqualTo(404);
        assertThat(pages.open("/pumps/999999/readings").status()).isEqualTo(404);
        assertThat(pages.open("/pumps/999999/meter-swap").status()).isEqualTo(404);
        assertThat(pages.submit("/pumps/999999/reading", "value", "1").status()).isEqualTo(404);
    }
}
