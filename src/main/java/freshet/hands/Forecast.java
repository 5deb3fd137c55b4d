package freshet.hands;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.time.temporal.IsoFields;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import org.jspecify.annotations.Nullable;

/**
 * Lets all hands together work the open tasks day by day, earliest due first among those whose days have begun. No other order leaves the
 * latest one less late (Jackson 1955, from memory). The assumptions are said on the page: a week's minutes are spread evenly over
 * Monday to Friday, today counts whole, anybody can do anything, getting there is not counted.
 */
final class Forecast {

    private static final int YEAR = 366;
    private static final int WEEKS_AT_MOST = 26;
    private static final double NOTHING = 1e-6;

    private final LocalDate today;
    private final List<Hand> hands;
    private final FindingsShare findings;
    private final List<Work> works;
    private final LocalDate end;

    private final Map<Long, Double> left = new HashMap<>();
    private final Map<Long, LocalDate> doneOn = new HashMap<>();

    Forecast(LocalDate today, List<Work> open, List<Hand> hands, FindingsShare findings) {
        this.today = today;
        this.hands = hands;
        this.findings = findings;
        this.end = end(today, open);
        this.works = open.stream()
                .filter(work -> !work.dueOn().isAfter(end))
                .sorted(Work.IN_DUE_ORDER)
                .toList();
    }

    /** The last day on which work that is open now is due; when none is, that of what opens next; at least this week, half a year at most. */
    static LocalDate end(LocalDate today, List<Work> open) {
        LocalDate next =
                open.stream().map(Work::opensOn).min(Comparator.naturalOrder()).orElse(today);
        LocalDate opened = next.isAfter(today) ? next : today;
        LocalDate last = open.stream()
                .filter(work -> !work.opensOn().isAfter(opened))
                .map(Work::dueOn)
                .max(Comparator.naturalOrder())
                .orElse(today);
        LocalDate friday = today.with(TemporalAdjusters.nextOrSame(DayOfWeek.FRIDAY));
        LocalDate most = today.plusWeeks(WEEKS_AT_MOST);
        LocalDate longer = last.isBefore(friday) ? friday : last;
        return longer.isAfter(most) ? most : longer;
    }

    static LocalDate monday(LocalDate day) {
        return day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    }

    private double handsOn(LocalDate day) {
        if (day.getDayOfWeek().getValue() > DayOfWeek.FRIDAY.getValue()) {
            return 0;
        }
        LocalDate monday = monday(day);
        return hands.stream().mapToInt(hand -> hand.minutesIn(monday)).sum() / 5.0;
    }

    private double handsUntil(LocalDate last) {
        double minutes = 0;
        for (LocalDate day = today; !day.isAfter(last); day = day.plusDays(1)) {
            minutes += handsOn(day);
        }
        return minutes;
    }

    Outlook outlook(int lastWeek, int weekBefore) {
        works.forEach(work -> left.put(work.taskId(), work.minutes() * findings.factor()));
        List<Work> byOpening = works.stream()
                .sorted(Comparator.comparing(Work::opensOn).thenComparing(Work.IN_DUE_ORDER))
                .toList();
        PriorityQueue<Work> ready = new PriorityQueue<>(Work.IN_DUE_ORDER);
        List<Outlook.Week> weeks = new ArrayList<>();
        int opened = 0;
        double handsInWeek = 0;
        double workedInWeek = 0;
        LocalDate last = null;
        for (LocalDate day = today; !day.isAfter(today.plusDays(YEAR)); day = day.plusDays(1)) {
            while (opened < byOpening.size() && !byOpening.get(opened).opensOn().isAfter(day)) {
                ready.add(byOpening.get(opened++));
            }
            double worked = work(ready, day);
            last = worked > NOTHING ? day : last;
            if (!day.isAfter(end)) {
                handsInWeek += handsOn(day);
                workedInWeek += worked;
                if (day.equals(end) || day.getDayOfWeek() == DayOfWeek.SUNDAY) {
                    weeks.add(week(day, handsInWeek, workedInWeek));
                    handsInWeek = 0;
                    workedInWeek = 0;
                }
            }
        }
        int minutes = rounded(works.stream().mapToInt(Work::minutes).sum() * findings.factor());
        return new Outlook(
                today,
                end,
                works.size(),
                works.stream().mapToInt(Work::minutes).sum(),
                minutes,
                rounded(handsUntil(end)),
                findings,
                weeks,
                sites(weeks),
                late(),
                doneOn.size() == works.size() ? last : null,
                pace(lastWeek, weekBefore));
    }

    /** One day's work: the minutes done. */
    private double work(PriorityQueue<Work> ready, LocalDate day) {
        double hands = handsOn(day);
        double worked = 0;
        while (hands - worked > NOTHING && !ready.isEmpty()) {
            Work work = ready.element();
            double done = Math.min(hands - worked, left.getOrDefault(work.taskId(), 0.0));
            worked += done;
            double still = left.getOrDefault(work.taskId(), 0.0) - done;
            left.put(work.taskId(), still);
            if (still <= NOTHING) {
                ready.remove();
                doneOn.put(work.taskId(), day);
            }
        }
        return worked;
    }

    private Outlook.Week week(LocalDate lastDay, double handsMinutes, double workedMinutes) {
        LocalDate monday = monday(lastDay);
        double missing = works.stream()
                .filter(work -> !work.dueOn().isAfter(lastDay))
                .mapToDouble(work -> left.getOrDefault(work.taskId(), 0.0))
                .sum();
        double due = works.stream()
                .filter(work -> weekOf(work).equals(monday))
                .mapToInt(Work::minutes)
                .sum();
        return new Outlook.Week(
                monday,
                monday.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR),
                rounded(due * findings.factor()),
                rounded(handsMinutes),
                rounded(workedMinutes),
                rounded(missing));
    }

    /** What is overdue belongs to this week. */
    private LocalDate weekOf(Work work) {
        return monday(work.dueOn().isBefore(today) ? today : work.dueOn());
    }

    private List<Outlook.SiteWeeks> sites(List<Outlook.Week> weeks) {
        Map<Long, List<Work>> bySite = new LinkedHashMap<>();
        works.forEach(work ->
                bySite.computeIfAbsent(work.siteId(), id -> new ArrayList<>()).add(work));
        return bySite.values().stream()
                .map(at -> {
                    List<Integer> minutes = weeks.stream()
                            .map(week -> rounded(findings.factor()
                                    * at.stream()
                                            .filter(work -> weekOf(work).equals(week.monday()))
                                            .mapToInt(Work::minutes)
                                            .sum()))
                            .toList();
                    return new Outlook.SiteWeeks(
                            at.get(0).siteId(),
                            at.get(0).siteName(),
                            minutes,
                            minutes.stream().mapToInt(Integer::intValue).sum());
                })
                .sorted(Comparator.comparing((Outlook.SiteWeeks site) -> -site.total())
                        .thenComparing(Outlook.SiteWeeks::siteName))
                .toList();
    }

    private List<Outlook.Late> late() {
        List<Outlook.Late> late = new ArrayList<>();
        Map<LocalDate, Double> handsUntil = new HashMap<>();
        double ahead = 0;
        for (Work work : works) {
            LocalDate done = doneOn.get(work.taskId());
            if (done == null || done.isAfter(work.dueOn())) {
                double until = handsUntil.computeIfAbsent(work.dueOn(), this::handsUntil);
                Outlook.Why why = work.dueOn().isBefore(today)
                        ? Outlook.Why.OVERDUE
                        : until < 1 ? Outlook.Why.NO_HANDS : Outlook.Why.HANDS;
                late.add(new Outlook.Late(
                        work.taskId(),
                        work.unitId(),
                        work.tag(),
                        work.title(),
                        work.siteName(),
                        work.dueOn(),
                        rounded(work.minutes() * findings.factor()),
                        why,
                        rounded(ahead),
                        rounded(until),
                        done));
            }
            ahead += work.minutes() * findings.factor();
        }
        return late;
    }

    /** What was signed took the findings of its day with it, so nothing is added for findings here. */
    private Outlook.Pace pace(int lastWeek, int weekBefore) {
        int minutes = works.stream().mapToInt(Work::minutes).sum();
        return new Outlook.Pace(
                lastWeek,
                weekBefore,
                finished(minutes, Math.max(lastWeek, weekBefore)),
                finished(minutes, Math.min(lastWeek, weekBefore)));
    }

    private @Nullable LocalDate finished(int minutes, int aWeek) {
        if (aWeek == 0) {
            return null;
        }
        long days = (long) Math.ceil(7.0 * minutes / aWeek);
        LocalDate lastOpens =
                works.stream().map(Work::opensOn).max(Comparator.naturalOrder()).orElse(today);
        long wait = Math.max(0, ChronoUnit.DAYS.between(today, lastOpens));
        return Math.max(days, wait) > YEAR ? null : today.plusDays(Math.max(days, wait));
    }

    private static int rounded(double minutes) {
        return (int) Math.round(minutes);
    }
}
