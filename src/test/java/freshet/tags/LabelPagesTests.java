package freshet.tags;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.care.CareYard;
import freshet.measures.UnitSystem;
import freshet.pumps.PumpKind;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class LabelPagesTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    CareYard yard;

    Pages pages;

    @BeforeEach
    void signIn() {
        yard.unit("BF-07");
        yard.unit("BF-10");
        yard.unit("BF-9");
        yard.unit("QM-104", PumpKind.SUMP_WITH_FLOAT, yard.brackenfold().id(), CareYard.LONG_AGO);
        pages = Pages.signedIn(mvc, "ilse", "river at thaw");
    }

    @Test
    void printsALabelForEachUnitThatASearchFinds() {
        Page page = pages.open("/labels/print?kind=UTILITY_SUBMERSIBLE&sheet=A4_24");
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.text("h1")).isEqualTo("3 labels on one page");
        assertThat(page.html().select(".slip-tag").eachText()).containsExactly("BF-9", "BF-07", "BF-10");
        assertThat(page.html().select(".slip").get(1).text()).contains("check F", "S-BF-07", "Scan, or type BF-07 F");
        assertThat(page.html().select(".slip").get(1).select(".qr").attr("aria-label"))
                .isEqualTo("Code that opens http://localhost/t/BF-07");
        assertThat(page.html().select("[style], style, script:not([src])")).isEmpty();
    }

    @Test
    void printsTheTagsThatWereTypedInTheirOrderAndOnceEach() {
        Page page = pages.open("/labels/print?tags=QM-104\r\nbf-07 f,\r\nBF-07&sheet=LETTER_8");
        assertThat(page.html().select(".slip-tag").eachText()).containsExactly("QM-104", "BF-07");
    }

    @Test
    void startsOnAPartUsedSheetAndGoesOnWithTheNext() {
        Page page = pages.open("/labels/print?sheet=A4_8&start=7");
        assertThat(page.text("h1")).isEqualTo("4 labels on 2 pages");
        assertThat(page.html().select(".leaf").get(0).select(".slip")).hasSize(8);
        assertThat(page.html().select(".leaf").get(0).select(".slip:empty")).hasSize(6);
        assertThat(page.html().select(".leaf").get(1).select(".slip")).hasSize(2);
        assertThat(page.html().select(".leaf").get(1).select(".slip:empty")).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"0", "25", "-1", "first", "1.5"})
    void refusesAPlaceThatTheSheetDoesNotHave(String start) {
        Page page = pages.open("/labels/print?sheet=A4_24&start=" + start);
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.wrong("start")).isEqualTo("This size has the places 1 to 24.");
        assertThat(page.value("start")).isEqualTo(start);
        assertThat(page.html().select("#sheet [selected]").val()).isEqualTo("A4_24");
    }

    @Test
    void saysWhichTypedTagsNobodyHasOrDoNotFitTheirCheckCharacter() {
        Page page = pages.open("/labels/print?tags=BF-07\nBF-99\nBF-9 9&start=1");
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.html().title()).startsWith("Error: Labels");
        assertThat(page.wrong("tags")).contains("No pump has the tag BF-99.", "9 is not the check character of BF-9.");
        assertThat(page.value("tags")).contains("BF-99");
    }

    @Test
    void saysSoWhenNothingIsFound() {
        Page page = pages.open("/labels/print?text=nowhere");
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.wrong("text")).isEqualTo("Nothing in the fleet fits this search.");
    }

    @Test
    void countsAndWarnsBeforeAnythingIsPrinted() {
        Page page = pages.open("/labels?text=BF-");
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.text(".turns")).contains("3 pumps are found.");
        // the yard's owner reads metres
        assertThat(page.html().select("#sheet [selected]").val()).isEqualTo("A4_24");
        assertThat(page.text(".warn")).contains("http://localhost, which only this machine can");
        assertThat(pages.open("/labels?tags=BF-07").text(".turns")).contains("One tag is listed.");
        assertThat(pages.open("/labels?kind=nonsense&site=x&sheet=y").status()).isEqualTo(200);
    }

    @Test
    void offersLetterPaperToThoseWhoReadFeet() {
        assertThat(yard.ilse().unitSystem()).isEqualTo(UnitSystem.SI);
        yard.teo();
        Pages teos = Pages.signedIn(mvc, "teo", "mud on boots");
        assertThat(teos.open("/labels").html().select("#sheet [selected]").val())
                .startsWith(yard.teo().unitSystem() == UnitSystem.US ? "LETTER" : "A4");
    }

    @ParameterizedTest
    @CsvSource({
        "https://pumps.example.org/, https://pumps.example.org",
        "https://example.org/freshet, https://example.org/freshet",
    })
    void takesTheAddressOfTheSetting(String setting, String base) {
        assertThat(new PrintedAddress(setting).base(null)).isEqualTo(base);
        assertThat(PrintedAddress.onlyThisMachine(base)).isFalse();
    }
}
