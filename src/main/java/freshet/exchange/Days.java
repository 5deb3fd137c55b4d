package freshet.exchange;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.Month;
import java.time.MonthDay;
import java.time.Year;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.TextStyle;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Days and moments as they stand in the cells of a file; nothing is read that could mean another day elsewhere. */
final class Days {

    private static final Pattern DAY_MONTH = Pattern.compile("(\\d{1,2})[. -]*(\\p{L}{3,9})\\.?");
    private static final Pattern MONTH_DAY = Pattern.compile("(\\p{L}{3,9})\\.?[ -]*(\\d{1,2})");
    private static final Pattern MONTH_DAY_NUMBERS = Pattern.compile("(?:--)?(\\d{2})-(\\d{2})");
    private static final Pattern ISO = Pattern.compile("(\\d{4})-(\\d{2})-(\\d{2})");
    private static final Pattern DAY_MONTH_YEAR = Pattern.compile("(.*\\p{L}\\.?|\\p{L}.*\\d),?[ -](\\d{4})");
    private static final Pattern TWO_WAYS = Pattern.compile("\\d{1,4}[./-]\\d{1,2}[./-]\\d{1,4}");
    private static final Pattern MOMENT = Pattern.compile(
            "(.+?)[ T](\\d{2}:\\d{2}(?::\\d{2}(?:\\.\\d{1,6})?)?)\\s*(Z|[+-]\\d{2}:\\d{2}(?::\\d{2})?)?");
    private static final Locale SPANISH = Locale.forLanguageTag("es-US");
    private static final DateTimeFormatter TO_THE_MINUTE = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm");

    private Days() {}

    /** A day of any year: "15 Feb", "Feb 15", "15-Feb" or "02-15", its month in English or Spanish; no word is another month in the other language. */
    static MonthDay monthDay(String text) {
        Matcher numbers = MONTH_DAY_NUMBERS.matcher(text);
        if (numbers.matches()) {
            int month = Integer.parseInt(numbers.group(1));
            if (month < 1 || month > 12) {
                throw new Unread("exchange.day.noSuchMonth", text, numbers.group(1));
            }
            return monthDay(text, Month.of(month), numbers.group(2), Year.of(2024));
        }
        Matcher dayFirst = DAY_MONTH.matcher(text);
        if (dayFirst.matches()) {
            return monthDay(text, month(text, dayFirst.group(2)), dayFirst.group(1), Year.of(2024));
        }
        Matcher monthFirst = MONTH_DAY.matcher(text);
        if (monthFirst.matches()) {
            return monthDay(text, month(text, monthFirst.group(1)), monthFirst.group(2), Year.of(2024));
        }
        throw new Unread("exchange.day.unread", text);
    }

    private static MonthDay monthDay(String text, Month month, String day, Year year) {
        int number = Integer.parseInt(day);
        if (number < 1 || number > month.length(year.isLeap())) {
            throw new Unread(
                    "exchange.day.noSuchDay",
                    text,
                    month.getDisplayName(TextStyle.FULL, Locale.ENGLISH),
                    String.valueOf(number));
        }
        return MonthDay.of(month, number);
    }

    private static Month month(String text, String name) {
        for (Month month : Month.values()) {
            String spanish = month.getDisplayName(TextStyle.FULL, SPANISH).toUpperCase(Locale.ROOT);
            String said = name.toUpperCase(Locale.ROOT);
            if (month.name().startsWith(said) || spanish.startsWith(said)) {
                return month;
            }
        }
        throw new Unread("exchange.day.noSuchMonth", text, name);
    }

    /** A day: "2026-03-14", "14 Mar 2026" or "Mar 14, 2026". */
    static LocalDate date(String text) {
        Matcher iso = ISO.matcher(text);
        if (iso.matches()) {
            int month = Integer.parseInt(iso.group(2));
            if (month < 1 || month > 12) {
                throw new Unread("exchange.day.noSuchMonth", text, iso.group(2));
            }
            Year year = Year.of(Integer.parseInt(iso.group(1)));
            return monthDay(text, Month.of(month), iso.group(3), year).atYear(year.getValue());
        }
        Matcher words = DAY_MONTH_YEAR.matcher(text);
        if (words.matches()) {
            int year = Integer.parseInt(words.group(2));
            MonthDay day = monthDay(words.group(1).strip());
            if (!day.isValidYear(year)) {
                throw new Unread("exchange.day.noSuchDay", text, "February", "29");
            }
            return day.atYear(year);
        }
        throw new Unread(TWO_WAYS.matcher(text).matches() ? "exchange.day.twoWays" : "exchange.date.unread", text);
    }

    /**
     * A moment: a day and a time on the clock of the place, "2026-03-14 19:40", or with its distance from UTC where the clock shows a
     * time twice, "2026-11-01 01:30 -05:00".
     */
    static Instant moment(String text, ZoneId zone) {
        Matcher parts = MOMENT.matcher(text);
        if (!parts.matches()) {
            throw new Unread(
                    TWO_WAYS.matcher(text.split(" ")[0]).matches()
                                    && !ISO.matcher(text).matches()
                            ? "exchange.day.twoWays"
                            : "exchange.moment.unread",
                    text);
        }
        LocalDateTime at;
        try {
            at = date(parts.group(1).strip()).atTime(LocalTime.parse(parts.group(2)));
        } catch (DateTimeException noTime) {
            throw new Unread("exchange.moment.unread", text);
        }
        if (parts.group(3) != null) {
            try {
                return at.toInstant(ZoneOffset.of(parts.group(3)));
            } catch (DateTimeException noOffset) {
                throw new Unread("exchange.moment.unread", text);
            }
        }
        List<ZoneOffset> offsets = zone.getRules().getValidOffsets(at);
        if (offsets.isEmpty()) {
            throw new Unread("exchange.moment.skipped", text, zone.getId());
        }
        return at.toInstant(offsets.get(0));
    }

    /** The moment as {@link #moment} reads it back. */
    static String written(Instant at, ZoneId zone) {
        LocalDateTime local = LocalDateTime.ofInstant(at, zone);
        List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
        boolean onTheMinute = at.truncatedTo(ChronoUnit.MINUTES).equals(at);
        String text =
                onTheMinute ? TO_THE_MINUTE.format(local) : local.toString().replace('T', ' ');
        ZoneOffset offset = zone.getRules().getOffset(at);
        return offsets.get(0).equals(offset) ? text : text + " " + offset;
    }

    static @Nullable String written(@Nullable LocalDate day) {
        return day == null ? null : day.toString();
    }

    static String written(MonthDay day) {
        return day.getDayOfMonth() + " " + day.getMonth().getDisplayName(TextStyle.SHORT, Locale.ENGLISH);
    }
}
