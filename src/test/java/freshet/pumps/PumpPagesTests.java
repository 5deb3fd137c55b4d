package freshet.pumps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.TestClock;
import freshet.measures.UnitSystem;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Role;
import freshet.places.CustomerDraft;
import freshet.places.Places;
import freshet.places.PositionDraft;
import freshet.places.PositionKind;
import freshet.places.Site;
import freshet.places.SiteDraft;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class PumpPagesTests {

    private static final String PASSWORD = "river at thaw";

    @Autowired
    MockMvc mvc;

    @Autowired
    Pumps pumps;

    @Autowired
    Places places;

    @Autowired
    People people;

    @Autowired
    TestClock clock;

    Person me;
    Pages pages;
    Site yard;

    @BeforeEach
    void signIn() {
        clock.set("2026-03-14T12:00:00Z");
        me = people.welcomeFirstOwner("ilse", "Ilse Marrow", PASSWORD, UnitSystem.US);
        pages = Pages.signedIn(mvc, "ilse", PASSWORD);
        yard = places.addSite(new SiteDraft("Yard", ZoneId.of("America/Chicago"), null, null, null), me);
    }

    /** Flow, head, flow, head and so on, as typed; then more names and values. */
    private static String[] model(String name, String curve, String... more) {
        List<String> all = new ArrayList<>(List.of(
                "name", name,
                "kind", "UTILITY_SUBMERSIBLE",
                "drive", "SINGLE_PHASE",
                "curveForm", "TABLE",
                "curveUncertainty", "5"));
        String[] typed = curve.split(", ");
        for (int i = 0; i < typed.length; i++) {
            all.add("points[" + i / 2 + "]." + (i % 2 == 0 ? "flow" : "head"));
            all.add(typed[i]);
        }
        all.addAll(List.of(more));
        return all.toArray(String[]::new);
    }

    private static final String UTILITY = "0, 25, 15, 22, 28, 16, 37, 8, 42, 0";

    private Unit unit(String tag) {
        Model model =
                pumps.modelNamed("Utility").orElseGet(() -> pumps.addModel(new ModelBuilder("Utility").build(), me));
        return pumps.register(
                new UnitDraft(tag, null, model.id(), null, LocalDate.of(2026, 3, 1), null),
                new Whereabouts(yard.id(), null, "Bay 2"),
                me);
    }

    @Test
    void addsAModelTypedInUsUnitsAndShowsItInBoth() {
        Page blank = pages.open("/pumps/models/new");
        assertThat(blank.html().select("[name$=.flow]")).hasSize(12);
        assertThat(blank.text(".with-unit span")).contains("gpm", "ft", "hp", "in", "°F");
        assertThat(blank.value("curveUncertainty")).isEqualTo("5");

        Page saved = pages.submit(
                "/pumps/models/new", model("Utility 1/3 hp", UTILITY, "powerW", "1/3", "outletMm", "1 1/4"));
        assertThat(saved.status()).isEqualTo(302);

        Page page = pages.open(saved.location());
        assertThat(page.text("h1")).isEqualTo("Utility 1/3 hp");
        assertThat(page.text("main").replace('\u00a0', ' '))
                .contains("15.0 gpm 3.41 m³/h 22.0 ft 6.71 m", "0.33 hp", "1.25 in", "Standard uncertainty 5.0 %");
        assertThat(pages.open("/pumps/models").text("main").replace('\u00a0', ' '))
                .contains("Utility 1/3 hp Utility submersible 25.0 ft 42.0 gpm");
        assertThat(pumps.models().get(0).curve().shutOffHeadM()).isCloseTo(7.62, within(1e-9));
    }

    @Test
    void takesUnitsTypedBehindTheNumber() {
        pages.submit("/pumps/models/new", model("Mixed", "0, 7.62 m, 900 gph, 22, 9.5 m3/h, 0"));

        Model model = pumps.modelNamed("Mixed").orElseThrow();
        assertThat(model.points().get(0).headM()).isCloseTo(7.62, within(1e-9));
        assertThat(model.points().get(1).flowM3h()).isCloseTo(15 * 0.2271247070, within(1e-9));
    }

    @Test
    void refusesACurveThatRisesNamingTheRow() {
        Page page = pages.submit("/pumps/models/new", model("Hump", "0, 20, 10, 21, 20, 12"));

        assertThat(page.status()).isEqualTo(422);
        assertThat(page.wrong("points[1].head")).startsWith("Row 2: the head must be lower than in row 1.");
        assertThat(page.value("points[1].head")).isEqualTo("21");
        assertThat(page.html().select(".wrongs a").attr("href")).isEqualTo("#points[1].head");
        assertThat(page.html().select("[id=\"points[1].head\"]").attr("aria-describedby"))
                .contains("points[1].head-wrong");
    }

    @Test
    void refusesACurveThatCrossesItselfAndTextsThatAreNoNumbers() {
        assertThat(pages.submit("/pumps/models/new", model("Back", "0, 20, 20, 15, 10, 12"))
                        .wrong("points[2].flow"))
                .startsWith("Row 3: the flow must be larger than in row 2.");
        Page page = pages.submit("/pumps/models/new", model("Typo", "0, 20, 1o, 15, 20,4, x", "powerW", "12 psi"));
        assertThat(page.wrong("points[1].flow")).contains("\"o\" is not a unit for this. Type it in gpm");
        assertThat(page.wrong("points[2].flow")).contains("has a comma");
        assertThat(page.wrong("powerW")).contains("\"psi\" is not a unit for this");
        assertThat(page.value("points[1].flow")).isEqualTo("1o");
    }

    @Test
    void asksWhetherGallonsAnHourWereMeantAndTakesAYes() {
        String[] typed = model("Big", "0, 40, 2640, 0");
        Page page = pages.submit("/pumps/models/new", typed);

        assertThat(page.status()).isEqualTo(422);
        assertThat(page.wrong("points[1].flow")).contains("gallons an hour");
        assertThat(page.html().select("[name=asked]").eachAttr("value")).containsExactly("points[1].flow=2640");
        assertThat(page.html().select("button[name=itIsSo]").eachAttr("value")).containsExactly("asked");

        String[] other = model("Big", "0, 40, 2650, 0", "itIsSo", "points[1].flow=2640");
        assertThat(pages.submit("/pumps/models/new", other).status()).isEqualTo(422);
        String[] ticked = model("Big", "0, 40, 2640, 0", "itIsSo", "asked", "asked", "points[1].flow=2640");
        assertThat(pages.submit("/pumps/models/new", ticked).status()).isEqualTo(302);
    }

    @Test
    void refusesACurveThatNeedsMorePowerThanTheMotorHas() {
        Page page = pages.submit("/pumps/models/new", model("gph", "0, 25, 900, 20, 1000, 0", "powerW", "1/3"));

        assertThat(page.status()).isEqualTo(422);
        assertThat(page.wrong("points")).contains("more water than the motor has power for", "gallons an hour");
    }

    @Test
    void refusesWhatIsImpossibleEvenWithATick() {
        String[] typed = model("Huge", "0, 40, 6000, 0", "itIsSo", "points[1].flow=6000");

        assertThat(pages.submit("/pumps/models/new", typed).wrong("points[1].flow"))
                .startsWith("A flow must lie from 0 to 5,000 gpm");
    }

    @Test
    void keepsAModelWithOnlyTwoNumbers() {
        Page saved = pages.submit(
                "/pumps/models/new",
                "name",
                "Two",
                "kind",
                "SEWAGE",
                "drive",
                "THREE_PHASE",
                "curveForm",
                "TWO_PARAMETER",
                "shutOffHead",
                "34",
                "openFlow",
                "120",
                "curveUncertainty",
                "8");

        assertThat(saved.status()).isEqualTo(302);
        assertThat(pages.open(saved.location()).text("main")).contains("a parabola is drawn between them");
        Page wrong = pages.submit(
                "/pumps/models/new",
                "name",
                "Three",
                "kind",
                "SEWAGE",
                "drive",
                "THREE_PHASE",
                "curveForm",
                "TWO_PARAMETER",
                "shutOffHead",
                "34",
                "curveUncertainty",
                "8");
        assertThat(wrong.wrong("openFlow")).isEqualTo("This is missing.");
    }

    @Test
    void savesAnUntouchedModelWithoutMovingADigit() {
        Model model = pumps.addModel(new ModelBuilder("Utility").build(), me);
        Page form = pages.open("/pumps/models/" + model.id() + "/edit");
        List<String> typed = new ArrayList<>();
        form.html()
                .select("main form input, main form select, main form textarea")
                .forEach(field -> {
                    boolean unticked = field.attr("type").matches("radio|checkbox") && !field.hasAttr("checked");
                    if (!unticked && !field.attr("name").equals("_csrf")) {
                        typed.add(field.attr("name"));
                        typed.add(
                                field.tagName().equals("select")
                                        ? field.select("[selected]").val()
                                        : field.val());
                    }
                });

        Page saved = pages.submit("/pumps/models/" + model.id() + "/edit", typed.toArray(String[]::new));

        assertThat(saved.status()).isEqualTo(302);
        assertThat(pumps.model(model.id()).points()).isEqualTo(model.points());
        assertThat(pumps.model(model.id()).version()).isEqualTo(model.version());
    }

    @Test
    void keepsWhatWasTypedOnAStaleModelAndSaysWhatStandsNow() {
        Model model = pumps.addModel(new ModelBuilder("Utility").build(), me);
        pumps.changeModel(
                model.id(),
                model.version(),
                new ModelBuilder("Utility").kind(PumpKind.SEWAGE).build(),
                me);

        Page page =
                pages.submit("/pumps/models/" + model.id() + "/edit", model("Utility new", UTILITY, "version", "0"));

        assertThat(page.status()).isEqualTo(409);
        assertThat(page.value("name")).isEqualTo("Utility new");
        assertThat(page.text(".warn dl")).contains("Name of the model Utility", "Kind of pump Sewage pump");
        assertThat(page.value("version")).isEqualTo("1");
    }

    @Test
    void registersAUnitAtAPlaceChosenByName() {
        Model model = pumps.addModel(new ModelBuilder("Utility").build(), me);
        places.addPosition(new PositionDraft(yard.id(), "North pit", PositionKind.PIT, null), me);
        places.addCustomer(new CustomerDraft("Quillmere", null, null), me);
        Page blank = pages.open("/pumps/new?model=" + model.id());
        assertThat(blank.html().select("#places option").eachAttr("value")).containsExactly("Yard", "Yard, North pit");
        assertThat(blank.value("inCareFrom")).isEqualTo("2026-03-14");
        assertThat(blank.html().select("#modelId [selected]").text()).isEqualTo("Utility");

        Page saved = pages.submit(
                "/pumps/new",
                "tag",
                "BF-07",
                "modelId",
                "" + model.id(),
                "serial",
                "UT3-22841",
                "customer",
                "quillmere",
                "inCareFrom",
                "2026-03-01",
                "place",
                "yard, north pit",
                "spot",
                "");

        Unit unit = pumps.unitTagged("BF-07").orElseThrow();
        assertThat(saved.location()).isEqualTo("/pumps/" + unit.id());
        assertThat(unit.stand().positionName()).isEqualTo("North pit");
        assertThat(unit.customerName()).isEqualTo("Quillmere");
    }

    @Test
    void saysAtTheTagThatAnotherPumpHasIt() {
        Unit unit = unit("BF-07");

        Page page = pages.submit(
                "/pumps/new",
                "tag",
                "bf-07",
                "modelId",
                "" + unit.model().id(),
                "inCareFrom",
                "2026-03-01",
                "place",
                "Yard");

        assertThat(page.status()).isEqualTo(422);
        assertThat(page.wrong("tag")).isEqualTo("bf-07 is already the tag of another pump.");
        assertThat(page.value("place")).isEqualTo("Yard");
        assertThat(page.html().title()).startsWith("Error: ");
    }

    @Test
    void saysEverythingThatIsWrongAboutAUnitAtItsField() {
        Page page = pages.submit(
                "/pumps/new",
                "tag",
                "",
                "modelId",
                "",
                "inCareFrom",
                "2026-02-31",
                "place",
                "Nowhere",
                "customer",
                "Nobody");

        assertThat(page.status()).isEqualTo(422);
        assertThat(page.wrong("tag")).isEqualTo("This is missing.");
        assertThat(page.wrong("modelId")).isEqualTo("Choose the model.");
        assertThat(page.wrong("inCareFrom")).contains("\"2026-02-31\" is not a day.");
        assertThat(page.wrong("place")).contains("There is no place \"Nowhere\".");
        assertThat(page.wrong("customer")).contains("There is no customer \"Nobody\".");
        assertThat(page.value("place")).isEqualTo("Nowhere");
    }

    @Test
    void keepsWhatWasTypedOnAStaleUnit() {
        Unit unit = unit("BF-07");
        String address = "/pumps/" + unit.id() + "/edit";
        pumps.changeUnit(
                unit.id(),
                unit.version(),
                new UnitDraft("BF-7", null, unit.model().id(), null, unit.inCareFrom(), null),
                me);

        Page page = pages.submit(
                address, "tag", "BF-70", "modelId", "" + unit.model().id(), "inCareFrom", "2026-03-01", "version", "0");

        assertThat(page.status()).isEqualTo(409);
        assertThat(page.value("tag")).isEqualTo("BF-70");
        assertThat(page.text(".warn dl")).isEqualTo("Tag BF-7");
        assertThat(page.value("version")).isEqualTo("1");
    }

    @Test
    void movesAUnitAndShowsWhereItHasStood() {
        Unit unit = unit("BF-07");
        places.addSite(new SiteDraft("Dyer Court", ZoneId.of("America/New_York"), null, null, null), me);
        String address = "/pumps/" + unit.id() + "/move";
        assertThat(pages.open(address).text("main"))
                .contains("It stands at Yard, Bay 2")
                .doesNotContain("Unit[", "CurvePoint");

        Page moved = pages.submit(
                address, "place", "Dyer Court", "spot", "Cellar", "since", "2026-03-12T09:30", "note", "storm");
        assertThat(moved.location()).isEqualTo("/pumps/" + unit.id());
        assertThat(pumps.unit(unit.id()).stand().since()).isEqualTo("2026-03-12T13:30:00Z");

        assertThat(pages.open(address).text(".past"))
                .contains("Dyer Court, Cellar since 12 Mar 2026, 09:30 storm", "Yard, Bay 2 1 Mar 2026, 00:00 to");
        assertThat(pages.submit(address, "place", "Yard", "since", "2026-03-11T09:30")
                        .wrong("since"))
                .contains("only later");
        assertThat(pages.submit(address, "place", "Yard", "since", "2026-03-15T09:30")
                        .wrong("since"))
                .contains("still to come");
        assertThat(pages.submit(address, "place", "Dyer Court", "spot", "Cellar")
                        .wrong("place"))
                .isEqualTo("It stands there already.");
        assertThat(pages.submit(address, "place", "Yard").status()).isEqualTo(302);
        assertThat(pumps.unit(unit.id()).stand().since()).isEqualTo("2026-03-14T12:00:00Z");
    }

    @Test
    void listsTheKitInThePersonsUnits() {
        Unit unit = unit("BF-07");
        String address = "/pumps/" + unit.id() + "/kit";
        Page saved = pages.submit(
                address,
                "version",
                "0",
                "items[0].kind",
                "HOSE",
                "items[0].description",
                "Garden hose",
                "items[0].bore",
                "1",
                "items[0].length",
                "50",
                "items[0].quantity",
                "2",
                "items[1].kind",
                "STRAINER",
                "items[1].description",
                "Low suction");
        assertThat(saved.status()).isEqualTo(302);
        assertThat(pumps.unit(unit.id()).kit())
                .extracting(KitItem::boreMm, KitItem::lengthM, KitItem::quantity)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(25.4, 15.24, 2),
                        org.assertj.core.groups.Tuple.tuple(null, null, 1));

        Page form = pages.open(address);
        assertThat(form.value("items[0].length")).isEqualTo("50");
        Page wrong = pages.submit(
                address,
                "version",
                form.value("version"),
                "items[0].kind",
                "",
                "items[0].description",
                "",
                "items[0].bore",
                "20",
                "items[0].quantity",
                "1.5");
        assertThat(wrong.wrong("items[0].kind")).isEqualTo("Choose what the piece is.");
        assertThat(wrong.wrong("items[0].quantity")).isEqualTo("How many must be a whole number.");
        assertThat(pages.submit(address, "version", "0").status()).isEqualTo(409);
    }

    @Test
    void retiresAUnitAndBringsItBack() {
        Unit unit = unit("BF-07");
        String address = "/pumps/" + unit.id() + "/retire";

        assertThat(pages.submit(address, "retiredOn", "2026-03-14", "retiredWhy", " ", "version", "0")
                        .wrong("retiredWhy"))
                .isEqualTo("This is missing.");
        assertThat(pages.submit(address, "retiredOn", "2026-03-14", "retiredWhy", "shaft bent", "version", "0")
                        .status())
                .isEqualTo(302);
        assertThat(pages.open(address).text("main")).contains("Retired 14 Mar: shaft bent");
        pages.submit("/pumps/" + unit.id() + "/bring-back");
        assertThat(pumps.unit(unit.id()).retired()).isFalse();
    }

    @Test
    void showsScriptInANameAsText() {
        Model model = pumps.addModel(new ModelBuilder("<script>alert(1)</script>").build(), me);
        for (String address : List.of("/pumps/models", "/pumps/models/" + model.id(), "/pumps/new")) {
            Page page = pages.open(address);
            assertThat(page.html().select("main script")).isEmpty();
            assertThat(page.text()).contains("<script>alert(1)</script>");
        }
    }

    @Test
    void answersTamperedFormsWithAPageAndNotWithAFailure() {
        Page page = pages.submit("/pumps/models/new", model("Odd", UTILITY, "duty", "S9", "version", "x"));
        assertThat(page.status()).isEqualTo(400);
        assertThat(page.text("h1")).isEqualTo("That could not be read");
        assertThat(pages.submit("/pumps/new", "tag", "BF-1", "modelId", "x").status())
                .isEqualTo(400);

        assertThat(pages.submit("/pumps/models/new", model("Odd\0", UTILITY)).status())
                .isEqualTo(400);
        assertThat(pumps.models()).isEmpty();
        assertThat(pages.submit("/pumps/models/new", "name", "").status()).isEqualTo(422);
    }

    @Test
    void answers404ForWhatIsNotThere() {
        for (String address : List.of(
                "/pumps/models/404",
                "/pumps/models/404/edit",
                "/pumps/404/edit",
                "/pumps/404/move",
                "/pumps/404/kit",
                "/pumps/404/retire")) {
            assertThat(pages.open(address).status()).as(address).isEqualTo(404);
        }
        assertThat(pages.submit("/pumps/404/move", "place", "Yard").status()).isEqualTo(404);
    }

    @Test
    void letsATechnicianReadModelsButNotWrite() {
        Unit unit = unit("BF-07");
        people.addPerson("teo", "Teo Brandt", PASSWORD, Role.TECHNICIAN, Set.of(), me);
        Pages technician = Pages.signedIn(mvc, "teo", PASSWORD);

        assertThat(technician.open("/pumps/models/" + unit.model().id()).text("main"))
                .contains("Utility")
                .doesNotContain("Change the model");
        assertThat(technician.open("/pumps/models/new").status()).isEqualTo(403);
        assertThat(technician.open("/pumps/new").status()).isEqualTo(403);
        assertThat(technician
                        .submit("/pumps/" + unit.id() + "/move", "place", "Yard")
                        .status())
                .isEqualTo(403);
        assertThat(pumps.stands(unit.id())).hasSize(1);
    }
}
