package freshet.example;

import freshet.Browser;
import freshet.FreshetTest;
import freshet.TestClock;
import freshet.pumps.Pumps;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chromium.ChromiumNetworkConditions;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.config.AutowireCapableBeanFactory;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.test.context.TestContextManager;

/**
 * How long somebody on a thin line waits until the first content of a page of the example yard stands before them, and how many bytes
 * that took: at the first visit with nothing kept, at a later one, and for the page of what was taken along, on the lines that
 * Chromium's tools call fast and slow 3G.
 *
 * <p>{@code mvn -Pbench test-compile exec:exec -Dexec.args="-cp %classpath freshet.example.FeltSpeedReport"}
 */
public final class FeltSpeedReport {

    private static final Map<String, ChromiumNetworkConditions> LINES = new LinkedHashMap<>();

    static {
        // latency in ms and bytes a second, as the profiles of Chromium's own tools have them
        LINES.put("fast 3G", line(563, 180_000, 84_375));
        LINES.put("slow 3G", line(2000, 50_000, 50_000));
    }

    /** The product with a browser's port. */
    @FreshetTest
    static class House {

        @LocalServerPort
        int port;

        @Autowired
        AutowireCapableBeanFactory beans;

        @Autowired
        Pumps pumps;

        @Autowired
        TestClock clock;
    }

    private FeltSpeedReport() {}

    private static ChromiumNetworkConditions line(int latency, int down, int up) {
        return new ChromiumNetworkConditions()
                .setLatency(Duration.ofMillis(latency))
                .setDownloadThroughput(down)
                .setUploadThroughput(up);
    }

    public static void main(String[] arguments) throws Exception {
        House house = new House();
        new TestContextManager(House.class).prepareTestInstance(house);
        house.clock.set("2027-03-14T19:40:00Z");
        house.beans.createBean(Example.class).setUp();
        long unit = house.pumps.unitTagged("BF-07").orElseThrow().id();
        Map<String, String> pages = new LinkedHashMap<>();
        pages.put("today", "/");
        pages.put("pumps", "/pumps");
        pages.put("one pump", "/pumps/" + unit);
        pages.put("meter", "/pumps/" + unit + "/reading");
        pages.put("flow test", "/pumps/" + unit + "/flow-test");
        pages.put("season", "/season");
        Browser browser = Browser.at(house.port).signIn("ilse", Example.PASSWORD);
        ChromeDriver chrome = browser.driver();
        // each page is made once before, so that the line is measured and not a cold server
        pages.values().forEach(browser::go);
        chrome.executeCdpCommand("Network.enable", Map.of());
        System.out.printf("%-10s %-10s %8s %22s %22s%n", "line", "page", "bytes", "first content, new", "first content, again");
        takenAlong(browser);
        // what goes through the worker would not be slowed down
        chrome.executeCdpCommand("Network.setBypassServiceWorker", Map.of("bypass", true));
        for (var line : LINES.entrySet()) {
            for (var page : pages.entrySet()) {
                chrome.executeCdpCommand("Network.clearBrowserCache", Map.of());
                // what tells the product that this browser holds the sheet
                chrome.manage().deleteCookieNamed("sheet");
                chrome.setNetworkConditions(line.getValue());
                browser.go(page.getValue());
                long bytes = number(chrome, """
                        return performance.getEntriesByType('navigation').concat(performance.getEntriesByType('resource'))
                            .reduce((sum, each) => sum + each.transferSize, 0)""");
                long fresh = firstContent(chrome);
                browser.go(page.getValue());
                System.out.printf(
                        "%-10s %-10s %8d %19d ms %19d ms%n",
                        line.getKey(), page.getKey(), bytes, fresh, firstContent(chrome));
            }
        }
        System.exit(0);
    }

    /** What was taken along stands on the phone: its page comes from there, whatever the line. */
    private static void takenAlong(Browser browser) {
        ChromeDriver chrome = browser.driver();
        browser.go("/take-along");
        chrome.executeAsyncScript("navigator.serviceWorker.ready.then(arguments[0])");
        browser.go("/offline");
        for (var line : LINES.entrySet()) {
            chrome.setNetworkConditions(line.getValue());
            browser.go("/offline");
            System.out.printf(
                    "%-10s %-10s %8s %22s %19d ms%n", line.getKey(), "with me", "-", "-", firstContent(chrome));
        }
        chrome.deleteNetworkConditions();
    }

    private static long firstContent(ChromeDriver chrome) {
        return new WebDriverWait(chrome, Duration.ofSeconds(30)).until(drawn -> {
            long at = number(
                    chrome,
                    "return Math.round(performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? -1)");
            return at < 0 ? null : at;
        });
    }

    private static long number(ChromeDriver chrome, String script) {
        return ((Number) chrome.executeScript(script)).longValue();
    }
}
