package freshet.wear;

import freshet.people.Person;
import freshet.people.Typed;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What is asked of the fleet's figures, as the address holds it: the model, and the fields of the three calculators. The service level is in percent,
 * costs in any money.
 */
public record FiguresForm(
        @Nullable String model,
        @Nullable String age,
        @Nullable String season,
        @Nullable String shape,
        @Nullable String scale,
        @Nullable String planned,
        @Nullable String failure,
        @Nullable String demand,
        @Nullable String units,
        @Nullable String rate,
        @Nullable String lead,
        @Nullable String peak,
        @Nullable String level) {

    private static final double MOST_HOURS = 1e6;
    private static final double MOST_MONEY = 1e9;

    /** A unit of some age and the hours of its season. */
    record Season(double ageHours, double seasonHours) {}

    /** Costs of a renewal in time and after a failure, and the law where it is typed. */
    record Renewal(
            double planned,
            double failure,
            @Nullable Double shape,
            @Nullable Double scaleHours) {}

    /** Demand in a year, and what it has to be bridged with. */
    record Stock(double demandPerYear, double leadDays, double peakFactor, double serviceLevel) {}

    /** The model asked for; null for the whole fleet, and for what is no number. */
    @Nullable
    Long modelId() {
        return model != null && model.matches("\\d{1,18}") ? Long.valueOf(model) : null;
    }

    private boolean asks(@Nullable String... fields) {
        for (String field : fields) {
            if (Typed.text(field) != null) {
                return true;
            }
        }
        return false;
    }

    /** Null when nothing is asked. */
    @Nullable
    Season season(Person me) {
        if (!asks(age, season)) {
            return null;
        }
        Reader in = new Reader(me);
        double itsAge = in.hours("age", age, 0, MOST_HOURS);
        double hours = in.hours("season", season, 0, MOST_HOURS);
        in.refuseIfWrong();
        return new Season(itsAge, hours);
    }

    /** Null when nothing is asked. */
    @Nullable
    Renewal renewal(Person me) {
        if (!asks(planned, failure, shape, scale)) {
            return null;
        }
        Reader in = new Reader(me);
        double inTime = in.number("planned", planned, 0.01, MOST_MONEY);
        double late = in.number("failure", failure, 0.01, MOST_MONEY);
        // the law goes by both or is the fitted one
        boolean typed = asks(shape, scale);
        Double itsShape = typed ? (Double) in.number("shape", shape, 0.05, 100) : null;
        Double itsScale = typed ? (Double) in.hours("scale", scale, 0.1, MOST_HOURS) : null;
        in.refuseIfWrong();
        return new Renewal(inTime, late, itsShape, itsScale);
    }

    /** Null when nothing is asked. */
    @Nullable
    Stock stock(Person me) {
        if (!asks(demand, units, rate, lead)) {
            return null;
        }
        Reader in = new Reader(me);
        double yearly = asks(demand)
                ? in.number("demand", demand, 0, 1e5)
                : in.number("units", units, 0, 1e5) * in.number("rate", rate, 0, 100);
        double days = in.number("lead", lead, 0, 3650);
        double factor = in.number("peak", asks(peak) ? peak : "1", 0.1, 100);
        double percent = in.number("level", asks(level) ? level : "95", 50, 99.99);
        in.refuseIfWrong();
        return new Stock(yearly, days, factor, percent / 100);
    }

    /** What is typed in the other fields, for a form that has only some of them. */
    public Map<String, String> besides(List<String> own) {
        Map<String, String> others = new LinkedHashMap<>();
        all().forEach((name, typed) -> {
            if (Typed.text(typed) != null && !own.contains(name)) {
                others.put(name, typed);
            }
        });
        return others;
    }

    private Map<String, @Nullable String> all() {
        Map<String, @Nullable String> all = new LinkedHashMap<>();
        all.put("model", model);
        all.put("age", age);
        all.put("season", season);
        all.put("shape", shape);
        all.put("scale", scale);
        all.put("planned", planned);
        all.put("failure", failure);
        all.put("demand", demand);
        all.put("units", units);
        all.put("rate", rate);
        all.put("lead", lead);
        all.put("peak", peak);
        all.put("level", level);
        return all;
    }

    /** Reads fields that must be there and lie between limits. */
    private static final class Reader {

        private final Typed typed;

        Reader(Person me) {
            typed = new Typed(me);
        }

        /** The number; 0 when it is wrong, which is refused in the end. */
        double number(String field, @Nullable String text, double least, double most) {
            return within(field, typed.number(field, text), least, most);
        }

        /** Hours, likewise. */
        double hours(String field, @Nullable String text, double least, double most) {
            return within(field, typed.hours(field, text), least, most);
        }

        private double within(String field, @Nullable Double value, double least, double most) {
            typed.required(field, value, "wear.figures.missing");
            if (value != null && !(value >= least && value <= most)) {
                typed.wrong(field, "wear.figures.range", least, most);
            }
            return value == null ? 0 : value;
        }

        void refuseIfWrong() {
            typed.refuseIfWrong();
        }
    }
}
