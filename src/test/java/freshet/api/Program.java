package freshet.api;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import freshet.measures.UnitSystem;
import freshet.people.People;
import freshet.people.Person;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.springframework.http.MediaType;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A program that asks calculations over HTTP with a token of its owner. */
record Program(MockMvc mvc, String token) {

    static final JsonMapper JSON = new JsonMapper();

    static Program with(MockMvc mvc, People people) {
        Person ilse = people.welcomeFirstOwner("ilse", "Ilse Marrow", "river at thaw", UnitSystem.SI);
        return new Program(mvc, people.issueToken(ilse.id(), "gauge reader"));
    }

    MockHttpServletResponse send(String name, byte[] body) throws Exception {
        return mvc.perform(post("/api/v1/calculations/{name}", name)
                        .header("Authorization", "Bearer " + token)
                        .contentType(MediaType.APPLICATION_JSON)
                        .content(body))
                .andReturn()
                .getResponse();
    }

    MockHttpServletResponse send(String name, String body) throws Exception {
        return send(name, body.getBytes(StandardCharsets.UTF_8));
    }

    /** The answer to a request that is taken. */
    JsonNode ask(String name, Object request) throws Exception {
        MockHttpServletResponse response = send(name, JSON.writeValueAsString(request));
        String body = response.getContentAsString(StandardCharsets.UTF_8);
        assertThat(response.getStatus()).as(body).isEqualTo(200);
        assertThat(response.getContentType()).isEqualTo("application/json");
        assertThat(body).doesNotContain("NaN").doesNotContain("Infinity");
        return JSON.readTree(body);
    }

    /** The fields of a request that is refused, each with its message. */
    List<Refusal.Wrong> refused(String name, String body) throws Exception {
        JsonNode problem = problem(422, send(name, body));
        assertThat(problem.get("errors").isEmpty()).isFalse();
        return problem.get("errors")
                .valueStream()
                .map(wrong -> new Refusal.Wrong(
                        wrong.get("field").stringValue(), wrong.get("message").stringValue()))
                .toList();
    }

    static JsonNode problem(int status, MockHttpServletResponse response) throws Exception {
        String body = response.getContentAsString(StandardCharsets.UTF_8);
        assertThat(response.getStatus()).as(body).isEqualTo(status);
        assertThat(response.getContentType()).isEqualTo("application/problem+json");
        JsonNode problem = JSON.readTree(body);
        assertThat(problem.get("status").intValue()).isEqualTo(status);
        assertThat(problem.get("title").stringValue()).isNotBlank();
        assertThat(problem.get("detail").stringValue()).isNotBlank();
        assertThat(body).doesNotContain("Exception").doesNotContain("freshet.").doesNotContain("java.");
        return problem;
    }
}
