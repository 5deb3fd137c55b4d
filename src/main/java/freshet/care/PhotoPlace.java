package freshet.care;

import freshet.checklists.CheckLine;
import freshet.checklists.Checklist;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Where a photo belongs in a task: a line of its checklist, or none for the work as a whole, and the moment that it shows. */
public record PhotoPlace(@Nullable Long lineId, Moment moment) {

    /** How the fields of photos are called in a task's form: {@code photo-c12-found}, {@code photo-all-left}. */
    static final String PREFIX = "photo-";

    private static final Pattern FIELD = Pattern.compile(PREFIX + "c(\\d{1,18})-\\w+");

    private static final String WHOLE = "all";

    /** The place that a field is for, if the checklist has it. */
    static Optional<PhotoPlace> of(String field, Checklist checklist) {
        return Stream.concat(
                        Stream.<@Nullable Long>of((Long) null),
                        checklist.lines().stream().map(CheckLine::id))
                .flatMap(line -> Stream.of(new PhotoPlace(line, Moment.FOUND), new PhotoPlace(line, Moment.LEFT)))
                .filter(place -> place.field().equals(field))
                .findFirst();
    }

    /** The line that a field names, whether there is one or not. */
    static Optional<Long> lineId(String field) {
        Matcher names = FIELD.matcher(field);
        return names.matches() ? Optional.of(Long.valueOf(names.group(1))) : Optional.empty();
    }

    String key() {
        return lineId == null ? WHOLE : LineForm.key(lineId);
    }

    String field() {
        return PREFIX + key() + "-" + moment.name().toLowerCase(Locale.ROOT);
    }
}
