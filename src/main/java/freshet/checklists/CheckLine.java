package freshet.checklists;

import freshet.measures.Quantity;
import freshet.measures.UnitSystem;
import freshet.people.Competence;
import freshet.people.Typed;
import freshet.pumps.Ratings;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One line to look at and judge. The {@code caution} stands before the question; {@code failSeverity} is the severity that a failed
 * answer proposes, null when a failure makes no finding; {@code heldSeverity} is the lowest that it may ever be given, null when it is
 * free; {@code asksInstrument} is whether a value needs the name of what it was measured with; {@code ratedBy} names the plate's figure that the limits are fractions of; {@code origin} is the same for the same line through
 * all versions.
 */
public record CheckLine(
        long id,
        int ordinal,
        String section,
        String question,
        @Nullable String hint,
        @Nullable String caution,
        AnswerKind kind,
        @Nullable String unit,
        Limits limits,
        @Nullable RatedBy ratedBy,
        List<Choice> choices,
        @Nullable Integer failSeverity,
        @Nullable Integer heldSeverity,
        boolean required,
        boolean safety,
        boolean mayNotApply,
        boolean asLeft,
        boolean asksInstrument,
        @Nullable Competence competence,
        @Nullable String source,
        long origin) {

    public static final String YES = "YES";
    public static final String NO = "NO";
    public static final String DOES_NOT_APPLY = "DOES_NOT_APPLY";

    static final int MOST_SEVERE = 4;

    private static final int LONGEST_TEXT = 2000;

    /**
     * What to make of a typed or chosen answer. A bare number is read in the person's system; a choice is given by its words.
     *
     * @throws NotAnAnswer when it does not answer this check
     */
    public Judged judge(@Nullable String typed, UnitSystem system, Ratings ratings) {
        String text = typed == null ? "" : typed.strip();
        if (text.isEmpty()) {
            return Judged.LEFT;
        }
        if (text.equals(DOES_NOT_APPLY)) {
            if (!mayNotApply) {
                throw new NotAnAnswer("checklists.applies");
            }
            return new Judged(text, null, Verdict.DOES_NOT_APPLY);
        }
        return switch (kind) {
            case YES_NO -> yesOrNo(text);
            case CHOICE -> chosen(text);
            case NUMBER -> measured(text, system, ratings);
            case TEXT -> written(text);
        };
    }

    private static Judged yesOrNo(String text) {
        return switch (text) {
            case YES -> new Judged(text, null, Verdict.PASS);
            case NO -> new Judged(text, null, Verdict.FAIL);
            default -> throw new NotAnAnswer("checklists.yesOrNo");
        };
    }

    private Judged chosen(String text) {
        return choices.stream()
                .filter(choice -> choice.words().equals(text))
                .findFirst()
                .map(choice -> new Judged(text, null, choice.verdict()))
                .orElseThrow(() -> new NotAnAnswer("checklists.choose"));
    }

    private Judged measured(String text, UnitSystem system, Ratings ratings) {
        boolean overRange = text.startsWith(">");
        if (overRange && !limits.onlyFromBelow()) {
            throw new NotAnAnswer("checklists.overRange");
        }
        String figure = overRange ? text.substring(1) : text;
        double number = lineUnit().parse(figure, system);
        if (number < 0 && !LineUnit.mayBeNegative(unit)) {
            throw new NotAnAnswer("checklists.negative");
        }
        return new Judged(
                lineUnit().kept(text, system), number, limitsFor(ratings).judge(number));
    }

    private static Judged written(String text) {
        if (text.length() > LONGEST_TEXT) {
            throw new NotAnAnswer("checklists.tooLong", LONGEST_TEXT);
        }
        return new Judged(text, null, Verdict.NOTED);
    }

    /** The limits for a pump of these ratings; none when they hang on a figure that its plate does not give. */
    public Limits limitsFor(Ratings ratings) {
        if (ratedBy == null) {
            return limits;
        }
        Double rated = ratedBy.of(ratings);
        return rated == null ? Limits.NONE : limits.times(rated);
    }

    /** The limits in words: "pass 3.6 A to 4.8 A, watch to 5.3 A"; null when there is nothing to judge by. */
    public @Nullable String limitsInWords(Ratings ratings, LimitWords words) {
        Limits here = limitsFor(ratings);
        return kind != AnswerKind.NUMBER || here.none() ? null : words.of(here, lineUnit());
    }

    /**
     * Asks about an answer that fails by so much that a slip is likely: over four times the plate's figure or under a fifth of it, or
     * over five times a limit where another reading of the text passes.
     */
    public void askAbout(String field, @Nullable String answer, Ratings ratings, Typed typed) {
        String text = Typed.text(answer);
        if (kind != AnswerKind.NUMBER || text == null || text.equals(DOES_NOT_APPLY) || text.startsWith(">")) {
            return;
        }
        Double rated = ratedBy == null ? null : ratedBy.of(ratings);
        Quantity quantity = ratedBy == null ? lineUnit().quantity() : ratedBy.quantity();
        Limits here = limitsFor(ratings);
        Double number;
        try {
            Judged judged = judge(text, typed.system(), ratings);
            number = judged.verdict() == Verdict.FAIL ? judged.number() : null;
        } catch (NotAnAnswer saidWhenSigned) {
            return;
        }
        if (number == null || number == 0 || quantity == null) {
            return;
        }
        if (rated != null) {
            typed.usual(field, text, quantity, number, rated / 5, 4 * rated);
            return;
        }
        Double low = here.watchLow() == null ? here.passLow() : here.watchLow();
        Double high = here.watchHigh() == null ? here.passHigh() : here.watchHigh();
        double least = low == null ? 0 : low;
        double most = high == null ? 20 * least : high;
        boolean farOff = high != null && number > 5 * high || low != null && number < low / 5;
        if (farOff && quantity.meant(text, typed.system(), least, most).isPresent()) {
            typed.usual(field, text, quantity, number, least, most);
        }
    }

    /** The unit beside the field of a number, as this reader sees it. */
    public @Nullable String unitFor(UnitSystem system) {
        return unit == null ? null : lineUnit().read(system);
    }

    /** Whether something measures it, so that its record says what did. */
    public boolean measured() {
        return asksInstrument || unit != null || competence == Competence.ELECTRICAL;
    }

    /** Whether no owner may take it out: it is for safety, or its failure stops the pump. */
    public boolean stays() {
        return safety || heldSeverity != null;
    }

    /** The same line as a new one of another checklist. */
    CheckLine copied() {
        return at(ordinal, 0);
    }

    /** Whether it says and asks the same as another, wherever it stands in its section. */
    boolean sameAs(CheckLine other) {
        return atNoPlace().equals(other.atNoPlace());
    }

    private CheckLine atNoPlace() {
        return at(0, origin);
    }

    private CheckLine at(int itsOrdinal, long itsOrigin) {
        return new CheckLine(
                0,
                itsOrdinal,
                section,
                question,
                hint,
                caution,
                kind,
                unit,
                limits,
                ratedBy,
                choices,
                failSeverity,
                heldSeverity,
                required,
                safety,
                mayNotApply,
                asLeft,
                asksInstrument,
                competence,
                source,
                itsOrigin);
    }

    private LineUnit lineUnit() {
        if (unit == null) {
            throw new IllegalStateException("check " + question + " has no unit");
        }
        return LineUnit.of(unit);
    }
}
