package freshet.rules;

import freshet.measures.Show;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** A rule as pages show it. */
record RuleRow(CareRule rule, Phrase scope) {

    /** Its triggers in words, in their order. */
    public List<Phrase> when(Show show) {
        return rule.triggers().stream()
                .map(trigger -> Phrase.when(trigger, show))
                .toList();
    }

    /** Whether one of several comes before the others; things that happen do not race. */
    public boolean whicheverComesFirst() {
        return rule.triggers().size() > 1
                && rule.triggers().stream().anyMatch(trigger -> !(trigger instanceof Trigger.Event));
    }

    /** The days in which the work can be done; null when it is the whole year. */
    @Nullable
    public Phrase access(Show show) {
        return rule.accessFrom() == null
                ? null
                : Phrase.of(
                        "says.access",
                        show.monthDay(rule.accessFrom()),
                        show.monthDay(Objects.requireNonNull(rule.accessTo())));
    }
}
