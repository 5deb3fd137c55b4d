package freshet.offline;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * One finished piece of work as a phone wrote it down: the fields of its page as they were typed, and what was known of the unit then.
 *
 * @param key made up by the phone, never twice
 * @param target the task's id, or the unit's for the other kinds
 * @param doneAt by the phone's clock
 * @param offsetMs by how much the server's clock was ahead of the phone's when the work was taken along
 */
public record Entry(
        UUID key,
        long order,
        long person,
        Kind kind,
        long target,
        String title,
        Instant doneAt,
        @Nullable Instant begunAt,
        long offsetMs,
        Known known,
        Map<String, String> fields) {

    private static final int MOST_FIELDS = 2000;
    private static final int LONGEST_TITLE = 200;
    private static final Duration LONGEST_OFFSET = Duration.ofDays(36_600);

    /** What was done. */
    public enum Kind {
        TASK,
        READING,
        FLOW_TEST,
        FINDING
    }

    /** Where the unit stood and what its meters showed last, as {@link Bundle} told; null is not known. */
    public record Known(@Nullable String stand, @Nullable Map<String, String> meters) {

        public static final Known NOTHING = new Known(null, null);
    }

    public Entry {
        Objects.requireNonNull(key);
        Objects.requireNonNull(kind);
        Objects.requireNonNull(doneAt);
        known = known == null ? Known.NOTHING : known;
        title = title == null ? "" : title;
        if (offsetMs > LONGEST_OFFSET.toMillis() || offsetMs < -LONGEST_OFFSET.toMillis()) {
            throw new IllegalArgumentException("no two clocks differ by " + offsetMs + " ms");
        }
        if (fields.size() > MOST_FIELDS) {
            throw new IllegalArgumentException("no page has " + fields.size() + " fields");
        }
        if (title.length() > LONGEST_TITLE) {
            title = title.substring(0, LONGEST_TITLE);
        }
    }

    /** A moment of the phone's by the server's clock; never later than now. */
    Instant byServer(Instant phone, Instant now) {
        Instant then = phone.plusMillis(offsetMs).truncatedTo(ChronoUnit.MICROS);
        return then.isAfter(now) ? now.truncatedTo(ChronoUnit.MICROS) : then;
    }
}
