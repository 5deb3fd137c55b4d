package freshet.rounds;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** Another round, not given up, that holds the same task or pump. */
public record AlsoOn(
        long roundId, String name, LocalDate day, @Nullable String personName) {}
