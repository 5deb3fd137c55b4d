package freshet.checklists;

import freshet.measures.UnitSystem;
import freshet.people.Competence;
import freshet.pumps.Ratings;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
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
    public @Nullable String limitsInWords(UnitSystem system, Ratings ratings) {
        Limits here = limitsFor(ratings);
        if (kind != AnswerKind.NUMBER || here.none()) {
            return null;
        }
        List<String> watch = new ArrayList<>();
        if (here.watchLow() != null && !here.watchLow().equals(here.passLow())) {
            watch.add(here.watchLow() > 0 ? band(here.watchLow(), null, system) : "below");
        }
        if (here.watchHigh() != null && !here.watchHigh().equals(here.passHigh())) {
            watch.add(band(null, here.watchHigh(), system));
        }
        String pass = "pass " + band(here.passLow(), here.passHigh(), system);
        return watch.isEmpty() ? pass : pass + ", watch " + String.join(" and ", watch);
    }

    private String band(@Nullable Double low, @Nullable Double high, UnitSystem system) {
        if (low != null && high != null) {
            return lineUnit().show(low, system) + " to " + lineUnit().show(high, system);
        }
        return low != null
                ? "from " + lineUnit().show(low, system)
                : "to " + lineUnit().show(Objects.requireNonNull(high), system);
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
