package freshet.notices;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.results.Results;
import com.deque.html.axecore.selenium.AxeBuilder;
import com.icegreen.greenmail.junit5.GreenMailExtension;
import com.icegreen.greenmail.util.ServerSetupTest;
import freshet.Browser;
import freshet.FreshetTest;
import freshet.TestClock;
import freshet.care.CareYard;
import freshet.findings.FindingDraft;
import freshet.findings.Findings;
import freshet.people.Person;
import freshet.pumps.PumpKind;
import freshet.pumps.Unit;
import java.time.Duration;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.openqa.selenium.By;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;

@FreshetTest
class NoticesJourneyTests {

    @RegisterExtension
    static final GreenMailExtension POST = new GreenMailExtension(ServerSetupTest.SMTP.dynamicPort());

    @LocalServerPort
    int port;

    @Autowired
    Notices notices;

    @Autowired
    MailYard mail;

    @Autowired
    CareYard yard;

    @Autowired
    Findings findings;

    @Autowired
    TestClock clock;

    @Test
    void asksForADigestReadsTheLinkAndStopsItAgain() {
        clock.set("2026-03-22T23:05:00Z");
        Person ilse = yard.ilse();
        Unit unit = yard.unit(
                "BF-04", PumpKind.UTILITY_SUBMERSIBLE, yard.brackenfold().id(), LocalDate.of(2026, 1, 1));
        yard.site("Dyer Court", CareYard.CHICAGO, CareYard.opening("Spring", 3, 10, 4, 5));
        mail.use(POST);
        Browser browser =
                Browser.at(port).signIn("ilse", "river at thaw").go("/account").press("Mail and calendar");
        browser.type("address", "ilse@ansel.example").press("Ask this address");
        MailYard.await(() ->
                POST.getReceivedMessages().length == 1 && notices.mailbag(ilse).waiting() == 0);
        browser.go("/notices/confirm/" + MailYard.only(POST).secretAfter("/notices/confirm/"));
        browser.picture("notices-confirm-390").press("Yes, write to me here");
        assertThat(browser.text()).contains("Mail now comes to ilse@ansel.example");

        browser.go("/notices");
        browser.driver()
                .findElement(By.xpath("//label[contains(., 'Every day')]"))
                .click();
        browser.press("Save these choices").press("Make an address");
        assertThat(browser.text()).contains("It is shown this once", "A digest comes every day at 6:00");
        accessible(browser.phone().picture("notices-390"));
        accessible(browser.desk().picture("notices-1280"));

        findings.write(FindingDraft.about(unit.id(), 3, "Float sticks."), ilse);
        clock.advance(Duration.ofHours(12));
        mail.work();
        MailYard.Arrived digest = MailYard.arrived(POST).get(1);
        POST.stop();
        findings.write(FindingDraft.about(unit.id(), 4, "Cord nicked to the core."), ilse);
        MailYard.await(() -> notices.mailbag(ilse).troubled() == 1);
        browser.desk().go("/notices/mail");
        assertThat(browser.text()).contains("One mail waits that the server did not take");
        accessible(browser.picture("notices-mail-1280"));
        accessible(browser.phone().picture("notices-mail-390"));

        browser.driver().manage().deleteAllCookies();
        browser.go("/notices/stop/" + digest.stopSecret()).press("Stop it");
        assertThat(browser.text()).contains("No digest comes to Ilse Marrow any more");
        browser.picture("notices-stop-390");
    }

    private static void accessible(Browser browser) {
        Results found = new AxeBuilder().analyze(browser.driver());
        assertThat(found.getViolations()).isEmpty();
    }
}
