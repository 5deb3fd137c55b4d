package freshet.checklists;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import freshet.measures.UnitSystem;
import freshet.people.Language;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Role;
import freshet.people.Typed;
import freshet.pumps.Ratings;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.context.support.ResourceBundleMessageSource;

class CheckLineTests {

    private static final Ratings PLATE =
            new Ratings(120.0, 60.0, 4.8, null, null, null, null, null, null, null, null, null);

    private static CheckLine line(AnswerKind kind, @Nullable String unit, Limits limits, @Nullable RatedBy ratedBy) {
        List<Choice> choices = List.of(
                new Choice(Verdict.PASS, "Free"),
                new Choice(Verdict.FAIL, "Stuck"),
                new Choice(Verdict.DOES_NOT_APPLY, "No shaft"));
        return new CheckLine(
                1,
                1,
                "Look",
                "What?",
                null,
                null,
                kind,
                unit,
                limits,
                ratedBy,
                choices,
                3,
                null,
                true,
                false,
                false,
                true,
                false,
                null,
                "common practice, no source",
                1);
    }

    private static final CheckLine EARTH = line(AnswerKind.NUMBER, "Ω", new Limits(null, 0.5, null, 1.0), null);
    private static final CheckLine INSULATION = line(AnswerKind.NUMBER, "MΩ", new Limits(10.0, null, 1.0, null), null);
    private static final CheckLine GAP = line(AnswerKind.NUMBER, "mm", new Limits(null, 1.0, null, 2.0), null);
    private static final CheckLine AMPS =
            line(AnswerKind.NUMBER, "A", new Limits(0.75, 1.0, 0.0, 1.1), RatedBy.CURRENT);

    private static final LimitWords ENGLISH = words(Locale.ENGLISH);

    private static LimitWords words(Locale locale) {
        ResourceBundleMessageSource messages = new ResourceBundleMessageSource();
        messages.setBasename("messages/checklists");
        messages.setDefaultEncoding("UTF-8");
        messages.setFallbackToSystemLocale(false);
        return new LimitWords(messages, locale, UnitSystem.SI);
    }

    private static Judged judge(CheckLine line, String typed) {
        return line.judge(typed, UnitSystem.SI, PLATE);
    }

    private static String refused(CheckLine line, String typed) {
        NotAnAnswer wrong = catchThrowableOfType(NotAnAnswer.class, () -> judge(line, typed));
        assertThat(wrong).as(typed).isNotNull();
        return wrong.code();
    }

    @ParameterizedTest
    @CsvSource({
        "0, PASS",
        "0.5, PASS",
        "0.51, WATCH",
        "1, WATCH",
        "1.0, WATCH",
        "1.01, FAIL",
        "0.3 ohm, PASS",
        "0.3 Ω, PASS",
        "2 ohms, FAIL"
    })
    void judgesEarthContinuity(String typed, Verdict verdict) {
        assertThat(judge(EARTH, typed).verdict()).isEqualTo(verdict);
    }

    @ParameterizedTest
    @CsvSource({
        "10, PASS",
        "9.9, WATCH",
        "1, WATCH",
        "0.99, FAIL",
        ">200, PASS",
        "> 200 MΩ, PASS",
        ">5, WATCH",
        "48 megohm, PASS"
    })
    void judgesInsulationOverTheRangeOfItsMeterToo(String typed, Verdict verdict) {
        assertThat(judge(INSULATION, typed).verdict()).isEqualTo(verdict);
        assertThat(judge(INSULATION, typed).answer()).isEqualTo(typed);
    }

    @ParameterizedTest
    @CsvSource({"3.5, WATCH", "3.6, PASS", "4.8 A, PASS", "4.81, WATCH", "5.28, WATCH", "5.29, FAIL", "0, WATCH"})
    void judgesAmpsByThePlate(String typed, Verdict verdict) {
        assertThat(judge(AMPS, typed).verdict()).isEqualTo(verdict);
    }

    @ParameterizedTest
    @CsvSource({
        "kPa, 20 inHg, 67.7278",
        "kPa, 70, 70",
        "kPa, 10 psi, 68.9476",
        "m, 10 ft, 3.048",
        "V, 12.6 volts, 12.6",
        "%, 19.5 percent, 19.5",
        "%, 19.5 %, 19.5",
        "ppm, 9 ppm, 9",
        "rpm, 3600, 3600",
        "h, 6.5 hours, 6.5",
        "min, 12 min, 12"
    })
    void readsEveryUnitOfACheck(String unit, String typed, double number) {
        assertThat(judge(line(AnswerKind.NUMBER, unit, Limits.NONE, null), typed)
                        .number())
                .isCloseTo(number, within(1e-4));
    }

    @Test
    void readsBatteryVoltsToATenth() {
        CheckLine volts = line(AnswerKind.NUMBER, "V", new Limits(12.6, 13.2, 12.2, 13.8), null);
        assertThat(words(volts)).isEqualTo("pass 12.6 V to 13.2 V, watch from 12.2 V and to 13.8 V");
        assertThat(judge(volts, "12.5").verdict()).isEqualTo(Verdict.WATCH);
    }

    @Test
    void writesDownWhatThePlateGivesNoLimitsFor() {
        assertThat(AMPS.judge("4.5", UnitSystem.SI, Ratings.NONE).verdict()).isEqualTo(Verdict.NOTED);
        assertThat(AMPS.limitsInWords(Ratings.NONE, ENGLISH)).isNull();
    }

    @Test
    void readsABareNumberInThePersonsUnitsAndKeepsTheUnitWithIt() {
        Judged inches = GAP.judge("0.04", UnitSystem.US, PLATE);
        assertThat(inches.number()).isCloseTo(1.016, within(1e-9));
        assertThat(inches.answer()).isEqualTo("0.04 in");
        assertThat(inches.verdict()).isEqualTo(Verdict.WATCH);
        assertThat(judge(GAP, "0.04 in").number()).isEqualTo(inches.number());
        assertThat(GAP.judge("1 mm", UnitSystem.US, PLATE).verdict()).isEqualTo(Verdict.PASS);
        assertThat(GAP.unitFor(UnitSystem.US)).isEqualTo("in");
        assertThat(GAP.unitFor(UnitSystem.SI)).isEqualTo("mm");
    }

    @Test
    void refusesWhatIsNoAnswer() {
        assertThat(refused(EARTH, "0,5")).isEqualTo("measures.comma");
        assertThat(refused(EARTH, "fine")).isEqualTo("measures.notANumber");
        assertThat(refused(EARTH, "0.3 MΩ")).isEqualTo("checklists.otherUnit");
        assertThat(refused(INSULATION, "20 mΩ")).isEqualTo("checklists.otherUnit");
        assertThat(refused(AMPS, "4 ft")).isEqualTo("measures.otherUnit");
        assertThat(refused(EARTH, "-0.1")).isEqualTo("checklists.negative");
        assertThat(refused(EARTH, ">1")).isEqualTo("checklists.overRange");
        assertThat(refused(EARTH, CheckLine.DOES_NOT_APPLY)).isEqualTo("checklists.applies");
        assertThat(refused(line(AnswerKind.YES_NO, null, Limits.NONE, null), "MAYBE"))
                .isEqualTo("checklists.yesOrNo");
        assertThat(refused(line(AnswerKind.CHOICE, null, Limits.NONE, null), "Wobbly"))
                .isEqualTo("checklists.choose");
        assertThat(refused(line(AnswerKind.TEXT, null, Limits.NONE, null), "x".repeat(2001)))
                .isEqualTo("checklists.tooLong");
    }

    @Test
    void judgesYesNoAndChoicesAndWritesDownTexts() {
        CheckLine yesNo = line(AnswerKind.YES_NO, null, Limits.NONE, null);
        assertThat(judge(yesNo, CheckLine.YES).verdict()).isEqualTo(Verdict.PASS);
        assertThat(judge(yesNo, CheckLine.NO).verdict()).isEqualTo(Verdict.FAIL);
        assertThat(yesNo.judge(null, UnitSystem.SI, PLATE).verdict()).isEqualTo(Verdict.LEFT);
        assertThat(judge(yesNo, "  ").verdict()).isEqualTo(Verdict.LEFT);
        CheckLine choice = line(AnswerKind.CHOICE, null, Limits.NONE, null);
        assertThat(judge(choice, "Stuck").verdict()).isEqualTo(Verdict.FAIL);
        assertThat(judge(choice, "No shaft").verdict()).isEqualTo(Verdict.DOES_NOT_APPLY);
        assertThat(judge(line(AnswerKind.TEXT, null, Limits.NONE, null), " rust ")
                        .answer())
                .isEqualTo("rust");
    }

    @Test
    void saysItsLimitsInWords() {
        assertThat(words(EARTH)).isEqualTo("pass to 0.5 Ω, watch to 1 Ω");
        assertThat(words(INSULATION)).isEqualTo("pass from 10 MΩ, watch from 1 MΩ");
        assertThat(words(AMPS)).isEqualTo("pass 3.6 A to 4.8 A, watch below and to 5.3 A");
        assertThat(words(line(AnswerKind.TEXT, null, Limits.NONE, null))).isNull();
    }

    @Test
    void saysThemInTheLanguageOfTheReader() {
        assertThat(AMPS.limitsInWords(PLATE, words(Locale.forLanguageTag("es-US")))
                        .replace('\u00a0', ' '))
                .isEqualTo("pasa de 3.6 A a 4.8 A, vigilar por debajo y hasta 5.3 A");
    }

    private static @Nullable String words(CheckLine line) {
        String words = line.limitsInWords(PLATE, ENGLISH);
        return words == null ? null : words.replace('\u00a0', ' ');
    }

    @Test
    void takesNoLimitsOutOfOrder() {
        assertThatThrownBy(() -> new Limits(2.0, 1.0, null, null)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Limits(1.0, null, 2.0, null)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Limits(null, 2.0, null, 1.0)).isInstanceOf(IllegalArgumentException.class);
    }

    private static List<Refused.Wrong> asked(CheckLine line, String answer, UnitSystem system) {
        Person me = new Person(1, "ilse", "Ilse", Role.OWNER, system, Language.EN, Set.of(), true, 0);
        Typed typed = new Typed(me);
        line.askAbout("answer", answer, PLATE, typed);
        try {
            typed.refuseIfWrong();
            return List.of();
        } catch (Refused refused) {
            return refused.wrongs();
        }
    }

    /** The plate says 4.8 A; the gap passes to 1.0 mm and is watched to 2.0 mm. */
    @Test
    void asksOnlyAboutAFailThatIsFarOffAndAnotherReadingPasses() {
        assertThat(asked(GAP, "1", UnitSystem.US))
                .extracting(Refused.Wrong::code)
                .containsExactly("measures.unusual.meant");
        assertThat(asked(GAP, "1", UnitSystem.US).get(0).arguments()).contains("1 mm");
        assertThat(asked(GAP, "0.06", UnitSystem.US)).isEmpty();
        assertThat(asked(GAP, "3", UnitSystem.SI)).isEmpty();
        assertThat(asked(GAP, "1", UnitSystem.SI)).isEmpty();
        assertThat(asked(AMPS, "45", UnitSystem.SI)).hasSize(1);
        assertThat(asked(AMPS, "0.45", UnitSystem.SI)).isEmpty();
        assertThat(asked(AMPS, "6.5", UnitSystem.SI)).isEmpty();
        assertThat(asked(INSULATION, "0.05", UnitSystem.SI)).isEmpty();
        assertThat(asked(AMPS, "x", UnitSystem.SI)).isEmpty();
        CheckLine head = line(AnswerKind.NUMBER, "kPa", new Limits(100.0, 200.0, null, null), null);
        assertThat(asked(head, "15", UnitSystem.SI).get(0).arguments()).contains("15 psi");
    }
}
