package freshet.checklists;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.people.Competence;
import freshet.pumps.PumpKind;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;

/** The checklists that a new install begins with keep the rules of safety. */
@FreshetTest
class DefaultChecklistsTests {

    @Autowired
    Checklists checklists;

    @Autowired
    JdbcClient database;

    @Test
    void areThereFromTheStartAndInstalledOnce() {
        assertThat(checklists.checklists())
                .extracting(checklist -> checklist.phase() + " " + checklist.pumpKind() + " " + checklist.effect())
                .containsExactly(
                        "OPENING UTILITY_SUBMERSIBLE PROVES",
                        "OPENING SUMP_WITH_FLOAT PROVES",
                        "CLOSING UTILITY_SUBMERSIBLE LAYS_UP",
                        "CLOSING SUMP_WITH_FLOAT PROVES",
                        "ELECTRICAL null NONE",
                        "CAPACITY null NONE");
        List<Checklist> before = checklists.checklists();
        database.sql("update checklist set minutes = 99 where phase = 'ELECTRICAL'")
                .update();
        checklists.installDefaults();
        assertThat(checklists.checklists()).hasSameSizeAs(before);
        assertThat(checklists.checklists().get(4).minutes()).isEqualTo(99);
        assertThat(checklists.version(before.get(0).versionId())).isEqualTo(before.get(0));
    }

    @Test
    void beginWithSafetyAndItsCaution() {
        for (Checklist checklist : checklists.checklists()) {
            CheckLine first = checklist.lines().get(0);
            assertThat(first.safety()).as(checklist.code()).isTrue();
            assertThat(first.question()).startsWith("Unplugged");
            assertThat(first.caution()).contains("Lift").contains("never by the cord");
            assertThat(checklist.lines())
                    .filteredOn(CheckLine::safety)
                    .allMatch(line -> line.required() && !line.mayNotApply() && line.kind() == AnswerKind.YES_NO);
        }
    }

    @Test
    void nameASourceAtEveryLine() {
        for (Checklist checklist : checklists.checklists()) {
            assertThat(checklist.lines())
                    .as(checklist.code())
                    .allMatch(line -> line.source() != null && !line.source().isBlank());
        }
    }

    @Test
    void callADamagedCordAndAMissingEarthDanger() {
        for (Checklist checklist : checklists.checklists()) {
            CheckLine cord = question(checklist, "Are cord, plug and gland whole?");
            assertThat(cord.failSeverity()).as(checklist.code()).isEqualTo(4);
            assertThat(cord.required()).isTrue();
        }
        for (Checklist checklist : checklists.checklists().stream()
                .filter(each -> each.needs(Competence.ELECTRICAL))
                .toList()) {
            assertThat(checklist.lines())
                    .filteredOn(line -> line.competence() == Competence.ELECTRICAL)
                    .hasSize(2)
                    .allMatch(line -> line.failSeverity() != null && line.failSeverity() == 4 && line.required())
                    .allMatch(line -> line.caution() != null);
        }
    }

    @Test
    void warnAgainWherePowerComesOnAndLookAtTheCordBefore() {
        for (Checklist checklist : checklists.checklists()) {
            List<CheckLine> wet = checklist.lines().stream()
                    .filter(line -> line.section().equals("Wet")
                            || line.section().startsWith("Power")
                            || line.section().startsWith("Flush, power"))
                    .toList();
            if (!wet.isEmpty()) {
                assertThat(String.valueOf(wet.get(0).caution()).toLowerCase(Locale.ROOT))
                        .as(checklist.code())
                        .contains("power")
                        .contains("dry hands");
                assertThat(question(checklist, "Are cord, plug and gland whole?")
                                .ordinal())
                        .isLessThan(wet.get(0).ordinal());
            }
        }
    }

    @Test
    void neverTellAnybodyToEnterAPit() {
        for (Checklist checklist : checklists.checklists()) {
            for (CheckLine line : checklist.lines()) {
                String words =
                        String.join(" ", line.question(), String.valueOf(line.hint()), String.valueOf(line.caution()));
                assertThat(words.replace("Do not enter the pit", "")).doesNotContainIgnoringCase("enter the pit");
            }
            if (checklist.pumpKind() == PumpKind.SUMP_WITH_FLOAT) {
                assertThat(checklist.lines().get(0).caution()).contains("Do not enter the pit");
            }
        }
    }

    @Test
    void judgeEveryFailureAndOfferAPassForEveryChoice() {
        for (Checklist checklist : checklists.checklists()) {
            for (CheckLine line : checklist.lines()) {
                if (line.kind() == AnswerKind.CHOICE) {
                    assertThat(line.choices()).as(line.question()).anyMatch(choice -> choice.verdict() == Verdict.PASS);
                }
                boolean canFail = line.kind() == AnswerKind.CHOICE
                        || line.kind() == AnswerKind.YES_NO && !line.safety()
                        || line.kind() == AnswerKind.NUMBER && !line.limits().none();
                assertThat(line.failSeverity() != null).as(line.question()).isEqualTo(canFail);
            }
        }
    }

    private static CheckLine question(Checklist checklist, String question) {
        return checklist.lines().stream()
                .filter(line -> line.question().equals(question))
                .findFirst()
                .orElseThrow(() -> new AssertionError(checklist.code() + " lacks " + question));
    }
}
