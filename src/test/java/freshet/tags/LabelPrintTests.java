package freshet.tags;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.ReaderException;
import com.google.zxing.client.j2se.BufferedImageLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import freshet.Browser;
import freshet.FreshetTest;
import freshet.care.CareYard;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.awt.image.ConvolveOp;
import java.awt.image.Kernel;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.openqa.selenium.By;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebElement;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;

/** What a real browser prints: pages and labels of the promised size, and codes that a reader of codes reads from a poor picture. */
@FreshetTest
class LabelPrintTests {

    private static final double MM_PER_PX = 25.4 / 96;
    private static final double MM_PER_POINT = 25.4 / 72;
    /** 288 dots an inch, less than any label printer has. */
    private static final int PRINT_SCALE = 3;

    private static final Pattern PAGE_BOX = Pattern.compile("/MediaBox\\s*\\[\\s*0 0 ([\\d.]+) ([\\d.]+)\\s*]");

    private static final List<Sight> SIGHTS = List.of(
            new Sight(1, 0, 0, 1, false),
            new Sight(0.6, -4, 0, 1, false),
            new Sight(1.4, 12, 5, 1, false),
            new Sight(2, -35, 7, 0.5, false),
            new Sight(1, 90, 3, 0.8, false),
            new Sight(1, 187, 3, 0.3, false),
            new Sight(1.2, 4, 3, 0.9, true));

    @LocalServerPort
    int port;

    @Autowired
    CareYard yard;

    Browser browser;

    @BeforeEach
    void signIn() {
        yard.unit("BF-07");
        yard.unit("QM-104");
        yard.unit("LONG-TAG-OF-16-X");
        browser = Browser.at(port).signIn("ilse", "river at thaw").desk();
    }

    private void open(LabelSheet sheet, int start) {
        browser.go("/labels/print?tags=BF-07,QM-104,LONG-TAG-OF-16-X&sheet=" + sheet + "&start=" + start);
    }

    @ParameterizedTest
    @EnumSource
    void printsPagesAndLabelsOfTheSizeThatIsPromised(LabelSheet sheet) throws IOException {
        open(sheet, sheet.places());
        byte[] pdf = Base64.getDecoder().decode((String) browser.driver()
                .executeCdpCommand("Page.printToPDF", Map.of("preferCSSPageSize", true))
                .get("data"));
        Path print = Files.createDirectories(Path.of("target/gallery")).resolve("labels-" + sheet + ".pdf");
        Files.write(print, pdf);
        List<MatchResult> pages = PAGE_BOX.matcher(new String(pdf, StandardCharsets.ISO_8859_1))
                .results()
                .toList();
        // the last place of the first page, then the rest
        assertThat(pages).hasSize(sheet.places() == 1 ? 3 : 2).allSatisfy(page -> {
            assertThat(Double.parseDouble(page.group(1)) * MM_PER_POINT).isCloseTo(sheet.pageWidthMm(), within(0.3));
            assertThat(Double.parseDouble(page.group(2)) * MM_PER_POINT).isCloseTo(sheet.pageHeightMm(), within(0.3));
        });
        List<WebElement> slips = browser.driver().findElements(By.cssSelector(".slip"));
        assertThat(slips).hasSize(sheet.places() + 2).allSatisfy(slip -> {
            assertThat(box(slip, "width")).isCloseTo(sheet.labelWidthMm(), within(0.1));
            assertThat(box(slip, "height")).isCloseTo(sheet.labelHeightMm(), within(0.1));
        });
        assertThat(slips)
                .allSatisfy(slip -> assertThat(browser.driver()
                                .executeScript(
                                        "const s = arguments[0]; return s.scrollWidth <= s.clientWidth && s.scrollHeight <= s.clientHeight"
                                                + " && [...s.querySelectorAll('p')].every(p => p.scrollWidth <= p.clientWidth + 1)",
                                        slip))
                        .as("nothing is cut off")
                        .isEqualTo(true));
    }

    private double box(WebElement element, String side) {
        Number pixels = (Number) browser.driver()
                .executeScript("return arguments[0].getBoundingClientRect()[arguments[1]]", element, side);
        return pixels.doubleValue() * MM_PER_PX;
    }

    @ParameterizedTest
    @EnumSource
    void readsEachCodeFromAPoorPictureOfThePrint(LabelSheet sheet) throws IOException {
        browser.driver()
                .executeCdpCommand(
                        "Emulation.setDeviceMetricsOverride",
                        Map.of("width", 1280, "height", 1500, "deviceScaleFactor", PRINT_SCALE, "mobile", false));
        open(sheet, 1);
        for (WebElement slip : browser.driver().findElements(By.cssSelector(".slip:has(.qr)"))) {
            String tag = slip.findElement(By.className("slip-tag")).getText();
            BufferedImage label = ImageIO.read(new ByteArrayInputStream(slip.getScreenshotAs(OutputType.BYTES)));
            String address = "http://localhost:" + port + "/t/" + tag;
            for (Sight sight : SIGHTS) {
                assertThat(sight.frames(label).anyMatch(photo -> address.equals(read(photo))))
                        .as(tag + " seen with " + sight)
                        .isTrue();
            }
        }
    }

    /** The label as a phone may see it: near or far, tilted, blurred, in little light, with mud on the code. */
    private record Sight(double scale, double degrees, int blur, double light, boolean mud) {

        /** A hand is never still: a reader of codes looks at many frames a second, here at five, and needs one. */
        Stream<BufferedImage> frames(BufferedImage label) {
            return IntStream.range(0, 5).mapToObj(n -> frame(label, scale * (1 + 0.03 * n), degrees + 2.3 * n));
        }

        private BufferedImage frame(BufferedImage label, double size, double angle) {
            int side = (int) (Math.hypot(label.getWidth(), label.getHeight()) * size) + 20;
            BufferedImage photo = new BufferedImage(side, side, BufferedImage.TYPE_INT_RGB);
            Graphics2D brush = photo.createGraphics();
            brush.setColor(new Color(96, 104, 99));
            brush.fillRect(0, 0, side, side);
            brush.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
            AffineTransform held = AffineTransform.getTranslateInstance(side / 2.0, side / 2.0);
            held.rotate(Math.toRadians(angle));
            held.scale(size, size * 0.95);
            held.translate(-label.getWidth() / 2.0, -label.getHeight() / 2.0);
            brush.drawImage(label, held, null);
            if (mud) {
                // in the middle of the code's left half, about a fiftieth of it
                brush.setTransform(held);
                brush.setColor(new Color(70, 60, 40));
                int blot = label.getHeight() / 9;
                brush.fillOval(label.getHeight() / 3, label.getHeight() / 2, blot, blot);
                brush.setTransform(new AffineTransform());
            }
            brush.setColor(new Color(0, 0, 0, (float) (1 - light)));
            brush.fillRect(0, 0, side, side);
            brush.dispose();
            if (blur == 0) {
                return photo;
            }
            float[] even = new float[blur * blur];
            Arrays.fill(even, 1f / even.length);
            return new ConvolveOp(new Kernel(blur, blur, even)).filter(photo, null);
        }
    }

    private static String read(BufferedImage photo) {
        try {
            return new QRCodeReader()
                    .decode(
                            new BinaryBitmap(new HybridBinarizer(new BufferedImageLuminanceSource(photo))),
                            Map.of(DecodeHintType.TRY_HARDER, true))
                    .getText();
        } catch (ReaderException unread) {
            return "unread: " + unread.getClass().getSimpleName();
        }
    }

    @Test
    void showsTheSheetsOnAScreenInBothLights() {
        open(LabelSheet.A4_24, 1);
        browser.picture("labels-print-1280");
        browser.phone().go("/labels?tags=BF-07").picture("labels-390");
        browser.go("/labels/print?tags=BF-99").picture("labels-error-390");
        assertThat(browser.text()).contains("No pump has the tag BF-99.");
    }
}
