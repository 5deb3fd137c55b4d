package freshet.places;

import java.time.ZoneId;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What is to stand in the register about a site; {@code windows} null leaves its windows as they are. */
public record SiteDraft(
        String name,
        ZoneId zone,
        @Nullable String address,
        @Nullable Long customerId,
        @Nullable List<WindowDraft> windows) {}
