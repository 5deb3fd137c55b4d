package freshet.board;

import freshet.rules.CareRule;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What was signed that does a rule's job, itself or contained in other work, the oldest first. */
record Past(String job, List<Work> works) {

    private static final Comparator<Work> IN_ORDER =
            Comparator.comparing(Work::at).thenComparing(Work::taskId);

    static Past of(UnitFacts facts, CareRule rule) {
        List<Work> works = new ArrayList<>();
        boolean inOrder = true;
        for (Work work : facts.byPosition(rule) ? facts.positionWorks() : facts.works()) {
            if (work.does(rule)) {
                inOrder = inOrder && (works.isEmpty() || IN_ORDER.compare(works.get(works.size() - 1), work) <= 0);
                works.add(work);
            }
        }
        if (!inOrder) {
            works.sort(IN_ORDER);
        }
        return new Past(rule.job(), works);
    }

    @Nullable
    Work last() {
        return works.isEmpty() ? null : works.get(works.size() - 1);
    }

    @Nullable
    LocalDate lastDay() {
        Work last = last();
        return last == null ? null : last.day();
    }

    boolean doneSince(Instant at) {
        Work last = last();
        return last != null && !last.at().isBefore(at);
    }

    /** Whether some of it was done from this day on, and before the other. */
    boolean doneWithin(LocalDate from, LocalDate before) {
        return works.stream()
                .anyMatch(work -> !work.day().isBefore(from) && work.day().isBefore(before));
    }

    /** Whether the job itself was signed for days that share one with these. */
    boolean ownOverlaps(LocalDate opens, LocalDate due) {
        return works.stream().anyMatch(work -> work.of(job) && work.overlaps(opens, due));
    }

    /** The same for work that contains the job, by the day on which it was done. */
    boolean coveredWithin(LocalDate from, LocalDate before) {
        return works.stream()
                .anyMatch(work -> !work.of(job)
                        && work.ruleId() != Work.NO_RULE
                        && !work.day().isBefore(from)
                        && work.day().isBefore(before));
    }
}
