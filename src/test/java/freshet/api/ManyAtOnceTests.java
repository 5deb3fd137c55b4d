package freshet.api;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.people.People;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.test.web.servlet.MockMvc;

/** Over a real connection: many programs at once get each its own answer, and a body too large still gets its reply. */
@FreshetTest
class ManyAtOnceTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    People people;

    @LocalServerPort
    int port;

    private HttpRequest request(String token, String name, byte[] body) {
        return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/api/v1/calculations/" + name))
                .header("Authorization", "Bearer " + token)
                .header("Content-Type", "application/json")
                .POST(HttpRequest.BodyPublishers.ofByteArray(body))
                .build();
    }

    @Test
    void givesEachItsOwnAnswer() throws Exception {
        Program program = Program.with(mvc, people);
        HttpClient client = HttpClient.newHttpClient();
        Map<String, String> alone = new LinkedHashMap<>();
        for (String name : Calculations.BY_NAME.keySet()) {
            byte[] body = Json.write(OpenApi.examples().get(name));
            alone.put(
                    name,
                    client.send(request(program.token(), name, body), BodyHandlers.ofString())
                            .body());
        }
        Map<String, List<CompletableFuture<HttpResponse<String>>>> together = new LinkedHashMap<>();
        for (int round = 0; round < 10; round++) {
            for (String name : alone.keySet()) {
                byte[] body = Json.write(OpenApi.examples().get(name));
                together.computeIfAbsent(name, key -> new ArrayList<>())
                        .add(client.sendAsync(request(program.token(), name, body), BodyHandlers.ofString()));
            }
        }
        for (String name : alone.keySet()) {
            assertThat(together.get(name)).hasSize(10).allSatisfy(one -> {
                assertThat(one.get().statusCode()).as(name).isEqualTo(200);
                assertThat(one.get().body()).isEqualTo(alone.get(name));
            });
        }
    }

    @Test
    void repliesToABodyOfManyTimesTheSize() throws Exception {
        Program program = Program.with(mvc, people);
        HttpResponse<String> response = HttpClient.newHttpClient()
                .send(
                        request(program.token(), "lives", new byte[20 * CalculationController.LARGEST_BODY]),
                        BodyHandlers.ofString());
        assertThat(response.statusCode()).isEqualTo(413);
        assertThat(response.headers().firstValue("Content-Type")).hasValue("application/problem+json");
    }
}
