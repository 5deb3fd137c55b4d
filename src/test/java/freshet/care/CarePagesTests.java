package freshet.care;

import static freshet.care.CareYard.allPass;
import static freshet.care.CareYard.line;
import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.TestClock;
import freshet.checklists.AnswerKind;
import freshet.checklists.CheckLine;
import freshet.checklists.Checklist;
import freshet.checklists.ChecklistDraft;
import freshet.checklists.Checklists;
import freshet.checklists.LineDraft;
import freshet.checklists.Phase;
import freshet.people.Person;
import freshet.pumps.PumpKind;
import freshet.pumps.Unit;
import java.util.ArrayList;
import java.util.List;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class CarePagesTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    Care care;

    @Autowired
    CareYard yard;

    @Autowired
    Checklists checklists;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TestClock clock;

    Person ilse;
    Person teo;
    Unit unit;
    Task opening;
    Pages ilses;
    Pages teos;

    @BeforeEach
    void springMorning() {
        clock.set("2026-03-14T14:00:00Z");
        ilse = yard.ilse();
        teo = yard.teo();
        unit = yard.unit("BF-04");
        opening = care.tasksOf(unit.id()).stream()
                .filter(task -> task.phase() == Phase.OPENING)
                .findFirst()
                .orElseThrow();
        ilses = Pages.signedIn(mvc, "ilse", "river at thaw");
        teos = Pages.signedIn(mvc, "teo", "mud on boots");
    }

    private Worksheet sheet() {
        return care.worksheet(opening.id());
    }

    private String address() {
        return "/tasks/" + opening.id();
    }

    private String name(String question, String part) {
        return "line[c" + line(sheet(), question).id() + "]." + part;
    }

    /** Every answer that passes, as the form sends it, with others in their place or beside. */
    private String[] form(Person by, String press, String... others) {
        List<String> form = new ArrayList<>(
                List.of("press", press, "version", String.valueOf(sheet().task().version())));
        List<String> named = new ArrayList<>();
        for (int i = 0; i < others.length; i += 2) {
            named.add(others[i]);
        }
        for (Answer answer : allPass(sheet(), by)) {
            String name = "line[c" + answer.lineId() + "].answer";
            if (!named.contains(name)) {
                form.add(name);
                form.add(String.valueOf(answer.answer()));
            }
            String instrument = "line[c" + answer.lineId() + "].instrument";
            if (answer.instrument() != null && !named.contains("instrument") && !named.contains(instrument)) {
                form.add(instrument);
                form.add(answer.instrument());
            }
        }
        form.addAll(List.of(others));
        return form.toArray(String[]::new);
    }

    @Test
    void beginsWithTheCautionAndItsTick() {
        Page page = teos.open(address());

        assertThat(page.text("h1")).isEqualTo("BF-04, Utility submersible");
        assertThat(page.text(".eyebrow")).isEqualToNormalizingWhitespace("Opening 2026 · by Fri 20 Mar · about 35 min");
        Element first = page.html().selectFirst("form.checks > fieldset");
        assertThat(first.hasClass("caution")).isTrue();
        assertThat(first.text()).contains("never by the cord", "Unplugged, and the plug is with me", "Local code");
        assertThat(first.select("input[type=checkbox]").hasAttr("checked")).isFalse();
        assertThat(page.text(".sign"))
                .contains("0 of 17 answered", "Sign as Teo Brandt", "Lines for a competent person");
    }

    @Test
    void standsTheCautionAgainBeforeTheStepWherePowerComesOn() {
        Element fault = teos.open(address()).html().getElementById(name("Does the earth-fault", "answer"));
        Element before = fault.previousElementSibling();
        assertThat(before.hasClass("caution")).isTrue();
        assertThat(before.text()).contains("Power comes on from here", "Dry hands");
    }

    @Test
    void locksElectricalLinesAndNamesWhoMayAnswerThem() {
        Page page = teos.open(address());

        Element earth = page.html().getElementById(name("Earth continuity", "answer"));
        assertThat(earth.text())
                .contains(
                        "Needs a person competent for electrical work.",
                        "Teo Brandt is not recorded as one.",
                        "Ilse Marrow");
        assertThat(earth.select("input")).isEmpty();
        Element open = ilses.open(address()).html().getElementById(name("Earth continuity", "answer"));
        assertThat(open.tagName()).isEqualTo("input");
    }

    @Test
    void keepsWhatWasTypedOnSaveEvenWhatCannotBeRead() {
        String amps = name("Running amps", "answer");
        String shaft = name("Turn the shaft", "answer");
        Page saved = teos.submit(address(), "press", "save", "version", "0", amps, "four", shaft, "Gritty");
        assertThat(saved.status()).isEqualTo(302);
        assertThat(saved.location()).isEqualTo(address());

        Page page = teos.open(address());
        assertThat(page.text()).contains("Saved. Nothing is signed yet.");
        assertThat(page.html().getElementById(amps).val()).isEqualTo("four");
        assertThat(page.html().select("[name='" + shaft + "'][checked]").val()).isEqualTo("Gritty");
        assertThat(page.text(".verdict")).isEqualTo("Watch");
    }

    @Test
    void asksEveryPersonToTickSafetyThemselves() {
        String unplugged = name("Unplugged", "answer");
        teos.submit(address(), "press", "save", "version", "0", unplugged, "YES");

        assertThat(teos.open(address()).html().getElementById(unplugged).hasAttr("checked"))
                .isTrue();
        Page page = ilses.open(address());
        assertThat(page.html().getElementById(unplugged).hasAttr("checked")).isFalse();
        assertThat(page.text(".caution")).contains("Teo Brandt ticked this before.");
    }

    @Test
    void refusesToSignWithoutTheTickAtItsPlaceAndLosesNothing() {
        String unplugged = name("Unplugged", "answer");
        String amps = name("Running amps", "answer");
        Page page = teos.submit(address(), form(teo, "sign", unplugged, "", amps, "4.4"));

        assertThat(page.status()).isEqualTo(422);
        assertThat(page.wrong(unplugged)).isEqualTo("Do this first and tick it. Nothing can be signed without it.");
        assertThat(page.text(".wrongs h2")).isEqualTo("One thing to put right");
        assertThat(page.html().select(".wrongs a").attr("href")).isEqualTo("#" + unplugged);
        assertThat(page.html().getElementById(amps).val()).isEqualTo("4.4");
        assertThat(care.recordsOf(unit.id())).isEmpty();
    }

    @Test
    void opensThePlaceForAFindingUnderACheckThatFailed() {
        String shaft = name("Turn the shaft", "answer");
        String words = name("Turn the shaft", "finding");
        Page page = teos.submit(address(), form(teo, "sign", shaft, "Scrapes"));

        assertThat(page.status()).isEqualTo(422);
        assertThat(page.wrong(words)).isEqualTo("Say in words what you found.");
        Element check = page.html().getElementById(shaft);
        assertThat(check.hasClass("bad")).isTrue();
        Element finding = check.selectFirst(".finding");
        assertThat(finding.hasClass("at-fail")).isFalse();
        assertThat(finding.text()).contains("keeps BF-04 from being ready", "A fail here is severity 3 at least");
        assertThat(page.text(".sign")).contains("1 failed", "BF-04 will be not ready");

        Page milder = teos.submit(
                address(),
                form(teo, "sign", shaft, "Scrapes", words, "Each turn", name("Turn the shaft", "severity"), "1"));
        assertThat(milder.wrong(name("Turn the shaft", "severity"))).isEqualTo("A fail here is severity 3 at least.");
        assertThat(milder.html().getElementById(words).text()).isEqualTo("Each turn");
    }

    @Test
    void signsAndShowsTheRecordWithWhatIsStillToDo() {
        String shaft = name("Turn the shaft", "answer");
        Page signed = teos.submit(
                address(),
                form(
                        teo,
                        "sign",
                        shaft,
                        "Scrapes",
                        name("Turn the shaft", "asLeft"),
                        "Free",
                        name("Gap between", "answer"),
                        "1.4",
                        "note",
                        "Grit under the plate"));
        assertThat(signed.status()).isEqualTo(302);

        Page record = teos.open(signed.location());
        assertThat(record.text()).contains("Signed.", "Signed by Teo Brandt", "Grit under the plate");
        assertThat(record.text("tr:contains(Turn the shaft)")).contains("Scrapes Free pass");
        assertThat(record.text("tr:contains(Earth continuity)")).contains("left");
        assertThat(record.text("tr:contains(Gap between)")).contains("1.4 mm", "watch", "pass to 1.0 mm");
        assertThat(record.text("tr:contains(Running amps)")).contains("4.5 A", "pass");
        assertThat(record.text()).contains("Every record of this unit still fits its digest", "SHA-256");
        assertThat(teos.open(address()).location()).isEqualTo(signed.location());
    }

    @Test
    void showsWhatWasTypedBesideWhatAnotherSignedMeanwhile() {
        String[] teosForm = form(
                teo,
                "sign",
                name("Running amps", "answer"),
                "4.4",
                name("Turn the shaft", "answer"),
                "Gritty",
                "note",
                "From the cellar");
        care.sign(opening.id(), SignOff.of(0, allPass(sheet(), ilse)), ilse);

        Page page = teos.submit(address(), teosForm);
        assertThat(page.status()).isEqualTo(409);
        assertThat(page.text("h1")).isEqualTo("Opening 2026 of BF-04 was signed meanwhile");
        assertThat(page.text()).contains("Ilse Marrow signed it", "From the cellar");
        assertThat(page.html().select("tr:contains(Running amps) td").eachText())
                .containsExactly("4.4", "4.5 A");
        assertThat(page.html().select("tr:contains(Turn the shaft) td").eachText())
                .containsExactly("Gritty", "Free");
        assertThat(care.recordsOf(unit.id())).hasSize(1);
    }

    @Test
    void keepsWhatWasTypedWhenSomebodySavedMeanwhile() {
        String amps = name("Running amps", "answer");
        ilses.submit(address(), "press", "save", "version", "0", amps, "4.7");
        Page page = teos.submit(address(), "press", "save", "version", "0", amps, "4.4");

        assertThat(page.status()).isEqualTo(409);
        assertThat(page.html().getElementById(amps).val()).isEqualTo("4.4");
        assertThat(page.text())
                .contains("Somebody changed this while you were typing", "Meanwhile Ilse Marrow answered: 4.7");
        assertThat(page.value("version")).isEqualTo("1");
        assertThat(teos.submit(address(), "press", "save", "version", "1", amps, "4.4")
                        .status())
                .isEqualTo(302);
    }

    @Test
    void refusesTimesAtTheirPlace() {
        Page page = teos.submit(address(), form(teo, "sign", "endedAt", "2026-03-14T23:00"));
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.wrong("endedAt")).isEqualTo("This is later than now.");
        assertThat(page.value("endedAt")).isEqualTo("2026-03-14T23:00");
        Page early = teos.submit(address(), form(teo, "sign", "endedAt", "2026-02-14T12:00"));
        assertThat(early.wrong("endedAt")).startsWith("This task counts from 2026-02-15.");
    }

    @Test
    void correctsARecordByANewOne() {
        long record = care.sign(opening.id(), SignOff.of(0, allPass(sheet(), teo)), teo);
        String correct = "/records/" + record + "/correct";
        String amps = name("Running amps", "answer");
        Page form = teos.open(correct);
        assertThat(form.html().getElementById(amps).val()).isEqualTo("4.5 A");
        assertThat(form.html().getElementById(name("Unplugged", "answer")).hasAttr("checked"))
                .isTrue();

        Page refused = teos.submit(correct, form(teo, "", amps, "5.0"));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.wrong("why")).isEqualTo("Say why the record was wrong.");
        assertThat(refused.html().getElementById(amps).val()).isEqualTo("5.0");
        Page corrected = teos.submit(correct, form(teo, "", amps, "5.0", "why", "Read the wrong meter"));
        assertThat(teos.open(corrected.location()).text())
                .contains("Corrects record " + record, "Read the wrong meter");
        assertThat(teos.open("/records/" + record).text()).contains("This record was corrected.");
        assertThat(teos.open("/records/" + record).html().select("a[href$=correct]"))
                .isEmpty();
        assertThat(teos.submit(correct, form(teo, "", amps, "4.9", "why", "Again"))
                        .status())
                .isEqualTo(409);
    }

    @Test
    void letsNobodyElseCorrectARecord() {
        long record = care.sign(opening.id(), SignOff.of(0, allPass(sheet(), ilse)), ilse);
        assertThat(teos.open("/records/" + record).html().select("a[href$=correct]"))
                .isEmpty();
        assertThat(teos.open("/records/" + record + "/correct").status()).isEqualTo(403);
        assertThat(teos.submit("/records/" + record + "/correct", "why", "Mine").status())
                .isEqualTo(403);
    }

    @Test
    void saysWhatATaskWasWithdrawnFor() {
        long cellar = yard.site("Cellar", CareYard.CHICAGO).id();
        yard.move(unit, cellar);
        Page page = teos.open(address());
        assertThat(page.text(".warn")).isEqualTo("This task was withdrawn. The unit stands at another site.");
        assertThat(page.html().select("form.checks")).isEmpty();

        String amps = name("Running amps", "answer");
        Page late = teos.submit(address(), "press", "save", "version", "0", amps, "4.4");
        assertThat(late.status()).isEqualTo(422);
        assertThat(late.text(".wrongs")).contains("withdrawn");
        assertThat(late.html().getElementById(amps).val()).isEqualTo("4.4");
    }

    @Test
    void knowsNothingOfOtherIds() {
        assertThat(teos.open("/tasks/999999").status()).isEqualTo(404);
        assertThat(teos.open("/records/999999").status()).isEqualTo(404);
        assertThat(teos.submit("/tasks/999999", "press", "sign").status()).isEqualTo(404);
    }

    @Test
    void passesOverLinesOfOtherChecklists() {
        CheckLine mine = line(sheet(), "Running amps");
        Page saved = teos.submit(
                address(),
                "press",
                "save",
                "version",
                "0",
                "line[c999999].answer",
                "YES",
                "line[x].answer",
                "YES",
                "line[c" + mine.id() + "].answer",
                "4.5");
        assertThat(saved.status()).isEqualTo(302);
        assertThat(sheet().saved()).containsOnlyKeys(mine.id());
    }

    private Checklist published(ChecklistDraft draft) {
        Checklist stands = checklists.checklist(opening.checklistId());
        return checklists.publish(stands.id(), stands.number(), draft, ilse);
    }

    /** The checklist with one line more at its end and without what it says about the label. */
    private Checklist nextVersion() {
        List<LineDraft> lines = new ArrayList<>(
                ChecklistDraft.of(checklists.checklist(opening.checklistId())).lines());
        lines.removeIf(line -> line.question().startsWith("Does its label"));
        LineDraft last = lines.get(lines.size() - 1);
        lines.add(new LineDraft(
                null,
                last.section(),
                "Is the new rope on?",
                null,
                null,
                AnswerKind.YES_NO,
                null,
                null,
                null,
                null,
                null,
                List.of(),
                2,
                true,
                false,
                false,
                false,
                null,
                "common practice, no source"));
        return published(new ChecklistDraft(40, "Ropes were forgotten", lines));
    }

    @Test
    void keepsWhatWasTypedWithTheVersionThatItWasTypedOn() {
        Checklist first = sheet().checklist();
        String label = name("Does its label", "answer");
        String amps = name("Running amps", "answer");
        Page open = teos.open(address());
        assertThat(open.value("checklist")).isEqualTo(String.valueOf(first.versionId()));
        nextVersion();
        assertThat(care.task(opening.id()).minutes()).isEqualTo(40);

        Page saved = teos.submit(
                address(),
                "press",
                "save",
                "version",
                "0",
                "checklist",
                open.value("checklist"),
                label,
                "YES",
                amps,
                "4.4");
        assertThat(saved.status()).isEqualTo(302);
        Page again = teos.open(address());
        assertThat(again.text()).contains("version 1").doesNotContain("Is the new rope on?");
        assertThat(again.html().getElementById(amps).val()).isEqualTo("4.4");
        assertThat(again.html().select("[name='" + label + "'][checked]").val()).isEqualTo("YES");

        Page signed = teos.submit(address(), form(teo, "sign", "checklist", again.value("checklist"), label, "YES"));
        assertThat(care.record(Long.parseLong(signed.location().replaceAll("\\D", "")))
                        .checklistVersionId())
                .isEqualTo(first.versionId());
    }

    @Test
    void losesNothingTypedOnAVersionOtherThanTheTaskWasBegunWith() {
        Page ilsesPage = ilses.open(address());
        String ampsBefore = name("Running amps", "answer");
        Checklist second = nextVersion();
        Page teosPage = teos.open(address());
        String amps = name("Running amps", "answer");
        String rope = name("Is the new rope", "answer");
        assertThat(teosPage.value("checklist")).isEqualTo(String.valueOf(second.versionId()));
        ilses.submit(
                address(),
                "press",
                "save",
                "version",
                "0",
                "checklist",
                ilsesPage.value("checklist"),
                ampsBefore,
                "4.7");

        for (String press : List.of("save", "sign")) {
            Page page = teos.submit(
                    address(),
                    "press",
                    press,
                    "version",
                    press.equals("save") ? "0" : "1",
                    "checklist",
                    teosPage.value("checklist"),
                    amps,
                    "4.4",
                    rope,
                    "YES",
                    "note",
                    "From the cellar");
            assertThat(page.status()).as(press).isEqualTo(409);
            assertThat(page.value("checklist")).isEqualTo(ilsesPage.value("checklist"));
            assertThat(page.html().getElementById(ampsBefore).val()).isEqualTo("4.4");
            assertThat(page.text()).contains("Meanwhile Ilse Marrow answered: 4.7", "no line in version 1");
            assertThat(page.html().getElementById("note").text())
                    .contains("From the cellar", "Typed on version 2: Is the new rope on? YES");
        }
        assertThat(sheet().saved()).hasSize(1);
    }

    @Test
    void asksWhetherTenTimesThePlateIsSoAndSignsOnAYes() {
        String amps = name("Running amps", "answer");
        Page asked = ilses.submit(address(), form(ilse, "sign", amps, "44", "instrument", "Tester 3"));
        assertThat(asked.status()).isEqualTo(422);
        assertThat(asked.wrong(amps)).contains("Is 44.0 A so?", "If 4.4 A was meant");
        assertThat(asked.value(amps)).isEqualTo("44");
        assertThat(asked.html().select("[name=pressed]").val()).isEqualTo("sign");

        String finding = name("Running amps", "finding");
        Page signed = ilses.submit(
                address(),
                form(
                        ilse,
                        "",
                        "pressed",
                        "sign",
                        amps,
                        "44",
                        finding,
                        "Draws far too much",
                        "instrument",
                        "Tester 3",
                        "asked",
                        amps + "=44",
                        "itIsSo",
                        "asked"));
        assertThat(signed.location()).startsWith("/records/");
    }

    @Test
    void asksOnceWhatIsMeasuredWithAndKeepsItWithEveryReading() {
        String amps = name("Running amps", "answer");
        Page first = ilses.open(address());
        assertThat(first.html().select("[name=instrument]")).hasSize(1);
        ilses.submit(
                address(),
                "press",
                "save",
                "version",
                "0",
                amps,
                "4.4",
                "instrument",
                "Tester 3",
                "note",
                "Half done",
                "endedAt",
                "2026-03-14T08:59");
        Page kept = ilses.open(address());
        assertThat(kept.value("instrument")).isEqualTo("Tester 3");
        assertThat(kept.html().getElementById("note").text()).isEqualTo("Half done");
        assertThat(kept.value("endedAt")).isEqualTo("2026-03-14T08:59");

        Page signed = ilses.submit(address(), form(ilse, "sign", "instrument", "Tester 3", "note", "Half done"));
        Page record = ilses.open(signed.location());
        assertThat(record.text("dl")).contains("Measured with Tester 3");
        assertThat(record.text("tr:contains(Earth continuity)")).contains("with Tester 3");
        assertThat(record.text("tr:contains(Are cord, plug)")).doesNotContain("Tester 3");
        assertThat(record.text()).contains("still fits its digest");

        Task other = care.tasksOf(yard.unit("BF-05").id()).get(0);
        assertThat(ilses.open("/tasks/" + other.id()).value("instrument")).isEqualTo("Tester 3");
        assertThat(teos.open("/tasks/" + other.id()).value("instrument")).isEmpty();

        String correct = signed.location() + "/correct";
        assertThat(ilses.open(correct).value("instrument")).isEqualTo("Tester 3");
        Page corrected = ilses.submit(correct, form(ilse, "", "instrument", "Tester 5", "why", "Wrong label"));
        assertThat(ilses.open(corrected.location()).text("tr:contains(Running amps)"))
                .contains("with Tester 5");
        Page tooLong =
                ilses.submit("/tasks/" + other.id(), "press", "sign", "version", "0", "instrument", "x".repeat(121));
        assertThat(tooLong.wrong("instrument")).isEqualTo("This is too long. It may have 120 characters at most.");
    }

    @Test
    void namesWhatEachLineWasMeasuredWithAndRefusesWhereOneThatAsksNamesNothing() {
        String earth = name("Earth continuity", "instrument");
        String insulation = name("Insulation", "instrument");
        Page first = ilses.open(address());
        assertThat(first.html().getElementById(earth).attr("list")).isEqualTo("instruments");
        assertThat(first.html().getElementById(earth).closest("details"))
                .as("asked")
                .isNull();
        assertThat(first.html()
                        .getElementById(name("Running amps", "instrument"))
                        .closest("details"))
                .as("only offered")
                .isNotNull();
        Page refused = ilses.submit(address(), form(ilse, "sign", earth, "", insulation, "Megger 2"));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.wrong(earth)).startsWith("Say what this was measured with");
        assertThat(refused.html().select(".wrong")).hasSize(1);
        assertThat(refused.value(insulation)).isEqualTo("Megger 2");
        assertThat(refused.value(name("Earth continuity", "answer"))).isEqualTo("0.2");
        Page tooLong = ilses.submit(address(), form(ilse, "sign", earth, "x".repeat(121)));
        assertThat(tooLong.wrong(earth)).contains("120 characters at most");
        assertThat(care.recordsOf(unit.id())).isEmpty();

        ilses.submit(address(), form(ilse, "save", earth, "", insulation, "Megger 2", "instrument", "Tester 3"));
        assertThat(ilses.open(address()).value(insulation)).isEqualTo("Megger 2");
        Page signed = ilses.submit(
                address(), form(ilse, "sign", earth, "", insulation, "Megger 2", "instrument", "Tester 3"));
        Page record = ilses.open(signed.location());
        assertThat(record.text("tr:contains(Earth continuity)")).contains("with Tester 3");
        assertThat(record.text("tr:contains(Insulation)")).contains("with Megger 2");
        assertThat(record.text("dl")).contains("Measured with Tester 3, Megger 2");

        String correct = signed.location() + "/correct";
        Page begun = ilses.open(correct);
        assertThat(begun.value("instrument")).isEmpty();
        assertThat(begun.value(insulation)).isEqualTo("Megger 2");
        assertThat(begun.value(earth)).isEqualTo("Tester 3");
        Page corrected = ilses.submit(
                correct, form(ilse, "", "instrument", "", earth, "Tester 5", insulation, "Megger 2", "why", "Label"));
        Page after = ilses.open(corrected.location());
        assertThat(after.text("tr:contains(Earth continuity)")).contains("with Tester 5");
        assertThat(after.text("tr:contains(Insulation)")).contains("with Megger 2");
        assertThat(after.text()).contains("still fits its digest");
        jdbc.sql("alter table record_line disable trigger user").update();
        jdbc.sql("update record_line set instrument = 'Megger 9' where instrument = 'Megger 2'")
                .update();
        jdbc.sql("alter table record_line enable trigger user").update();
        assertThat(care.chainHolds(unit.id()))
                .as("the instrument of a line is signed")
                .isFalse();

        Task other = care.tasksOf(yard.unit("BF-05").id()).get(0);
        assertThat(suggested(ilses, other)).containsExactlyInAnyOrder("Tester 5", "Tester 3", "Megger 9");
        assertThat(suggested(teos, other)).as("neither his nor this unit's").isEmpty();
        Task later =
                care.tasksOf(unit.id()).stream().filter(Task::open).findFirst().orElseThrow();
        assertThat(suggested(teos, later)).contains("Tester 5", "Megger 9");
    }

    private static List<String> suggested(Pages pages, Task task) {
        return pages.open("/tasks/" + task.id())
                .html()
                .select("#instruments option")
                .eachAttr("value");
    }

    @Test
    void showsWhatWasFoundAndLeftSideBySide() {
        long record = care.sign(
                opening.id(),
                SignOff.of(
                        0,
                        CareYard.with(
                                allPass(sheet(), ilse),
                                new Answer(line(sheet(), "Gap between").id(), "2.6 mm", "1.4 mm", null, null))),
                ilse);
        Page page = teos.open("/records/" + record);
        assertThat(page.html().select("thead th").eachText()).containsSequence("As found", "As left");
        assertThat(page.html().select("tr:contains(Gap between) td").eachText().subList(0, 2))
                .containsExactly("2.6 mm", "1.4 mm");
    }

    @Test
    void refusesEveryChangeOfASignedRecordAndNotesThatItWasTried() {
        long record = care.sign(opening.id(), SignOff.of(0, allPass(sheet(), ilse)), ilse);
        String amps = name("Running amps", "answer");
        Page page = teos.submit("/records/" + record, amps, "1.1", "note", "better");
        assertThat(page.status()).isEqualTo(409);
        assertThat(page.text(".wrongs")).contains("A signed record is never changed", "stands in the trail");
        assertThat(teos.submit(address(), "press", "save", "version", "1", amps, "1.1")
                        .status())
                .isEqualTo(409);
        assertThat(teos.submit("/records/" + record + "/correct", "why", "Mine").status())
                .isEqualTo(403);

        assertThat(jdbc.sql(
                                "select p.full_name || ', ' || e.subject || ', ' || e.detail from audit_entry e "
                                        + "join account p on p.id = e.account_id where e.action = 'change of a signed record refused'")
                        .query(String.class)
                        .list())
                .hasSize(3)
                .containsOnly("Teo Brandt, unit:" + unit.id() + ", record " + record);
        assertThat(care.recordsOf(unit.id())).hasSize(1);
        assertThat(care.chainHolds(unit.id())).isTrue();
    }

    @Test
    void letsOnlyWhoIsCompetentTickAndSignWhatIsForThem() {
        Unit foul = yard.unit("QM-201", PumpKind.SEWAGE, yard.brackenfold().id(), CareYard.LONG_AGO);
        yard.freya();
        Task task = care.tasksOf(foul.id()).stream()
                .filter(each -> each.phase() == Phase.OPENING)
                .findFirst()
                .orElseThrow();
        Worksheet sheet = care.worksheet(task.id());
        CheckLine air = line(sheet, "The air was tested");
        String tick = "line[c" + air.id() + "].answer";
        Page page = teos.open("/tasks/" + task.id());
        assertThat(page.html().select("[name='" + tick + "']")).isEmpty();
        assertThat(page.html().getElementById(tick).text())
                .contains("Needs a person competent for gas", "Leave the task to Freya Osterby");
        Page open = Pages.signedIn(mvc, "freya", "spring round").open("/tasks/" + task.id());
        assertThat(open.html().select("[name='" + tick + "']")).hasSize(1);
        assertThat(open.text())
                .contains(
                        "Needs: gas. Freya Osterby may answer this.",
                        "Needs: electrical. Freya Osterby or Ilse Marrow may");

        Page refused = teos.submit("/tasks/" + task.id(), "press", "sign", "version", "0", tick, "YES");
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.wrong(tick)).contains("Only a person recorded as competent");
        Page without = teos.submit("/tasks/" + task.id(), "press", "sign", "version", "0");
        assertThat(without.wrong(tick)).contains("nothing can be signed without it");
        assertThat(care.recordsOf(foul.id())).isEmpty();
    }
}
