package freshet;

import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.util.Arrays;
import java.util.List;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jspecify.annotations.Nullable;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockHttpSession;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.AbstractMockHttpServletRequestBuilder;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.test.web.servlet.request.MockMultipartHttpServletRequestBuilder;

/** A person's way through the pages, signed in by the sign-in page, as a browser without script. */
public final class Pages {

    private final MockMvc mvc;
    private final MockHttpSession session;

    private Pages(MockMvc mvc, MockHttpSession session) {
        this.mvc = mvc;
        this.session = session;
    }

    /** What came back: its status, where it sends the browser, and what it says. */
    public record Page(int status, @Nullable String location, Document html) {

        /** All that a person reads. */
        public String text() {
            return html.text();
        }

        /** What one element says; empty when there is none. */
        public String text(String css) {
            return html.select(css).text();
        }

        /** What a field of the page holds. */
        public String value(String name) {
            return html.select("main [name=\"" + name + "\"]").val();
        }

        /** What stands in the way at a field; empty when nothing does. */
        public String wrong(String name) {
            return html.select("[id=\"" + name + "-wrong\"]").text();
        }
    }

    /** Signs in. */
    public static Pages signedIn(MockMvc mvc, String name, String password) {
        MockHttpSession session = new MockHttpSession();
        Pages pages = new Pages(mvc, session);
        Page answer = pages.send(post("/sign-in").param("signInName", name).param("password", password));
        if (answer.status() != 302 || String.valueOf(answer.location()).contains("wrong")) {
            throw new IllegalStateException("not signed in: " + answer);
        }
        return pages;
    }

    /** The session, for what no form sends. */
    public MockHttpSession session() {
        return session;
    }

    public Page open(String address) {
        return send(get(address));
    }

    /** Sends a form: names and values in turn. */
    public Page submit(String address, String... namesAndValues) {
        MockHttpServletRequestBuilder request = post(address);
        for (int i = 0; i < namesAndValues.length; i += 2) {
            request.param(namesAndValues[i], namesAndValues[i + 1]);
        }
        return send(request);
    }

    /** Sends files, as a file field named {@code files} does. */
    public Page upload(String address, MockMultipartFile... files) {
        MockMultipartHttpServletRequestBuilder request = multipart(address);
        Arrays.stream(files).forEach(request::file);
        return send(request);
    }

    /** Sends a form that files were chosen in: names and values in turn. */
    public Page submit(String address, List<MockMultipartFile> files, String... namesAndValues) {
        MockMultipartHttpServletRequestBuilder request = multipart(address);
        files.forEach(request::file);
        for (int i = 0; i < namesAndValues.length; i += 2) {
            request.param(namesAndValues[i], namesAndValues[i + 1]);
        }
        return send(request);
    }

    private Page send(AbstractMockHttpServletRequestBuilder<?> request) {
        try {
            MockHttpServletResponse answer = mvc.perform(request.with(csrf()).session(session))
                    .andReturn()
                    .getResponse();
            return new Page(answer.getStatus(), answer.getHeader("Location"), Jsoup.parse(answer.getContentAsString()));
        } catch (Exception failed) {
            throw new IllegalStateException(failed);
        }
    }
}
