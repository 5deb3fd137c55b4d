package freshet.people;

import freshet.measures.Durations;
import freshet.measures.NotAMeasure;
import freshet.measures.Numbers;
import freshet.measures.Quantity;
import freshet.measures.UnitSystem;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads what a person typed into a form, and gathers what is wrong at its field until somebody asks. */
public final class Typed {

    private final UnitSystem system;
    private final List<Refused.Wrong> wrongs = new ArrayList<>();

    /** Bare numbers are in the units that this person reads. */
    public Typed(Person person) {
        this.system = person.unitSystem();
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
        String text = text(typed);
        try {
            return text == null ? null : Double.valueOf(quantity.parse(text, system));
        } catch (NotAMeasure wrong) {
            wrong(field, wrong.code(), wrong.arguments());
            return null;
        }
    }

    /** As {@link #quantity}, but what stands is kept to the last digit when its text was left as the field showed it. */
    public @Nullable Double quantity(String field, @Nullable String typed, Quantity quantity, @Nullable Double stands) {
        return stands != null && quantity.input(stands, system).equals(text(typed))
                ? stands
                : quantity(field, typed, quantity);
    }

    /** A plain number; null when nothing or no number was typed. */
    public @Nullable Double number(String field, @Nullable String typed) {
        String text = text(typed);
        try {
            return text == null ? null : Double.valueOf(Numbers.parse(text));
        } catch (NotAMeasure wrong) {
            wrong(field, wrong.code(), wrong.arguments());
            return null;
        }
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
        String text = text(typed);
        try {
            return text == null ? null : Numbers.parseExact(text);
        } catch (NotAMeasure wrong) {
            wrong(field, wrong.code(), wrong.arguments());
            return null;
        }
    }

    /** Seconds as a stopwatch shows them; null when nothing or no time was typed. */
    public @Nullable Double seconds(String field, @Nullable String typed) {
        String text = text(typed);
        try {
            return text == null ? null : Double.valueOf(Durations.parseSeconds(text));
        } catch (NotAMeasure wrong) {
            wrong(field, wrong.code(), wrong.arguments());
            return null;
        }
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
