package freshet.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.measures.UnitSystem;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Role;
import freshet.places.CustomerDraft;
import freshet.places.Places;
import freshet.pumps.Pumps;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockMultipartHttpServletRequestBuilder;

@FreshetTest
class PreviewPagesTests {

    private static final String PASSWORD = "thaw-comes-early";

    @Autowired
    MockMvc mvc;

    @Autowired
    Exchange exchange;

    @Autowired
    People people;

    @Autowired
    Places places;

    @Autowired
    Pumps pumps;

    Person ilse;
    Pages ilses;

    @BeforeEach
    void signIn() {
        ilse = people.welcomeFirstOwner("ilse", "Ilse Marrow", PASSWORD, UnitSystem.US);
        ilses = Pages.signedIn(mvc, "ilse", PASSWORD);
    }

    private static NamedFile file(String name, String... lines) {
        return new NamedFile(name, String.join("\n", lines).getBytes(StandardCharsets.UTF_8));
    }

    /** Chooses files on the page and presses the button. */
    private Page choose(Pages reader, List<NamedFile> files) throws Exception {
        MockMultipartHttpServletRequestBuilder request = multipart("/import");
        files.forEach(file -> request.file(new MockMultipartFile("files", file.name(), "text/csv", file.content())));
        MockHttpServletResponse answer = mvc.perform(request.with(csrf()).session(reader.session()))
                .andReturn()
                .getResponse();
        assertThat(answer.getContentAsString()).doesNotContain("??");
        return new Page(answer.getStatus(), answer.getHeader("Location"), Jsoup.parse(answer.getContentAsString()));
    }

    private Page choose(NamedFile... files) throws Exception {
        return choose(ilses, List.of(files));
    }

    private Page takeIn(Page shown) {
        return ilses.submit("/import/preview", "agreed", shown.value("agreed"));
    }

    @Test
    void tellsAnOwnerHowFilesLookAndNobodyElse() throws Exception {
        Page page = ilses.open("/import");
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.html().html()).doesNotContain("??");
        assertThat(page.html().select("details")).hasSize(FileKind.values().length);
        assertThat(page.text("#models"))
                .contains("flow 1 (gpm)", "head 1 (ft)", "shut-off head (ft)")
                .doesNotContain("flow 2 (");
        assertThat(page.html().selectFirst("input[type=file]").attr("aria-describedby"))
                .isEqualTo("files-hint");

        people.addPerson("teo", "Teo Brandt", "mud on boots", Role.TECHNICIAN, Set.of(), ilse);
        Pages teos = Pages.signedIn(mvc, "teo", "mud on boots");
        assertThat(teos.open("/import").status()).isEqualTo(403);
        assertThat(teos.open("/export/units.csv").status()).isEqualTo(403);
        assertThat(choose(teos, List.of(file("c.csv", "customer", "A"))).status())
                .isEqualTo(403);
        assertThat(teos.submit("/import/preview", "agreed", "x").status()).isEqualTo(403);
        assertThat(places.customers()).isEmpty();
    }

    @Test
    void showsFirstThenTakesIn() throws Exception {
        assertThat(choose(ilses, ExampleFilesTests.example()).location()).isEqualTo("/import/preview");
        Page shown = ilses.open("/import/preview");
        assertThat(shown.text("h1")).isEqualTo("348 new, 0 changed, 0 the same");
        assertThat(shown.text("tbody tr:nth-child(5)")).isEqualTo("units.csv Units 66 0 0 0");
        assertThat(pumps.activeUnitIds()).isEmpty();

        Page done = takeIn(shown);
        assertThat(done.location()).isEqualTo("/import");
        assertThat(ilses.open("/import").text(".done")).isEqualTo("Taken in: 348 new, 0 changed, 0 the same.");
        assertThat(ilses.open("/import").html().select(".done")).isEmpty();
        assertThat(pumps.activeUnitIds()).hasSize(66);

        assertThat(takeIn(shown).status()).isEqualTo(409);

        choose(ilses, ExampleFilesTests.example());
        Page again = ilses.open("/import/preview");
        assertThat(again.text("h1")).isEqualTo("Nothing to do");
        assertThat(again.text(".lead")).contains("348 rows");
        assertThat(again.html().select("form button:contains(Take them in)")).isEmpty();
    }

    @Test
    void showsEveryProblemInATableAndSavesNothing() throws Exception {
        Page page = choose(
                file("sites.csv", "site,time zone,opening", "Yard,America/Chicago,31 Feb to 20 Mar"),
                file("units.csv", "tag,model,site,in care from", "P-01,None,Yard,2024-03-01"));
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.html().title()).startsWith("Error:");
        assertThat(page.text(".wrongs h2")).isEqualTo("Nothing was taken in");
        assertThat(page.text("#problems")).isEqualTo("2 things to put right");
        assertThat(page.html()
                        .select("table[aria-labelledby=problems] tbody tr")
                        .eachText())
                .containsExactly(
                        "sites.csv 2 opening February has no day 31: \"31 Feb\"",
                        "units.csv 2 model There is no model \"None\", neither here nor in these files.");
        assertThat(ilses.open("/import/preview").location()).isEqualTo("/import");
        assertThat(places.sites()).isEmpty();
    }

    @Test
    void countsAllProblemsAndShowsTheFirst() throws Exception {
        Page page = choose(file(
                "units.csv",
                Stream.concat(
                                Stream.of("tag,model,site,in care from"),
                                IntStream.range(0, 1500).mapToObj(n -> "P-" + n + ",M,S,2024-01-01"))
                        .toArray(String[]::new)));
        assertThat(page.text("#problems")).isEqualTo("3,000 things to put right");
        assertThat(page.html().select("table[aria-labelledby=problems] tbody tr"))
                .hasSize(200);
        assertThat(page.text()).contains("The first 200 are shown.");
    }

    @Test
    void showsWhatIsUnusualAsAQuestion() throws Exception {
        Page page = choose(file(
                "models.csv",
                "model,pump kind,drive,shut-off head (ft),open flow (gph)",
                "Slip,sewage,single phase,22,40"));
        assertThat(page.text("table[aria-labelledby=problems] tbody"))
                .contains("gpm")
                .endsWith("If it is so, write yes in the column \"checked\" of this row.");
    }

    @Test
    void escapesWhatItShows() throws Exception {
        String script = "<script>alert(1)</script>";
        Page page = choose(file(script + ".csv", "site,time zone,customer", script + "," + script + "," + script));
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.html().select("main script")).isEmpty();
        assertThat(page.text()).contains("There is no customer \"" + script + "\"");

        choose(file("customers.csv", "customer,note", script + ",one"));
        assertThat(takeIn(ilses.open("/import/preview")).status()).isEqualTo(302);
        choose(file("customers.csv", "customer,note", script + "," + script));
        Page shown = ilses.open("/import/preview");
        assertThat(shown.html().select("main script")).isEmpty();
        assertThat(shown.text("table[aria-labelledby=changes] tbody"))
                .isEqualTo("customers.csv 2 " + script + " note: one becomes " + script);
    }

    @Test
    void looksAgainWhenTheRegisterWasChangedMeanwhile() throws Exception {
        choose(file("customers.csv", "customer,note", "Weir Bakery,new note"));
        Page shown = ilses.open("/import/preview");
        assertThat(shown.text("h1")).startsWith("1 new");
        places.addCustomer(new CustomerDraft("Weir Bakery", null, "old note"), ilse);

        Page meanwhile = takeIn(shown);
        assertThat(meanwhile.status()).isEqualTo(409);
        assertThat(meanwhile.text(".wrongs h2")).isEqualTo("The register was changed meanwhile");
        assertThat(meanwhile.text("h1")).isEqualTo("0 new, 1 changed, 0 the same");
        assertThat(meanwhile.text("table[aria-labelledby=changes] tbody"))
                .isEqualTo("customers.csv 2 Weir Bakery note: old note becomes new note");
        assertThat(places.customerNamed("Weir Bakery").orElseThrow().note()).isEqualTo("old note");

        assertThat(takeIn(meanwhile).location()).isEqualTo("/import");
        assertThat(places.customerNamed("Weir Bakery").orElseThrow().note()).isEqualTo("new note");
    }

    @Test
    void takesInOnlyWhatWasShown() throws Exception {
        choose(file("customers.csv", "customer", "First"));
        Page first = ilses.open("/import/preview");
        choose(file("customers.csv", "customer", "Second"));

        Page refused = takeIn(first);
        assertThat(refused.status()).isEqualTo(409);
        assertThat(refused.wrong("files")).contains("Choose them again");
        assertThat(ilses.submit("/import/preview").status()).isEqualTo(409);
        assertThat(places.customers()).isEmpty();
    }

    private MockHttpServletResponse fetch(String address) throws Exception {
        return mvc.perform(get(address).session(ilses.session())).andReturn().getResponse();
    }

    @ParameterizedTest
    @EnumSource
    void handsOutATemplateAndWhatStands(FileKind kind) throws Exception {
        exchange.takeIn(ExampleFilesTests.example(), ilse);
        MockHttpServletResponse template = fetch("/import/templates/" + kind.word() + ".csv");
        assertThat(template.getStatus()).isEqualTo(200);
        assertThat(template.getContentType()).isEqualTo("text/csv;charset=UTF-8");
        assertThat(template.getHeader("Content-Disposition")).contains("attachment", kind.word() + "-template.csv");
        assertThat(template.getContentAsString(StandardCharsets.UTF_8).lines()).hasSize(3);

        MockHttpServletResponse all = fetch("/export/" + kind.word() + ".csv");
        assertThat(all.getHeader("Content-Disposition")).contains("attachment", kind.word() + ".csv");
        assertThat(exchange.preview(List.of(new NamedFile("back.csv", all.getContentAsByteArray())), ilse)
                        .nothingToDo())
                .isTrue();
    }

    @Test
    void handsOutTemplatesThatCanBeTakenInTogether() throws Exception {
        List<NamedFile> templates = Stream.of(FileKind.values())
                .map(kind -> ExampleFilesTests.resource("import-templates/" + kind.word() + ".csv"))
                .toList();
        Preview shown = exchange.preview(templates, ilse);
        assertThat(shown.problems()).isEmpty();
        assertThat(shown.added()).isEqualTo(2 * FileKind.values().length);
        assertThat(fetch("/import/templates/pumps.csv").getStatus()).isEqualTo(404);
        assertThat(fetch("/export/pumps.csv").getStatus()).isEqualTo(404);
    }
}
