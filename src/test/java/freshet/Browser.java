package freshet;

import static org.junit.jupiter.api.Assumptions.abort;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.support.ui.WebDriverWait;

/**
 * One real Chromium for all journeys of a test run. Where none is installed a journey is skipped with the reason, unless the
 * environment says {@code FRESHET_BROWSER=required}, as the build server does.
 */
public final class Browser {

    private static final List<String> PLACES = List.of(
            "/usr/bin/chromium",
            "/usr/bin/chromium-browser",
            "/usr/bin/google-chrome",
            "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
            "/Applications/Chromium.app/Contents/MacOS/Chromium");
    private static final Path GALLERY = Path.of("target/gallery");

    /** What the camera sees: a film of raw pictures (y4m). */
    public static final Path CAMERA = Path.of("target/camera.y4m");

    private static @Nullable Browser shared;

    private final ChromeDriver driver;
    private String base = "";

    private Browser(ChromeDriver driver) {
        this.driver = driver;
    }

    /** The browser, fresh: no cookies, phone size, looking at the product on this port. */
    public static synchronized Browser at(int port) {
        if (shared == null) {
            shared = start();
        }
        shared.base = "http://localhost:" + port;
        shared.driver.manage().deleteAllCookies();
        shared.phone();
        return shared;
    }

    /** A browser of one's own that keeps all it is told in this folder: it can be closed, and opened again with the same. */
    public static Browser keeping(Path folder, int port) {
        Browser own = start("--user-data-dir=" + folder.toAbsolutePath());
        own.base = "http://localhost:" + port;
        return own.phone();
    }

    /** Closes a browser of one's own; the shared one stays open. */
    public void close() {
        driver.quit();
    }

    private static Browser start(String... more) {
        String chromium = Stream.concat(Stream.ofNullable(System.getenv("FRESHET_CHROMIUM")), PLACES.stream())
                .filter(place -> Files.isExecutable(Path.of(place)))
                .findFirst()
                .orElse(null);
        if (chromium == null) {
            if ("required".equals(System.getenv("FRESHET_BROWSER"))) {
                throw new IllegalStateException("Chromium is required here and none is installed");
            }
            abort("no Chromium is installed, so this journey is not walked");
        }
        ChromeOptions options = new ChromeOptions();
        options.setBinary(chromium);
        options.addArguments(more);
        options.addArguments(
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-quic",
                "--disable-dev-shm-usage",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--disable-default-apps",
                "--hide-scrollbars",
                // a camera that everybody may use and that sees what a test holds before it
                "--use-fake-ui-for-media-stream",
                "--use-fake-device-for-media-stream",
                "--use-file-for-fake-video-capture=" + CAMERA.toAbsolutePath(),
                "--lang=en-US");
        ChromeDriverService.Builder service = new ChromeDriverService.Builder();
        Path driver = Path.of("/usr/bin/chromedriver");
        if (Files.isExecutable(driver)) {
            service.usingDriverExecutable(driver.toFile());
        }
        ChromeDriver chrome = new ChromeDriver(service.build(), options);
        chrome.manage().timeouts().pageLoadTimeout(Duration.ofSeconds(30)).implicitlyWait(Duration.ofSeconds(2));
        Runtime.getRuntime().addShutdownHook(new Thread(chrome::quit));
        return new Browser(chrome);
    }

    public ChromeDriver driver() {
        return driver;
    }

    public Browser phone() {
        return size(390, 844);
    }

    public Browser desk() {
        return size(1280, 900);
    }

    public Browser size(int width, int height) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", width < 600));
        driver.manage().window().setSize(new Dimension(Math.max(width, 500), height));
        return this;
    }

    public Browser go(String path) {
        driver.get(base + path);
        return this;
    }

    public Browser signIn(String name, String password) {
        go("/sign-in");
        type("signInName", name);
        type("password", password);
        press("Sign in");
        return this;
    }

    /** Types into the field with this id, in place of what stands there. */
    public Browser type(String id, String text) {
        WebElement field = driver.findElement(By.id(id));
        field.clear();
        field.sendKeys(text);
        return this;
    }

    /** Presses the button or link with these words. */
    public Browser press(String words) {
        WebElement target = driver.findElement(By.xpath("//main//*[self::button or self::a][normalize-space(.)=\""
                + words + "\"] | //header//*[self::button or self::a][normalize-space(.)=\"" + words + "\"]"));
        WebElement html = driver.findElement(By.tagName("html"));
        driver.executeScript("arguments[0].scrollIntoView({block:'center'})", target);
        target.click();
        waitForNewPage(html);
        return this;
    }

    private void waitForNewPage(WebElement before) {
        new WebDriverWait(driver, Duration.ofSeconds(10)).until(chrome -> {
            try {
                before.isEnabled();
                return "complete".equals(driver.executeScript("return document.readyState"))
                        && driver.getCurrentUrl().contains("#");
            } catch (org.openqa.selenium.WebDriverException gone) {
                // a stale element, or in the midst of the change a node of no document
                return "complete".equals(driver.executeScript("return document.readyState"));
            }
        });
    }

    /** Waits until the browser stands at this path. */
    public Browser awaitPath(String path) {
        new WebDriverWait(driver, Duration.ofSeconds(10)).until(chrome -> path().equals(path));
        return this;
    }

    /** All that a person reads on the page. */
    public String text() {
        return driver.findElement(By.tagName("body")).getText();
    }

    public String path() {
        return driver.getCurrentUrl().substring(base.length());
    }

    /** Keeps the page as it is printed, for the gallery. */
    public Browser paper(String name) {
        Object pdf = driver.executeCdpCommand("Page.printToPDF", Map.of("preferCSSPageSize", true))
                .get("data");
        return keep(name + ".pdf", java.util.Base64.getDecoder().decode(String.valueOf(pdf)));
    }

    /** Keeps a picture of the whole page for the gallery. */
    public Browser picture(String name) {
        long height = ((Number) driver.executeScript("return document.documentElement.scrollHeight")).longValue();
        long width = ((Number) driver.executeScript("return window.innerWidth")).longValue();
        Map<String, Object> whole =
                Map.of("x", 0, "y", 0, "width", width, "height", Math.min(height, 6000), "scale", 1);
        Object png = driver.executeCdpCommand(
                        "Page.captureScreenshot",
                        Map.of("format", "png", "captureBeyondViewport", true, "optimizeForSpeed", true, "clip", whole))
                .get("data");
        return keep(name + ".png", java.util.Base64.getDecoder().decode(String.valueOf(png)));
    }

    private Browser keep(String file, byte[] bytes) {
        try {
            Files.createDirectories(GALLERY);
            Files.write(GALLERY.resolve(file), bytes);
        } catch (IOException unwritable) {
            throw new UncheckedIOException(unwritable);
        }
        return this;
    }
}
