package freshet.example;

import freshet.care.Answer;
import freshet.care.Care;
import freshet.care.SignOff;
import freshet.care.Task;
import freshet.care.Worksheet;
import freshet.checklists.CheckLine;
import freshet.checklists.Limits;
import freshet.checklists.Phase;
import freshet.checklists.Verdict;
import freshet.people.Competence;
import freshet.people.Person;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/** The seasons that the example yard has been through: all of the past ones signed, three of four units of the one that is on. */
final class PastSeasons {

    /** A window that ended longer ago than this is past. */
    private static final int PAST_DAYS = 40;

    private final Pumps pumps;
    private final Care care;
    private final Clock clock;

    PastSeasons(Pumps pumps, Care care, Clock clock) {
        this.pumps = pumps;
        this.care = care;
        this.clock = clock;
    }

    void workThem(Map<String, Person> crew) {
        List<Unit> units = pumps.units(pumps.activeUnitIds()).stream()
                .sorted(Comparator.comparing(Unit::tag))
                .toList();
        for (int i = 0; i < units.size(); i++) {
            Unit unit = units.get(i);
            LocalDate today = LocalDate.now(clock.withZone(unit.stand().zone()));
            List<Task> tasks = care.tasksOf(unit.id()).stream()
                    .sorted(Comparator.comparing(task -> !ofSeason(task)))
                    .toList();
            for (Task planned : tasks) {
                // what was signed before it may have done it too
                Task task = care.task(planned.id());
                boolean past = task.dueOn().isBefore(today.minusDays(PAST_DAYS));
                boolean hired = PastHires.TAGS.contains(unit.tag());
                boolean skipped = hired ? stayedOpen(task, tasks, today) : !past && i % 4 == 0;
                if (task.openOn(today) && !skipped) {
                    Instant ended = everyMonthOrSo(task) ? lately(task, today, i) : endedAt(task, today, i);
                    sign(unit, task, ended, hand(unit, task, i, crew));
                }
            }
        }
    }

    /** A closing after which no opening has begun yet. */
    private static boolean stayedOpen(Task task, List<Task> tasks, LocalDate today) {
        return task.phase() == Phase.CLOSING
                && tasks.stream()
                        .noneMatch(other -> other.phase() == Phase.OPENING
                                && other.openOn(today)
                                && other.dueOn().isAfter(task.dueOn()));
    }

    /** The yard is worked by Ilse, now and then by Teo; the rest by Freya, who is competent for all of it. */
    private static Person hand(Unit unit, Task task, int number, Map<String, Person> crew) {
        boolean yard = unit.tag().startsWith("BF-");
        boolean teo = number % 9 == 5 && task.phase() != Phase.ELECTRICAL;
        return crew.get(yard ? teo ? "teo" : "ilse" : "freya");
    }

    private static boolean ofSeason(Task task) {
        return task.phase() == Phase.OPENING || task.phase() == Phase.CLOSING;
    }

    private static boolean everyMonthOrSo(Task task) {
        return task.why() != null && task.why().name().startsWith("calendar.");
    }

    /** In the last five weeks, so that some are due again. */
    private Instant lately(Task task, LocalDate today, int number) {
        LocalDate day = today.minusDays(2 + number * 11L % 33);
        LocalDate open = day.isBefore(task.opensOn()) ? task.opensOn() : day;
        return ended(open, task, number);
    }

    /** A working afternoon within the task's days, and not after today. */
    private Instant endedAt(Task task, LocalDate today, int number) {
        LocalDate last = task.dueOn().isBefore(today) ? task.dueOn() : today.minusDays(1);
        long days = Math.max(1, ChronoUnit.DAYS.between(task.opensOn(), last) + 1);
        return ended(task.opensOn().plusDays(number * 7L % days), task, number);
    }

    private Instant ended(LocalDate day, Task task, int number) {
        Instant ended =
                day.atTime(LocalTime.of(14, number % 60)).atZone(task.zone()).toInstant();
        return ended.isAfter(clock.instant()) ? clock.instant().truncatedTo(ChronoUnit.SECONDS) : ended;
    }

    private void sign(Unit unit, Task task, Instant endedAt, Person by) {
        Worksheet sheet = care.worksheet(task.id());
        List<Answer> answers = new ArrayList<>();
        for (CheckLine line : sheet.checklist().lines()) {
            if (line.competence() == null || by.competentFor(line.competence())) {
                answers.add(Answer.of(line.id(), passing(line, unit)));
            }
        }
        care.sign(
                task.id(),
                new SignOff(
                        task.version(),
                        answers,
                        endedAt.minus(task.minutes(), ChronoUnit.MINUTES),
                        endedAt,
                        null,
                        by.competentFor(Competence.ELECTRICAL) ? "Tester 3" : "Plug-in meter 1"),
                by);
    }

    private static String passing(CheckLine line, Unit unit) {
        return switch (line.kind()) {
            case YES_NO -> CheckLine.YES;
            case TEXT -> "";
            case CHOICE ->
                line.choices().stream()
                        .filter(choice -> choice.verdict() == Verdict.PASS)
                        .findFirst()
                        .orElseThrow()
                        .words();
            case NUMBER -> number(line.limitsFor(unit.model().ratings())) + " " + line.unit();
        };
    }

    /** Well within the band. */
    private static double number(Limits limits) {
        Double low = limits.passLow();
        Double high = limits.passHigh();
        if (low != null && high != null) {
            return rounded(low + 0.6 * (high - low));
        }
        return low != null ? rounded(2 * low) : high != null ? rounded(0.5 * high) : 1;
    }

    private static double rounded(double number) {
        return Math.round(100 * number) / 100.0;
    }
}
