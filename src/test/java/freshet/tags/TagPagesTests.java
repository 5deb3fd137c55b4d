package freshet.tags;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.care.CareYard;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import java.time.LocalDate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class TagPagesTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    CareYard yard;

    @Autowired
    Pumps pumps;

    Unit unit;
    Pages pages;

    @BeforeEach
    void signIn() {
        unit = yard.unit("BF-07");
        yard.unit("BF-08");
        pages = Pages.signedIn(mvc, "ilse", "river at thaw");
    }

    @Test
    void opensTheUnitOfAScannedTagOrItsMeter() {
        assertThat(pages.open("/t/BF-07").location()).isEqualTo("/pumps/" + unit.id());
        assertThat(pages.open("/t/bf-07?do=read").location()).isEqualTo("/pumps/" + unit.id() + "/reading");
        assertThat(pages.open("/t/BF-07?do=jump").location()).isEqualTo("/pumps/" + unit.id());
        pumps.retire(unit.id(), unit.version(), LocalDate.now().minusDays(1), "cracked", yard.ilse());
        assertThat(pages.open("/t/BF-07?do=read").location()).isEqualTo("/pumps/" + unit.id());
    }

    @Test
    void saysThatNoPumpHasAScannedTagAndWhichAreNear() {
        Page page = pages.open("/t/BF-O7");
        assertThat(page.status()).isEqualTo(404);
        assertThat(page.text("h1")).isEqualTo("No pump here has the tag BF-O7");
        assertThat(page.text("main")).contains("BF-07", "Its check character is F.");
        assertThat(pages.open("/t/<b>").text("h1")).contains("<b>");
    }

    @Test
    void findsATypedTagWithItsCheckCharacterHoweverItIsParted() {
        for (String typed : new String[] {"BF-07", " bf-07 ", "BF-07 F", "bf-07 f", "BF-07.F", "BF-07/F", "BF-07  F"}) {
            assertThat(find(typed).location()).as(typed).isEqualTo("/pumps/" + unit.id());
        }
    }

    private Page find(String typed) {
        return pages.open("/find?tag=" + typed);
    }

    @Test
    void tellsAWrongCheckCharacterAsALikelyMistypeWithWhatWasMeant() {
        Page page = find("BF-08 F");
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.text("h1")).isEqualTo("BF-08 F does not fit together");
        assertThat(page.text(".lead")).contains("The check character of BF-08 is D, not F.", "mistyped");
        // first the tag that the character belongs to, then the tag as it was typed
        assertThat(page.html().select(".due .tagline").eachText()).containsExactly("BF-07", "BF-08");
        assertThat(page.text(".due")).contains("Its check character is F, the one that was typed.");
        assertThat(page.html().select(".due a").attr("href")).isEqualTo("/pumps/" + unit.id());
    }

    @Test
    void offersWhatIsOneSlipAwayOnlyWhenNothingInTheFleetHasTheWords() {
        assertThat(find("BF-0").location()).isEqualTo("/pumps?text=BF-0");
        Page page = find("BF-O7");
        assertThat(page.status()).isEqualTo(404);
        assertThat(page.text(".due")).contains("BF-07").doesNotContain("BF-08");
        assertThat(find("BF 07").text(".due")).contains("BF-07");
        assertThat(find("Brackenfold Y").location()).isEqualTo("/pumps?text=Brackenfold+Y");
        assertThat(find("zebra").location()).isEqualTo("/pumps?text=zebra");
        assertThat(find("").location()).isEqualTo("/pumps?text=");
        assertThat(find("\0").status()).isEqualTo(400);
    }

    @Test
    void offersTheCameraAndTheFormOnTheScanPage() {
        Page page = pages.open("/scan");
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.html().select("main form").attr("action")).isEqualTo("/find");
        assertThat(page.html().select("main [data-say]:not([hidden])")).isEmpty();
        assertThat(page.html().select("script:not([src])")).isEmpty();
        assertThat(page.html().select("header a[href=/scan]")).hasSize(1);
    }
}
