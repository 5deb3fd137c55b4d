package freshet.pumps;

import freshet.people.Typed;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import org.jspecify.annotations.Nullable;

/** What was typed about a move; {@code since} is a moment at the new place, empty for now. */
record MoveForm(
        @Nullable String place,
        @Nullable String spot,
        @Nullable String since,
        @Nullable String note) {

    /** The moment, or null when it is none, which is then said at its field. */
    @Nullable
    Instant moment(ZoneId zone, Instant now, Typed typed) {
        String text = Typed.text(since);
        try {
            return text == null ? now : LocalDateTime.parse(text).atZone(zone).toInstant();
        } catch (DateTimeParseException wrong) {
            typed.wrong("since", "pumps.move.noMoment", text);
            return null;
        }
    }
}
