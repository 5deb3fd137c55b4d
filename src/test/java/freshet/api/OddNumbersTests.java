package freshet.api;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.people.People;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Examples with numbers bent at random: each is answered with finite numbers and nulls, or refused by field; none is a fault. */
@FreshetTest
class OddNumbersTests {

    private static final int TRIES = 60;

    @Autowired
    MockMvc mvc;

    @Autowired
    People people;

    private final Random random = new Random(20261125);

    @Test
    void areAnsweredOrRefused() throws Exception {
        Program program = Program.with(mvc, people);
        for (String name : Calculations.BY_NAME.keySet()) {
            int answered = 0;
            for (int i = 0; i < TRIES; i++) {
                JsonNode request = OpenApi.examples().get(name);
                bend(request);
                MockHttpServletResponse response = program.send(name, request.toString());
                String body = response.getContentAsString(StandardCharsets.UTF_8);
                assertThat(response.getStatus()).as(name + " " + request + body).isIn(200, 422);
                assertThat(body).as(request.toString()).doesNotContain("NaN").doesNotContain("Infinity");
                answered += response.getStatus() == 200 ? 1 : 0;
            }
            assertThat(answered).as(name).isPositive();
        }
    }

    private void bend(JsonNode json) {
        if (json instanceof ObjectNode object) {
            for (String name : object.propertyNames().toArray(String[]::new)) {
                object.set(name, bent(object.get(name)));
            }
        } else if (json instanceof ArrayNode list) {
            for (int i = 0; i < list.size(); i++) {
                list.set(i, bent(list.get(i)));
            }
        }
    }

    private JsonNode bent(JsonNode json) {
        bend(json);
        if (!json.isNumber() || random.nextInt(5) > 0) {
            return json;
        }
        double value = json.doubleValue();
        return JsonNodeFactory.instance.numberNode(
                switch (random.nextInt(6)) {
                    case 0 -> 0;
                    case 1 -> -value;
                    case 2 -> value + 1e-9;
                    case 3 -> value * (0.5 + random.nextDouble());
                    case 4 -> value * Math.pow(10, random.nextInt(24) - 12);
                    default -> Math.pow(10, random.nextInt(600) - 300);
                });
    }
}
