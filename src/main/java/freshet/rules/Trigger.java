package freshet.rules;

import freshet.happenings.HappeningKind;
import freshet.places.WindowKind;
import java.math.BigDecimal;
import java.time.Period;
import org.jspecify.annotations.Nullable;

/** One thing that makes work due; of several triggers of a rule, whichever comes first does. */
public sealed interface Trigger {

    /** Each so many days, weeks, months or years. */
    record Calendar(Period every) implements Trigger {}

    /** Once in each turn of the site's windows of this kind, within its days. */
    record Season(WindowKind window) implements Trigger {}

    /** Each so many run hours; the first after {@code first}, where that is set. */
    record RunHours(BigDecimal every, @Nullable BigDecimal first) implements Trigger {}

    /** Each so many starts. */
    record Starts(BigDecimal every, @Nullable BigDecimal first) implements Trigger {}

    /** After something happened; {@code firstOnly}: only the first of its kind since the unit was last opened. */
    record Event(HappeningKind kind, boolean firstOnly, int daysToAct) implements Trigger {}

    /** After the unit came to stand elsewhere. */
    record Relocated(int daysToAct) implements Trigger {}

    /** After the unit has not run for more than so many days. */
    record Idle(int days, int daysToAct) implements Trigger {}

    /** While a figure is beyond its limit. */
    record Condition(Measure measure, double threshold, int daysToAct) implements Trigger {}
}
