package freshet.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.FreshetTest;
import freshet.Pages;
import freshet.Pages.Page;
import freshet.care.CareYard;
import freshet.pumps.Pumps;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.MockMvc;

@FreshetTest
class ImportPagesTests {

    private static final Path EXAMPLE = Path.of("src/main/resources/example");

    @Autowired
    MockMvc mvc;

    @Autowired
    CareYard yard;

    @Autowired
    Pumps pumps;

    @LocalServerPort
    int port;

    private Pages pages;

    @BeforeEach
    void signIn() {
        yard.ilse();
        pages = Pages.signedIn(mvc, "ilse", "river at thaw");
    }

    private Page upload(MockMultipartFile... files) {
        return pages.upload("/import", files);
    }

    private static MockMultipartFile file(String name, String content) {
        return new MockMultipartFile("files", name, "text/csv", content.getBytes(StandardCharsets.UTF_8));
    }

    private static MockMultipartFile[] example() {
        return Arrays.stream(new String[] {"customers", "sites", "positions", "models", "units", "kit", "readings"})
                .map(kind -> {
                    try {
                        return file(kind + ".csv", Files.readString(EXAMPLE.resolve(kind + ".csv")));
                    } catch (IOException unreadable) {
                        throw new IllegalStateException(unreadable);
                    }
                })
                .toArray(MockMultipartFile[]::new);
    }

    private Page takeIn() {
        Page preview = pages.open("/import/preview");
        return pages.submit("/import/preview", "agreed", preview.value("agreed"));
    }

    @Test
    void looksFirstThenTakesInAndChangesNothingTheSecondTime() {
        assertThat(upload(example()).location()).isEqualTo("/import/preview");
        assertThat(pages.open("/import/preview").text()).contains("Nothing is saved yet", "units.csv");
        assertThat(pumps.models()).isEmpty();

        assertThat(takeIn().location()).isEqualTo("/import");
        assertThat(pages.open("/pumps?text=BF-07").text()).contains("One pump", "Utility 1/3 hp");
        assertThat(pumps.activeUnitIds()).hasSize(66);

        upload(example());
        Page again = pages.open("/import/preview");
        assertThat(again.text()).contains("Nothing to do");
        assertThat(again.html().select("main button.press")).isEmpty();
    }

    @Test
    void saysEveryErrorAtItsLineAndColumnAndTakesNothingIn() {
        Page page = upload(
                file(
                        "sites.csv",
                        "site,time zone\nBrackenfold <script>alert(1)</script>,America/Chicago\nNowhere,Mars/Olympus\n"),
                file("units.csv", """
                        tag,model,site,in care from
                        BF-01,No such model,Nowhere,2026-01-05
                        BF-01,No such model,Nowhere,2026-02-31
                        """));
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.text()).contains("Nothing was taken in", "Mars/Olympus", "No such model", "2026-02-31");
        assertThat(page.html().select("main script")).isEmpty();
        assertThat(page.html().select("table tbody tr").eachText())
                .anyMatch(row -> row.startsWith("sites.csv 3 time zone"))
                .anyMatch(row -> row.startsWith("units.csv 2 model"))
                .anyMatch(row -> row.startsWith("units.csv 3 in care from"));
        assertThat(pages.open("/import/preview").location()).isEqualTo("/import");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "\u0001\u0002\u0003", "no,such,header\n1,2,3\n", "tag;model\n\"unclosed"})
    void refusesWhatIsNoFileOfOurs(String content) {
        Page page = upload(file("odd.csv", content));
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.text("main")).contains("odd.csv");
    }

    @Test
    void asksForAFileWhenNoneWasChosen() {
        Page page = upload();
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.wrong("files")).contains("Choose a file first");
    }

    @Test
    void refusesAStalePreview() {
        Page page = pages.submit("/import/preview", "agreed", "something else");
        assertThat(page.status()).isEqualTo(409);
    }

    @Test
    void isForOwnersAlone() {
        yard.teo();
        Pages teo = Pages.signedIn(mvc, "teo", "mud on boots");
        assertThat(teo.open("/import").status()).isEqualTo(403);
        assertThat(teo.open("/export/units.csv").status()).isEqualTo(403);
    }

    @Test
    void answersAFileThatIsFarTooLargeWithAPage() throws Exception {
        String boundary = "freshet-boundary";
        byte[] head = ("--" + boundary
                        + "\r\nContent-Disposition: form-data; name=\"files\"; filename=\"big.csv\"\r\n\r\n")
                .getBytes(StandardCharsets.US_ASCII);
        byte[] body = Arrays.copyOf(head, 30 * 1024 * 1024);
        HttpResponse<String> answer = HttpClient.newHttpClient()
                .send(
                        HttpRequest.newBuilder(URI.create("http://localhost:" + port + "/import"))
                                .header("Content-Type", "multipart/form-data; boundary=" + boundary)
                                .POST(HttpRequest.BodyPublishers.ofByteArray(body))
                                .build(),
                        HttpResponse.BodyHandlers.ofString());
        assertThat(answer.statusCode()).isEqualTo(303);
        assertThat(answer.headers().firstValue("Location")).hasValue("/import?tooLarge=yes");
        assertThat(pages.open("/import?tooLarge=yes").wrong("files")).contains("more than 25 MB together");
    }
}
