package freshet.tags;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.ReaderException;
import com.google.zxing.client.j2se.BufferedImageLuminanceSource;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import com.google.zxing.qrcode.QRCodeWriter;
import freshet.Browser;
import freshet.FreshetTest;
import freshet.care.CareYard;
import freshet.pumps.Unit;
import freshet.readings.MeterKind;
import freshet.readings.Readings;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.Duration;
import java.util.Arrays;
import java.util.Base64;
import java.util.Map;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;

/** In the cellar with a phone: from the label to the written reading, and the camera that looks for labels. */
@FreshetTest
class TagJourneyTests {

    /** Counts what a person does, across pages. */
    private static final String COUNT = """
            for (const deed of ["pointerdown", "keydown"]) {
              addEventListener(deed, () => sessionStorage.setItem(deed, 1 + Number(sessionStorage.getItem(deed) ?? 0)), true);
            }""";

    /** Stands in for the reader of codes that a phone's browser has and this one lacks: hands the picture out, takes the answer in. */
    private static final String READER = """
            window.BarcodeDetector = class {
              static async getSupportedFormats() { return ["qr_code"]; }
              detect(video) {
                const sheet = document.createElement("canvas");
                sheet.width = video.videoWidth;
                sheet.height = video.videoHeight;
                sheet.getContext("2d").drawImage(video, 0, 0);
                return new Promise((answer) => {
                  window.answer = (text) => { window.seen = null; answer(text ? [{ rawValue: text }] : []); };
                  window.seen = sheet.toDataURL("image/png");
                });
              }
            };""";

    private static final String NO_READER = "delete window.BarcodeDetector;";

    private static final int WIDTH = 640;
    private static final int HEIGHT = 480;

    @LocalServerPort
    int port;

    @Autowired
    CareYard yard;

    @Autowired
    Readings readings;

    Unit unit;
    Browser browser;
    String script;

    @BeforeEach
    void stand() {
        unit = yard.unit("BF-07");
        browser = Browser.at(port);
    }

    private void onEveryPage(String source) {
        forget();
        script = (String) browser.driver()
                .executeCdpCommand("Page.addScriptToEvaluateOnNewDocument", Map.of("source", source))
                .get("identifier");
    }

    @AfterEach
    void forget() {
        if (script != null) {
            browser.driver()
                    .executeCdpCommand("Page.removeScriptToEvaluateOnNewDocument", Map.of("identifier", script));
            script = null;
        }
        browser.driver().executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", false));
    }

    @Test
    void comesFromTheTagToTheSavedReadingInTwoPressesAndTheDigits() {
        browser.signIn("ilse", "river at thaw");
        onEveryPage(COUNT);
        browser.go("/t/BF-07");
        browser.driver().executeScript("sessionStorage.clear()");
        assertThat(browser.path()).isEqualTo("/pumps/" + unit.id());
        var read = browser.driver().findElement(By.linkText("Read the meter"));
        assertThat(read.getRect().getY() + read.getRect().getHeight())
                .as("within the reach of a thumb without scrolling")
                .isBetween(600, 844);
        read.click();
        browser.awaitPath("/pumps/" + unit.id() + "/reading");
        browser.driver().switchTo().activeElement().sendKeys("412.6");
        browser.driver().findElement(By.xpath("//button[.='Write it down']")).click();
        browser.awaitPath("/pumps/" + unit.id());

        assertThat(browser.text()).contains("The reading is written down.");
        assertThat(readings.log(unit.id(), MeterKind.RUN_HOURS).lifetime()).isEqualByComparingTo("412.6");
        assertThat(done("pointerdown")).isEqualTo(2);
        assertThat(done("keydown")).isEqualTo("412.6".length());
        browser.picture("tag-unit-390");
    }

    private long done(String deed) {
        return ((Number) browser.driver().executeScript("return Number(sessionStorage.getItem(arguments[0]))", deed))
                .longValue();
    }

    @Test
    void comesToTheUnitAfterSigningInWhenTheScannerWasSignedOut() {
        yard.ilse();
        browser.go("/t/BF-07?do=read");
        assertThat(browser.path()).startsWith("/sign-in");
        browser.type("signInName", "ilse").type("password", "river at thaw").press("Sign in");
        assertThat(browser.path()).isEqualTo("/pumps/" + unit.id() + "/reading");
    }

    @Test
    void looksThroughTheCameraAndOpensThePumpOfTheLabel() throws IOException {
        browser.signIn("ilse", "river at thaw");
        onEveryPage(READER);
        hold("http://localhost:" + port + "/t/BF-07");
        browser.go("/t/BF-07").press("Scan");
        String read = look();
        assertThat(read).isEqualTo("http://localhost:" + port + "/t/BF-07");
        assertThat(browser.text()).contains("Hold the code of a label into the picture");
        browser.picture("scan-390").phone();
        browser.driver().executeScript("window.answer(arguments[0])", read);
        browser.awaitPath("/pumps/" + unit.id());
        assertThat(browser.text()).contains("BF-07");
    }

    @Test
    void leavesACodeThatLeadsElsewhereToThePerson() throws IOException {
        browser.signIn("ilse", "river at thaw");
        onEveryPage(READER);
        hold("some parcel");
        browser.go("/scan");
        assertThat(look()).isEqualTo("some parcel");
        browser.driver().executeScript("window.answer('some parcel')");
        says("That code is not a tag of this yard.");
        look();
        browser.driver().executeScript("window.answer('https://elsewhere.example/t/BF-07')");
        says("That code leads to another address than this one.");
        assertThat(browser.path()).isEqualTo("/scan");
        browser.press("Open the pump");
        assertThat(browser.path()).isEqualTo("/pumps/" + unit.id());
    }

    @Test
    void saysPlainlyWhenTheBrowserCannotAndTakesTheTypedTag() {
        browser.signIn("ilse", "river at thaw");
        onEveryPage(NO_READER);
        browser.go("/scan");
        says("This browser cannot read codes by itself.");
        browser.picture("scan-unable-390").phone();
        onEveryPage(
                READER
                        + "navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException('', 'NotAllowedError'));");
        browser.go("/scan");
        says("The camera was not allowed.");
        browser.type("tag", "bf-07 f").press("Open the pump");
        assertThat(browser.path()).isEqualTo("/pumps/" + unit.id());
        browser.go("/scan").type("tag", "BF-08 F").press("Open the pump");
        assertThat(browser.text()).contains("BF-08 F does not fit together", "It may have been");
        browser.picture("tag-mistyped-390").phone();
    }

    @Test
    void worksWithoutScript() {
        browser.signIn("ilse", "river at thaw");
        browser.driver().executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", true));
        browser.go("/scan");
        assertThat(browser.driver().findElement(By.tagName("main")).getText()).contains("Scripts are off");
        browser.type("tag", "BF-07");
        browser.driver().findElement(By.xpath("//main//button")).click();
        browser.awaitPath("/pumps/" + unit.id());
    }

    private void says(String words) {
        new WebDriverWait(browser.driver(), Duration.ofSeconds(10))
                .until(chrome -> browser.text().contains(words));
    }

    /** Reads what the page sees through the camera; a first picture may still be dark. */
    private String look() {
        return new WebDriverWait(browser.driver(), Duration.ofSeconds(20)).until(chrome -> {
            Object seen = browser.driver().executeScript("return window.seen");
            String text = seen == null ? null : read((String) seen);
            if (seen != null && text == null) {
                browser.driver().executeScript("window.answer(null)");
            }
            return text;
        });
    }

    private static String read(String picture) {
        try {
            byte[] png = Base64.getDecoder().decode(picture.substring(picture.indexOf(',') + 1));
            return new QRCodeReader()
                    .decode(new BinaryBitmap(new HybridBinarizer(
                            new BufferedImageLuminanceSource(ImageIO.read(new ByteArrayInputStream(png))))))
                    .getText();
        } catch (ReaderException | IOException unread) {
            return null;
        }
    }

    /** Holds a code before the camera: a film of two grey pictures, which the browser plays over and over. */
    private static void hold(String text) throws IOException {
        try {
            BitMatrix code = new QRCodeWriter().encode(text, BarcodeFormat.QR_CODE, 400, 400);
            byte[] grey = new byte[WIDTH * HEIGHT];
            Arrays.fill(grey, (byte) 150);
            for (int y = 0; y < 400; y++) {
                for (int x = 0; x < 400; x++) {
                    grey[(y + 40) * WIDTH + x + 120] = (byte) (code.get(x, y) ? 20 : 230);
                }
            }
            byte[] colourless = new byte[WIDTH * HEIGHT / 2];
            Arrays.fill(colourless, (byte) 128);
            ByteArrayOutputStream film = new ByteArrayOutputStream();
            film.writeBytes(("YUV4MPEG2 W" + WIDTH + " H" + HEIGHT + " F10:1 Ip A1:1 C420jpeg\n")
                    .getBytes(StandardCharsets.US_ASCII));
            for (int frame = 0; frame < 2; frame++) {
                film.writeBytes("FRAME\n".getBytes(StandardCharsets.US_ASCII));
                film.writeBytes(grey);
                film.writeBytes(colourless);
            }
            Files.write(Browser.CAMERA, film.toByteArray());
        } catch (com.google.zxing.WriterException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
