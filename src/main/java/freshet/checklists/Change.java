package freshet.checklists;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What differs between two versions of a checklist: one line, the order within a section, or the minutes; {@code words} name it, and
 * {@code was} and {@code is} are the line before and after.
 */
public record Change(
        Kind kind,
        String words,
        @Nullable CheckLine was,
        @Nullable CheckLine is) {

    /** The ways in which versions differ. */
    public enum Kind {
        MINUTES,
        ADDED,
        CHANGED,
        TAKEN_OUT,
        REORDERED
    }

    /** What turned one version into the other, in the order of the later one. */
    static List<Change> between(Checklist before, Checklist after) {
        List<Change> changes = new ArrayList<>();
        if (before.minutes() != after.minutes()) {
            changes.add(new Change(Kind.MINUTES, before.minutes() + " → " + after.minutes(), null, null));
        }
        Map<Long, CheckLine> old = byOrigin(before);
        for (CheckLine line : after.lines()) {
            CheckLine was = old.get(line.origin());
            if (was == null) {
                changes.add(new Change(Kind.ADDED, line.question(), null, line));
            } else if (!was.sameAs(line)) {
                changes.add(new Change(Kind.CHANGED, line.question(), was, line));
            }
        }
        Map<Long, CheckLine> now = byOrigin(after);
        old.values().stream()
                .filter(line -> !now.containsKey(line.origin()))
                .forEach(line -> changes.add(new Change(Kind.TAKEN_OUT, line.question(), line, null)));
        Map<String, List<Long>> orderNow = order(after, old);
        order(before, now).forEach((section, order) -> {
            if (!Objects.equals(order, orderNow.get(section))) {
                changes.add(new Change(Kind.REORDERED, section, null, null));
            }
        });
        return changes;
    }

    private static Map<Long, CheckLine> byOrigin(Checklist checklist) {
        return checklist.lines().stream()
                .collect(Collectors.toMap(CheckLine::origin, line -> line, (a, b) -> a, LinkedHashMap::new));
    }

    /** The lines of each section that both versions have, in order. */
    private static Map<String, List<Long>> order(Checklist checklist, Map<Long, CheckLine> other) {
        return checklist.lines().stream()
                .filter(line -> other.containsKey(line.origin()))
                .collect(Collectors.groupingBy(
                        CheckLine::section,
                        LinkedHashMap::new,
                        Collectors.mapping(CheckLine::origin, Collectors.toList())));
    }
}
