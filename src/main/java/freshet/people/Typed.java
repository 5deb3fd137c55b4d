package freshet.people;

import freshet.measures.Durations;
import freshet.measures.NotAMeasure;
import freshet.measures.Numbers;
import freshet.measures.Quantity;
import freshet.measures.UnitSystem;
import freshet.measures.Usual;
import jakarta.servlet.http.HttpServletRequest;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.springframework.web.context.request.RequestContextHolder;
import org.springframework.web.context.request.ServletRequestAttributes;

/** Reads what a person typed into a form, and gathers what is wrong at its field until somebody asks. */
public final class Typed {

    /** The name of the field in which a form says that unusual texts are so. */
    private static final String IT_IS_SO = "itIsSo";

    private static final String ASKED = "asked";

    private static final double SLACK = 1e-9;

    private final UnitSystem system;
    private final List<Refused.Wrong> wrongs = new ArrayList<>();

    private final Set<String> said;

    /** Bare numbers are in the units that this person reads. What this request says is so is not asked about again. */
    public Typed(Person person) {
        this.system = person.unitSystem();
        this.said = RequestContextHolder.getRequestAttributes() instanceof ServletRequestAttributes request
                ? said(request.getRequest())
                : Set.of();
    }

    /** What a request says is so: what it said before, and with a press on "yes" everything that was asked. */
    static Set<String> said(HttpServletRequest request) {
        Set<String> said = new TreeSet<>(List.of(values(request, IT_IS_SO)));
        if (said.remove(ASKED)) {
            said.addAll(List.of(values(request, ASKED)));
        }
        return said;
    }

    private static String[] values(HttpServletRequest request, String name) {
        return Objects.requireNonNullElse(request.getParameterValues(name), new String[0]);
    }

    /** The press of a form, or the one before it when "yes, I mean it" was pressed. */
    public static String press(String press, @Nullable String before) {
        return press.isEmpty() && before != null ? before : press;
    }

    /** Asks whether what was typed is so, unless somebody said it. */
    public void ask(String field, @Nullable String text, String code, Object... arguments) {
        boolean wrongAlready = wrongs.stream().anyMatch(wrong -> wrong.field().equals(field));
        if (!wrongAlready && !said.contains(Refused.Tick.of(field, text))) {
            wrongs.add(Refused.Wrong.asked(field, text, code, arguments));
        }
    }

    /** As {@link #quantity}, and asks about what is not usual, with what was likely meant. */
    public @Nullable Double usual(String field, @Nullable String typed, Quantity quantity, double low, double high) {
        return usual(field, typed, quantity, quantity(field, typed, quantity), low, high);
    }

    /** As {@link #quantity}, and asks about what is not usual, with what was likely meant. */
    public @Nullable Double usual(String field, @Nullable String typed, Usual usual) {
        return usual(field, typed, usual.quantity(), usual.low(), usual.high());
    }

    /** As {@link #usual}, but what stands is kept to the last digit when its text was left as the field showed it. */
    public @Nullable Double usual(String field, @Nullable String typed, Usual usual, @Nullable Double stands) {
        Double value = quantity(field, typed, usual.quantity(), stands);
        return usual(field, typed, usual.quantity(), value, usual.low(), usual.high());
    }

    /** The value that was read of this text; asks when it is not usual. */
    public @Nullable Double usual(
            String field, @Nullable String typed, Quantity quantity, @Nullable Double value, double low, double high) {
        String text = text(typed);
        if (text != null && value != null && !(value >= low - SLACK && value <= high + SLACK)) {
            String shown = quantity.show(value, system);
            String from = quantity.show(low, system);
            String to = quantity.show(high, system);
            quantity.meant(text, system, low, high)
                    .ifPresentOrElse(
                            meant -> ask(
                                    field,
                                    text,
                                    "measures.unusual.meant",
                                    shown,
                                    from,
                                    to,
                                    meant,
                                    quantity.show(quantity.parse(meant, system), system)),
                            () -> ask(field, text, "measures.unusual", shown, from, to));
        }
        return value;
    }

    /** Minutes of work, "2h 15" or "135"; null when nothing or no such time was typed. */
    public @Nullable Double minutes(String field, @Nullable String typed) {
        return read(field, typed, Durations::parseMinutes);
    }

    /** Hours, "2h 15" or "2.25"; null when nothing or no such time was typed. */
    public @Nullable Double hours(String field, @Nullable String typed) {
        return read(field, typed, Durations::parseHours);
    }

    private <T> @Nullable T read(String field, @Nullable String typed, Function<String, T> reading) {
        String text = text(typed);
        try {
            return text == null ? null : reading.apply(text);
        } catch (NotAMeasure wrong) {
            wrong(field, wrong.code(), wrong.arguments());
            return null;
        }
    }

    public UnitSystem system() {
        return system;
    }

    /** The text without blanks around it; null when there is none. */
    public static @Nullable String text(@Nullable String typed) {
        String text = textOrEmpty(typed);
        return text.isEmpty() ? null : text;
    }

    /** The text, or an empty one, for what a door refuses when it is empty. */
    public static String textOrEmpty(@Nullable String typed) {
        return typed == null ? "" : typed.strip();
    }

    /** In the unit inside; null when nothing or no measure was typed. */
    public @Nullable Double quantity(String field, @Nullable String typed, Quantity quantity) {
        return read(field, typed, text -> quantity.parse(text, system));
    }

    /** As {@link #quantity}, but what stands is kept to the last digit when its text was left as the field showed it. */
    public @Nullable Double quantity(String field, @Nullable String typed, Quantity quantity, @Nullable Double stands) {
        return stands != null && quantity.input(stands, system).equals(text(typed))
                ? stands
                : quantity(field, typed, quantity);
    }

    /** A plain number; null when nothing or no number was typed. */
    public @Nullable Double number(String field, @Nullable String typed) {
        return read(field, typed, Numbers::parse);
    }

    /** A day as date fields send it, {@code 2026-03-14}; null when there is none or no such day. */
    public @Nullable LocalDate day(String field, @Nullable String typed) {
        String text = text(typed);
        try {
            return text == null ? null : LocalDate.parse(text);
        } catch (DateTimeParseException wrong) {
            wrong(field, "layout.noSuchDay", text);
            return null;
        }
    }

    /** A decimal exactly as typed, as a meter shows it; null when nothing or no number was typed. */
    public @Nullable BigDecimal exact(String field, @Nullable String typed) {
        return read(field, typed, Numbers::parseExact);
    }

    /** Seconds as a stopwatch shows them; null when nothing or no time was typed. */
    public @Nullable Double seconds(String field, @Nullable String typed) {
        return read(field, typed, Durations::parseSeconds);
    }

    /** A moment at a place as date and time fields send it, {@code 2026-03-14T14:05}; null when there is none or no such moment. */
    public @Nullable Instant moment(String field, @Nullable String typed, ZoneId zone) {
        String text = text(typed);
        try {
            return text == null ? null : LocalDateTime.parse(text).atZone(zone).toInstant();
        } catch (DateTimeParseException wrong) {
            wrong(field, "layout.noSuchMoment", text);
            return null;
        }
    }

    /** The value, which must be there: {@code code} is said at the field when it is not and nothing else is wrong with it. */
    public <T> @Nullable T required(String field, @Nullable T value, String code) {
        if (value == null && wrongs.stream().noneMatch(wrong -> wrong.field().equals(field))) {
            wrong(field, code);
        }
        return value;
    }

    public void wrong(String field, String code, Object... arguments) {
        wrongs.add(Refused.Wrong.at(field, code, arguments));
    }

    /** Throws one refusal for all that was gathered, if anything was. */
    public void refuseIfWrong() {
        Refused.ifAny(wrongs);
    }
}
