package freshet.rounds;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.TestClock;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.care.SignOff;
import freshet.care.Task;
import freshet.care.Worksheet;
import freshet.checklists.Phase;
import freshet.places.Site;
import freshet.pumps.PumpKind;
import freshet.pumps.Unit;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class RoundPagesTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    Rounds rounds;

    @Autowired
    Care care;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    Site court;
    Task yardTask;
    Task courtTask;
    Pages ilses;
    Pages teos;

    @BeforeEach
    void springMorning() {
        clock.set("2026-03-14T14:00:00Z");
        yard.ilse();
        yard.teo();
        court = yard.site("Dyer Court", CareYard.CHICAGO, CareYard.opening("Thaw", 2, 15, 3, 20));
        yardTask = opening(yard.unit(
                "BF-04", PumpKind.UTILITY_SUBMERSIBLE, yard.brackenfold().id(), LocalDate.of(2026, 1, 1)));
        courtTask = opening(yard.unit("QM-104", PumpKind.SUMP_WITH_FLOAT, court.id(), CareYard.LONG_AGO));
        ilses = Pages.signedIn(mvc, "ilse", "river at thaw");
        teos = Pages.signedIn(mvc, "teo", "mud on boots");
    }

    private Task opening(Unit unit) {
        return care.tasksOf(unit.id()).stream()
                .filter(task -> task.phase() == Phase.OPENING && task.open())
                .findFirst()
                .orElseThrow();
    }

    private void sign(Task task) {
        Worksheet sheet = care.worksheet(task.id());
        care.sign(
                task.id(),
                new SignOff(sheet.task().version(), CareYard.allPass(sheet, yard.ilse()), null, null, null),
                yard.ilse());
    }

    private static String box(Page page, String css) {
        return page.html().selectFirst(css).val();
    }

    @Test
    void goesFromTheWorkLeftToARoundAndItsNextStop() {
        Page work = ilses.open("/season/work");
        assertThat(work.text("h1")).isEqualTo("2 tasks are left");
        assertThat(work.text()).contains("Brackenfold Pump Yard week 12, from 16 Mar · 1 due", "by Fri 20 Mar");
        List<String> all = work.html().select(".choose li input").eachAttr("value");

        Page toPlan = ilses.submit("/season/work", "press", "round", "chosen", all.get(1), "chosen", all.get(0));
        assertThat(toPlan.status()).isEqualTo(302);
        Page plan = ilses.open(toPlan.location());
        assertThat(plan.html().select(".stops .tagline").eachText()).containsExactly("QM-104", "BF-04");
        assertThat(plan.text()).contains("2 tasks: about ");

        Page wrong = ilses.submit("/rounds/new", "name", "", "day", "never", "person", "", "chosen", all.get(1));
        assertThat(wrong.status()).isEqualTo(422);
        assertThat(wrong.wrong("day")).contains("never");
        Page nameless = ilses.submit("/rounds/new", "name", "", "day", "2026-03-16", "chosen", all.get(1));
        assertThat(nameless.wrong("name")).contains("1 to 100 characters");
        assertThat(nameless.value("day")).isEqualTo("2026-03-16");
        assertThat(nameless.html().select(".stops .tagline").text()).isEqualTo("QM-104");

        String teo = String.valueOf(yard.teo().id());
        String round = ilses.submit(
                        "/rounds/new",
                        "name",
                        "Spring round",
                        "day",
                        "2026-03-16",
                        "person",
                        teo,
                        "chosen",
                        all.get(1),
                        "chosen",
                        all.get(0))
                .location();
        ilses.submit("/rounds/access/" + court.id(), "version", "-1", "note", "Key safe 4 <b>");
        Page page = teos.open(round);
        assertThat(page.text("h1")).isEqualTo("Spring round");
        assertThat(page.text(".next-tag a")).isEqualTo("QM-104");
        assertThat(page.text(".getting-in")).contains("Key safe 4 <b>");
        assertThat(page.html().select(".big-presses a").eachAttr("href"))
                .containsExactly(
                        "/tasks/" + courtTask.id(),
                        page.html().select(".big-presses a").get(1).attr("href"));
        assertThat(ilses.open("/season/work").text()).contains("On Spring round, Mon 16 Mar");
        assertThat(teos.open("/rounds").text("#mine ~ ul")).contains("Mon 16 Mar", "0 done, 2 left");

        sign(courtTask);
        page = teos.open(round);
        assertThat(page.text(".next-tag a")).isEqualTo("BF-04");
        assertThat(page.text(".stops .over")).contains("QM-104", "signed by Ilse Marrow, 14 Mar 2026, 09:00");
        assertThat(page.text(".lead")).contains("1 done, 1 left: about " + "35");
    }

    @Test
    void notesAShutDoorAndOffersTheStopAgainLater() {
        long id = rounds.plan(
                RoundDraft.of(
                                "Friday round",
                                LocalDate.of(2026, 3, 13),
                                yard.teo().id())
                        .with(List.of(Chosen.task(courtTask.id()), Chosen.task(yardTask.id()))),
                yard.ilse());
        long stop = rounds.round(id).stops().get(0).id();
        String address = "/rounds/" + id + "/stops/" + stop + "/no-access";
        assertThat(teos.open(address).text("h1")).isEqualTo("No access to QM-104");
        Page mute = teos.submit(address, "reason", "OTHER", "note", " ", "at", "2026-03-14T11:00");
        assertThat(mute.status()).isEqualTo(422);
        assertThat(mute.wrong("note")).contains("in words");
        assertThat(mute.wrong("at")).contains("later than now");
        assertThat(teos.submit(address, "reason", "REFUSED", "note", "Come back Monday", "at", "2026-03-13T10:30")
                        .location())
                .isEqualTo("/rounds/" + id);

        Page page = teos.open("/rounds/" + id);
        assertThat(page.text(".next-tag a")).isEqualTo("BF-04");
        assertThat(page.text(".stops"))
                .contains("13 Mar 2026, 10:30: We were sent away. Noted by Teo Brandt. Come back Monday");
        clock.set("2026-03-16T14:00:00Z");
        Page list = ilses.open("/rounds");
        assertThat(list.text("#left ~ form")).contains("Friday round", "QM-104", "We were sent away", "BF-04");
        String chosen = box(list, "#left ~ form input");
        Page again = ilses.open("/rounds/new?chosen=" + chosen);
        assertThat(again.text(".stops")).contains("QM-104").doesNotContain("BF-04");
        ilses.submit("/rounds/new", "name", "Again", "day", "2026-03-17", "chosen", chosen);
        assertThat(ilses.open("/rounds").text("#left ~ form")).contains("BF-04").doesNotContain("QM-104");
        assertThat(teos.open("/rounds/" + id).text(".stops")).contains("Also on the round of Tue 17 Mar", "Again");
    }

    @Test
    void givesAllOfThemToAPersonOrNamesWhatChanged() {
        Page work = ilses.open("/season/work?site=" + court.id());
        assertThat(work.text("h1")).isEqualTo("One task is left");
        String chosen = box(work, "ul input");
        String other = box(ilses.open("/season/work?week=2026-03-18"), "ul input");
        assertThat(ilses.open("/season/work?week=2026-04-18").text("h1")).isEqualTo("No task is left here");
        String teo = String.valueOf(yard.teo().id());

        Page none = ilses.submit("/season/work", "press", "assign", "person", teo);
        assertThat(none.status()).isEqualTo(422);
        assertThat(none.text(".wrongs")).contains("Choose at least one task.");
        assertThat(ilses.submit("/season/work", "press", "assign", "person", "8765", "chosen", chosen)
                        .status())
                .isEqualTo(422);
        Page given = ilses.submit(
                "/season/work", "press", "assign", "person", teo, "chosen", chosen, "site", "" + court.id());
        assertThat(given.location()).isEqualTo("/season/work?site=" + court.id());
        assertThat(ilses.open(given.location()).text(".choose")).contains("Teo Brandt has it");

        sign(yardTask);
        for (String press : List.of("assign", "round", "print")) {
            Page refused = press.equals("round")
                    ? ilses.submit("/rounds/new", "name", "R", "day", "2026-03-17", "chosen", chosen, "chosen", other)
                    : ilses.submit("/season/work", "press", press, "chosen", chosen, "chosen", other);
            assertThat(refused.status()).as(press).isEqualTo(409);
            assertThat(refused.text("main"))
                    .contains("Nothing was done", "BF-04, Opening 2026 was signed by Ilse Marrow")
                    .contains("QM-104, Opening 2026 was given to Teo Brandt");
        }
        assertThat(rounds.rounds(LocalDate.EPOCH)).isEmpty();
    }

    @Test
    void changesTheOrderAddsByTagAndPrintsThePile() {
        long id = rounds.plan(
                RoundDraft.of("R", LocalDate.of(2026, 3, 16), null).with(List.of(Chosen.task(courtTask.id()))),
                yard.ilse());
        yard.unit("BF-09");
        String stops = "/rounds/" + id + "/stops";
        ilses.submit(stops, "press", "work", "tag", "bf-04");
        ilses.submit(stops, "press", "look", "tag", "BF-09");
        Page unknown = ilses.submit(stops, "press", "look", "tag", "ZZ-1");
        assertThat(unknown.status()).isEqualTo(422);
        assertThat(unknown.text(".wrongs")).contains("No pump has this tag");
        Page edit = ilses.open("/rounds/" + id + "/edit");
        assertThat(edit.html().select(".stops .tagline").eachText()).containsExactly("QM-104", "BF-04", "BF-09");
        ilses.submit(stops, "press", "up-" + rounds.round(id).stops().get(1).id());
        assertThat(teos.open("/rounds/" + id).text(".next-tag a")).isEqualTo("BF-04");

        Page print = ilses.open("/rounds/" + id + "/print");
        assertThat(print.html().select(".blank h2 .id").eachText()).containsExactly("BF-04", "QM-104");
        assertThat(print.text(".lead")).contains("2 blank checklists", "To look at, without a checklist: BF-09");
        assertThat(print.html()
                        .select(".blank")
                        .first()
                        .select(".by-hand > li.warned")
                        .first()
                        .nextElementSibling()
                        .text())
                .contains("Unplugged, and the plug is with me");
        assertThat(print.text(".blank")).contains("sheet 1 of 2", "Signature", "Needs a person competent");

        Page stale = ilses.submit("/rounds/" + id + "/edit", "version", "7", "name", "Mine", "day", "2026-03-18");
        assertThat(stale.status()).isEqualTo(409);
        assertThat(stale.value("name")).isEqualTo("Mine");
        assertThat(stale.text(".warn")).contains("Name R", "Day 2026-03-16");
        assertThat(ilses.submit("/rounds/" + id + "/give-up").location()).isEqualTo("/rounds");
        assertThat(ilses.open("/rounds/" + id).text(".warn")).contains("given up");
        assertThat(ilses.submit(stops, "press", "look", "tag", "BF-04").status())
                .isEqualTo(422);
        assertThat(ilses.open("/rounds/999").status()).isEqualTo(404);
    }
}
