package freshet.pumps;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** What is to stand in the register about a unit, apart from its place and its kit. */
public record UnitDraft(
        String tag,
        @Nullable String serial,
        long modelId,
        @Nullable Long customerId,
        LocalDate inCareFrom,
        @Nullable String note) {}
