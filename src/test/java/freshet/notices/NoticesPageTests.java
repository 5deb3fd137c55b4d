package freshet.notices;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import com.icegreen.greenmail.junit5.GreenMailExtension;
import com.icegreen.greenmail.util.ServerSetupTest;
import freshet.FreshetTest;
import freshet.Pages;
import freshet.TestClock;
import freshet.care.CareYard;
import freshet.people.Person;
import freshet.places.Site;
import java.time.Duration;
import java.time.LocalTime;
import java.util.Set;
import org.hamcrest.Matchers;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class NoticesPageTests {

    @RegisterExtension
    static final GreenMailExtension POST = new GreenMailExtension(ServerSetupTest.SMTP.dynamicPort());

    @Autowired
    Notices notices;

    @Autowired
    MailYard mail;

    @Autowired
    CareYard yard;

    @Autowired
    MockMvc mvc;

    @Autowired
    TestClock clock;

    Person ilse;
    Site brackenfold;
    Pages pages;

    @BeforeEach
    void signIn() {
        clock.set("2026-03-14T15:00:00Z");
        ilse = yard.ilse();
        brackenfold = yard.brackenfold();
        mail.use(POST);
        pages = Pages.signedIn(mvc, "ilse", "river at thaw");
    }

    @Test
    void isReachedFromTheAccount() {
        assertThat(pages.open("/account").html().select("main a[href=/notices]").text())
                .isEqualTo("Mail and calendar");
        Pages.Page blank = pages.open("/notices");
        assertThat(blank.status()).isEqualTo(200);
        assertThat(blank.text("h1")).isEqualTo("No mail comes to you before an address says yes");
        assertThat(blank.text()).contains("No calendar has an address of yours.");
        assertThat(blank.html().select("[style], main script")).isEmpty();
    }

    @Test
    void asksAnAddressAndWritesThereOnceItSaidYes() throws Exception {
        Pages.Page wrong = pages.submit("/notices/address", "address", "ilse at ansel");
        assertThat(wrong.status()).isEqualTo(422);
        assertThat(wrong.wrong("address")).isEqualTo("This is not one mail address. Type it like name@place.example");
        assertThat(wrong.value("address")).isEqualTo("ilse at ansel");
        for (String bad : new String[] {
            "", "a@b@c", "Ilse <i@ansel.example>", "i@ansel.example, j@ansel.example", "i@x\r\nBcc: j@x"
        }) {
            assertThat(pages.submit("/notices/address", "address", bad).status())
                    .as(bad)
                    .isEqualTo(422);
        }

        assertThat(pages.submit("/notices/address", "address", " ilse@ansel.example ")
                        .location())
                .isEqualTo("/notices");
        MailYard.await(() ->
                POST.getReceivedMessages().length == 1 && notices.mailbag(ilse).waiting() == 0);
        assertThat(pages.open("/notices").text()).contains("A mail went or goes to ilse@ansel.example with one link.");
        MailYard.Arrived question = MailYard.only(POST);
        assertThat(question.to()).isEqualTo("ilse@ansel.example");
        assertThat(question.title()).isEqualTo("Is mail from Freshet welcome here?");
        assertThat(question.text())
                .contains("Ilse Marrow works with the pumps", "If it is not you, do nothing")
                .doesNotContain("/notices/stop/");
        String link = "/notices/confirm/" + question.secretAfter("/notices/confirm/");

        mvc.perform(get(link))
                .andExpect(status().isOk())
                .andExpect(content()
                        .string(Matchers.containsString("Is mail from Freshet welcome at ilse@ansel.example?")));
        assertThat(notices.choices(ilse.id()).address())
                .as("opening it changes nothing")
                .isNull();
        mvc.perform(post(link).with(csrf()))
                .andExpect(status().isOk())
                .andExpect(content().string(Matchers.containsString("Mail now comes to ilse@ansel.example")));
        assertThat(notices.choices(ilse.id()).address()).isEqualTo("ilse@ansel.example");
        mvc.perform(get(link)).andExpect(status().isNotFound());
        assertThat(pages.open("/notices").text("h1")).isEqualTo("Mail comes to you about danger or late work only");

        pages.submit("/notices/address/forget");
        assertThat(notices.choices(ilse.id()).address()).isNull();
    }

    @Test
    void endsAQuestionAfterThreeDaysAndAsksAnAddressOnceADay() throws Exception {
        notices.askAddress(ilse, "ilse@ansel.example");
        MailYard.await(() ->
                POST.getReceivedMessages().length == 1 && notices.mailbag(ilse).waiting() == 0);
        String link = "/notices/confirm/" + MailYard.only(POST).secretAfter("/notices/confirm/");
        notices.askAddress(ilse, "ilse@ansel.example");
        notices.sendAll();
        assertThat(MailYard.arrived(POST)).hasSize(1);

        clock.advance(Duration.ofDays(3));
        mvc.perform(get(link)).andExpect(status().isOk());
        clock.advance(Duration.ofSeconds(1));
        mvc.perform(get(link)).andExpect(status().isNotFound());
        mvc.perform(post(link).with(csrf())).andExpect(status().isNotFound());
    }

    @Test
    void asksOnlyTheAddressThatWasTypedLast() throws Exception {
        notices.askAddress(ilse, "typo@ansel.example");
        MailYard.await(() ->
                POST.getReceivedMessages().length == 1 && notices.mailbag(ilse).waiting() == 0);
        String old = "/notices/confirm/" + MailYard.only(POST).secretAfter("/notices/confirm/");
        notices.askAddress(ilse, "ilse@ansel.example");

        mvc.perform(post(old).with(csrf())).andExpect(status().isNotFound());
        assertThat(notices.choices(ilse.id()).address()).isNull();
    }

    @Test
    void keepsWhatWasChosen() {
        Pages.Page saved = pages.submit(
                "/notices",
                "version",
                "0",
                "rhythm",
                "WEEKLY",
                "weekday",
                "FRIDAY",
                "sendHour",
                "7",
                "everySite",
                "false",
                "siteIds",
                String.valueOf(brackenfold.id()),
                "quietFrom",
                "21:30",
                "quietTo",
                "6:00",
                "tellDanger",
                "true",
                "overdueDays",
                "10");
        assertThat(saved.location()).isEqualTo("/notices");
        Choices its = notices.choices(ilse.id());
        assertThat(its.rhythm()).isEqualTo(Rhythm.WEEKLY);
        assertThat(its.quiet()).isEqualTo(new QuietHours(LocalTime.of(21, 30), LocalTime.of(6, 0)));
        assertThat(its.siteIds()).containsExactly(brackenfold.id());
        assertThat(its.tellDanger()).isTrue();
        assertThat(its.tellOverdue()).isFalse();
        assertThat(its.overdueDays()).isEqualTo(10);

        Pages.Page again = pages.open("/notices");
        assertThat(again.text()).contains("This is what you get from now on.");
        assertThat(again.html().select("input[name=rhythm][checked]").val()).isEqualTo("WEEKLY");
        assertThat(again.html().select("#weekday option[selected]").val()).isEqualTo("FRIDAY");
        assertThat(again.html().select("#sendHour option[selected]").text()).isEqualTo("7:00");
        assertThat(again.html().select("input[name=siteIds][checked]").val())
                .isEqualTo(String.valueOf(brackenfold.id()));
        assertThat(again.value("quietFrom")).isEqualTo("21:30");
    }

    @Test
    void refusesWhatDoesNotFitTogetherAndKeepsWhatWasTyped() {
        Pages.Page wrong = pages.submit(
                "/notices",
                "version",
                "0",
                "rhythm",
                "DAILY",
                "sendHour",
                "5",
                "everySite",
                "false",
                "quietFrom",
                "21:30",
                "quietTo",
                "06:00",
                "overdueDays",
                "400");
        assertThat(wrong.status()).isEqualTo(422);
        assertThat(wrong.html().title()).startsWith("Error:");
        assertThat(wrong.wrong("sendHour")).isEqualTo("This hour lies in your quiet hours. Move one of them.");
        assertThat(wrong.wrong("siteIds")).isEqualTo("Tick a place, or choose all places.");
        assertThat(wrong.wrong("overdueDays")).isEqualTo("Type a number of days from 0 to 365.");
        assertThat(wrong.value("quietFrom")).isEqualTo("21:30");
        assertThat(wrong.html().select("#sendHour option[selected]").val()).isEqualTo("5");
        assertThat(wrong.html().select(".wrongs li a").eachAttr("href"))
                .allSatisfy(target -> assertThat(wrong.html().select(target)).hasSize(1));

        assertThat(pages.submit("/notices", "version", "0", "rhythm", "NONE", "quietFrom", "21:30")
                        .wrong("quietTo"))
                .isEqualTo("Type both ends of the quiet hours, or neither.");
        assertThat(pages.submit("/notices", "version", "0", "quietFrom", "half nine", "quietTo", "6:00")
                        .wrong("quietFrom"))
                .isEqualTo("\"half nine\" is not a time. Type it like 21:30");
        assertThat(pages.submit("/notices", "version", "0", "overdueDays", "soon")
                        .wrong("overdueDays"))
                .isEqualTo("Type a number of days from 0 to 365.");
        assertThat(notices.choices(ilse.id()).version()).isZero();
    }

    @Test
    void answersAStaleChoiceWithWhatWasTyped() {
        pages.submit("/notices", "version", "0", "rhythm", "NONE", "everySite", "true");
        Pages.Page stale =
                pages.submit("/notices", "version", "0", "rhythm", "DAILY", "sendHour", "8", "everySite", "true");
        assertThat(stale.status()).isEqualTo(409);
        assertThat(stale.text()).contains("Somebody changed this while you were typing");
        assertThat(stale.html().select("input[name=rhythm][checked]").val()).isEqualTo("DAILY");
        assertThat(stale.value("version")).isEqualTo("1");
    }

    @Test
    void leavesUrgentMailToOwners() {
        yard.teo();
        Pages teos = Pages.signedIn(mvc, "teo", "mud on boots");
        Pages.Page page = teos.open("/notices");
        assertThat(page.text()).doesNotContain("Told to owners at once", "severity 4");
        teos.submit("/notices", "version", "0", "rhythm", "DAILY", "everySite", "true");
        assertThat(notices.choices(yard.teo().id()).tellDanger())
                .as("as it stood")
                .isTrue();
        assertThat(teos.submit("/notices/mail/try").status()).isEqualTo(403);
        mail.reach(ilse, "ilse@ansel.example", POST);
        assertThat(teos.open("/notices/mail").text())
                .contains("No mail was owed yet")
                .doesNotContain("Ilse Marrow");
        assertThat(pages.open("/notices/mail").text()).contains("Question to an address", "Sent 14 Mar 2026");
    }

    @Test
    void warnsThatDangerReachesNobody() {
        String nobody = "so a finding of severity 4 is mailed to nobody";
        assertThat(pages.open("/notices/mail").text()).contains(nobody);
        mail.reach(ilse, "ilse@ansel.example", POST);
        assertThat(pages.open("/notices/mail").text()).doesNotContain(nobody);
    }

    @Test
    void showsACalendarAddressOnceAndTakesItBack() throws Exception {
        Pages.Page made = pages.submit("/notices/calendars", "siteId", String.valueOf(brackenfold.id()));
        assertThat(made.location()).isEqualTo("/notices#calendars");
        Pages.Page shown = pages.open("/notices");
        String address = shown.text(".token");
        assertThat(address).matches("http://localhost/calendar/[\\w-]{43}\\.ics");
        assertThat(shown.text()).contains("It is shown this once", "Has an address since 14 Mar 2026, 10:00");
        assertThat(pages.open("/notices").text()).doesNotContain("/calendar/");
        String path = address.substring("http://localhost".length());
        mvc.perform(get(path)).andExpect(status().isOk());

        assertThat(pages.submit("/notices/calendars/" + brackenfold.id() + "/take-back")
                        .location())
                .isEqualTo("/notices");
        mvc.perform(get(path)).andExpect(status().isNotFound());
        assertThat(pages.submit("/notices/calendars/" + brackenfold.id() + "/take-back")
                        .status())
                .isEqualTo(404);
        assertThat(pages.submit("/notices/calendars", "siteId", "999999").status())
                .isEqualTo(404);
    }

    @Test
    void asksWhoIsThereForEverythingButTheSecretAddresses() throws Exception {
        for (String closed : Set.of("/notices", "/notices/mail")) {
            mvc.perform(get(closed)).andExpect(status().is3xxRedirection());
        }
        mvc.perform(post("/notices/address/forget")).andExpect(status().isForbidden());
    }
}
