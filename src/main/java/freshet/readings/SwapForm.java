package freshet.readings;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;

/** What was typed about a meter that took another's place. */
record SwapForm(
        @Nullable String kind,
        @Nullable String lastValue,
        @Nullable String firstValue,
        @Nullable String at,
        @Nullable String rollsOverAt,
        @Nullable String note) {

    SwapForm {
        kind = MeterKind.named(kind).name();
    }

    static SwapForm blank(MeterKind kind, @Nullable BigDecimal lastValue, Instant now, ZoneId zone) {
        String last = lastValue == null ? null : lastValue.stripTrailingZeros().toPlainString();
        return new SwapForm(kind.name(), last, "0", ReadingForm.toTheMinute(now, zone), null, null);
    }
}
