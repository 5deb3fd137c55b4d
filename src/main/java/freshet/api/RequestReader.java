package freshet.api;

import freshet.api.Refusal.Wrong;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * Makes a request record of JSON and names every field that does not fit it: unknown, missing, of another kind, not a finite
 * number, or outside its limits. Nothing is converted: text is no number, 1.5 is no whole number, null is no value.
 */
final class RequestReader {

    /** More than this many wrongs help nobody. */
    private static final int MOST_WRONGS = 50;

    private final List<Wrong> wrongs = new ArrayList<>();

    private RequestReader() {}

    /** @throws Refusal with all that does not fit */
    static <T> T read(JsonNode json, Class<T> type) {
        RequestReader reader = new RequestReader();
        Object request = reader.object("", json, type);
        if (request == null || !reader.wrongs.isEmpty()) {
            throw new Refusal(reader.wrongs);
        }
        return type.cast(request);
    }

    private @Nullable Object object(String path, JsonNode json, Class<?> type) {
        Blueprint blueprint = Blueprint.of(type);
        if (!json.isObject()) {
            return wrong(path, Words.of(json) + " is no object of the fields " + blueprint.names());
        }
        for (String name : json.propertyNames()) {
            if (!blueprint.has(name)) {
                wrong(under(path, Words.shortened(name)), "is not a field here; the fields are " + blueprint.names());
            }
        }
        Object[] values = new Object[blueprint.fields().size()];
        for (int i = 0; i < values.length; i++) {
            Blueprint.Field field = blueprint.fields().get(i);
            values[i] = field(under(path, field.name()), json.get(field.name()), field);
        }
        return wrongs.isEmpty() ? blueprint.make(values) : null;
    }

    private static String under(String path, String name) {
        return path.isEmpty() ? name : path + "." + name;
    }

    private @Nullable Object field(String path, @Nullable JsonNode json, Blueprint.Field field) {
        if (json != null && !json.isNull()) {
            return field.list() ? list(path, json, field) : value(path, json, field);
        }
        if (field.hasUsual()) {
            return field.askedFor().usual();
        }
        return field.mayBeNull() ? null : wrong(path, json == null ? "is missing" : "is null; it must be given");
    }

    private @Nullable Object value(String path, JsonNode json, Blueprint.Field field) {
        Class<?> kind = field.kind();
        if (kind.isRecord()) {
            return object(path, json, kind);
        }
        if (kind.isEnum()) {
            return word(path, json, kind);
        }
        if (kind == boolean.class) {
            return json.isBoolean() ? json.booleanValue() : wrong(path, Words.of(json) + " is neither true nor false");
        }
        Double number = number(path, json, field.askedFor());
        return number != null && kind == int.class ? whole(path, number) : number;
    }

    private @Nullable Object list(String path, JsonNode json, Blueprint.Field field) {
        Asked asked = field.askedFor();
        if (!json.isArray()) {
            return wrong(path, Words.of(json) + " is no list");
        }
        if (json.size() < asked.fewest() || json.size() > asked.most()) {
            return wrong(path, json.size() + " entries; there must be from " + asked.fewest() + " to " + asked.most());
        }
        List<Object> values = new ArrayList<>(json.size());
        for (int i = 0; i < json.size() && wrongs.size() < MOST_WRONGS; i++) {
            Object value = value(path + "[" + i + "]", json.get(i), field);
            if (value != null) {
                values.add(value);
            }
        }
        return values;
    }

    private @Nullable Object word(String path, JsonNode json, Class<?> kind) {
        for (Object constant : kind.getEnumConstants()) {
            if (json.isString() && constant.toString().equals(json.stringValue())) {
                return constant;
            }
        }
        return wrong(path, Words.of(json) + " is none of " + Arrays.toString(kind.getEnumConstants()));
    }

    private @Nullable Double number(String path, JsonNode json, Asked asked) {
        if (!json.isNumber()) {
            wrong(path, Words.of(json) + " is no number; it must " + Words.limits(asked));
            return null;
        }
        double number = json.numberValue().doubleValue();
        if (!(number >= asked.from() && number <= asked.to()) || !Double.isFinite(number)) {
            wrong(path, Words.of(number, asked.unit()) + " is outside; it must " + Words.limits(asked));
            return null;
        }
        return number;
    }

    private @Nullable Object whole(String path, double number) {
        return number == Math.rint(number) ? (Object) (int) number : wrong(path, number + " is no whole number");
    }

    private @Nullable Object wrong(String path, String message) {
        if (wrongs.size() < MOST_WRONGS) {
            wrongs.add(new Wrong(path, message));
        }
        return null;
    }
}
