package freshet.jobs;

import static freshet.jobs.Check.Looks.FAILS;
import static freshet.jobs.Check.Looks.HOLDS;
import static freshet.jobs.Check.Looks.THIN;
import static freshet.jobs.Check.Looks.UNKNOWN;

import freshet.measures.Quantity;
import freshet.measures.Show;
import freshet.readings.Part;
import java.util.ArrayList;
import java.util.List;

/**
 * What the page about a weak pump shows.
 *
 * @param told what the figures say, one by one
 * @param untold what cannot be told from them
 * @param flowParts where the flow of a new pump goes
 * @param headParts where the head goes at the measured flow
 */
record SplitPage(
        Split split,
        Split.Verdict verdict,
        String what,
        List<Check> told,
        List<Check> untold,
        List<Part> flowParts,
        List<Part> headParts,
        Symptoms symptoms) {

    static SplitPage of(Split split, Words words) {
        Symptoms symptoms = Symptoms.of(split);
        Split.Verdict verdict = split.verdict();
        return new SplitPage(
                split,
                verdict,
                words.say("jobs.split." + verdict + ".what", words.gives(split.expected())),
                told(split, words),
                untold(split, symptoms),
                flowParts(split, words),
                HeadParts.of(split.measured().line(), split.losses(), split.hiddenM(), words),
                symptoms);
    }

    private static Check check(Check.Looks looks, String code, Object... arguments) {
        return Check.of(looks, "jobs.told." + code, arguments);
    }

    private static List<Check> told(Split split, Words words) {
        Show show = words.show();
        List<Check> told = new ArrayList<>();
        double line = split.toLineM3h();
        told.add(check(
                line > 0.1 * split.bare().flowM3h() ? THIN : HOLDS,
                split.bare().beyondCurve() ? "line.atLeast" : "line",
                show.flow(Math.max(0, line)),
                show.flow(split.bare().flowM3h())));
        Double hiddenM = split.hiddenM();
        Double doubtM = split.gaugeDoubtM();
        if (hiddenM != null && doubtM != null) {
            if (hiddenM > doubtM) {
                told.add(check(FAILS, "hidden", show.head(hiddenM), show.flow(split.hiddenM3h())));
            } else if (hiddenM < -doubtM) {
                told.add(check(UNKNOWN, "gaugeLow", show.head(-hiddenM)));
            } else {
                told.add(check(HOLDS, "noneHidden", show.head(doubtM)));
            }
        }
        double wear = split.wearM3h();
        String pair = Quantity.FLOW.number(wear, show.system());
        String doubt = show.flow(split.wearDoubtM3h());
        told.add(
                split.wornBeyondDoubt()
                        ? check(FAILS, hiddenM == null ? "wearOrHidden" : "wear", pair, doubt)
                        : -wear > split.wearDoubtM3h()
                                ? check(UNKNOWN, "more", show.flow(-wear), doubt)
                                : check(HOLDS, "noWear", pair, doubt));
        if (split.asTested() != null) {
            told.add(check(HOLDS, "asTested", split.pump().name(), words.gives(split.asTested())));
        }
        return told;
    }

    private static List<Check> untold(Split split, Symptoms symptoms) {
        List<Check> untold = new ArrayList<>();
        if (split.measured().gauge() == null) {
            untold.add(check(UNKNOWN, "un.gauge"));
        }
        if (!split.wornBeyondDoubt()) {
            untold.add(check(UNKNOWN, "un.doubt"));
        }
        untold.add(check(UNKNOWN, "un.onePoint"));
        if (symptoms.current() == null) {
            untold.add(check(UNKNOWN, "un.amps"));
        }
        if (split.expected().beyondCurve()) {
            untold.add(check(UNKNOWN, "un.beyond"));
        }
        return untold;
    }

    private static List<Part> flowParts(Split split, Words words) {
        boolean hidden = split.real() != null && split.hiddenM3h() > 0;
        String arrives = words.say("jobs.part.arrives");
        String line = words.say("jobs.part.toLine");
        String pump = words.say(split.measured().gauge() == null ? "jobs.part.toPumpOrHidden" : "jobs.part.toPump");
        double out = split.measured().flowM3h();
        return hidden
                ? Part.bar(
                        new String[] {arrives, line, words.say("jobs.part.toHidden"), pump},
                        new String[] {"f-water", "open", "law", "close"},
                        out,
                        split.toLineM3h(),
                        split.hiddenM3h(),
                        split.wearM3h())
                : Part.bar(
                        new String[] {arrives, line, pump},
                        new String[] {"f-water", "open", "close"},
                        out,
                        split.toLineM3h(),
                        split.wearM3h());
    }

    /** The head that the bar shows in all, m. */
    public double headM() {
        return split.gaugeM() == null ? split.losses().headM() : split.gaugeM();
    }
}
