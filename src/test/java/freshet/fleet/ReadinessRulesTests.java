package freshet.fleet;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.findings.Hold;
import freshet.happenings.HappeningKind;
import freshet.hydraulics.FlowTestReduction.StatedBy;
import freshet.readings.Capacity;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class ReadinessRulesTests {

    private static final ZoneId CHICAGO = ZoneId.of("America/Chicago");
    private static final LocalDate TODAY = LocalDate.of(2026, 7, 1);

    /** Facts to be changed one by one; as it begins, all is well. */
    private static final class Known {
        boolean provable = true;
        boolean engine;
        final List<Facts.OpenFinding> findings = new ArrayList<>();
        final List<Hold> holds = new ArrayList<>();
        Facts.@Nullable Proof proof = new Facts.Proof(noon(2026, 3, 10), 7);

        @Nullable
        Instant laidUp = noon(2025, 11, 2);

        @Nullable
        Instant electrical = noon(2026, 3, 12);

        @Nullable
        Instant mended;

        Facts.@Nullable HardUse hardUse;

        Facts.@Nullable Owed owed;

        Facts.@Nullable Unchecked unchecked;

        @Nullable
        Long electricalTask;

        @Nullable
        LocalDate nextOpening = LocalDate.of(2027, 2, 15);

        @Nullable
        LocalDate nextLate;

        @Nullable
        Capacity capacity;

        Readiness judged() {
            return judged(TODAY);
        }

        Readiness judged(LocalDate today) {
            return ReadinessRules.judge(
                    new Facts(
                            1,
                            CHICAGO,
                            provable,
                            engine,
                            findings,
                            holds,
                            proof,
                            laidUp,
                            electrical,
                            mended,
                            hardUse,
                            owed,
                            unchecked,
                            electricalTask,
                            nextOpening,
                            nextLate,
                            null,
                            0,
                            capacity),
                    today);
        }
    }

    private static Instant noon(int year, int month, int day) {
        return LocalDate.of(year, month, day).atTime(12, 0).atZone(CHICAGO).toInstant();
    }

    private static Facts.OpenFinding finding(int severity) {
        return new Facts.OpenFinding(severity + 100, severity, "Something", noon(2026, 6, 1), null);
    }

    private static Capacity capacity(double fraction, Instant at) {
        return new Capacity(
                1, 5, fraction, 0.05, 2.4, 7, 8, 2.6, Capacity.Reference.OWN_FIRST_TEST, StatedBy.FLOW, false, at, 3);
    }

    private static List<ReasonKind> kinds(Readiness readiness) {
        return readiness.against().stream().map(Reason::kind).toList();
    }

    @Test
    void isReadyWhenAllIsProvedAndSaysUntilWhen() {
        Readiness readiness = new Known().judged();

        assertThat(readiness.word()).isEqualTo(Word.READY);
        assertThat(readiness.against()).isEmpty();
        assertThat(readiness.inFavor())
                .extracting(Reason::kind)
                .containsExactly(ReasonKind.PROVED, ReasonKind.ELECTRICAL);
        assertThat(readiness.inFavor())
                .extracting(Reason::until)
                .containsExactly(LocalDate.of(2027, 3, 10), LocalDate.of(2027, 3, 12));
        // the next opening begins before either runs out
        assertThat(readiness.readyUntil()).isEqualTo(LocalDate.of(2027, 2, 14));
    }

    @Test
    void isUnknownWhenNothingIsKnown() {
        Known known = new Known();
        known.proof = null;
        known.laidUp = null;
        known.electrical = null;
        assertThat(known.judged().word()).isEqualTo(Word.UNKNOWN);
        assertThat(kinds(known.judged())).containsExactly(ReasonKind.NEVER_PROVED, ReasonKind.ELECTRICAL_NEVER);
        assertThat(known.judged().readyUntil()).isNull();
    }

    @Test
    void isUnknownWithoutAChecklistForItsKind() {
        Known known = new Known();
        known.provable = false;
        assertThat(kinds(known.judged())).containsExactly(ReasonKind.NO_CHECKLIST);
        assertThat(known.judged().word()).isEqualTo(Word.UNKNOWN);
    }

    @Test
    void asksNoElectricalProofOfAnEngine() {
        Known known = new Known();
        known.engine = true;
        known.electrical = null;
        assertThat(known.judged().word()).isEqualTo(Word.READY);
        known.proof = null;
        assertThat(kinds(known.judged())).containsExactly(ReasonKind.NEVER_PROVED, ReasonKind.LAID_UP);
    }

    @Test
    void holdsForAYearToTheDay() {
        Known known = new Known();
        known.nextOpening = null;
        assertThat(known.judged(LocalDate.of(2027, 3, 10)).word()).isEqualTo(Word.READY);
        assertThat(known.judged(LocalDate.of(2027, 3, 10)).readyUntil()).isEqualTo(LocalDate.of(2027, 3, 10));
        assertThat(kinds(known.judged(LocalDate.of(2027, 3, 11)))).containsExactly(ReasonKind.PROOF_OLD);
        assertThat(kinds(known.judged(LocalDate.of(2027, 3, 13))))
                .containsExactly(ReasonKind.PROOF_OLD, ReasonKind.ELECTRICAL_OLD);
    }

    @Test
    void countsDaysAtTheSite() {
        Known known = new Known();
        known.nextOpening = null;
        // still 9 March in Chicago
        known.proof = new Facts.Proof(Instant.parse("2026-03-10T03:00:00Z"), 7);
        assertThat(known.judged().readyUntil()).isEqualTo(LocalDate.of(2027, 3, 9));
        known.proof = new Facts.Proof(noon(2024, 2, 29), 7);
        assertThat(known.judged(LocalDate.of(2025, 2, 28)).inFavor())
                .extracting(Reason::kind)
                .contains(ReasonKind.PROVED);
        assertThat(kinds(known.judged(LocalDate.of(2025, 3, 1)))).contains(ReasonKind.PROOF_OLD);
    }

    @ParameterizedTest
    @CsvSource({"0, READY", "1, READY", "2, LIMITS", "3, NOT_READY", "4, NOT_READY"})
    void goesByTheSeverityOfOpenFindings(int severity, Word word) {
        Known known = new Known();
        known.findings.add(finding(severity));
        assertThat(known.judged().word()).isEqualTo(word);
        assertThat(known.judged().reasons().get(0).kind()).isEqualTo(ReasonKind.FINDING);
    }

    @Test
    void listsEveryReasonWorstFirst() {
        Known known = new Known();
        known.findings.addAll(List.of(finding(2), finding(3), finding(4)));
        known.electricalTask = 9L;
        known.capacity = capacity(0.75, noon(2026, 3, 11));
        Readiness readiness = known.judged();

        assertThat(readiness.word()).isEqualTo(Word.NOT_READY);
        assertThat(readiness.against())
                .extracting(reason -> reason.kind() + " " + reason.severity())
                .containsExactly("FINDING 4", "FINDING 3", "ELECTRICAL_LEFT null", "FINDING 2", "CAPACITY_LOW null");
    }

    @ParameterizedTest
    @CsvSource({
        "0.90, CAPACITY, READY",
        "0.8999, CAPACITY_SHORT, LIMITS",
        "0.80, CAPACITY_SHORT, LIMITS",
        "0.7999, CAPACITY_LOW, LIMITS",
        "0.70, CAPACITY_LOW, LIMITS",
        "0.6999, CAPACITY_GONE, NOT_READY"
    })
    void goesByRemainingCapacity(double fraction, ReasonKind kind, Word word) {
        Known known = new Known();
        known.capacity = capacity(fraction, noon(2026, 3, 11));
        assertThat(known.judged().word()).isEqualTo(word);
        assertThat(known.judged().reasons()).extracting(Reason::kind).contains(kind);
    }

    @Test
    void keepsALowCapacityHoweverOldItsTestIs() {
        Known known = new Known();
        known.capacity = capacity(0.75, noon(2020, 3, 11));
        assertThat(known.judged().word()).isEqualTo(Word.LIMITS);
    }

    @Test
    void isUnknownFromLayingUpToOpeningWhateverWasFlowTested() {
        Known known = new Known();
        known.laidUp = noon(2026, 6, 1);
        known.capacity = capacity(0.95, noon(2026, 6, 20));
        assertThat(known.judged().word()).isEqualTo(Word.UNKNOWN);
        assertThat(kinds(known.judged())).containsExactly(ReasonKind.LAID_UP);
        known.proof = new Facts.Proof(noon(2026, 6, 25), 8);
        assertThat(known.judged().word()).isEqualTo(Word.READY);
    }

    @Test
    void isUnknownFromARepairToTheNextProof() {
        Known known = new Known();
        known.mended = noon(2026, 6, 1);
        assertThat(kinds(known.judged())).containsExactly(ReasonKind.MENDED_NOT_PROVED);
        known.capacity = capacity(0.95, noon(2026, 6, 2));
        assertThat(known.judged().word()).isEqualTo(Word.READY);
    }

    @ParameterizedTest
    @EnumSource(
            value = HappeningKind.class,
            names = {"DRY_RUN", "FOUL_USE", "SALT_USE", "CHEMICAL_USE"})
    void isUnknownFromHardUseToTheNextProof(HappeningKind kind) {
        Known known = new Known();
        known.hardUse = new Facts.HardUse(kind, noon(2026, 6, 1));
        assertThat(known.judged().word()).isEqualTo(Word.UNKNOWN);
        assertThat(kinds(known.judged())).containsExactly(ReasonKind.valueOf(kind.name()));
        known.proof = new Facts.Proof(noon(2026, 6, 2), 8);
        assertThat(known.judged().word()).isEqualTo(Word.READY);
    }

    private static Facts.Unchecked unchecked(boolean late, boolean afterEvent) {
        return new Facts.Unchecked(new Facts.Owed(4, "Check", TODAY.minusDays(3), late), afterEvent);
    }

    @Test
    void hasLimitsWhileACheckIsToDoAndIsUnknownOnceItIsLateAfterSomethingHappened() {
        Known known = new Known();
        known.unchecked = unchecked(true, false);
        assertThat(known.judged().word()).isEqualTo(Word.LIMITS);
        assertThat(kinds(known.judged())).containsExactly(ReasonKind.CHECK_LATE);
        known.unchecked = unchecked(false, true);
        assertThat(known.judged().word()).isEqualTo(Word.LIMITS);
        assertThat(kinds(known.judged())).containsExactly(ReasonKind.CHECK_DUE);
        known.unchecked = unchecked(true, true);
        assertThat(known.judged().word()).isEqualTo(Word.UNKNOWN);
    }

    @Test
    void isReadyNoLongerThanTheLastDayOfTheTestOfTheMonth() {
        Known known = new Known();
        known.nextLate = LocalDate.of(2026, 7, 12);
        assertThat(known.judged().readyUntil()).isEqualTo(LocalDate.of(2026, 7, 12));
    }

    @Test
    void isUnknownWhileAnOpeningIsOwed() {
        Known known = new Known();
        known.owed = new Facts.Owed(3, "Opening 2026", TODAY, false);
        assertThat(kinds(known.judged())).containsExactly(ReasonKind.OPENING_DUE);
        known.owed = new Facts.Owed(3, "Opening 2026", TODAY.minusDays(1), true);
        assertThat(kinds(known.judged())).containsExactly(ReasonKind.OPENING_LATE);
        assertThat(known.judged().word()).isEqualTo(Word.UNKNOWN);
    }

    @Test
    void isUnknownWhileTheElectricalTestIsLeft() {
        Known known = new Known();
        known.electricalTask = 9L;
        assertThat(known.judged().word()).isEqualTo(Word.UNKNOWN);
        assertThat(kinds(known.judged())).containsExactly(ReasonKind.ELECTRICAL_LEFT);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void neverGetsBetterByBadNews(long seed) {
        Random random = new Random(seed);
        for (int round = 0; round < 2_000; round++) {
            Known known = new Known();
            for (int i = 0; i < 4; i++) {
                happens(known, random.nextInt(10), random);
            }
            Word before = known.judged().word();
            happens(known, random.nextInt(10), random);
            Word after = known.judged().word();
            assertThat(after.ordinal()).as("seed %d, round %d", seed, round).isLessThanOrEqualTo(before.ordinal());
        }
    }

    private static void happens(Known known, int what, Random random) {
        switch (what) {
            case 0 -> known.findings.add(finding(random.nextInt(5)));
            case 1 -> known.proof = null;
            case 2 -> known.electrical = null;
            case 3 -> known.laidUp = noon(2026, 6, 28);
            case 4 -> known.mended = noon(2026, 6, 29);
            case 5 -> known.owed = new Facts.Owed(3, "Opening", TODAY, false);
            case 6 -> known.electricalTask = 9L;
            case 7 -> known.hardUse = new Facts.HardUse(HappeningKind.DRY_RUN, noon(2026, 6, 30));
            case 8 -> known.unchecked = unchecked(random.nextBoolean(), random.nextBoolean());
            default -> known.provable = false;
        }
    }
}
