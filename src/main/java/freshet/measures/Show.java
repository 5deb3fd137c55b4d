package freshet.measures;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.time.Instant;
import java.time.LocalDate;
import java.time.MonthDay;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.TemporalAccessor;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Writes quantities, times and dates the way one person reads them; pages know it as {@code show}. */
public record Show(UnitSystem system, Locale locale, LocalDate today) {

    private static final char NO_BREAK_SPACE = '\u00a0';

    static String decimals(double value, int decimals) {
        return format(BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP), decimals, Locale.ENGLISH);
    }

    private static String format(BigDecimal value, int decimals, Locale locale) {
        DecimalFormat format = new DecimalFormat("#,##0", DecimalFormatSymbols.getInstance(locale));
        format.setMinimumFractionDigits(decimals);
        format.setMaximumFractionDigits(decimals);
        // a rounded -0 is 0
        return format.format(value.signum() == 0 ? BigDecimal.ZERO : value);
    }

    /** Short, with six significant digits. */
    static String plain(double value) {
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(6, RoundingMode.HALF_UP));
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    /**
     * What a text in a field beside this unit was understood as, when it says a unit of its own; null when it says none, or nothing that
     * can be read.
     */
    public @Nullable String understood(@Nullable Object typed, @Nullable String unit) {
        if (!(typed instanceof String text) || unit == null || !text.matches("(?s).*[\\p{L}'\"°¼-¾⅓-⅞/].*")) {
            return null;
        }
        for (Quantity quantity : Quantity.values()) {
            if (quantity.unit(system).equals(unit)) {
                try {
                    return quantity.show(quantity.parse(text, system), system);
                } catch (NotAMeasure another) {
                    // feet are feet of head and of length
                }
            }
        }
        return null;
    }

    public String flow(double flowM3h) {
        return Quantity.FLOW.show(flowM3h, system);
    }

    /** The same flow in the other system, to stand beside. */
    public String flowOther(double flowM3h) {
        return Quantity.FLOW.show(flowM3h, system.other());
    }

    public String head(double headM) {
        return Quantity.HEAD.show(headM, system);
    }

    public String headOther(double headM) {
        return Quantity.HEAD.show(headM, system.other());
    }

    public String length(double lengthM) {
        return Quantity.LENGTH.show(lengthM, system);
    }

    public String bore(double boreMm) {
        return system == UnitSystem.US
                ? Quantity.BORE.input(boreMm, system) + NO_BREAK_SPACE + Quantity.BORE.unit(system)
                : Quantity.BORE.show(boreMm, system);
    }

    public String volume(double volumeL) {
        return Quantity.VOLUME.show(volumeL, system);
    }

    public String pressure(double pressureKPa) {
        return Quantity.PRESSURE.show(pressureKPa, system);
    }

    public String temperature(double temperatureC) {
        return Quantity.TEMPERATURE.show(temperatureC, system);
    }

    public String power(double powerW) {
        return Quantity.POWER.show(powerW, system);
    }

    /** The unit's name beside a field, such as {@code unit('FLOW')}. */
    public String unit(String quantity) {
        return Quantity.valueOf(quantity).unit(system);
    }

    /** The value for refilling a field. */
    public String input(String quantity, double inside) {
        return Quantity.valueOf(quantity).input(inside, system);
    }

    public String percent(double fraction) {
        return format(BigDecimal.valueOf(fraction * 100).setScale(0, RoundingMode.HALF_UP), 0, locale) + NO_BREAK_SPACE
                + "%";
    }

    public String number(double value, int decimals) {
        return format(BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP), decimals, locale);
    }

    public String count(long value) {
        return format(BigDecimal.valueOf(value), 0, locale);
    }

    /** Run hours as the meter shows them. */
    public String hours(BigDecimal hours) {
        return format(hours.setScale(1, RoundingMode.HALF_UP), 1, locale) + NO_BREAK_SPACE + "h";
    }

    /** Minutes of work: "45 min", "2 h", "2 h 25". */
    public String minutes(long minutes) {
        if (minutes < 60) {
            return minutes + "" + NO_BREAK_SPACE + "min";
        }
        String hours = minutes / 60 + "" + NO_BREAK_SPACE + "h";
        return minutes % 60 == 0 ? hours : hours + NO_BREAK_SPACE + "%02d".formatted(minutes % 60);
    }

    /** A day as people say it: "Fri 20 Mar", with the year when it is not this one. */
    public String day(LocalDate day) {
        return said(day.getYear() == today.getYear() ? "EEE d MMM" : "d MMM yyyy", day);
    }

    /** A day without its weekday: "20 Mar", with the year when it is not this one. */
    public String date(LocalDate day) {
        return said(day.getYear() == today.getYear() ? "d MMM" : "d MMM yyyy", day);
    }

    public String longDay(LocalDate day) {
        return said(locale.getLanguage().equals("es") ? "EEEE d 'de' MMMM 'de' yyyy" : "EEEE d MMMM yyyy", day);
    }

    public String monthDay(MonthDay day) {
        return said("d MMM", day);
    }

    public String date(Instant at, ZoneId zone) {
        return date(at.atZone(zone).toLocalDate());
    }

    /** A day with its time at the place: "12 Mar 2026, 14:05". */
    public String dayTime(Instant at, ZoneId zone) {
        return said("d MMM yyyy, HH:mm", at.atZone(zone));
    }

    /** For the datetime attribute of a time element. */
    public String machineDay(Instant at, ZoneId zone) {
        return at.atZone(zone).toLocalDate().toString();
    }

    /** Spanish writes a point behind a shortened month, which would stand twice at the end of a sentence. */
    private String said(String pattern, TemporalAccessor at) {
        return DateTimeFormatter.ofPattern(pattern, locale).format(at).replace(".", "");
    }
}
