package freshet.findings;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.TestClock;
import freshet.care.CareYard;
import freshet.checklists.Checklists;
import freshet.people.Competence;
import freshet.people.Person;
import freshet.pumps.Unit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class FindingPagesTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    Findings findings;

    @Autowired
    Checklists checklists;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    Person ilse;
    Unit unit;
    Pages teos;

    @BeforeEach
    void oneUnit() {
        clock.set("2026-03-14T14:00:00Z");
        ilse = yard.ilse();
        yard.teo();
        unit = yard.unit("BF-03");
        teos = Pages.signedIn(mvc, "teo", "mud on boots");
    }

    @Test
    void writeAFindingWithWordsAndASeverity() {
        String address = "/pumps/" + unit.id() + "/finding";
        assertThat(teos.open(address).text("h1")).isEqualTo("Write a finding about BF-03");

        Page refused = teos.submit(address, "what", "Shaft stuck");
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.wrong("severity")).isEqualTo("Choose how bad it is.");
        assertThat(refused.html().getElementById("what").text()).isEqualTo("Shaft stuck");

        Page kept = teos.submit(address, "what", "Shaft stuck", "severity", "3");
        assertThat(kept.location()).isEqualTo("/pumps/" + unit.id());
        assertThat(teos.open(address).text()).contains("Open already", "Severity 3 Shaft stuck");
    }

    @Test
    void closeAFindingWithWords() {
        long id = findings.write(FindingDraft.about(unit.id(), 3, "Shaft stuck"), ilse);
        Page page = teos.open("/findings/" + id);
        assertThat(page.text(".finding")).contains("3 fix before next use", "Shaft stuck", "Opened by Ilse Marrow");
        assertThat(page.text()).contains("Closing this opens a check after repair");

        Page refused = teos.submit("/findings/" + id, "version", "0", "how", " ");
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.wrong("how")).isEqualTo("Say in words what was done.");
        assertThat(teos.submit("/findings/" + id, "version", "0", "how", "Freed")
                        .status())
                .isEqualTo(302);
        assertThat(teos.open("/findings/" + id).text()).contains("Closed by Teo Brandt", "Freed");
        assertThat(teos.open("/findings/" + id).html().select("main form")).isEmpty();
    }

    @Test
    void keepWhatWasTypedWhenSomebodyElseClosedItMeanwhile() {
        long id = findings.write(FindingDraft.about(unit.id(), 1, "Hums"), ilse);
        findings.close(id, 0, "Quiet again", ilse);

        Page page = teos.submit("/findings/" + id, "version", "0", "how", "Turned it round");
        assertThat(page.status()).isEqualTo(409);
        assertThat(page.text()).contains("Somebody changed this while you were typing", "Quiet again");
        assertThat(page.html().getElementById("how").text()).isEqualTo("Turned it round");
    }

    @Test
    void sayStopOfADanger() {
        long id = findings.write(FindingDraft.about(unit.id(), 4, "Cord nicked to the core"), ilse);
        assertThat(teos.open("/findings/" + id).text(".caution"))
                .contains("Stop: danger", "Do not plug it in.", "Do not send it out", "Local code");
        assertThat(teos.open("/findings/" + id).text("main"))
                .as("the caution stands before any press")
                .containsSubsequence("Stop: danger", "Plan the repair", "Close as");
    }

    @Test
    void leaveAnElectricalFindingToACompetentPerson() {
        long earth = checklists.checklists().get(0).lines().stream()
                .filter(line -> line.competence() == Competence.ELECTRICAL)
                .findFirst()
                .orElseThrow()
                .id();
        long id = findings.write(new FindingDraft(unit.id(), null, earth, 4, "No earth"), ilse);
        Page page = teos.open("/findings/" + id);
        assertThat(page.text(".locked"))
                .isEqualTo("Closing this needs a person competent for electrical work. Leave it to Ilse Marrow.");
        assertThat(page.html().select("main form")).isEmpty();
        assertThat(teos.submit("/findings/" + id, "version", "0", "how", "Wiggled it")
                        .status())
                .isEqualTo(403);
        assertThat(teos.open("/findings/999999").status()).isEqualTo(404);
        assertThat(teos.open("/pumps/999999/finding").status()).isEqualTo(404);
    }
}
