package freshet.checklists;

import freshet.measures.NotAMeasure;
import freshet.measures.Numbers;
import freshet.measures.UnitSystem;
import java.math.BigDecimal;
import java.math.MathContext;
import org.jspecify.annotations.Nullable;

/** A limit as an owner reads and types it: in the person's units, or in percent of the plate's figure. */
final class LimitText {

    private static final MathContext SHOWN = new MathContext(4);

    private LimitText() {}

    static @Nullable String of(
            @Nullable Double limit, @Nullable String unit, @Nullable RatedBy ratedBy, UnitSystem system) {
        if (limit == null) {
            return null;
        }
        if (ratedBy != null) {
            return percent(limit);
        }
        return unit == null || !LineUnit.known(unit)
                ? plain(limit)
                : new BigDecimal(LineUnit.of(unit).input(limit, system))
                        .round(SHOWN)
                        .stripTrailingZeros()
                        .toPlainString();
    }

    /**
     * In the line's unit; {@code stands} is kept to the last digit when its text was left as the field showed it.
     *
     * @throws NotAnAnswer when it is no number of that unit
     */
    static Double read(
            String text, @Nullable String unit, @Nullable RatedBy ratedBy, UnitSystem system, @Nullable Double stands) {
        if (text.equals(of(stands, unit, ratedBy, system)) && stands != null) {
            return stands;
        }
        try {
            if (ratedBy != null) {
                String figure = text.endsWith("%")
                        ? text.substring(0, text.length() - 1).strip()
                        : text;
                return Numbers.parse(figure) / 100;
            }
            return unit == null || !LineUnit.known(unit)
                    ? Numbers.parse(text)
                    : LineUnit.of(unit).parse(text, system);
        } catch (NotAMeasure wrong) {
            throw new NotAnAnswer(wrong);
        }
    }

    static String percent(double fraction) {
        return plain(fraction * 100);
    }

    private static String plain(double number) {
        BigDecimal rounded = new BigDecimal(number).round(new MathContext(6));
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
