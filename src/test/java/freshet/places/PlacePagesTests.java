package freshet.places;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.TestClock;
import freshet.measures.UnitSystem;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Role;
import java.time.MonthDay;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class PlacePagesTests {

    private static final String PASSWORD = "river at thaw";

    @Autowired
    MockMvc mvc;

    @Autowired
    Places places;

    @Autowired
    People people;

    @Autowired
    TestClock clock;

    Person me;
    Pages pages;

    @BeforeEach
    void signIn() {
        clock.set("2026-03-14T12:00:00Z");
        me = people.welcomeFirstOwner("ilse", "Ilse Marrow", PASSWORD, UnitSystem.US);
        pages = Pages.signedIn(mvc, "ilse", PASSWORD);
    }

    private static String[] site(String name, String zone, String... more) {
        List<String> all = new ArrayList<>(List.of("name", name, "zone", zone, "address", "", "customerId", ""));
        all.addAll(List.of(more));
        return all.toArray(String[]::new);
    }

    private static String[] window(int row, String kind, String name, String from, String to) {
        String at = "windows[" + row + "].";
        return new String[] {
            at + "kind", kind,
            at + "name", name,
            at + "fromDay", from.split(" ")[0],
            at + "fromMonth", from.split(" ")[1],
            at + "toDay", to.split(" ")[0],
            at + "toMonth", to.split(" ")[1]
        };
    }

    private static String[] both(String[] one, String[] other) {
        List<String> all = new ArrayList<>(List.of(one));
        all.addAll(List.of(other));
        return all.toArray(String[]::new);
    }

    private Site yard(WindowDraft... windows) {
        return places.addSite(
                new SiteDraft("Brackenfold", ZoneId.of("America/Chicago"), null, null, List.of(windows)), me);
    }

    @Test
    void asksForTheFirstSiteWhenThereIsNone() {
        Page page = pages.open("/places");

        assertThat(page.text("h1")).isEqualTo("Places");
        assertThat(page.text()).contains("No site yet.");
        assertThat(page.text(".ways [aria-current]")).isEqualTo("Places");
    }

    @Test
    void addsASiteWithSeveralWindowsOneOverTheYearsEnd() {
        Page blank = pages.open("/places/sites/new");
        assertThat(blank.html().select("#zones option[value=America/Chicago]")).hasSize(1);
        assertThat(blank.html().select("fieldset legend").eachText()).containsExactly("Window 1", "Window 2");

        Page saved = pages.submit(
                "/places/sites/new",
                both(
                        site("Quarry heating", "America/Chicago"),
                        both(
                                window(0, "RUNNING", "Heating", "1 OCTOBER", "15 MAY"),
                                window(1, "OPENING", "Autumn opening", "1 SEPTEMBER", "30 SEPTEMBER"))));
        assertThat(saved.location()).startsWith("/places/sites/");

        Page page = pages.open(saved.location());
        assertThat(page.text("h1")).isEqualTo("Quarry heating");
        assertThat(page.text("main"))
                .contains("Running: Heating", "1 Oct to 15 May")
                .contains("2025/26: 1 Oct 2025 to Fri 15 May, open now")
                .contains("2026: Tue 1 Sep to Wed 30 Sep")
                .contains("Our own", "America/Chicago");
        assertThat(pages.open("/places").text("main"))
                .contains("Running: Heating, 1 Oct to 15 May, over the year's end");
    }

    @Test
    void refusesThe31stOfFebruaryAtItsFieldAndKeepsWhatWasTyped() {
        Page page = pages.submit(
                "/places/sites/new",
                both(
                        site("Yard", "America/Chicago"),
                        both(
                                window(0, "OPENING", "Spring", "31 FEBRUARY", "20 MARCH"),
                                window(1, "CLOSING", "Fall", "1 OCTOBER", "x NOVEMBER"))));

        assertThat(page.status()).isEqualTo(422);
        assertThat(page.wrong("windows[0].fromDay")).isEqualTo("February has no day 31.");
        assertThat(page.wrong("windows[1].toDay"))
                .startsWith("“x”".replace('“', '"').replace('”', '"'));
        assertThat(page.value("windows[0].fromDay")).isEqualTo("31");
        assertThat(page.html()
                        .select("[name=\"windows[0].fromMonth\"] [selected]")
                        .text())
                .isEqualTo("February");
        assertThat(page.value("name")).isEqualTo("Yard");
        assertThat(page.text(".wrongs h2")).isEqualTo("2 things to put right");
        assertThat(page.html().select(".wrongs a").eachAttr("href"))
                .containsExactlyInAnyOrder("#windows[0].fromDay", "#windows[1].toDay");
        assertThat(page.html().title()).startsWith("Error: ");
        assertThat(places.sites()).isEmpty();
    }

    @Test
    void takesThe29thOfFebruary() {
        Page saved = pages.submit(
                "/places/sites/new",
                both(site("Yard", "America/Chicago"), window(0, "OPENING", "Spring", "29 FEBRUARY", "20 MARCH")));

        assertThat(saved.status()).isEqualTo(302);
        assertThat(places.siteNamed("Yard").orElseThrow().windows().get(0).from())
                .isEqualTo(MonthDay.of(2, 29));
    }

    @Test
    void refusesATimeZoneThatIsNone() {
        Page page = pages.submit("/places/sites/new", site("Yard", "America/Port Ansel"));

        assertThat(page.status()).isEqualTo(422);
        assertThat(page.wrong("zone")).contains("\"America/Port Ansel\" is not a time zone");
        assertThat(page.value("zone")).isEqualTo("America/Port Ansel");
        assertThat(pages.submit("/places/sites/new", site("Yard", "")).wrong("zone"))
                .contains("The time zone is missing.");
    }

    @Test
    void refusesANameThatIsTakenWhateverItsCase() {
        yard();

        Page page = pages.submit("/places/sites/new", site("BRACKENFOLD", "America/Chicago"));

        assertThat(page.status()).isEqualTo(422);
        assertThat(page.wrong("name")).isEqualTo("\"BRACKENFOLD\" is already the name of another site.");
        assertThat(pages.submit("/places/sites/new", site(" ", "America/Chicago"))
                        .wrong("name"))
                .isEqualTo("The name is missing.");
    }

    @Test
    void offersMoreRowsWithoutLosingWhatWasTyped() {
        Page page = pages.submit(
                "/places/sites/new",
                both(
                        site("Yard", "America/Chicago", "more", "windows"),
                        window(0, "OPENING", "Spring", "15 FEBRUARY", "20 MARCH")));

        assertThat(page.status()).isEqualTo(200);
        assertThat(page.html().select("fieldset legend")).hasSize(4);
        assertThat(page.value("windows[0].name")).isEqualTo("Spring");
        assertThat(places.sites()).isEmpty();
    }

    @Test
    void takesAWindowAwayAndKeepsTheOther() {
        Site site = yard(
                new WindowDraft(null, WindowKind.OPENING, "Spring", MonthDay.of(2, 15), MonthDay.of(3, 20)),
                new WindowDraft(null, WindowKind.CLOSING, "Fall", MonthDay.of(10, 1), MonthDay.of(11, 15)));
        Page form = pages.open("/places/sites/" + site.id() + "/edit");
        assertThat(form.value("windows[1].name")).isEqualTo("Fall");

        Page saved = pages.submit(
                "/places/sites/" + site.id() + "/edit",
                both(
                        site("Brackenfold", "America/Chicago", "version", form.value("version")),
                        both(
                                new String[] {
                                    "windows[0].id", form.value("windows[0].id"), "windows[0].takeAway", "true"
                                },
                                both(
                                        new String[] {"windows[1].id", form.value("windows[1].id")},
                                        window(1, "CLOSING", "Fall", "2 OCTOBER", "15 NOVEMBER")))));

        assertThat(saved.status()).isEqualTo(302);
        assertThat(places.site(site.id()).windows()).singleElement().satisfies(window -> {
            assertThat(window.id()).isEqualTo(site.windows().get(1).id());
            assertThat(window.from()).isEqualTo(MonthDay.of(10, 2));
        });
    }

    @Test
    void keepsWhatWasTypedOnAStaleEditAndSaysWhatStandsNow() {
        Site site = yard(new WindowDraft(null, WindowKind.OPENING, "Spring", MonthDay.of(2, 15), MonthDay.of(3, 20)));
        Page form = pages.open("/places/sites/" + site.id() + "/edit");
        places.changeSite(
                site.id(),
                site.version(),
                new SiteDraft(
                        "Brackenfold Quay",
                        site.zone(),
                        null,
                        null,
                        List.of(new WindowDraft(
                                null, WindowKind.OPENING, "Spring", MonthDay.of(3, 1), MonthDay.of(3, 20)))),
                me);

        String[] typed = both(
                site("Brackenfold Yard", "America/Chicago"), window(0, "OPENING", "Spring", "15 FEBRUARY", "20 MARCH"));
        Page page = pages.submit(
                "/places/sites/" + site.id() + "/edit", both(typed, new String[] {"version", form.value("version")}));

        assertThat(page.status()).isEqualTo(409);
        assertThat(page.text(".wrongs")).contains("Somebody changed this while you were typing");
        assertThat(page.value("name")).isEqualTo("Brackenfold Yard");
        assertThat(page.text(".warn dl"))
                .contains("Name of the site Brackenfold Quay")
                .contains("From month (1) March");
        Page saved = pages.submit(
                "/places/sites/" + site.id() + "/edit", both(typed, new String[] {"version", page.value("version")}));
        assertThat(saved.status()).isEqualTo(302);
        assertThat(places.site(site.id()).name()).isEqualTo("Brackenfold Yard");
    }

    @Test
    void showsScriptInANameAsText() {
        Site site = places.addSite(
                new SiteDraft(
                        "<script>alert(1)</script>",
                        ZoneId.of("America/Chicago"),
                        "<img src=x onerror=alert(2)>",
                        null,
                        null),
                me);

        for (String address :
                List.of("/places", "/places/sites/" + site.id(), "/places/sites/" + site.id() + "/edit")) {
            Page page = pages.open(address);
            assertThat(page.html().select("main script, main img")).isEmpty();
            assertThat(page.text() + page.value("name")).contains("<script>alert(1)</script>");
        }
    }

    @Test
    void keepsCustomersAndPositions() {
        Page wrong = pages.submit("/places/customers/new", "name", "", "phone", "555 0134");
        assertThat(wrong.status()).isEqualTo(422);
        assertThat(wrong.wrong("name")).isEqualTo("The name is missing.");
        assertThat(wrong.value("phone")).isEqualTo("555 0134");

        Page customer = pages.submit("/places/customers/new", "name", "Quillmere Lettings", "phone", "555 0134");
        assertThat(pages.open(customer.location()).text("main")).contains("Quillmere Lettings", "555 0134");
        long customerId =
                places.customerNamed("Quillmere Lettings").orElseThrow().id();
        Site site =
                places.addSite(new SiteDraft("Dyer Court", ZoneId.of("America/Chicago"), null, customerId, null), me);
        assertThat(pages.open("/places").text("main")).contains("Quillmere Lettings", "Dyer Court");

        String address = "/places/sites/" + site.id() + "/positions/new";
        assertThat(pages.submit(address, "name", "North pit", "kind", "PIT", "note", "lid is heavy")
                        .location())
                .isEqualTo("/places/sites/" + site.id());
        assertThat(pages.submit(address, "name", "north pit", "kind", "PIT").wrong("name"))
                .isEqualTo("\"north pit\" is already a position of this site.");
        assertThat(pages.open("/places/sites/" + site.id()).text("main")).contains("Pit", "North pit", "lid is heavy");

        Position pit = places.positions(site.id()).get(0);
        Page form = pages.open("/places/positions/" + pit.id() + "/edit");
        assertThat(form.value("name")).isEqualTo("North pit");
        pages.submit("/places/positions/" + pit.id() + "/edit", "name", "Old pit", "kind", "WELL", "version", "0");
        assertThat(pages.submit("/places/positions/" + pit.id() + "/edit", "name", "Pit", "kind", "PIT", "version", "0")
                        .text(".warn dl"))
                .contains("Name of the position Old pit", "What it is Well");
    }

    @Test
    void answers404ForWhatIsNotThere() {
        for (String address : List.of(
                "/places/sites/404",
                "/places/sites/404/edit",
                "/places/customers/404",
                "/places/positions/404/edit",
                "/places/sites/404/positions/new",
                "/places/sites/abc")) {
            assertThat(pages.open(address).status()).as(address).isEqualTo(404);
        }
        assertThat(pages.submit("/places/sites/404/edit", site("Yard", "America/Chicago", "version", "0"))
                        .status())
                .isEqualTo(404);
    }

    @Test
    void letsATechnicianReadButNotWrite() {
        Site site = yard();
        people.addPerson("teo", "Teo Brandt", PASSWORD, Role.TECHNICIAN, Set.of(), me);
        Pages technician = Pages.signedIn(mvc, "teo", PASSWORD);

        assertThat(technician.open("/places/sites/" + site.id()).text("main"))
                .contains("Brackenfold")
                .doesNotContain("Change the site");
        assertThat(technician.open("/places/sites/new").status()).isEqualTo(403);
        assertThat(technician
                        .submit("/places/sites/new", site("Mine", "America/Chicago"))
                        .status())
                .isEqualTo(403);
        assertThat(technician.submit("/places/customers/new", "name", "Mine").status())
                .isEqualTo(403);
        assertThat(places.sites()).hasSize(1);
    }
}
