package freshet.checklists;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import freshet.FreshetTest;
import freshet.measures.UnitSystem;
import freshet.people.Competence;
import freshet.people.People;
import freshet.people.Person;
import freshet.pumps.PumpKind;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;

/** What the checklists that an install begins with cover, and what none of them may lack. */
@FreshetTest
class DefaultChecklistsTests {

    private static final Pattern INTO_A_PIT = Pattern.compile(
            "([^.]*)\\b(enter|enters|goes into|go into|climb|step into)\\b([^.]*)\\b(pit|them|it|water)\\b",
            Pattern.CASE_INSENSITIVE);

    private static final Pattern CORD = Pattern.compile("Are (cord|cable|leads).*whole.*");

    @Autowired
    Checklists checklists;

    @Autowired
    People people;

    @Autowired
    JdbcClient jdbc;

    private Checklist list(String code) {
        return checklists.checklists().stream()
                .filter(each -> each.code().equals(code))
                .findFirst()
                .orElseThrow();
    }

    private Stream<CheckLine> lines() {
        return checklists.checklists().stream().flatMap(each -> each.lines().stream());
    }

    @Test
    void coverEveryKindThroughTheYear() {
        Set<Phase> ofTheKind = EnumSet.complementOf(EnumSet.of(Phase.ELECTRICAL, Phase.CAPACITY, Phase.SERVICE));
        for (PumpKind kind : PumpKind.values()) {
            List<Checklist> own = checklists.checklists().stream()
                    .filter(each -> each.pumpKind() == kind)
                    .toList();
            assertThat(own.stream().map(Checklist::phase).filter(ofTheKind::contains))
                    .as("%s", kind)
                    .containsExactlyInAnyOrderElementsOf(ofTheKind);
            assertThat(checklists.checklists())
                    .as("electrical test of %s", kind)
                    .anyMatch(each ->
                            each.phase() == Phase.ELECTRICAL && (each.pumpKind() == null || each.pumpKind() == kind));
        }
    }

    @Test
    void layUpOnlyWhatDoesNotStayLiveAllWinter() {
        Set<PumpKind> laidUp = checklists.checklists().stream()
                .filter(each -> each.effect() == Effect.LAYS_UP)
                .map(Checklist::pumpKind)
                .collect(Collectors.toSet());
        assertThat(laidUp)
                .containsExactlyInAnyOrder(PumpKind.UTILITY_SUBMERSIBLE, PumpKind.ENGINE_TRASH, PumpKind.CIRCULATOR);
        assertThat(checklists.checklists())
                .allSatisfy(each -> assertThat(each.effect() == Effect.LAYS_UP)
                        .as(each.code())
                        .isEqualTo(each.phase() == Phase.CLOSING && laidUp.contains(each.pumpKind())));
    }

    @Test
    void beginWithSafetyThatNobodyCanSkip() {
        assertThat(checklists.checklists())
                .allSatisfy(each ->
                        assertThat(each.lines().get(0).safety()).as(each.code()).isTrue());
        assertThat(lines().filter(CheckLine::safety)).allSatisfy(line -> {
            assertThat(line.kind()).isEqualTo(AnswerKind.YES_NO);
            assertThat(line.required()).as(line.question()).isTrue();
            assertThat(line.mayNotApply()).as(line.question()).isFalse();
            assertThat(line.caution()).as(line.question()).isNotBlank();
        });
    }

    @Test
    void nameASourceOnEveryLine() {
        assertThat(lines())
                .allSatisfy(
                        line -> assertThat(line.source()).as(line.question()).isNotBlank());
    }

    @Test
    void neverSendAnybodyIntoAPit() {
        List<String> said = new ArrayList<>();
        lines().flatMap(line -> Stream.of(line.question(), line.hint(), line.caution()))
                .filter(text -> text != null)
                .forEach(text -> {
                    Matcher into = INTO_A_PIT.matcher(text);
                    while (into.find()) {
                        said.add(into.group());
                    }
                });
        assertThat(said)
                .isNotEmpty()
                .allMatch(text -> text.toLowerCase(Locale.ROOT).matches("(?s).*\\b(not|never|nobody|no)\\b.*"));
    }

    @Test
    void warnAgainWherePowerComesOnAndLookAtTheCordBefore() {
        for (Checklist each : checklists.checklists()) {
            CheckLine first = each.lines().stream()
                    .filter(line -> line.section().matches("Wet|Power.*|Flush, power.*"))
                    .findFirst()
                    .orElse(null);
            if (first != null) {
                assertThat(String.valueOf(first.caution()).toLowerCase(Locale.ROOT))
                        .as(each.code())
                        .contains("power")
                        .contains("dry hands");
                assertThat(each.lines())
                        .as(each.code())
                        .anyMatch(line -> CORD.matcher(line.question()).matches() && line.ordinal() < first.ordinal());
            }
        }
        assertThat(lines().filter(line -> line.section().equals("It runs"))
                        .filter(line -> line.question().startsWith("Is the casing full")))
                .isNotEmpty()
                .allSatisfy(
                        line -> assertThat(line.caution()).contains("outdoors").contains("Never run it dry"));
    }

    @Test
    void sayHowToLiftItWhereverItIsUnplugged() {
        assertThat(lines().filter(CheckLine::safety)
                        .filter(line -> line.question().matches("Unplugged, .*|Dead at.*")))
                .hasSizeGreaterThan(15)
                .allSatisfy(line -> assertThat(line.caution()).contains("Lift").contains("never by the cord"));
        assertThat(checklists.checklists())
                .filteredOn(each -> each.pumpKind() == PumpKind.SUMP_WITH_FLOAT && each.phase() != Phase.AFTER_HIRE)
                .allSatisfy(each -> assertThat(each.lines())
                        .as(each.code())
                        .filteredOn(CheckLine::safety)
                        .anyMatch(line -> String.valueOf(line.caution())
                                .matches("(?s).*(Do not enter the pit|out of the pit|Nobody enters a pit).*")));
    }

    @Test
    void judgeEveryFailureAndOfferAPassForEveryChoice() {
        assertThat(lines()).allSatisfy(line -> {
            boolean canFail = line.kind() == AnswerKind.CHOICE
                    || line.kind() == AnswerKind.YES_NO && !line.safety()
                    || line.kind() == AnswerKind.NUMBER && !line.limits().none();
            assertThat(line.failSeverity() != null).as(line.question()).isEqualTo(canFail);
            if (line.kind() == AnswerKind.CHOICE) {
                assertThat(line.choices()).as(line.question()).anyMatch(choice -> choice.verdict() == Verdict.PASS);
            }
        });
    }

    @Test
    void stopThePumpForADamagedCordOrAMissingEarth() {
        List<CheckLine> stopping = lines().filter(
                        line -> CORD.matcher(line.question()).matches() || "Ω".equals(line.unit()))
                .toList();
        assertThat(stopping).hasSizeGreaterThan(30).allSatisfy(line -> {
            assertThat(line.failSeverity()).as(line.question()).isEqualTo(CheckLine.MOST_SEVERE);
            assertThat(line.heldSeverity()).as(line.question()).isEqualTo(CheckLine.MOST_SEVERE);
            assertThat(line.required()).as(line.question()).isTrue();
        });
        assertThat(lines().filter(line -> "Ω".equals(line.unit()) || "MΩ".equals(line.unit())))
                .allMatch(line -> line.competence() == Competence.ELECTRICAL && line.caution() != null);
    }

    /** The page asks it once, where the first thing is measured. */
    @Test
    void neverAskBesideWhatItIsMeasuredWith() {
        assertThat(lines().filter(line -> line.kind() == AnswerKind.TEXT)
                        .map(CheckLine::question)
                        .filter(question -> question.matches("(?i)which .*(meter|gauge).*"))
                        .distinct())
                .containsExactly("Which gas meter was used, and when was it last tried with test gas?");
        assertThat(lines().filter(line -> line.competence() == Competence.ELECTRICAL || line.unit() != null))
                .hasSizeGreaterThan(100)
                .allMatch(CheckLine::measured);
    }

    @Test
    void askWhatResistanceAndPressureAreMeasuredWith() {
        assertThat(lines().filter(CheckLine::asksInstrument)
                        .map(CheckLine::unit)
                        .distinct())
                .containsExactlyInAnyOrder("Ω", "MΩ", "kPa");
        assertThat(lines().filter(line -> Set.of("Ω", "MΩ", "kPa").contains(String.valueOf(line.unit()))))
                .allMatch(CheckLine::asksInstrument);
    }

    /** Readiness takes a record with answered electrical lines for an electrical test, so no list may hold a part of one. */
    @Test
    void measureEarthWhereverAnythingIsMeasuredElectrically() {
        assertThat(checklists.checklists())
                .filteredOn(each -> each.lines().stream().anyMatch(line -> line.competence() == Competence.ELECTRICAL))
                .allSatisfy(each -> assertThat(each.lines().stream().map(CheckLine::unit))
                        .as(each.code())
                        .contains("Ω", "MΩ"));
    }

    @Test
    void passTheChecksThatAnOwnersChangesPass() {
        assertThat(checklists.checklists())
                .hasSize(61)
                .allSatisfy(each -> assertThatCode(() -> Revision.lines(each, ChecklistDraft.of(each)))
                        .as(each.code())
                        .doesNotThrowAnyException());
    }

    @Test
    void areAddedToAnInstallThatLacksThemAndLeaveWhatItsOwnerChanged() {
        Person ilse = people.welcomeFirstOwner("ilse", "Ilse Marrow", "river at thaw", UnitSystem.SI);
        Checklist opening = list("opening-utility-submersible");
        ChecklistDraft draft = ChecklistDraft.of(opening);
        checklists.publish(opening.id(), 1, new ChecklistDraft(50, "takes longer", draft.lines()), ilse);
        jdbc.sql("update checklist set code = 'of-an-older-install' where code = 'monthly-sewage'")
                .update();

        checklists.installDefaults();
        checklists.installDefaults();

        assertThat(checklists.checklists()).hasSize(62);
        assertThat(list("monthly-sewage").lines()).isNotEmpty();
        assertThat(checklists.version(opening.versionId())).isEqualTo(opening);
        assertThat(checklists.checklist(opening.id()).minutes()).isEqualTo(50);
        assertThat(checklists.editions(opening.id())).hasSize(2);
    }

    @Test
    void areAddedOnceByNodesThatStartTogether() throws Exception {
        jdbc.sql("update checklist set code = 'old-' || code").update();
        ExecutorService nodes = Executors.newFixedThreadPool(4);
        try {
            Callable<Void> start = () -> {
                checklists.installDefaults();
                return null;
            };
            for (Future<Void> started : nodes.invokeAll(List.of(start, start, start, start))) {
                started.get();
            }
        } finally {
            nodes.shutdownNow();
        }
        assertThat(checklists.checklists()).hasSize(122).allMatch(each -> each.number() == 1);
        assertThat(list("opening-sewage").lines())
                .hasSameSizeAs(list("old-opening-sewage").lines());
    }
}
