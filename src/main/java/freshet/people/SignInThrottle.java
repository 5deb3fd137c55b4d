package freshet.people;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.springframework.stereotype.Component;

/**
 * Slows guessing: after {@value #FREE_TRIES} wrong passwords for one name, or {@value #FREE_TRIES_FROM_ADDRESS} from one address,
 * further tries wait out a quarter of an hour. Kept in memory: a restart forgives.
 */
@Component
class SignInThrottle {

    static final int FREE_TRIES = 5;
    static final int FREE_TRIES_FROM_ADDRESS = 30;
    static final Duration PAUSE = Duration.ofMinutes(15);
    private static final int REMEMBERED = 10_000;

    private final Clock clock;
    private final Map<String, Tries> tries = new LinkedHashMap<>() {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Tries> eldest) {
            return size() > REMEMBERED;
        }
    };

    SignInThrottle(Clock clock) {
        this.clock = clock;
    }

    private record Tries(int count, Instant since) {}

    synchronized boolean mustWait(String name, String address) {
        return recent("name " + key(name)) >= FREE_TRIES || recent("from " + address) >= FREE_TRIES_FROM_ADDRESS;
    }

    synchronized void wrong(String name, String address) {
        count("name " + key(name));
        count("from " + address);
    }

    synchronized void right(String name) {
        tries.remove("name " + key(name));
    }

    synchronized void forget() {
        tries.clear();
    }

    private void count(String key) {
        int before = recent(key);
        Tries known = tries.get(key);
        tries.put(key, new Tries(before + 1, before == 0 || known == null ? clock.instant() : known.since()));
    }

    private int recent(String key) {
        Tries known = tries.get(key);
        if (known == null || known.since().plus(PAUSE).isBefore(clock.instant())) {
            return 0;
        }
        return known.count();
    }

    private static String key(String name) {
        return name.strip().toLowerCase(Locale.ROOT);
    }
}
