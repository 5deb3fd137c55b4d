package freshet.checklists;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.measures.UnitSystem;
import freshet.people.NotAllowed;
import freshet.people.People;
import freshet.people.Person;
import freshet.pumps.PumpKind;
import java.util.ArrayList;
import java.util.List;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

/** What people read of checklists, and how an owner changes one, as a browser without script. */
@FreshetTest
class ChecklistPagesTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    Checklists checklists;

    @Autowired
    Care care;

    @Autowired
    CareYard yard;

    @Autowired
    People people;

    Person ilse;
    Pages ilses;
    Pages teos;
    Checklist opening;

    @BeforeEach
    void people() {
        ilse = yard.ilse();
        yard.teo();
        ilses = Pages.signedIn(mvc, "ilse", "river at thaw");
        teos = Pages.signedIn(mvc, "teo", "mud on boots");
        opening = list("opening-utility-submersible");
    }

    private Checklist list(String code) {
        return checklists.checklists().stream()
                .filter(each -> each.code().equals(code))
                .findFirst()
                .orElseThrow();
    }

    private String address() {
        return "/checklists/" + opening.id();
    }

    private String edit() {
        return address() + "/edit";
    }

    private static int place(Page page, String question) {
        List<Element> lines = page.html().select(".line-edit");
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).select("input[name$=question]").val().startsWith(question)) {
                return i;
            }
        }
        throw new AssertionError("no line " + question);
    }

    private static String field(Page page, String question, String part) {
        return "lines[" + place(page, question) + "]." + part;
    }

    /** The form of a page as a browser would send it, with some fields typed over; null is a tick taken off. */
    private static String[] form(Page page, String press, String... typed) {
        List<String> form = new ArrayList<>(List.of("press", press));
        List<String> over = new ArrayList<>();
        for (int i = 0; i < typed.length; i += 2) {
            over.add(typed[i]);
        }
        for (Element field : page.html().select("form.narrow [name]")) {
            boolean off = field.attr("type").equals("checkbox") && !field.hasAttr("checked");
            if (!field.tagName().equals("button") && !off && !over.contains(field.attr("name"))) {
                form.add(field.attr("name"));
                form.add(field.tagName().equals("select") ? chosen(field) : field.val());
            }
        }
        for (int i = 0; i < typed.length; i += 2) {
            if (typed[i + 1] != null) {
                form.add(typed[i]);
                form.add(typed[i + 1]);
            }
        }
        return form.toArray(String[]::new);
    }

    private static String chosen(Element select) {
        Element chosen = select.selectFirst("option[selected]");
        return (chosen == null ? select.selectFirst("option") : chosen).val();
    }

    @Test
    void showAllByKindAndPurposeAndOneAsATechnicianSeesIt() {
        Page all = teos.open("/checklists");
        assertThat(all.html().select("h2").eachText())
                .hasSize(7)
                .contains("Utility submersible", "Sewage pump", "Any kind of pump");
        assertThat(all.text("section:has(#of-UTILITY_SUBMERSIBLE) tbody tr:first-child"))
                .startsWith("OpeningOpening, utility submersible 35 "
                        + opening.lines().size() + " 1")
                .contains("came with Freshet");
        assertThat(all.html().select("main a[href$=new]")).isEmpty();
        assertThat(all.text()).doesNotContain("??");

        Page one = teos.open(address());
        Element first = one.html().selectFirst(".seen .caution");
        assertThat(first.nextElementSibling().text()).startsWith("Unplugged, and the plug is with me");
        assertThat(one.text(".check:contains(Running amps)"))
                .contains("75", "110", "of the plate's amps", "a fail is severity 3");
        assertThat(one.text(".check:contains(Earth continuity)"))
                .contains("only a person competent for electrical work", "AS/NZS 3760");
        assertThat(one.html().select("a[href$=edit]")).isEmpty();
        assertThat(teos.open(edit()).status()).isEqualTo(403);
        assertThat(teos.submit(edit(), "press", "publish").status()).isEqualTo(403);
        assertThat(teos.open("/checklists/new").status()).isEqualTo(403);
        assertThat(teos.open("/checklists/999999").status()).isEqualTo(404);
        assertThat(teos.open(address() + "/versions/7").status()).isEqualTo(404);
        assertThatThrownBy(() -> checklists.publish(opening.id(), 1, ChecklistDraft.of(opening), yard.teo()))
                .isInstanceOf(NotAllowed.class);
    }

    @Test
    void printABlankOneWithCautionsBeforeTheSteps() {
        Page paper = teos.open(address() + "/print");
        Element fault = paper.html().selectFirst(".paper-line:contains(Does the earth-fault switch)");
        assertThat(fault.child(0).text()).contains("Power comes on from here");
        assertThat(fault.select(".box").eachText()).containsExactly("yes", "no");
        assertThat(paper.text(".blanks")).contains("Tag", "Serial", "Measured with", "Signature and day");
        assertThat(paper.html().select(".paper-line")).hasSameSizeAs(opening.lines());
        assertThat(paper.text(".paper-line:contains(Gap between)")).contains("mm", "As left", "Does not apply");
    }

    @Test
    void changeNothingUntilItWasSeenAndSaidWhy() {
        Page page = ilses.open(edit());
        String gap = field(page, "Gap between", "passHigh");
        assertThat(page.value(gap)).isEqualTo("1");
        String[] typed = form(
                page,
                "look",
                gap,
                "0.08 in",
                field(page, "Gap between", "watchHigh"),
                "3",
                field(page, "Is the strainer", "question"),
                "Is the screen clean?",
                field(page, "Is its kit", "required"),
                null,
                field(page, "Running amps", "asksInstrument"),
                "true",
                "minutes",
                "40");
        Page look = ilses.submit(edit(), typed);
        assertThat(look.status()).isEqualTo(200);
        assertThat(look.text(".changes li:contains(Gap between)"))
                .contains("Limits pass to 1.0 mm, watch to 2.0 mm → pass to 2.0 mm, watch to 3.0 mm");
        assertThat(look.text(".changes li:contains(kit complete)")).contains("Must be answered yes → no");
        assertThat(look.text(".changes li:contains(screen)"))
                .contains("Is the strainer clean, whole and fixed? → Is the screen clean?");
        assertThat(look.text(".changes")).contains("35 → 40");
        assertThat(look.text(".changes li:contains(Running amps)")).contains("Asks what it is measured with no → yes");
        assertThat(checklists.checklist(opening.id()).number()).isEqualTo(1);

        Page silent = ilses.submit(edit(), form(look, "publish"));
        assertThat(silent.status()).isEqualTo(422);
        assertThat(silent.wrong("note")).isEqualTo("Say in one sentence why.");
        Page back = ilses.submit(edit(), form(silent, "back", "note", "Half a sentence"));
        assertThat(back.value(field(back, "Gap between", "passHigh"))).isEqualTo("0.08 in");

        Page published = ilses.submit(edit(), form(silent, "publish", "note", "The maker says 2 mm"));
        assertThat(published.location()).isEqualTo(address());
        Checklist now = checklists.checklist(opening.id());
        assertThat(now.number()).isEqualTo(2);
        assertThat(now.minutes()).isEqualTo(40);
        assertThat(now.lines())
                .filteredOn(line -> line.question().startsWith("Gap"))
                .first()
                .satisfies(line -> {
                    assertThat(line.limits().passHigh()).isEqualTo(2.032, org.assertj.core.data.Offset.offset(1e-9));
                    assertThat(line.limits().watchHigh()).isEqualTo(3);
                });
        Page read = teos.open(address());
        assertThat(read.text()).contains("What version 2 changed", "The maker says 2 mm", "Ilse Marrow");
        assertThat(read.text(".check:contains(Running amps)")).contains("Asks what it is measured with.");
        Page old = teos.open(address() + "/versions/1");
        assertThat(old.text(".check:contains(Running amps)")).doesNotContain("Asks what");
        assertThat(old.text(".warn")).contains("This is version 1", "Version 2 stands now");
        assertThat(old.text()).contains("Is the strainer clean, whole and fixed?");
        assertThat(ilses.submit(edit(), form(ilses.open(edit()), "look")).text())
                .contains("Nothing differs");
    }

    @Test
    void addMoveAndTakeOutLinesByPlainPresses() {
        Page page = ilses.open(edit());
        Page longer = ilses.submit(edit(), form(page, "add", "section", "Look", "kind", "CHOICE"));
        int added = place(longer, "Does its label") + 1;
        String path = "lines[" + added + "].";
        assertThat(longer.html().select(".line-edit").get(added).hasAttr("open"))
                .isTrue();
        Page wrong = ilses.submit(edit(), form(longer, "look", path + "question", "How is the rope?"));
        assertThat(wrong.status()).isEqualTo(422);
        assertThat(wrong.wrong(path + "choices")).contains("Give 2 to 8 answers");
        assertThat(wrong.wrong(path + "source")).contains("Say where it comes from");

        Page filled = ilses.submit(
                edit(),
                form(
                        wrong,
                        "up-" + added,
                        path + "choices[0].words",
                        "Whole",
                        path + "choices[1].words",
                        "Frayed",
                        path + "choices[1].verdict",
                        "FAIL",
                        path + "failSeverity",
                        "2",
                        path + "source",
                        "common practice, no source"));
        assertThat(place(filled, "How is the rope?")).isEqualTo(added - 1);
        Page shorter = ilses.submit(edit(), form(filled, "out-" + place(filled, "Does its label")));
        assertThat(shorter.text()).doesNotContain("Does its label");
        Page look = ilses.submit(edit(), form(shorter, "look"));
        assertThat(look.text(".changes")).contains("New How is the rope?", "Taken out Does its label");
        ilses.submit(edit(), form(look, "publish", "note", "Ropes were forgotten"));
        CheckLine rope = checklists.checklist(opening.id()).lines().get(added - 1);
        assertThat(rope.choices())
                .containsExactly(new Choice(Verdict.PASS, "Whole"), new Choice(Verdict.FAIL, "Frayed"));
        assertThat(rope.section()).isEqualTo("Look");
    }

    @Test
    void holdOnToWhatIsForSafetyWhateverIsSent() {
        Page page = ilses.open(edit());
        Element safety = page.html().selectFirst(".line-edit");
        assertThat(safety.select("button")).isEmpty();
        assertThat(safety.select("[name$=required], [name$=mayNotApply]")).isEmpty();
        Element cord = page.html().select(".line-edit").get(place(page, "Are cord, plug"));
        assertThat(cord.select("button[value^=out]")).isEmpty();
        assertThat(cord.select("select[name$=failSeverity] option").eachAttr("value"))
                .containsExactly("4");

        Page without = ilses.submit(edit(), form(page, "out-0"));
        Page refused = ilses.submit(edit(), form(without, "look"));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.wrong("lines")).contains("cannot be taken out: Unplugged, and the plug is with me");
        String severity = field(page, "Are cord, plug", "failSeverity");
        Page milder = ilses.submit(
                edit(), form(page, "publish", severity, "1", "lines[0].mayNotApply", "true", "note", "Less work"));
        assertThat(milder.wrong(severity)).isEqualTo("A fail here is severity 4 at least.");
        String nan = field(page, "Gap between", "passHigh");
        assertThat(ilses.submit(edit(), form(page, "look", nan, "one")).wrong(nan))
                .isNotEmpty();
        assertThat(checklists.checklist(opening.id()).number()).isEqualTo(1);
    }

    @Test
    void moveNoLineAcrossASafetyStepWhateverIsPressed() {
        Checklist closing = list("closing-utility-submersible");
        String edit = "/checklists/" + closing.id() + "/edit";
        Page page = ilses.open(edit);
        int again = place(page, "Unplugged again");
        for (String press : List.of("up-" + again, "down-" + (again - 1))) {
            Page moved = ilses.submit(edit, form(page, press));
            assertThat(place(moved, "Unplugged again")).isEqualTo(again - 1);
            Page refused = ilses.submit(edit, form(moved, "publish", "note", "Hands on first"));
            assertThat(refused.status()).isEqualTo(422);
            assertThat(refused.wrong("lines[" + again + "].question")).contains("safety");
        }
        Page first = ilses.submit(edit, form(page, "down-0"));
        assertThat(place(first, "Unplugged, and")).as("its section ends there").isZero();
        assertThat(checklists.checklist(closing.id()).number()).isEqualTo(1);
    }

    @Test
    void keepWhatWasTypedWhenAnotherPublishedMeanwhile() {
        Page mine = ilses.open(edit());
        List<LineDraft> lines = new ArrayList<>(ChecklistDraft.of(opening).lines());
        lines.removeIf(line -> line.question().startsWith("Is its kit"));
        Person freya = yard.freya();
        checklists.publish(opening.id(), 1, new ChecklistDraft(45, "Kit has its own page", lines), freya);

        Page stale = ilses.submit(
                edit(),
                form(
                        mine,
                        "publish",
                        field(mine, "Is its kit", "hint"),
                        "Count twice",
                        field(mine, "Is the strainer", "question"),
                        "Is the screen clean?",
                        "note",
                        "We say screen"));
        assertThat(stale.status()).isEqualTo(409);
        assertThat(stale.text(".warn"))
                .contains("Freya Osterby published version 2", "Kit has its own page", "Taken out Is its kit complete");
        assertThat(stale.value("number")).isEqualTo("2");
        assertThat(stale.value(field(stale, "Is the screen", "question"))).isEqualTo("Is the screen clean?");
        assertThat(stale.html()
                        .getElementById(field(stale, "Is its kit", "hint"))
                        .text())
                .isEqualTo("Count twice");
        Page look = ilses.submit(edit(), form(stale, "look"));
        assertThat(look.text(".changes")).contains("New Is its kit complete", "45 → 35", "Is the screen clean?");
        assertThat(ilses.submit(edit(), form(look, "publish", "note", "We say screen"))
                        .status())
                .isEqualTo(302);
        assertThat(checklists.checklist(opening.id()).number()).isEqualTo(3);
    }

    @Test
    void readLimitsInThePersonsUnitsAndKeepThemToTheLastDigit() {
        people.readIn(ilse.id(), UnitSystem.US);
        Checklist engine = list("opening-engine-trash");
        String path = "/checklists/" + engine.id() + "/edit";
        Page page = ilses.open(path);
        assertThat(page.value(field(page, "Vacuum", "passLow"))).startsWith("9.8");
        Page look = ilses.submit(path, form(page, "look", "minutes", "71"));
        assertThat(look.html().select(".changes li")).hasSize(1);
        ilses.submit(path, form(look, "publish", "note", "It takes a minute more"));
        Checklist now = checklists.checklist(engine.id());
        assertThat(now.lines().stream().map(CheckLine::limits))
                .containsExactlyElementsOf(
                        engine.lines().stream().map(CheckLine::limits).toList());
    }

    @Test
    void beginANewOneAsACopyForAnotherKind() {
        Page page = ilses.open("/checklists/new?from=" + opening.id());
        Page nameless = ilses.submit("/checklists/new", form(page, "", "name", " ", "effect", "LAYS_UP"));
        assertThat(nameless.status()).isEqualTo(422);
        assertThat(nameless.wrong("name")).contains("at most 80");
        assertThat(nameless.wrong("effect")).contains("Only a closing");
        Page taken = ilses.submit("/checklists/new", form(page, "", "name", "opening, UTILITY submersible"));
        assertThat(taken.wrong("name")).contains("has this name");

        Page made = ilses.submit(
                "/checklists/new", form(page, "", "name", "Opening, deep sump", "pumpKind", "SUMP_WITH_FLOAT"));
        long id = Long.parseLong(made.location().replaceAll("\\D", ""));
        Checklist copy = checklists.checklist(id);
        assertThat(copy.pumpKind()).isEqualTo(PumpKind.SUMP_WITH_FLOAT);
        assertThat(copy.lines().get(0).safety()).isTrue();
        assertThat(copy.lines().stream().map(CheckLine::heldSeverity))
                .containsExactlyElementsOf(
                        opening.lines().stream().map(CheckLine::heldSeverity).toList());
        assertThat(ilses.open(made.location()).text()).contains("Begun as a copy", "Ilse Marrow");
        String path = made.location() + "/edit";
        Page look = ilses.submit(path, form(ilses.open(path), "look", "minutes", "50"));
        assertThat(ilses.submit(path, form(look, "publish", "note", "Deeper")).status())
                .isEqualTo(302);
    }
}
