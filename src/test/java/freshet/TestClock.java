package freshet;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;

/**
 * The clock of the tests: runs with the machine until a test sets it, then stands still until moved; running again at the next test.
 *
 * <pre>{@code
 * @Autowired TestClock clock;
 * ...
 * clock.set("2027-03-01T08:00:00Z");
 * clock.advance(Duration.ofDays(90));
 * }</pre>
 */
public final class TestClock extends Clock {

    private final AtomicReference<@Nullable Instant> standing = new AtomicReference<>();

    /** Stops the clock at an instant written as in {@code 2027-03-01T08:00:00Z}. */
    public void set(String instant) {
        set(Instant.parse(instant));
    }

    /** Stops the clock at an instant. */
    public void set(Instant instant) {
        standing.set(instant);
    }

    /** Moves the clock on from where it stands, and lets it stand there. */
    public void advance(Duration by) {
        standing.set(instant().plus(by));
    }

    /** Lets the clock run with the machine again; done before every test. */
    public void reset() {
        standing.set(null);
    }

    @Override
    public Instant instant() {
        Instant stands = standing.get();
        return stands == null ? Instant.now() : stands;
    }

    @Override
    public ZoneId getZone() {
        return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
        TestClock original = this;
        return new Clock() {
            @Override
            public Instant instant() {
                return original.instant();
            }

            @Override
            public ZoneId getZone() {
                return zone;
            }

            @Override
            public Clock withZone(ZoneId other) {
                return original.withZone(other);
            }
        };
    }
}
