package freshet.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.measures.UnitSystem;
import java.time.Duration;
import java.util.Set;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpSession;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class SignInTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    People people;

    @Autowired
    SignInThrottle throttle;

    @Autowired
    TestClock clock;

    @BeforeEach
    void forgetWrongTries() {
        throttle.forget();
    }

    Person owner() {
        return people.welcomeFirstOwner("ilse", "Ilse Marrow", "river at thaw", UnitSystem.US);
    }

    @Test
    void makesTheFirstOwnerOnTheFirstPageAndNeverAgain() throws Exception {
        Document page = Jsoup.parse(mvc.perform(get("/welcome"))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString());
        assertThat(page.selectFirst("h1").text()).isEqualTo("Welcome to Freshet");

        mvc.perform(post("/welcome")
                        .with(csrf())
                        .param("signInName", "ilse")
                        .param("fullName", "Ilse Marrow")
                        .param("password", "river at thaw")
                        .param("unitSystem", "SI"))
                .andExpect(redirectedUrl("/sign-in?made"));
        assertThat(people.personNamed("ILSE")).get().satisfies(ilse -> {
            assertThat(ilse.owner()).isTrue();
            assertThat(ilse.unitSystem()).isEqualTo(UnitSystem.SI);
        });
        mvc.perform(get("/welcome")).andExpect(redirectedUrl("/"));
        mvc.perform(post("/welcome")
                        .with(csrf())
                        .param("signInName", "eve")
                        .param("fullName", "Eve")
                        .param("password", "river at thaw"))
                .andExpect(status().isForbidden());
        assertThat(people.everyone()).hasSize(1);
    }

    @Test
    void keepsWhatWasTypedWhenTheOwnerPageIsWrong() throws Exception {
        String html = mvc.perform(post("/welcome")
                        .with(csrf())
                        .param("signInName", "ilse marrow")
                        .param("fullName", "<script>alert(1)</script>")
                        .param("password", "short"))
                .andExpect(status().is(422))
                .andReturn()
                .getResponse()
                .getContentAsString();
        Document page = Jsoup.parse(html);
        assertThat(page.select(".wrongs li a").eachText())
                .containsExactlyInAnyOrder(
                        "The sign-in name needs 2 to 60 characters and no blanks.",
                        "The password needs 10 characters at least.");
        assertThat(page.select(".wrongs li a").eachAttr("href")).containsExactlyInAnyOrder("#signInName", "#password");
        assertThat(page.getElementById("signInName").val()).isEqualTo("ilse marrow");
        assertThat(page.getElementById("fullName").val()).isEqualTo("<script>alert(1)</script>");
        assertThat(page.getElementById("password").val()).isEmpty();
        assertThat(page.getElementById("signInName").attr("aria-describedby"))
                .contains("signInName-wrong")
                .contains("signInName-hint");
        assertThat(html).doesNotContain("<script>alert");
        assertThat(people.anyone()).isFalse();
    }

    @Test
    void letsInByThePasswordAloneAndRemembersThePageAskedFor() throws Exception {
        owner();
        MockHttpSession session = (MockHttpSession) mvc.perform(get("/account"))
                .andExpect(redirectedUrl("/sign-in"))
                .andReturn()
                .getRequest()
                .getSession();
        mvc.perform(post("/sign-in")
                        .session(session)
                        .with(csrf())
                        .param("signInName", "ilse")
                        .param("password", "not the river"))
                .andExpect(redirectedUrl("/sign-in?wrong"));
        MockHttpSession signedIn = (MockHttpSession) mvc.perform(post("/sign-in")
                        .session(session)
                        .with(csrf())
                        .param("signInName", "Ilse")
                        .param("password", "river at thaw"))
                .andExpect(redirectedUrl("http://localhost/account?continue"))
                .andReturn()
                .getRequest()
                .getSession();
        String html = mvc.perform(get("/account").session(signedIn))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString();
        assertThat(Jsoup.parse(html).selectFirst("h1").text()).isEqualTo("Ilse Marrow");
    }

    @Test
    void makesGuessingWaitUntilTheQuarterOfAnHourIsOver() throws Exception {
        owner();
        for (int i = 0; i < SignInThrottle.FREE_TRIES; i++) {
            signIn("ilse", "guess number " + i).andExpect(redirectedUrl("/sign-in?wrong"));
        }
        signIn("ilse", "river at thaw").andExpect(redirectedUrl("/sign-in?wait"));
        clock.advance(SignInThrottle.PAUSE.plus(Duration.ofSeconds(1)));
        signIn("ilse", "river at thaw").andExpect(redirectedUrl("/"));
    }

    private org.springframework.test.web.servlet.ResultActions signIn(String name, String password) throws Exception {
        return mvc.perform(
                post("/sign-in").with(csrf()).param("signInName", name).param("password", password));
    }

    @Test
    void refusesAPostWithoutItsToken() throws Exception {
        owner();
        mvc.perform(post("/sign-in").param("signInName", "ilse").param("password", "river at thaw"))
                .andExpect(status().isForbidden());
    }

    @Test
    void sendsStrictHeaders() throws Exception {
        owner();
        mvc.perform(get("/sign-in"))
                .andExpect(header().string(
                                "Content-Security-Policy",
                                org.hamcrest.Matchers.allOf(
                                        org.hamcrest.Matchers.containsString("default-src 'none'"),
                                        org.hamcrest.Matchers.not(org.hamcrest.Matchers.containsString("unsafe")))))
                .andExpect(header().string("X-Content-Type-Options", "nosniff"))
                .andExpect(header().string("X-Frame-Options", "DENY"))
                .andExpect(header().string("Referrer-Policy", "same-origin"));
    }

    @Test
    void letsAProgramInByItsTokenUntilItIsTakenBack() throws Exception {
        Person ilse = owner();
        String token = people.issueToken(ilse.id(), "gauge reader");
        mvc.perform(get("/api/v1/nothing")).andExpect(status().isUnauthorized());
        mvc.perform(get("/api/v1/nothing").header("Authorization", "Bearer not-it"))
                .andExpect(status().isUnauthorized())
                .andExpect(header().string("Content-Type", "application/problem+json"));
        assertThat(people.byToken(token)).get().extracting(Person::fullName).isEqualTo("Ilse Marrow");
        people.revokeToken(ilse.id(), people.tokens(ilse.id()).get(0).id());
        assertThat(people.byToken(token)).isEmpty();
    }

    @Test
    void keepsTheLastOwnerAnOwner() {
        Person ilse = owner();
        org.assertj.core.api.Assertions.assertThatThrownBy(() -> people.changePerson(
                        ilse.id(), ilse.version(), "Ilse Marrow", Role.TECHNICIAN, Set.of(), true, null, ilse))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.wrongs().get(0).code()).isEqualTo("people.lastOwner"));
        assertThat(people.person(ilse.id()).owner()).isTrue();
    }

    @Test
    void keepsTheTrailUnchangeable(@Autowired org.springframework.jdbc.core.simple.JdbcClient jdbc) {
        owner();
        org.assertj.core.api.Assertions.assertThatThrownBy(
                        () -> jdbc.sql("update audit_entry set detail = 'x'").update())
                .hasMessageContaining("never changed");
    }
}
