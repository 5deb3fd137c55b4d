package freshet.pumps;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One pump with its tag; {@code customerId} is null when it is our own. A retired unit keeps the stand it had. */
public record Unit(
        long id,
        String tag,
        @Nullable String serial,
        Model model,
        @Nullable Long customerId,
        @Nullable String customerName,
        LocalDate inCareFrom,
        Stand stand,
        List<KitItem> kit,
        @Nullable String note,
        @Nullable LocalDate retiredOn,
        @Nullable String retiredWhy,
        int version) {

    public boolean retired() {
        return retiredOn != null;
    }
}
