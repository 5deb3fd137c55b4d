package freshet.phrases;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.care.Answer;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.care.ServiceRecord;
import freshet.care.SignOff;
import freshet.care.Task;
import freshet.checklists.CheckLine;
import freshet.checklists.Checklist;
import freshet.checklists.Checklists;
import freshet.checklists.Choice;
import freshet.checklists.Phase;
import freshet.people.Language;
import freshet.people.Person;
import freshet.pumps.Unit;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;

/** What a new install begins with is there in Spanish, and a reader of Spanish gets it where the work is. */
@FreshetTest
class PhrasesTests {

    private static final Locale SPANISH = Language.ES.locale();

    /** Figures with what they are of, in either language: the same must stand in both. */
    private static final Pattern FIGURE = Pattern.compile("[<>]?\\d+(?:\\.\\d+)?");

    /** Short words that are the same in both. */
    private static final Set<String> THE_SAME = Set.of("No");

    @Autowired
    Checklists checklists;

    @Autowired
    Care care;

    @Autowired
    CareYard yard;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    MockMvc mvc;

    @Autowired
    freshet.TestClock clock;

    private Set<String> shipped() {
        Set<String> texts = new LinkedHashSet<>(
                jdbc.sql("select name from care_rule").query(String.class).list());
        for (Checklist checklist : checklists.checklists()) {
            texts.add(checklist.name());
            for (CheckLine line : checklist.lines()) {
                texts.add(line.section());
                texts.add(line.question());
                texts.add(line.hint());
                texts.add(line.caution());
                line.choices().stream().map(Choice::words).forEach(texts::add);
            }
        }
        texts.remove(null);
        return texts;
    }

    private static List<String> figures(String text) {
        return FIGURE.matcher(text).results().map(MatchResult::group).sorted().toList();
    }

    @Test
    void hasEveryTextThatANewInstallBeginsWithAndTheSameFiguresInIt() {
        Set<String> texts = shipped();
        assertThat(texts).hasSizeGreaterThan(600);
        List<String> wrong = new ArrayList<>();
        for (String text : texts) {
            String said = Phrases.said(SPANISH, text);
            if (said.equals(text) && !THE_SAME.contains(text)) {
                wrong.add("not translated: " + text);
            }
            if (!figures(said).equals(figures(text))) {
                wrong.add("other figures: " + text + " / " + said);
            }
            if (said.lines().count() != text.lines().count()) {
                wrong.add("other lines: " + text + " / " + said);
            }
        }
        assertThat(wrong).isEmpty();
    }

    @Test
    void saysWhatNobodyTranslatedAsItWasWritten() {
        assertThat(Phrases.said(SPANISH, "Look behind the blue door")).isEqualTo("Look behind the blue door");
        assertThat(Phrases.said(SPANISH, "Opening 2026")).isEqualTo("Apertura 2026");
        assertThat(Phrases.said(SPANISH, "Opening the 2nd")).isEqualTo("Opening the 2nd");
        assertThat(Phrases.said(Locale.ENGLISH, "Opening 2026")).isEqualTo("Opening 2026");
    }

    @Test
    void givesATechnicianTheChecklistInSpanishAndSignsTheWordsAsTheyAreStored() {
        clock.set("2026-03-14T14:00:00Z");
        Person ilse = yard.ilse();
        yard.teo();
        Unit unit = yard.unit("BF-04");
        Task opening = care.tasksOf(unit.id()).stream()
                .filter(task -> task.phase() == Phase.OPENING && task.openOn(LocalDate.parse("2026-03-14")))
                .findFirst()
                .orElseThrow();
        Pages teo = Pages.signedIn(mvc, "teo", "mud on boots");
        teo.submit("/account/units", "unitSystem", "SI", "language", "ES");

        Page sheet = teo.open("/tasks/" + opening.id());
        assertThat(sheet.status()).isEqualTo(200);
        assertThat(sheet.text()).contains("Apertura 2026");
        assertThat(sheet.html().select(".caution").get(0).text()).contains("Desenchúfala antes de acercar una mano");
        Set<String> english = shipped();
        english.removeIf(
                text -> text.length() < 12 || Phrases.said(SPANISH, text).equals(text));
        assertThat(english).noneMatch(sheet.text("main")::contains);
        // what a press sends is the stored word
        assertThat(sheet.html().select("input[type=radio]").eachAttr("value")).contains("Free", "YES");
        assertThat(teo.open("/pumps/" + unit.id()).text("main")).contains("Apertura 2026");
        assertThat(teo.open("/").text("main")).contains("Apertura 2026");

        List<Answer> answers = CareYard.allPass(care.worksheet(opening.id()), ilse);
        long record = care.sign(opening.id(), SignOff.of(opening.version(), answers), ilse);
        Page signed = teo.open("/records/" + record);
        assertThat(signed.text("main")).contains("Gira el eje a mano", "Libre", "las palabras tal como se guardaron");
        ServiceRecord kept = care.record(record);
        assertThat(kept.lines()).anyMatch(line -> line.question().equals("Turn the shaft by hand. How does it turn?"));
        assertThat(kept.title()).isEqualTo("Opening 2026");
    }
}
