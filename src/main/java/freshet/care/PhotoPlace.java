package freshet.care;

import freshet.checklists.CheckLine;
import freshet.checklists.Checklist;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Where a photo belongs in a task: a line of its checklist, or none for the work as a whole, and the moment that it shows. */
public record PhotoPlace(@Nullable Long lineId, Moment moment) {

    /** How the fields of photos are called in a task's form: {@code photo-c12-found}, {@code photo-all-left}. */
    static final String PREFIX = "photo-";

    private static final Pattern FIELD = Pattern.compile(PREFIX + "c(\\d{1,18})-\\w+");

    private static final String WHOLE = "all";

    private static final Pattern FIELD = Pattern.compile(PREFIX + "(all|c\\d{1,18})-(found|left)");

    /** The place that a field is for; a line of another version of the checklist is the work as a whole. */
    static Optional<PhotoPlace> of(String field, Checklist checklist) {
        Matcher named = FIELD.matcher(field);
        if (!named.matches()) {
            return Optional.empty();
        }
        @Nullable Long line = checklist.lines().stream()
                .map(CheckLine::id)
                .filter(id -> LineForm.key(id).equals(named.group(1)))
                .findFirst()
                .orElse(null);
        return Optional.of(new PhotoPlace(line, Moment.valueOf(named.group(2).toUpperCase(Locale.ROOT))));
    }

    String key() {
        return lineId == null ? WHOLE : LineForm.key(lineId);
    }

    String field() {
        return PREFIX + key() + "-" + moment.name().toLowerCase(Locale.ROOT);
    }
}
