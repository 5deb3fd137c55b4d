package freshet.hands;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The work left against the hands, from today to the day on which the last work that is open now is due. All minutes but {@code leftMinutes}
 * hold what is added for findings. {@code finishedOn} is when the hands would have done all of it, null when not within a year.
 */
public record Outlook(
        LocalDate today,
        LocalDate end,
        int tasks,
        int leftMinutes,
        int minutes,
        int handsMinutes,
        FindingsShare findings,
        List<Week> weeks,
        List<SiteWeeks> sites,
        List<Late> late,
        @Nullable LocalDate finishedOn,
        Pace pace) {

    /**
     * An ISO week: the minutes due in it (the first week holds what is overdue), the hands in it, what they would do in it, and what is due by
     * its end and would not be done.
     */
    public record Week(
            LocalDate monday, int number, int dueMinutes, int handsMinutes, int workedMinutes, int shortMinutes) {}

    /** The minutes due at a site, week by week. */
    public record SiteWeeks(long siteId, String siteName, List<Integer> minutes, int total) {}

    /** Why a unit would not be ready in time. */
    public enum Why {
        OVERDUE,
        NO_HANDS,
        HANDS
    }

    /**
     * Work that would not be done when it is due: {@code aheadMinutes} come before it in due order, {@code handsMinutes} are there until it is
     * due; {@code doneOn} is null when it would not be done within a year.
     */
    public record Late(
            long taskId,
            long unitId,
            String tag,
            String title,
            String siteName,
            LocalDate dueOn,
            int minutes,
            Why why,
            int aheadMinutes,
            int handsMinutes,
            @Nullable LocalDate doneOn) {}

    /**
     * What was signed in each of the last two weeks, in planned minutes, and when the work left would be finished at the faster and at the
     * slower of the two; null when nothing was signed in it, or when that is more than a year away.
     */
    public record Pace(
            int lastWeekMinutes,
            int weekBeforeMinutes,
            @Nullable LocalDate earliest,
            @Nullable LocalDate latest) {}

    /** The first week that is short. */
    public Optional<Week> firstShort() {
        return weeks.stream().filter(week -> week.shortMinutes() > 0).findFirst();
    }

    /** A week in the picture: x and width in percent, y and height in pixels from the top; {@code label} is empty where there is no room. */
    public record Bar(
            String x,
            String width,
            String middle,
            double worked,
            double workedHeight,
            double over,
            double overHeight,
            double hands,
            String handsFrom,
            String handsTo,
            String label) {}

    private static final double TOP = 12;
    private static final double FLOOR = 172;
    private static final int LABELS = 12;

    /** The picture: 200 pixels high. */
    public List<Bar> bars() {
        int most = Math.max(
                1,
                weeks.stream()
                        .mapToInt(week -> Math.max(week.handsMinutes(), week.workedMinutes() + week.shortMinutes()))
                        .max()
                        .orElse(1));
        double scale = (FLOOR - TOP) / most;
        double width = 100.0 / weeks.size();
        int every = (weeks.size() + LABELS - 1) / LABELS;
        return java.util.stream.IntStream.range(0, weeks.size())
                .mapToObj(i -> {
                    Week week = weeks.get(i);
                    double worked = week.workedMinutes() * scale;
                    double over = week.shortMinutes() * scale;
                    return new Bar(
                            percent((i + 0.14) * width),
                            percent(0.72 * width),
                            percent((i + 0.5) * width),
                            rounded(FLOOR - worked),
                            rounded(worked),
                            rounded(FLOOR - worked - over),
                            rounded(over),
                            rounded(FLOOR - week.handsMinutes() * scale),
                            percent(i * width),
                            percent((i + 1) * width),
                            i % every == 0 ? String.valueOf(week.number()) : "");
                })
                .toList();
    }

    private static double rounded(double pixels) {
        return Math.round(pixels * 10) / 10.0;
    }

    private static String percent(double value) {
        return String.format(java.util.Locale.ROOT, "%.2f%%", value);
    }
}
