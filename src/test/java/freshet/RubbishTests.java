package freshet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.request;

import freshet.care.CareYard;
import freshet.people.People;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.http.HttpMethod;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockHttpSession;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;

/** Whatever is sent to whichever address of a page, the answer is a page or a refusal, never a failure of ours. */
@FreshetTest
class RubbishTests {

    private static final List<String> IDS = List.of("1", "0", "-1", "999999999999999999999", "abc", "%00", "1.5");
    private static final List<String> TEXTS = List.of(
            "",
            " ",
            "4,1",
            "1e308",
            "NaN",
            "-7",
            "31 February",
            "2026-02-31",
            "<script>alert(1)</script>",
            "'; drop table account; --",
            "\u0000\uFFFF\uD83D\uDE00",
            "x".repeat(5000));

    @Autowired
    MockMvc mvc;

    @Autowired
    CareYard yard;

    @Autowired
    People people;

    @Autowired
    @Qualifier("requestMappingHandlerMapping")
    RequestMappingHandlerMapping addresses;

    private final List<String> failures = new ArrayList<>();
    private MockHttpSession session = new MockHttpSession();

    @Test
    void neverAnswersRubbishWithAFailure() throws Exception {
        yard.unit("BF-07");
        session = Pages.signedIn(mvc, "ilse", "river at thaw").session();
        int tried = 0;
        for (Map.Entry<String, Set<RequestMethod>> address : pages().entrySet()) {
            for (RequestMethod method : address.getValue()) {
                for (int i = 0; i < TEXTS.size(); i++) {
                    String path = address.getKey().replaceAll("\\{[^}]*}", IDS.get(i % IDS.size()));
                    send(HttpMethod.valueOf(method.name()), path, TEXTS.get(i));
                    tried++;
                }
            }
        }
        assertThat(tried).isGreaterThan(500);
        assertThat(failures).isEmpty();
    }

    private Map<String, Set<RequestMethod>> pages() {
        Map<String, Set<RequestMethod>> pages = new TreeMap<>();
        addresses.getHandlerMethods().forEach((mapping, method) -> {
            boolean ours = method.getBeanType().getPackageName().startsWith("freshet.");
            for (String pattern : mapping.getPatternValues()) {
                // who signs out or changes the password ends the walk
                if (ours && !pattern.startsWith("/api/") && !pattern.equals("/account/password")) {
                    Set<RequestMethod> methods = mapping.getMethodsCondition().getMethods();
                    pages.merge(pattern, methods.isEmpty() ? Set.of(RequestMethod.GET) : methods, (one, other) -> {
                        Set<RequestMethod> both = new java.util.TreeSet<>(one);
                        both.addAll(other);
                        return both;
                    });
                }
            }
        });
        return pages;
    }

    private void send(HttpMethod method, String path, String rubbish) {
        MockHttpServletRequestBuilder request =
                request(method, java.net.URI.create("http://localhost" + path)).session(session);
        if (method != HttpMethod.GET) {
            request.with(csrf());
        }
        for (String name : NAMES) {
            request.param(name, rubbish);
        }
        try {
            MockHttpServletResponse answer = mvc.perform(request).andReturn().getResponse();
            if (answer.getStatus() >= 500) {
                failures.add(method + " " + path + " with \"" + shown(rubbish) + "\": " + answer.getStatus());
            }
            if (String.valueOf(answer.getContentType()).startsWith("text/html")
                    && answer.getContentAsString().contains("<script>alert")) {
                failures.add(method + " " + path + " gives script back");
            }
        } catch (Exception failed) {
            failures.add(method + " " + path + " with \"" + shown(rubbish) + "\": " + failed);
        }
    }

    private static String shown(String text) {
        return text.length() > 30 ? text.substring(0, 30) + "..." : text;
    }

    /** Names that forms of the product have, simple and nested. */
    private static final List<String> NAMES = List.of(
            "name",
            "tag",
            "text",
            "note",
            "why",
            "how",
            "what",
            "severity",
            "mode",
            "cause",
            "until",
            "decidedBy",
            "findings",
            "finding",
            "plannedFor",
            "parts[0].description",
            "parts[0].quantity",
            "parts[0].leadDays",
            "parts[0].orderedOn",
            "labourMinutes",
            "labourRate",
            "asLeft",
            "doneOn",
            "version",
            "value",
            "kind",
            "meter",
            "at",
            "zone",
            "site",
            "place",
            "customer",
            "model",
            "spot",
            "since",
            "inCareFrom",
            "page",
            "sort",
            "word",
            "own",
            "where",
            "hirer",
            "outAt",
            "dueBackOn",
            "hours",
            "fuel",
            "told",
            "kit",
            "kit[0]",
            "kit[9999]",
            "back.liquid",
            "back.kit[0]",
            "out.told",
            "out.hirer",
            "with",
            "cordIs",
            "liquid",
            "inAt",
            "past",
            "everywhere",
            "find",
            "retired",
            "role",
            "fullName",
            "signInName",
            "password",
            "label",
            "container",
            "seconds[0]",
            "seconds[4]",
            "lift",
            "outlet",
            "rig",
            "volts",
            "amps",
            "hertz",
            "water",
            "pieces[0].bore",
            "pieces[0].kind",
            "pieces[0].length",
            "points[0].flow",
            "points[0].head",
            "by.method",
            "by.fall",
            "by.meter",
            "by.jetBore",
            "speed",
            "job",
            "scope",
            "triggers[0].count",
            "triggers[0].every",
            "opensDaysBefore",
            "accessFromDay",
            "covers",
            "windows[0].kind",
            "windows[0].fromDay",
            "windows[0].fromMonth",
            "items[0].description",
            "items[0].bore",
            "line[c1].answer",
            "line[c1].severity",
            "checklist",
            "instrument",
            "startedAt",
            "number",
            "minutes",
            "section",
            "lines[0].origin",
            "lines[0].passHigh",
            "lines[1].kind",
            "lines[1].choices[0].words",
            "from",
            "add",
            "remove",
            "more",
            "id",
            "n",
            "level",
            "all",
            "chosen",
            "units",
            "press",
            "person",
            "day",
            "week",
            "reason",
            "hours",
            "off",
            "percent",
            "caption",
            "keptPhoto");
}
