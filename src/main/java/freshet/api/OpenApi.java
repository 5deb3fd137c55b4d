package freshet.api;

import freshet.reliability.Interval;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import tools.jackson.databind.JsonNode;

/** The description of the calculations as an OpenAPI 3.1 document, made of the same records that read the requests. */
final class OpenApi {

    private static final Map<Class<?>, String> NAMES =
            Map.of(int.class, "integer", Integer.class, "integer", boolean.class, "boolean", String.class, "string");

    private final MessageSource messages;
    private final Map<String, Object> schemas = new LinkedHashMap<>();
    private final Map<String, Class<?>> named = new LinkedHashMap<>();

    private OpenApi(MessageSource messages) {
        this.messages = messages;
    }

    static byte[] document(MessageSource messages) {
        return Json.write(new OpenApi(messages).whole());
    }

    /** An example request of each calculation, by its name. */
    static JsonNode examples() {
        try (InputStream file = OpenApi.class.getResourceAsStream("examples.json")) {
            return Json.read(file.readAllBytes());
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private Map<String, Object> whole() {
        Map<String, Object> paths = new LinkedHashMap<>();
        JsonNode examples = examples();
        Calculations.BY_NAME.forEach((name, type) ->
                paths.put("/api/v1/calculations/" + name, Map.of("post", operation(name, type, examples.get(name)))));
        return of(
                "openapi",
                "3.1.0",
                "info",
                of("title", say("api.title"), "version", "1", "description", say("api.description")),
                "servers",
                List.of(of("url", "/")),
                "security",
                List.of(of("token", List.of())),
                "paths",
                paths,
                "components",
                of(
                        "securitySchemes",
                        of("token", of("type", "http", "scheme", "bearer")),
                        "responses",
                        problems(),
                        "schemas",
                        schemas));
    }

    private Map<String, Object> operation(String name, Class<? extends Calculation> type, JsonNode example) {
        Map<String, Object> responses = new LinkedHashMap<>();
        responses.put("200", of("description", say("api.answer"), "content", json(answer(type), null)));
        problems().keySet().forEach(status -> responses.put(status, of("$ref", "#/components/responses/" + status)));
        return of(
                "operationId",
                name,
                "summary",
                say("api.about." + name),
                "requestBody",
                of("required", true, "content", json(record(type, true), example)),
                "responses",
                responses);
    }

    private static Map<String, Object> json(Object schema, @Nullable JsonNode example) {
        Map<String, Object> media = of("schema", schema);
        if (example != null) {
            media.put("example", example);
        }
        return of("application/json", media);
    }

    private Object answer(Class<? extends Calculation> type) {
        try {
            // the narrower of the two, not the bridge
            return record(
                    Arrays.stream(type.getDeclaredMethods())
                            .filter(method -> method.getName().equals("answer") && !method.isBridge())
                            .findFirst()
                            .orElseThrow(NoSuchMethodException::new)
                            .getReturnType(),
                    false);
        } catch (NoSuchMethodException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    private Map<String, Object> problems() {
        Map<String, Object> problems = new LinkedHashMap<>();
        for (String status : List.of("400", "401", "413", "415", "422")) {
            Object schema = record(status.equals("422") ? Refused.class : Problem.class, false);
            problems.put(
                    status,
                    of(
                            "description",
                            say("api.problem." + status),
                            "content",
                            of("application/problem+json", of("schema", schema))));
        }
        return problems;
    }

    /** What a problem document holds, for its description only. */
    record Problem(String title, int status, String detail) {}

    /** The same of a refusal. */
    record Refused(String title, int status, String detail, List<Refusal.Wrong> errors) {}

    private Map<String, Object> record(Class<?> type, boolean request) {
        String name = type.getSimpleName();
        Class<?> before = named.putIfAbsent(name, type);
        if (before == null) {
            schemas.put(name, fields(type, request));
        } else if (before != type) {
            throw new IllegalStateException(before + " and " + type + " would be described under one name");
        }
        return of("$ref", "#/components/schemas/" + name);
    }

    private Map<String, Object> fields(Class<?> type, boolean request) {
        Map<String, Object> properties = new LinkedHashMap<>();
        List<String> required = new ArrayList<>();
        for (Blueprint.Field field : Blueprint.of(type).fields()) {
            properties.put(field.name(), request ? asked(field) : answered(field));
            if (!request || !field.mayBeLeftOut()) {
                required.add(field.name());
            }
        }
        Map<String, Object> schema = of("type", "object", "properties", properties, "required", required);
        if (request) {
            schema.put("additionalProperties", false);
        }
        return schema;
    }

    private Map<String, Object> asked(Blueprint.Field field) {
        Asked asked = field.askedFor();
        Map<String, Object> one = value(field.kind(), true);
        if (Double.isFinite(asked.from())) {
            one.put("minimum", asked.from());
            one.put("maximum", asked.to());
        }
        Map<String, Object> schema = !field.list()
                ? one
                : of("type", "array", "items", one, "minItems", asked.fewest(), "maxItems", asked.most());
        schema.put("description", asked.unit().isEmpty() ? asked.value() : asked.value() + ", " + asked.unit());
        if (field.hasUsual()) {
            schema.put("default", asked.usual());
        }
        return schema;
    }

    private Map<String, Object> answered(Blueprint.Field field) {
        Map<String, Object> one = value(field.kind(), false);
        Map<String, Object> schema = field.list() ? of("type", "array", "items", one) : one;
        return field.mayBeNull() ? of("anyOf", List.of(schema, of("type", "null"))) : schema;
    }

    private Map<String, Object> value(Class<?> kind, boolean request) {
        if (kind == Interval.class) {
            Object end = of("type", List.of("number", "null"));
            return of("type", "array", "minItems", 2, "maxItems", 2, "items", end);
        }
        if (kind.isRecord()) {
            return record(kind, request);
        }
        if (kind.isEnum()) {
            return of("type", "string", "enum", kind.getEnumConstants());
        }
        return of("type", NAMES.getOrDefault(kind, "number"));
    }

    private String say(String key) {
        return messages.getMessage(key, null, Locale.ENGLISH);
    }

    private static Map<String, Object> of(Object... keysAndValues) {
        Map<String, Object> map = new LinkedHashMap<>();
        for (int i = 0; i < keysAndValues.length; i += 2) {
            map.put((String) keysAndValues[i], keysAndValues[i + 1]);
        }
        return map;
    }
}
