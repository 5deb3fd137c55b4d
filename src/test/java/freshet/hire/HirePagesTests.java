package freshet.hire;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.TestClock;
import freshet.care.CareYard;
import freshet.checklists.Phase;
import freshet.findings.FindingDraft;
import freshet.findings.Findings;
import freshet.people.Person;
import freshet.photos.Pictures;
import freshet.pumps.Unit;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class HirePagesTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    Hires hires;

    @Autowired
    HireYard desk;

    @Autowired
    Findings findings;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    Person ilse;
    Person teo;
    Unit unit;
    Pages teos;

    @BeforeEach
    void oneReadyPump() {
        clock.set("2026-03-14T14:00:00Z");
        ilse = yard.ilse();
        teo = yard.teo();
        unit = desk.ready("BF-04");
        teos = Pages.signedIn(mvc, "teo", "mud on boots");
    }

    /** What a person types to send it out, every caution told, at a prefix. */
    private static String[] issue(String at, String dueBackOn, String... more) {
        List<String> typed = new ArrayList<>(List.of(
                at + "hirer",
                "Ansel Roofing",
                at + "dueBackOn",
                dueBackOn,
                at + "takenBy",
                "Jo Ferris",
                at + "kit",
                "0",
                at + "kit",
                "1"));
        for (Caution caution : Caution.values()) {
            typed.addAll(List.of(at + "told", caution.name()));
        }
        typed.addAll(List.of(more));
        return typed.toArray(String[]::new);
    }

    private static String[] back(String at, String... more) {
        List<String> typed = new ArrayList<>(List.of(
                at + "cordIs",
                "WHOLE",
                at + "liquid",
                "CLEAN",
                at + "kit[0]",
                "1",
                at + "kit[1]",
                "2",
                at + "kit[2]",
                "0"));
        typed.addAll(List.of(more));
        return typed.toArray(String[]::new);
    }

    @Test
    void sendOutTakeBackCheckAndSendOutAgain() {
        String issue = "/pumps/" + unit.id() + "/issue";
        assertThat(teos.open("/pumps/" + unit.id()).html().select("a[href=" + issue + "]"))
                .hasSize(1);
        Page blank = teos.open(issue);
        assertThat(blank.text())
                .contains("It may go out: ready", "Its electrical test holds to 14 Mar 2027", "Low-suction screen");
        assertThat(blank.html().select("[name=told]").eachAttr("value"))
                .contains("ROPE", "GROUND_FAULT", "DRY_RUN", "DISCHARGE", "FROST")
                .doesNotContain("CARBON_MONOXIDE");
        String paper =
                String.valueOf(teos.submit(issue, issue("", "2026-03-20")).location());
        Page sheet = teos.open(paper);
        assertThat(sheet.text("h1")).isEqualTo("BF-04, out until Fri 20 Mar");
        assertThat(sheet.text("main"))
                .contains("Ansel Roofing", "Friday 20 March 2026", "Discharge hose", "Never run it dry", "Jo Ferris");
        assertThat(teos.open("/pumps/" + unit.id()).text()).contains("out until Fri 20 Mar");
        assertThat(teos.open("/pumps").text()).contains("out until Fri 20 Mar");
        assertThat(teos.open("/").text()).contains("One out on hire");
        assertThat(teos.open("/hires").text()).contains("One pump is out", "Ansel Roofing");
        assertThat(teos.open(issue).text()).contains("It is out", "With Ansel Roofing until Fri 20 Mar");

        clock.set("2026-03-22T15:00:00Z");
        assertThat(teos.open("/hires").text("h1")).isEqualTo("One pump is out, one is over its day");
        Page form = teos.open(paper + "/return");
        assertThat(form.value("kit[1]")).isEqualTo("2");
        assertThat(teos.submit(paper + "/return", back("")).location()).isEqualTo(paper);
        assertThat(teos.open(paper).text("h1")).isEqualTo("BF-04, back 22 Mar");
        assertThat(teos.open("/pumps/" + unit.id()).text()).contains("Back from hire with Ansel Roofing");
        Page refused = teos.open(issue);
        assertThat(refused.text()).contains("It may not go out");
        assertThat(refused.html().select("main form")).isEmpty();
        assertThat(teos.submit(issue, issue("", "2026-03-25")).status()).isEqualTo(422);

        clock.set("2026-03-22T18:00:00Z");
        desk.sign(unit, Phase.AFTER_HIRE, ilse);
        clock.set("2026-03-23T15:00:00Z");
        assertThat(teos.submit(issue, issue("", "2026-03-25")).status()).isEqualTo(302);
    }

    @Test
    void keepWhatWasTypedWhenItIsRefused() {
        String issue = "/pumps/" + unit.id() + "/issue";
        Page late = teos.submit(issue, issue("", "2027-03-20", "phone", "555 0100"));
        assertThat(late.status()).isEqualTo(422);
        assertThat(late.wrong("dueBackOn"))
                .isEqualTo(
                        "Its electrical test holds to 14 Mar 2027 only. Test it first, or have it back by that day.");
        assertThat(late.value("phone")).isEqualTo("555 0100");
        assertThat(late.html().select("[name=told][checked]")).hasSameSizeAs(Caution.of(unit));
        assertThat(late.html().select("[name=kit][checked]").eachAttr("value")).containsExactly("0", "1");

        Page empty = teos.submit(issue, "hirer", " ", "fuel", "half");
        assertThat(empty.wrong("dueBackOn")).isEqualTo("Say on which day it is due back.");
        Page untold = teos.submit(issue, "hirer", "Jo", "dueBackOn", "2026-03-20", "takenBy", "Jo", "told", "FROST");
        assertThat(untold.wrong("told")).isEqualTo("Tell the hirer each of these and tick it.");

        // somebody else sends it out while the form is open
        hires.issue(desk.issue(unit, "2026-03-18"), ilse);
        Page lost = teos.submit(issue, issue("", "2026-03-20", "phone", "555 0100"));
        assertThat(lost.status()).isEqualTo(409);
        assertThat(lost.value("phone")).isEqualTo("555 0100");
        assertThat(lost.text()).contains("It is out", "With Ansel Roofing until Wed 18 Mar");
        assertThat(hires.ofUnit(unit.id())).hasSize(1);
    }

    @Test
    void lookAtTheCordBeforeItIsBack() {
        String paper = "/hires/" + hires.issue(desk.issue(unit, "2026-03-20"), teo);
        Page unlooked = teos.submit(paper + "/return", "condition", "Muddy");
        assertThat(unlooked.status()).isEqualTo(422);
        assertThat(unlooked.wrong("cordIs")).isEqualTo("Look at the cord and say whether it is whole.");
        assertThat(unlooked.wrong("liquid")).isEqualTo("Say what it pumped.");
        assertThat(unlooked.wrong("kit[1]")).isEqualTo("Type how many came back, from 0 to 2.");
        assertThat(unlooked.text("#condition")).isEqualTo("Muddy");
        Page wordless = teos.submit(
                paper + "/return", "cordIs", "DAMAGED", "liquid", "CLEAN", "kit[0]", "1", "kit[1]", "2", "kit[2]", "0");
        assertThat(wordless.wrong("cord")).isEqualTo("Say what is wrong with the cord, and where.");
        Page damaged = teos.submit(
                paper + "/return",
                "cordIs",
                "DAMAGED",
                "cord",
                "Cut by the plug",
                "liquid",
                "FOUL",
                "kit[0]",
                "1",
                "kit[1]",
                "1",
                "kit[2]",
                "0");
        assertThat(damaged.location()).isEqualTo(paper);
        assertThat(teos.open(paper).text())
                .contains("Missing: 1 × Discharge hose", "Damaged, or a pin is missing", "sewage");
        assertThat(teos.open("/pumps/" + unit.id()).text())
                .contains("Severity 4: Cut by the plug", "pumped sewage: wash and disinfect");
        assertThat(teos.submit(paper + "/return", back("")).status()).isEqualTo(409);
    }

    @Test
    void layTheSameViewsOutAndBackSideBySide() {
        String paper = "/hires/" + hires.issue(desk.issue(unit, "2026-03-20"), teo);
        byte[] front = Pictures.jpeg(60, 40);
        assertThat(teos.upload(paper + "/photos", new MockMultipartFile("photo-FRONT", "a.jpg", "image/jpeg", front))
                        .location())
                .isEqualTo(paper + "/photos");
        hires.takeBack(hires.openOf(unit.id()).orElseThrow().id(), desk.back(Liquid.CLEAN), teo);
        teos.upload(
                paper + "/photos",
                new MockMultipartFile("photo-FRONT", "b.jpg", "image/jpeg", Pictures.jpeg(50, 40)),
                new MockMultipartFile("photo-PLATE_AND_METER", "c.jpg", "image/jpeg", Pictures.jpeg(40, 40)));
        assertThat(teos.open(paper + "/photos").html().select(".shot img").eachAttr("alt"))
                .containsExactly("Front as it went out", "Front as it came back", "Plate and meter as it came back");
        Page none = teos.upload(
                paper + "/photos", new MockMultipartFile("photo-BACK", "a.txt", "text/plain", "no".getBytes()));
        assertThat(none.status()).isEqualTo(422);
        assertThat(none.wrong("photo-BACK")).startsWith("This is no photo");
    }

    @Test
    void changeTheLastDayAndSwapForAnother() {
        Unit other = desk.ready("BF-05");
        findings.write(FindingDraft.about(other.id(), 2, "Plate gap 1.5 mm"), teo);
        String paper = "/hires/" + hires.issue(desk.issue(unit, "2026-03-20"), teo);
        assertThat(teos.submit(paper + "/extend", "dueBackOn", "2026-03-27", "version", "0")
                        .location())
                .isEqualTo(paper);
        assertThat(teos.open(paper).text()).contains("out until Fri 27 Mar", "changed to Fri 27 Mar by Teo Brandt");
        Page stale = teos.submit(paper + "/extend", "dueBackOn", "2026-03-28", "version", "0");
        assertThat(stale.status()).isEqualTo(409);
        assertThat(stale.value("dueBackOn")).isEqualTo("2026-03-28");

        clock.set("2026-03-15T15:00:00Z");
        assertThat(teos.open(paper + "/swap?with=BF-99").text()).contains("No other pump has the tag \"BF-99\".");
        Page both = teos.open(paper + "/swap?with=bf-05");
        assertThat(both.value("out.hirer")).isEqualTo("Ansel Roofing");
        assertThat(both.value("out.dueBackOn")).isEqualTo("2026-03-27");
        List<String> typed = new ArrayList<>(List.of("with", "BF-05", "reason", "WRONG_PUMP"));
        typed.addAll(List.of(back("back.")));
        typed.addAll(List.of(issue("out.", "2026-03-27")));
        Page unread = teos.submit(paper + "/swap", typed.toArray(String[]::new));
        assertThat(unread.status()).isEqualTo(422);
        assertThat(unread.wrong("out.limitsRead")).isEqualTo("Read the limits to the hirer and tick that you did.");
        assertThat(unread.html().select("[name=back.liquid][checked]").val()).isEqualTo("CLEAN");
        typed.addAll(List.of("out.limitsRead", "true"));
        String next = String.valueOf(
                teos.submit(paper + "/swap", typed.toArray(String[]::new)).location());
        assertThat(teos.open(next).text("main"))
                .contains("BF-05, out until Fri 27 Mar", "Went out in place of BF-04", "Severity 2: Plate gap 1.5 mm");
        assertThat(teos.open(paper).text("main")).contains("Swapped for BF-05: wrong pump for the job");
    }

    @Test
    void countWhoWentWithoutAndShowTheFigures() {
        hires.issue(desk.issue(unit, "2026-03-20"), teo);
        Page unsaid = teos.submit("/hires/turn-away", "note", "2 in trash");
        assertThat(unsaid.wrong("reason")).isEqualTo("Say why.");
        assertThat(unsaid.value("note")).isEqualTo("2 in trash");
        String site = String.valueOf(yard.brackenfold().id());
        assertThat(teos.submit("/hires/turn-away", "reason", "ALL_OUT", "site", site, "kind", "ENGINE_TRASH")
                        .location())
                .isEqualTo("/hires");
        Page figures = teos.open("/hires/figures?from=2026-03-13&to=2026-03-14");
        assertThat(figures.text(".figure-word")).isEqualTo("50.0 %");
        assertThat(figures.text("main")).contains("1 days out of 2 available", "All such pumps were out");
        assertThat(teos.open("/hires/figures?from=2026-02-31&to=x").status()).isEqualTo(200);

        assertThat(teos.submit("/hires/emergency-line", "emergencyLine", "Ilse").status())
                .isEqualTo(403);
        Pages ilses = Pages.signedIn(mvc, "ilse", "river at thaw");
        ilses.submit("/hires/emergency-line", "emergencyLine", "Ilse Marrow, 555 0199");
        assertThat(ilses.open("/hires/" + hires.openOf(unit.id()).orElseThrow().id())
                        .text())
                .contains("When something goes wrong: Ilse Marrow, 555 0199");
        assertThat(teos.open("/hires/999999").status()).isEqualTo(404);
    }
}
