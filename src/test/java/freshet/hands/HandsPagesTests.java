package freshet.hands;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.TestClock;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.care.SignOff;
import freshet.care.Task;
import freshet.care.Worksheet;
import freshet.people.NotAllowed;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import freshet.pumps.PumpKind;
import freshet.pumps.Unit;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class HandsPagesTests {

    private static final LocalDate YEAR_BEGAN = LocalDate.of(2027, 1, 1);

    @Autowired
    MockMvc mvc;

    @Autowired
    Hands hands;

    @Autowired
    Care care;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    Person ilse;
    Person teo;
    Pages ilses;
    Pages teos;

    @BeforeEach
    void sundayBeforeTheEnd() {
        clock.set("2027-03-14T19:40:00Z");
        ilse = yard.ilse();
        teo = yard.teo();
        ilses = Pages.signedIn(mvc, "ilse", "river at thaw");
        teos = Pages.signedIn(mvc, "teo", "mud on boots");
    }

    private Task opening(String tag) {
        Unit unit =
                yard.unit(tag, PumpKind.UTILITY_SUBMERSIBLE, yard.brackenfold().id(), YEAR_BEGAN);
        return care.tasksOf(unit.id()).get(0);
    }

    private void sign(Task task, String ended) {
        Worksheet sheet = care.worksheet(task.id());
        List<freshet.care.Answer> answers = CareYard.allPass(sheet, ilse);
        Instant at = Instant.parse(ended);
        care.sign(task.id(), new SignOff(sheet.task().version(), answers, at.minusSeconds(60), at, null), ilse);
    }

    @Test
    void writesHoursAndWeeksOffAndSaysWhichWeekIsShort() {
        int minutes = opening("BF-01").minutes();
        opening("BF-02");
        sign(opening("BF-03"), "2027-03-12T18:00:00Z");
        sign(opening("BF-04"), "2027-03-05T18:00:00Z");
        sign(opening("BF-05"), "2027-02-20T18:00:00Z");
        Page empty = ilses.open("/season");
        assertThat(empty.text("#outlook ~ div"))
                .contains(
                        "Nobody has hours for care written down",
                        "2 tasks, 1 h 10 planned, 1 h 31 with 30 % for findings");
        assertThat(minutes).as("of a utility submersible's opening").isEqualTo(35);

        assertThat(ilses.open("/season/hands").text("table")).contains("Teo Brandt", "not written");
        String address = "/season/hands/" + teo.id();
        Page wrong = teos.submit(address, "version", "-1", "hours", "a lot");
        assertThat(wrong.status()).isEqualTo(422);
        assertThat(wrong.wrong("hours")).contains("a lot");
        assertThat(teos.submit(address, "version", "-1", "hours", "400").wrong("hours"))
                .contains("From 0 to 100 hours");
        assertThat(teos.submit(address, "version", "-1", "hours", "0.75", "off", "2027-03-22")
                        .location())
                .isEqualTo("/season/hands");
        assertThat(ilses.open("/season/hands").text("tbody")).contains("45 min", "week 12");
        assertThat(teos.open(address).html().select("[name=off][checked]").eachAttr("value"))
                .containsExactly("2027-03-22");

        Page season = ilses.open("/season");
        // 91 min against 45: short by 46 min in week 11; the second is late, the first takes 45.5
        assertThat(season.text("#outlook ~ div .figure-word")).isEqualTo("Week 11 is short by 46 min");
        assertThat(season.text("#outlook ~ div .says"))
                .contains("against 45 min of hands until Sat 20 Mar")
                .contains("Signed in the last seven days: 35 min of planned work; in the seven before: 35 min.")
                .contains("all of it would be done on Sun 28 Mar");
        assertThat(season.html().select(".weeks rect.short")).hasSize(1);
        assertThat(season.html().select("#late ~ .reasons .tagline").eachText()).containsExactly("BF-01", "BF-02");
        assertThat(season.text("#late ~ .reasons"))
                .contains("46 min of work due before it comes first, and the hands until then come to 45 min.");

        ilses.submit("/season/hands", "version", "-1", "percent", "0");
        assertThat(ilses.open("/season").text("#outlook ~ div .figure-word")).isEqualTo("Week 11 is short by 25 min");
    }

    @Test
    void keepsHandsToOneselfAndOwnersAndRefusesAStaleChange() {
        hands.write(teo.id(), -1, 840, Set.of(LocalDate.of(2027, 3, 24)), teo);
        assertThat(hands.hand(teo.id()).weeksOff()).containsExactly(LocalDate.of(2027, 3, 22));
        assertThatThrownBy(() -> hands.write(teo.id(), -1, 60, Set.of(), ilse)).isInstanceOf(Stale.class);
        assertThatThrownBy(() -> hands.write(ilse.id(), -1, 60, Set.of(), teo)).isInstanceOf(NotAllowed.class);
        assertThatThrownBy(() -> hands.write(teo.id(), 0, 6001, Set.of(), teo)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> hands.writeFindings(-1, 20, teo)).isInstanceOf(NotAllowed.class);
        hands.writeFindings(-1, 20, ilse);
        assertThatThrownBy(() -> hands.writeFindings(-1, 25, ilse)).isInstanceOf(Stale.class);
        assertThat(hands.findings().percent()).isEqualTo(20);

        Page stale = ilses.submit("/season/hands/" + teo.id(), "version", "-1", "hours", "5");
        assertThat(stale.status()).isEqualTo(409);
        assertThat(stale.value("hours")).isEqualTo("5");
        assertThat(teos.open("/season/hands/" + ilse.id()).status()).isEqualTo(403);
        assertThat(teos.open("/season/hands").html().select("#percent")).isEmpty();
        assertThat(ilses.open("/season/hands/9999").status()).isEqualTo(404);
    }
}
