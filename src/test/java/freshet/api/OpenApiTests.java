package freshet.api;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import freshet.FreshetTest;
import freshet.people.People;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** The description says what is true: each field, limit and example is held against the interface itself. */
@FreshetTest
class OpenApiTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    People people;

    Program program;
    JsonNode document;

    @BeforeEach
    void read() throws Exception {
        program = Program.with(mvc, people);
        document = Program.JSON.readTree(mvc.perform(get("/api/v1/openapi.json"))
                .andExpect(status().isOk())
                .andExpect(content().contentType("application/json"))
                .andReturn()
                .getResponse()
                .getContentAsByteArray());
    }

    @Test
    void describesEveryCalculation() {
        assertThat(document.get("openapi").stringValue()).isEqualTo("3.1.0");
        assertThat(document.get("paths").propertyNames())
                .hasSize(19)
                .containsExactlyElementsOf(Calculations.BY_NAME.keySet().stream()
                        .map(name -> "/api/v1/calculations/" + name)
                        .toList());
        document.findValues("$ref")
                .forEach(ref -> assertThat(
                                document.at(ref.stringValue().substring(1)).isObject())
                        .as(ref.stringValue())
                        .isTrue());
    }

    @Test
    void describesEveryFieldOfARequest() {
        Calculations.BY_NAME.values().forEach(this::describesTheFieldsOf);
    }

    private void describesTheFieldsOf(Class<?> type) {
        JsonNode schema = document.at("/components/schemas/" + type.getSimpleName());
        List<String> required = new ArrayList<>();
        for (Blueprint.Field asked : Blueprint.of(type).fields()) {
            JsonNode field = schema.get("properties").path(asked.name());
            assertThat(field.path("description").stringValue(""))
                    .as(type + "." + asked.name())
                    .isNotBlank();
            if (!asked.mayBeLeftOut()) {
                required.add(asked.name());
            }
        }
        assertThat(schema.get("required").valueStream().map(JsonNode::stringValue))
                .containsExactlyElementsOf(required);
        assertThat(schema.get("additionalProperties").booleanValue()).isFalse();
    }

    private JsonNode example(String name) {
        return document.at(
                "/paths/~1api~1v1~1calculations~1" + name + "/post/requestBody/content/application~1json/example");
    }

    @Test
    void answersEveryExampleAsDescribed() throws Exception {
        for (String name : Calculations.BY_NAME.keySet()) {
            JsonNode answer = program.ask(name, example(name));
            JsonNode schema = document.at(
                    "/paths/~1api~1v1~1calculations~1" + name + "/post/responses/200/content/application~1json/schema");
            assertThat(mismatches(name, answer, schema)).isEmpty();
        }
    }

    /** Just what the document uses of JSON Schema. */
    private List<String> mismatches(String path, JsonNode value, JsonNode schema) {
        if (schema.has("$ref")) {
            return mismatches(
                    path, value, document.at(schema.get("$ref").stringValue().substring(1)));
        }
        List<String> wrong = new ArrayList<>();
        if (schema.has("anyOf")) {
            return value.isNull()
                    ? wrong
                    : mismatches(path, value, schema.get("anyOf").get(0));
        }
        Set<String> types = new TreeSet<>();
        JsonNode type = schema.get("type");
        (type.isArray() ? type.valueStream() : Stream.of(type)).forEach(one -> types.add(one.stringValue()));
        String actual = value.isNull()
                ? "null"
                : value.isObject()
                        ? "object"
                        : value.isArray()
                                ? "array"
                                : value.isString()
                                        ? "string"
                                        : value.isIntegralNumber() && types.contains("integer") ? "integer" : "number";
        if (!types.contains(actual)) {
            wrong.add(path + " is " + value + ", not " + types);
        } else if (value.isObject()) {
            if (!Set.copyOf(value.propertyNames())
                    .equals(Set.copyOf(schema.get("properties").propertyNames()))) {
                wrong.add(path + " has the fields " + value.propertyNames());
            }
            schema.get("properties")
                    .propertyStream()
                    .forEach(field -> wrong.addAll(
                            mismatches(path + "." + field.getKey(), value.get(field.getKey()), field.getValue())));
        } else if (value.isArray()) {
            value.forEach(one -> wrong.addAll(mismatches(path + "[]", one, schema.get("items"))));
        } else if (schema.has("enum") && schema.get("enum").valueStream().noneMatch(value::equals)) {
            wrong.add(path + " is " + value);
        }
        return wrong;
    }

    /** These have limits that depend on a neighbour. */
    private static final Set<String> RELATIVE = Set.of(
            "roughnessMm", "containerL", "containerUncertaintyL", "timingUncertaintyS", "startLevelM", "stopLevelM");

    /** The stones have limits of their own: what the description promises, they take. */
    @Test
    void takesEveryNumberAtItsLimits() throws Exception {
        int tried = 0;
        for (String name : Calculations.BY_NAME.keySet()) {
            for (String pointer : numbers("", example(name))) {
                JsonNode schema = schemaAt(name, pointer);
                for (String limit : List.of("minimum", "maximum")) {
                    JsonNode request = with(example(name), pointer, schema.get(limit));
                    String field =
                            pointer.substring(1).replaceAll("/(\\d+)", "[$1]").replace('/', '.');
                    var response = program.send(name, request.toString());
                    String body = response.getContentAsString(StandardCharsets.UTF_8);
                    assertThat(response.getStatus()).as(body).isIn(200, 422);
                    assertThat(body).doesNotContain("NaN").doesNotContain("Infinity");
                    if (!RELATIVE.contains(field.substring(field.lastIndexOf('.') + 1))) {
                        // a neighbour may forbid it, its own limits may not
                        assertThat(body)
                                .doesNotContainPattern("\"field\":\"" + Pattern.quote(field)
                                        + "\",\"message\":\"[^\"]*(must lie from|is outside -?\\d\\S* to -?\\d)");
                    }
                    tried++;
                }
            }
        }
        assertThat(tried).isGreaterThan(150);
    }

    private static List<String> numbers(String pointer, JsonNode json) {
        List<String> found = new ArrayList<>();
        if (json.isNumber()) {
            found.add(pointer);
        } else if (json.isArray()) {
            for (int i = 0; i < json.size(); i++) {
                found.addAll(numbers(pointer + "/" + i, json.get(i)));
            }
        } else {
            json.propertyStream()
                    .forEach(field -> found.addAll(numbers(pointer + "/" + field.getKey(), field.getValue())));
        }
        return found;
    }

    private JsonNode schemaAt(String name, String pointer) {
        JsonNode schema = document.at(
                "/paths/~1api~1v1~1calculations~1" + name + "/post/requestBody/content/application~1json/schema");
        for (String step : pointer.substring(1).split("/")) {
            schema = resolved(schema);
            schema = step.matches("\\d+")
                    ? schema.get("items")
                    : schema.get("properties").get(step);
        }
        return resolved(schema);
    }

    private JsonNode resolved(JsonNode schema) {
        return schema.has("$ref") ? document.at(schema.get("$ref").stringValue().substring(1)) : schema;
    }

    private static JsonNode with(JsonNode request, String pointer, JsonNode value) {
        JsonNode changed = request.deepCopy();
        int last = pointer.lastIndexOf('/');
        JsonNode parent = changed.at(pointer.substring(0, last));
        String step = pointer.substring(last + 1);
        if (parent instanceof ObjectNode object) {
            object.set(step, value);
        } else {
            ((ArrayNode) parent).set(Integer.parseInt(step), value);
        }
        return changed;
    }

    @Test
    void refusesEveryRequestThatLacksARequiredFieldOrHasOneTooMany() throws Exception {
        for (String name : Calculations.BY_NAME.keySet()) {
            Class<?> type = Calculations.BY_NAME.get(name);
            for (Blueprint.Field asked : Blueprint.of(type).fields()) {
                ObjectNode request = (ObjectNode) example(name).deepCopy();
                request.remove(asked.name());
                if (!asked.mayBeLeftOut()) {
                    assertThat(program.refused(name, request.toString()))
                            .singleElement()
                            .satisfies(wrong -> assertThat(wrong.field()).isEqualTo(asked.name()));
                }
            }
            ObjectNode more = ((ObjectNode) example(name).deepCopy()).put("pressurePsi", 5);
            assertThat(program.refused(name, more.toString()))
                    .singleElement()
                    .satisfies(wrong -> assertThat(wrong.field()).isEqualTo("pressurePsi"));
        }
    }
}
