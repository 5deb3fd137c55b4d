package freshet.api;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import freshet.FreshetTest;
import freshet.people.People;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpSession;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class GuideTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    People people;

    @BeforeEach
    void signUp() {
        Program.with(mvc, people);
    }

    private Document page(String address, MockHttpSession session) throws Exception {
        return Jsoup.parse(mvc.perform(get(address).session(session))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString());
    }

    private MockHttpSession signedIn() throws Exception {
        return (MockHttpSession) mvc.perform(post("/sign-in")
                        .with(csrf())
                        .param("signInName", "ilse")
                        .param("password", "river at thaw"))
                .andReturn()
                .getRequest()
                .getSession();
    }

    @Test
    void isFoundFromTheAccountAndShowsHowToAsk() throws Exception {
        MockHttpSession session = signedIn();
        assertThat(page("/account", session).select("main a").eachAttr("href")).contains("/api-guide");
        Document page = page("/api-guide", session);
        assertThat(page.title()).isEqualTo("For programs · Freshet");
        assertThat(page.select("tbody tr")).hasSize(19);
        assertThat(page.select("tbody tr td").eachText()).noneMatch(text -> text.contains("api."));
        assertThat(page.selectFirst("pre").wholeText())
                .startsWith("curl http://localhost/api/v1/calculations/cycling \\\n")
                .contains("-H 'Authorization: Bearer TOKEN'")
                .contains("-d '{\"storageM3\":");
        assertThat(page.select("main a").eachAttr("href")).contains("/account", "/api/v1/openapi.json");
    }

    @Test
    void isForThoseWhoAreSignedIn() throws Exception {
        mvc.perform(get("/api-guide")).andExpect(redirectedUrl("/sign-in"));
    }
}
