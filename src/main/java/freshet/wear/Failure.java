package freshet.wear;

import freshet.findings.Finding;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A unit failed: a finding of severity 3 or 4 was opened on it while none was open. Further ones that are opened before it is clear again belong to the
 * same failure, which ends when the last of them is closed.
 *
 * @param upAt when it was clear again, at the latest the end of its care; null while it is still down
 */
record Failure(Instant downAt, @Nullable Instant upAt) {

    /** The failures between two moments, oldest first. */
    static List<Failure> of(List<Finding> oldestFirst, Instant from, Instant to) {
        List<Failure> failures = new ArrayList<>();
        for (Finding finding : oldestFirst) {
            Instant opened = finding.openedAt();
            if (!finding.stopsUse() || opened.isBefore(from) || opened.isAfter(to)) {
                continue;
            }
            Instant closed = finding.closedAt();
            Failure before = failures.isEmpty() ? null : failures.get(failures.size() - 1);
            if (before != null && (before.upAt == null || opened.isBefore(before.upAt))) {
                failures.set(failures.size() - 1, new Failure(before.downAt, later(before.upAt, closed)));
            } else {
                failures.add(new Failure(opened, closed));
            }
        }
        return List.copyOf(failures);
    }

    private static @Nullable Instant later(@Nullable Instant one, @Nullable Instant other) {
        if (one == null || other == null) {
            return null;
        }
        return one.isAfter(other) ? one : other;
    }

    /** Hours down up to a moment. */
    double downHours(Instant until) {
        Instant end = upAt == null || upAt.isAfter(until) ? until : upAt;
        return Math.max(0, (end.toEpochMilli() - downAt.toEpochMilli()) / 3_600_000.0);
    }
}
