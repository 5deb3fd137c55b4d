package freshet.care;

import freshet.checklists.Checklist;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Where a photo belongs in a task: a line of its checklist, or none for the work as a whole, and the moment that it shows. */
public record PhotoPlace(@Nullable Long lineId, Moment moment) {

    /** How the fields of photos are called in a task's form: {@code photo-c12-found}, {@code photo-all-left}. */
    static final String PREFIX = "photo-";

    private static final String WHOLE = "all";

    private static final Pattern FIELD = Pattern.compile(PREFIX + "(?:all|c(\\d{1,18}))-(found|left)");

    /** The place that a field is for; a line of another version of the checklist is the work as a whole. */
    static Optional<PhotoPlace> of(String field, Checklist checklist) {
        Matcher named = FIELD.matcher(field);
        if (!named.matches()) {
            return Optional.empty();
        }
        Long line = lineId(field)
                .filter(id -> checklist.lines().stream().anyMatch(check -> check.id() == id))
                .orElse(null);
        return Optional.of(new PhotoPlace(line, Moment.valueOf(named.group(2).toUpperCase(Locale.ROOT))));
    }

    /** The line that a field names, whether there is one or not. */
    static Optional<Long> lineId(String field) {
        Matcher named = FIELD.matcher(field);
        return named.matches() ? Optional.ofNullable(named.group(1)).map(Long::valueOf) : Optional.empty();
    }

    String key() {
        return lineId == null ? WHOLE : LineForm.key(lineId);
    }

    String field() {
        return PREFIX + key() + "-" + moment.name().toLowerCase(Locale.ROOT);
    }
}
