package freshet.wear;

import freshet.people.Person;
import freshet.people.Typed;
import org.jspecify.annotations.Nullable;

/** What is asked of a unit's wear, as the address holds it; the threshold in percent. */
public record WearForm(
        @Nullable String threshold,
        @Nullable String robust,
        @Nullable String through) {

    private static final double LEAST = 10;
    private static final double MOST = 100;

    WearForm filled() {
        return threshold == null
                ? new WearForm(String.valueOf(Math.round(100 * WearQuestion.USUAL_THRESHOLD)), robust, through)
                : this;
    }

    /** @throws freshet.people.Refused when the threshold is no percentage that means something */
    WearQuestion question(Person me) {
        Typed typed = new Typed(me);
        Double percent = typed.number("threshold", Typed.text(threshold) == null ? null : plain(threshold));
        typed.required("threshold", percent, "wear.threshold.missing");
        if (percent != null && !(percent >= LEAST && percent <= MOST)) {
            typed.wrong("threshold", "wear.threshold.range", Math.round(LEAST), Math.round(MOST));
        }
        typed.refuseIfWrong();
        return new WearQuestion(
                percent == null ? WearQuestion.USUAL_THRESHOLD : percent / 100,
                "true".equals(robust),
                "true".equals(through));
    }

    private static String plain(@Nullable String typed) {
        String text = Typed.textOrEmpty(typed);
        return text.endsWith("%") ? text.substring(0, text.length() - 1) : text;
    }
}
