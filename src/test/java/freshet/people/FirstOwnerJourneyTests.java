package freshet.people;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.Browser;
import freshet.FreshetTest;
import org.junit.jupiter.api.Test;
import org.springframework.boot.test.web.server.LocalServerPort;

@FreshetTest
class FirstOwnerJourneyTests {

    @LocalServerPort
    int port;

    @Test
    void setsUpAnEmptyInstallOnAPhone() {
        Browser browser = Browser.at(port).go("/welcome").picture("welcome-390");
        browser.type("signInName", "ilse").type("fullName", "Ilse Marrow").type("password", "too short");
        browser.press("Make the owner's account");
        assertThat(browser.text()).contains("One thing to put right", "needs 10 characters at least");
        browser.picture("welcome-error-390");
        browser.type("password", "river at thaw").press("Make the owner's account");
        assertThat(browser.text()).contains("The owner's account is made");
        browser.picture("sign-in-390");
        browser.signIn("ilse", "river at thaw").go("/account").desk().picture("account-1280");
        assertThat(browser.text()).contains("Ilse Marrow", "Your account");
    }
}
