package freshet.checklists;

import freshet.measures.UnitSystem;
import freshet.people.Person;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;

/** Says limits in the language and the units of one reader. */
public record LimitWords(MessageSource messages, Locale locale, UnitSystem system) {

    public static LimitWords of(MessageSource messages, Person reader) {
        return new LimitWords(messages, reader.locale(), reader.unitSystem());
    }

    String of(Limits limits, LineUnit unit) {
        String pass = band(limits.passLow(), limits.passHigh(), unit);
        Double low = limits.watchLow();
        Double high = limits.watchHigh();
        String below = low == null || low.equals(limits.passLow())
                ? null
                : low > 0 ? band(low, null, unit) : say("checklists.limits.below");
        String above = high == null || high.equals(limits.passHigh()) ? null : band(null, high, unit);
        if (below == null && above == null) {
            return say("checklists.limits.pass", pass);
        }
        String watch = below == null
                ? Objects.requireNonNull(above)
                : above == null ? below : say("checklists.limits.and", below, above);
        return say("checklists.limits.watch", pass, watch);
    }

    private String band(@Nullable Double low, @Nullable Double high, LineUnit unit) {
        if (low != null && high != null) {
            return say("checklists.limits.band", unit.show(low, system), unit.show(high, system));
        }
        return low != null
                ? say("checklists.limits.from", unit.show(low, system))
                : say("checklists.limits.to", unit.show(Objects.requireNonNull(high), system));
    }

    private String say(String code, Object... arguments) {
        return messages.getMessage(code, arguments, locale);
    }
}
