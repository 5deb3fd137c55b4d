package freshet.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import freshet.Browser;
import freshet.FreshetTest;
import freshet.measures.UnitSystem;
import jakarta.servlet.http.Cookie;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Base64;
import java.util.Map;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

/** The first page that a browser opens holds the sheet, later ones name it. */
@FreshetTest
class FirstPageTests {

    @LocalServerPort
    int port;

    @Autowired
    MockMvc mvc;

    @Autowired
    People people;

    @BeforeEach
    void owner() {
        people.welcomeFirstOwner("ilse", "Ilse Marrow", "river at thaw", UnitSystem.US);
    }

    @Test
    void holdsTheSheetUnderItsHashAndRemembersIt() throws Exception {
        MockHttpServletResponse first = answer(opened());
        String sheet = page(first).selectFirst("style").data();
        assertThat(sheet).isEqualTo(Files.readString(Path.of("src/main/resources/static/app.css")));
        String hash = Base64.getEncoder()
                .encodeToString(MessageDigest.getInstance("SHA-256").digest(sheet.getBytes(StandardCharsets.UTF_8)));
        assertThat(first.getHeader("Content-Security-Policy"))
                .contains("style-src 'self' 'sha256-" + hash + "';")
                .doesNotContain("unsafe");
        assertThat(link(first).attr("media")).isEqualTo("print");

        MockHttpServletResponse later = answer(opened().cookie(first.getCookie("sheet")));
        assertThat(page(later).select("style")).isEmpty();
        assertThat(link(later).hasAttr("media")).isFalse();
        assertThat(later.getCookie("sheet")).isNull();
    }

    @Test
    void holdsTheSheetAgainWhenItChanged() throws Exception {
        assertThat(page(answer(opened().cookie(new Cookie("sheet", "0123456789abcdef"))))
                        .select("style"))
                .hasSize(1);
    }

    @Test
    void namesTheSheetForAScriptThatFetchesThePage() throws Exception {
        MockHttpServletResponse fetched = answer(get("/sign-in").header("Sec-Fetch-Dest", "empty"));
        assertThat(page(fetched).select("style")).isEmpty();
        assertThat(link(fetched).hasAttr("media")).isFalse();
    }

    @Test
    void looksTheSameInsideAndLinked() {
        Browser browser = Browser.at(port);
        // a worker from another journey holds the sheet and needs it in no page
        browser.driver().executeCdpCommand("Network.enable", Map.of());
        browser.driver().executeCdpCommand("Network.setBypassServiceWorker", Map.of("bypass", true));
        browser.driver().executeCdpCommand("Network.clearBrowserCookies", Map.of());
        String looks = "return [document.querySelectorAll('style').length,"
                + " getComputedStyle(document.querySelector('button.press')).minHeight,"
                + " getComputedStyle(document.body).backgroundColor,"
                + " getComputedStyle(document.querySelector('.top')).display].join(' ')";
        String first = (String) browser.go("/sign-in").driver().executeScript(looks);
        String later = (String) browser.go("/sign-in").driver().executeScript(looks);
        browser.driver().executeCdpCommand("Network.setBypassServiceWorker", Map.of("bypass", false));
        assertThat(first).startsWith("1 ").isEqualTo(later.replaceFirst("0", "1"));
        assertThat(later).startsWith("0 ");
    }

    private static MockHttpServletRequestBuilder opened() {
        return get("/sign-in").header("Sec-Fetch-Dest", "document");
    }

    private MockHttpServletResponse answer(MockHttpServletRequestBuilder request) throws Exception {
        return mvc.perform(request).andReturn().getResponse();
    }

    private static Document page(MockHttpServletResponse answer) throws Exception {
        return Jsoup.parse(answer.getContentAsString());
    }

    private static Element link(MockHttpServletResponse answer) throws Exception {
        return page(answer).selectFirst("link[rel=stylesheet]");
    }
}
