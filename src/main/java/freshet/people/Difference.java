package freshet.people;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A field in which what was typed differs from what stands now, for the page of a stale edit.
 *
 * @param label key of the field's label: the form's prefix and the field's name, such as {@code places.site.zone}
 * @param row number of the row, from 1, where the field is one of a list; else 0
 * @param now what stands now; null for nothing
 * @param nowKey key of the words for it where it is one of an enum: {@code places.windowKind.OPENING}; else null
 */
public record Difference(
        String label,
        int row,
        @Nullable String now,
        @Nullable String nowKey) {

    private static final Set<String> UNSEEN = Set.of("version", "id", "more");

    /**
     * The fields of a form that differ; fields of a list are compared row by row.
     *
     * @param prefix of the labels' keys
     * @param words what to say for fields that hold an id
     */
    public static <T extends Record> List<Difference> between(
            String prefix, T typed, T now, Map<String, String> words) {
        List<Difference> found = new ArrayList<>();
        compare(prefix, 0, typed, now, words, found);
        return found;
    }

    private static void compare(
            String prefix,
            int row,
            @Nullable Record typed,
            @Nullable Record now,
            Map<String, String> words,
            List<Difference> found) {
        for (RecordComponent part :
                Objects.requireNonNull(typed == null ? now : typed).getClass().getRecordComponents()) {
            String label = prefix + "." + part.getName();
            Object mine = value(part, typed);
            Object theirs = value(part, now);
            if (mine instanceof List<?> || theirs instanceof List<?>) {
                lists(label, list(mine), list(theirs), words, found);
            } else if (!UNSEEN.contains(part.getName()) && !Objects.equals(plain(mine), plain(theirs))) {
                found.add(said(label, row, plain(theirs), words.get(part.getName())));
            }
        }
    }

    private static Difference said(String label, int row, @Nullable Object now, @Nullable String words) {
        if (now == null) {
            return new Difference(label, row, null, null);
        }
        if (now instanceof Enum<?> each) {
            String type = each.getDeclaringClass().getSimpleName();
            String room = label.substring(0, label.indexOf('.'));
            String key = room + "." + Character.toLowerCase(type.charAt(0)) + type.substring(1) + "." + each.name();
            return new Difference(label, row, null, key);
        }
        return now instanceof Boolean
                ? new Difference(label, row, null, "layout.yes")
                : new Difference(label, row, words == null ? now.toString() : words, null);
    }

    private static void lists(
            String label, List<?> mine, List<?> theirs, Map<String, String> words, List<Difference> found) {
        for (int i = 0; i < Math.max(mine.size(), theirs.size()); i++) {
            if ((i < mine.size() ? mine.get(i) : theirs.get(i)) instanceof Record) {
                compare(
                        label,
                        i + 1,
                        i < mine.size() ? (Record) mine.get(i) : null,
                        i < theirs.size() ? (Record) theirs.get(i) : null,
                        words,
                        found);
            }
        }
    }

    private static List<?> list(@Nullable Object value) {
        return value instanceof List<?> list ? list : List.of();
    }

    private static @Nullable Object plain(@Nullable Object value) {
        return value instanceof String text ? Typed.text(text) : Boolean.FALSE.equals(value) ? null : value;
    }

    private static @Nullable Object value(RecordComponent part, @Nullable Record record) {
        try {
            part.getAccessor().setAccessible(true);
            return record == null ? null : part.getAccessor().invoke(record);
        } catch (ReflectiveOperationException closed) {
            throw new IllegalStateException("a form is an open record", closed);
        }
    }
}
