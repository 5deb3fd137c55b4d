package freshet.care;

import static freshet.care.CareYard.allPass;
import static freshet.care.CareYard.line;
import static freshet.photos.Pictures.jpeg;
import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.TestClock;
import freshet.checklists.CheckLine;
import freshet.checklists.Phase;
import freshet.findings.Findings;
import freshet.people.Person;
import freshet.photos.Hung;
import freshet.photos.Photos;
import freshet.photos.Pictures;
import freshet.pumps.Unit;
import java.awt.Color;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.MockMvc;

/** What the pages of a task, a record, a finding and a pump do with photos, in a browser without script. */
@FreshetTest
class PhotoPagesTests {

    @Autowired
    MockMvc mvc;

    @LocalServerPort
    int port;

    @Autowired
    Care care;

    @Autowired
    Photos photos;

    @Autowired
    Findings findings;

    @Autowired
    CareYard yard;

    @Autowired
    JdbcClient database;

    @Autowired
    TestClock clock;

    Person teo;
    Unit unit;
    Task opening;
    CheckLine shaft;
    String found;
    String left;
    Pages pages;

    @BeforeEach
    void springMorning() {
        clock.set("2026-03-14T14:00:00Z");
        yard.ilse();
        teo = yard.teo();
        unit = yard.unit("BF-04");
        opening = care.tasksOf(unit.id()).stream()
                .filter(task -> task.phase() == Phase.OPENING)
                .findFirst()
                .orElseThrow();
        shaft = line(care.worksheet(opening.id()), "Turn the shaft");
        found = "photo-c" + shaft.id() + "-found";
        left = "photo-c" + shaft.id() + "-left";
        pages = Pages.signedIn(mvc, "teo", "mud on boots");
    }

    private String address() {
        return "/tasks/" + opening.id();
    }

    private String[] form(String press, String... others) {
        Worksheet sheet = care.worksheet(opening.id());
        List<String> form = new ArrayList<>(
                List.of("press", press, "version", String.valueOf(sheet.task().version())));
        for (Answer answer : allPass(sheet, teo)) {
            form.add("line[c" + answer.lineId() + "].answer");
            form.add(String.valueOf(answer.answer()));
        }
        form.addAll(List.of(others));
        return form.toArray(String[]::new);
    }

    private static MockMultipartFile file(String field, byte[] bytes) {
        return new MockMultipartFile(field, "picture.jpg", "image/jpeg", bytes);
    }

    private long rows() {
        return database.sql("select count(*) from photo").query(Long.class).single();
    }

    @Test
    void keepsWhatWasTypedTogetherWithAPhotoAndTakesItOutAgain() {
        Page saved = pages.submit(
                address(),
                List.of(file(found, jpeg(300, 200)), new MockMultipartFile(left, "", null, new byte[0])),
                form("save", "note", "The bearing is loud"));
        assertThat(saved.status()).isEqualTo(302);
        assertThat(saved.location()).isEqualTo(address());

        Page page = pages.open(address());
        assertThat(page.html().select("[name='line[c" + shaft.id() + "].answer'][checked]"))
                .hasSize(1);
        assertThat(page.text("#shots-c" + shaft.id() + " .strip")).isEqualTo("As found Take it out");
        TaskPhoto photo = care.photosOf(opening.id()).get(0);
        assertThat(page.html().select(".strip img").attr("alt")).startsWith("Photo, as found: Turn the shaft");
        assertThat(page.html().select(".strip img").attr("src")).isEqualTo("/photos/" + photo.photoId() + "/small");
        assertThat(page.text()).contains("Where a photo was taken is not kept");

        Page out = pages.submit(address(), List.of(), form("photo-out-" + photo.id()));
        assertThat(out.location()).isEqualTo(address() + "#shots-c" + shaft.id());
        assertThat(pages.open(address()).html().select(".strip")).isEmpty();
    }

    @Test
    void saysAtItsPlaceWhatIsNoPhotoAndKeepsTheRest() {
        Map<byte[], String> wrongs = Map.of(
                "Only words".getBytes(StandardCharsets.UTF_8), "This is no photo",
                "<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>"
                                .getBytes(StandardCharsets.UTF_8),
                        "This is no photo",
                Arrays.copyOf(jpeg(90, 90), 700), "ends before the picture does",
                Pictures.bomb(60_000, 60_000), "60,000 by 60,000 pixels",
                Arrays.copyOf(jpeg(90, 90), 9 << 20), "This photo has 9 MB, and 8 MB is the most");
        wrongs.forEach((bytes, said) -> {
            Page page = pages.submit(address(), List.of(file(found, bytes)), form("sign", "note", "Loud bearing"));
            assertThat(page.status()).isEqualTo(422);
            assertThat(page.wrong(found)).contains(said);
            assertThat(page.text(".wrongs")).contains(said);
            assertThat(page.html().select(".wrongs a").attr("href")).isEqualTo("#" + found);
            assertThat(page.html().select("#shots-c" + shaft.id() + " details").hasAttr("open"))
                    .isTrue();
            assertThat(page.value("note")).isEqualTo("Loud bearing");
            assertThat(page.html().select("[name='line[c" + shaft.id() + "].answer'][checked]"))
                    .hasSize(1);
        });
        assertThat(rows()).isZero();
        assertThat(care.task(opening.id()).open()).isTrue();

        // a photo beside it that is one is laid down, for a browser cannot be given its choice again
        Page page = pages.submit(
                address(), List.of(file(found, jpeg(90, 90)), file(left, new byte[] {1, 2, 3})), form("save"));
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.html().select("#strip-c" + shaft.id() + " img")).hasSize(1);
        assertThat(page.wrong(left)).contains("This is no photo");
    }

    @Test
    void showsOnTheRecordHowItWasFoundBesideHowItWasLeft() {
        Page signed = pages.submit(
                address(),
                List.of(
                        file(found, jpeg(90, 60, Color.BLACK)),
                        file(left, jpeg(90, 60, Color.WHITE)),
                        file("photo-all-left", jpeg(60, 90))),
                form("sign"));
        assertThat(signed.location()).startsWith("/records/");
        Page record = pages.open(String.valueOf(signed.location()));
        assertThat(record.html().select(".pair h3").eachText())
                .containsExactly(shaft.question(), "The work as a whole");
        assertThat(record.html().select(".pair").get(0).select("figcaption").eachText())
                .containsExactly("As found", "As left");
        assertThat(record.html().select(".pair img")).hasSize(3);
        assertThat(record.text("[aria-labelledby=proof]")).doesNotContain("do not fit");

        // who has the form still open hears that it was signed
        Page late = pages.submit(address() + "/photos", List.of(file(found, jpeg(50, 50))));
        assertThat(late.status()).isEqualTo(409);
        assertThat(late.text("h1")).contains("signed meanwhile");
    }

    @Test
    void takesPhotosAloneAsAScriptSendsThem() {
        Page sent = pages.submit(address() + "/photos", List.of(file(found, jpeg(90, 60))));
        assertThat(sent.location()).isEqualTo(address());
        Page wrong = pages.submit(address() + "/photos", List.of(file(left, new byte[] {1})));
        assertThat(wrong.status()).isEqualTo(422);
        assertThat(wrong.wrong(left)).contains("This is no photo");
        assertThat(pages.submit(address() + "/photos", List.of(file("photo-x", jpeg(9, 9))))
                        .status())
                .isEqualTo(404);
        assertThat(care.task(opening.id()).version()).isZero();
        assertThat(pages.submit(address(), form("sign")).location()).startsWith("/records/");
    }

    @Test
    void givesAPhotoToWhoIsSignedInAndRunsNothingInIt() throws Exception {
        long id = photos.keep(jpeg(900, 600), teo);
        MockHttpServletResponse photo = mvc.perform(get("/photos/" + id).session(pages.session()))
                .andReturn()
                .getResponse();
        assertThat(photo.getContentType()).isEqualTo("image/jpeg");
        assertThat(photo.getContentAsByteArray()).isEqualTo(photos.file(id).bytes());
        assertThat(photo.getHeader("Cache-Control")).contains("private", "immutable", "max-age=31536000");
        assertThat(photo.getHeaderValues("X-Content-Type-Options")).containsExactly("nosniff");
        assertThat(photo.getHeaderValues("Content-Security-Policy"))
                .containsExactly("default-src 'none'; sandbox; frame-ancestors 'none'");
        assertThat(photo.getHeader("Content-Disposition")).startsWith("inline");
        MockHttpServletResponse again = mvc.perform(get("/photos/" + id)
                        .header("If-None-Match", String.valueOf(photo.getHeader("ETag")))
                        .session(pages.session()))
                .andReturn()
                .getResponse();
        assertThat(again.getStatus()).isEqualTo(304);
        MockHttpServletResponse small = mvc.perform(
                        get("/photos/" + id + "/small").session(pages.session()))
                .andReturn()
                .getResponse();
        assertThat(Pictures.read(small.getContentAsByteArray()).getWidth()).isEqualTo(480);

        MockHttpServletResponse stranger =
                mvc.perform(get("/photos/" + id)).andReturn().getResponse();
        assertThat(stranger.getStatus()).isIn(302, 401);
        assertThat(stranger.getContentAsByteArray()).isEmpty();
        assertThat(pages.open("/photos/999999").status()).isEqualTo(404);
        assertThat(pages.open("/photos/999999/small").status()).isEqualTo(404);
    }

    @Test
    void keepsAPhotoOfAFindingWhateverElseIsWrongWithIt() {
        String write = "/pumps/" + unit.id() + "/finding";
        Page page = pages.submit(write, List.of(file("photo", jpeg(90, 60))), "what", "", "severity", "2");
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.text()).contains("Your photo has come");
        Page refused = pages.submit(write, List.of(file("photo", new byte[] {7})), "what", "Nicked", "severity", "2");
        assertThat(refused.wrong("photo")).contains("This is no photo");
        assertThat(refused.value("what")).isEqualTo("Nicked");
        assertThat(findings.findingsOf(unit.id())).isEmpty();

        pages.submit(write, List.of(), "what", "Nicked", "severity", "2", "keptPhoto", page.value("keptPhoto"));
        long finding = findings.findingsOf(unit.id()).get(0).id();
        assertThat(photos.on("finding:" + finding)).hasSize(1);
        assertThat(pages.open("/findings/" + finding).html().select(".strip img"))
                .hasSize(1);
        pages.submit("/findings/" + finding + "/photos", List.of(file("photo", jpeg(60, 60))), "caption", "Near");
        assertThat(photos.on("finding:" + finding)).extracting(Hung::caption).containsExactly(null, "Near");
    }

    @Test
    void showsWhatAPumpLooksLike() {
        String wall = "/pumps/" + unit.id() + "/photos";
        assertThat(pages.open("/pumps/" + unit.id()).text("[aria-labelledby=looks]"))
                .contains("Add a photo");
        assertThat(pages.submit(wall, List.of(), "caption", "The plate").wrong("photo"))
                .isEqualTo("Choose a photo first.");
        Page added = pages.submit(wall, List.of(file("photo", jpeg(90, 60))), "caption", "The plate");
        assertThat(added.location()).isEqualTo(wall);
        Page page = pages.open(wall);
        assertThat(page.text(".wall")).contains("The plate", "Teo Brandt, 14 Mar", "Take it down");
        assertThat(page.html().select(".wall img").attr("alt")).isEqualTo("The plate");
        assertThat(pages.open("/pumps/" + unit.id()).html().select("[aria-labelledby=looks] img"))
                .hasSize(1);

        yard.jonah();
        Pages jonahs = Pages.signedIn(mvc, "jonah", "new to this work");
        String down = wall + "/" + photos.on("unit:" + unit.id()).get(0).id() + "/down";
        assertThat(jonahs.open(wall).text(".wall")).doesNotContain("Take it down");
        assertThat(jonahs.submit(down).status()).isEqualTo(403);
        assertThat(pages.submit(down).location()).isEqualTo(wall);
        assertThat(photos.on("unit:" + unit.id())).isEmpty();
    }

    /** Through the real server, which takes the parts of a form apart before any of our code sees them. */
    @Test
    void answersAnUploadFarTooLargeWithAPageAndKeepsWhatWasTyped() throws Exception {
        HttpClient browser = HttpClient.newBuilder()
                .cookieHandler(new java.net.CookieManager())
                .build();
        Document signIn = Jsoup.parse(ask(browser, "/sign-in").body());
        String form = "signInName=teo&password=mud+on+boots&_csrf="
                + signIn.select("[name=_csrf]").val();
        browser.send(
                to("/sign-in")
                        .header("Content-Type", "application/x-www-form-urlencoded")
                        .POST(HttpRequest.BodyPublishers.ofString(form))
                        .build(),
                HttpResponse.BodyHandlers.discarding());
        Document page = Jsoup.parse(ask(browser, address()).body());
        assertThat(page.select("form.checks input[type=file]").size()).isGreaterThan(15);

        HttpResponse<String> large = send(browser, page, 50L << 20);
        assertThat(large.statusCode()).isEqualTo(422);
        Document answer = Jsoup.parse(large.body());
        assertThat(answer.getElementById(found + "-wrong").text()).contains("This photo has 50 MB");
        assertThat(answer.getElementById("note").text()).isEqualTo("Märzmorgen, loud bearing");
        HttpResponse<String> huge = send(browser, page, 70L << 20);
        assertThat(huge.statusCode()).isEqualTo(413);
        assertThat(Jsoup.parse(huge.body()).text()).contains("That is too much at once", "Go back");
        assertThat(rows()).isZero();
    }

    private HttpRequest.Builder to(String path) {
        return HttpRequest.newBuilder(URI.create("http://localhost:" + port + path));
    }

    private HttpResponse<String> ask(HttpClient browser, String path) throws Exception {
        return browser.send(to(path).build(), HttpResponse.BodyHandlers.ofString());
    }

    /** Every part that the form has, as a browser sends them: more than fifty. */
    private HttpResponse<String> send(HttpClient browser, Document page, long size) throws Exception {
        StringBuilder parts = new StringBuilder();
        page.select("form.checks input[type=hidden], form.checks textarea")
                .forEach(field -> parts.append(part(
                        field.attr("name"), field.id().equals("note") ? "Märzmorgen, loud bearing" : field.val())));
        page.select("form.checks .pick label:first-child input")
                .forEach(field -> parts.append(part(field.attr("name"), field.val())));
        page.select("form.checks input[type=file]").stream()
                .filter(field -> !field.id().equals(found))
                .forEach(field -> parts.append("--edge\r\nContent-Disposition: form-data; name=\"" + field.id()
                        + "\"; filename=\"\"\r\nContent-Type: application/octet-stream\r\n\r\n\r\n"));
        // a longer checklist than this one has more parts than the fifty that the server takes by itself
        for (int i = 0; i < 30; i++) {
            parts.append(part("line[c" + i + "].finding", ""));
        }
        assertThat(parts.toString().split("--edge").length).isGreaterThan(50);
        parts.append("--edge\r\nContent-Disposition: form-data; name=\"" + found
                + "\"; filename=\"large.jpg\"\r\nContent-Type: image/jpeg\r\n\r\n");
        byte[] before = parts.toString().getBytes(StandardCharsets.UTF_8);
        byte[] after = "\r\n--edge--\r\n".getBytes(StandardCharsets.UTF_8);
        HttpRequest.BodyPublisher body = HttpRequest.BodyPublishers.fromPublisher(
                HttpRequest.BodyPublishers.ofInputStream(() -> new SequenceInputStream(
                        new SequenceInputStream(new ByteArrayInputStream(before), zeros(size)),
                        new ByteArrayInputStream(after))),
                before.length + size + after.length);
        return browser.send(
                to(address())
                        .header("Accept", "text/html")
                        .header("Content-Type", "multipart/form-data; boundary=edge")
                        .POST(body)
                        .build(),
                HttpResponse.BodyHandlers.ofString());
    }

    private static String part(String name, String value) {
        return "--edge\r\nContent-Disposition: form-data; name=\"" + name + "\"\r\n\r\n" + value + "\r\n";
    }

    private static InputStream zeros(long size) {
        return new InputStream() {
            private long left = size;

            @Override
            public int read() {
                return left-- > 0 ? 0 : -1;
            }

            @Override
            public int read(byte[] into, int from, int most) {
                int now = (int) Math.min(left, most);
                left -= now;
                return now > 0 ? now : -1;
            }
        };
    }
}
