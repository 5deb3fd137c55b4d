package freshet.care;

import static freshet.care.CareYard.allPass;
import static freshet.care.CareYard.line;
import static org.assertj.core.api.Assertions.assertThat;

import freshet.Browser;
import freshet.FreshetTest;
import freshet.TestClock;
import freshet.checklists.CheckLine;
import freshet.checklists.Phase;
import freshet.people.Person;
import freshet.photos.Photo;
import freshet.photos.Photos;
import freshet.photos.Pictures;
import freshet.pumps.Unit;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.web.server.LocalServerPort;

/** An opening on a phone, with photos of the shaft as it was found and as it was left. */
@FreshetTest
class PhotoJourneyTests {

    @LocalServerPort
    int port;

    @Autowired
    Care care;

    @Autowired
    Photos photos;

    @Autowired
    CareYard yard;

    @Autowired
    TestClock clock;

    @TempDir
    Path phone;

    Browser browser;

    @Test
    void makesPhotosSmallSendsThemAtOnceAndShowsThemOnTheRecord() throws Exception {
        clock.set("2026-03-14T14:00:00Z");
        yard.ilse();
        Person teo = yard.teo();
        Unit unit = yard.unit("BF-04");
        Task opening = care.tasksOf(unit.id()).stream()
                .filter(task -> task.phase() == Phase.OPENING)
                .findFirst()
                .orElseThrow();
        Worksheet sheet = care.worksheet(opening.id());
        CheckLine shaft = line(sheet, "Turn the shaft");
        care.saveAnswers(opening.id(), 0, allPass(sheet, teo), teo);

        browser = Browser.at(port).signIn("teo", "mud on boots").go("/tasks/" + opening.id());
        choose(shaft, "found", Pictures.jpeg(4000, 3000), "Kept.");
        choose(shaft, "left", Pictures.jpeg(900, 1200), "Kept.");
        choose(shaft, "left", "no picture at all".getBytes(), "This is no photo that we can keep.");
        assertThat(browser.driver().findElements(By.cssSelector("#strip-c" + shaft.id() + " img")))
                .hasSize(2);
        browser.type("note", "Loud bearing, greased");
        browser.picture("task-photos-390").phone();

        List<Photo> laid = care.photosOf(opening.id()).stream()
                .map(photo -> photos.photo(photo.photoId()))
                .toList();
        assertThat(laid)
                .extracting(Photo::width, Photo::height)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(1600, 1200),
                        org.assertj.core.groups.Tuple.tuple(900, 1200));
        BufferedImage kept = Pictures.read(photos.file(laid.get(0).id()).bytes());
        assertThat(new java.awt.Color(kept.getRGB(100, 100)).getRed()).isGreaterThan(200);
        assertThat(new java.awt.Color(kept.getRGB(1500, 1100)).getBlue()).isGreaterThan(200);

        browser.press("Sign as Teo Brandt");
        assertThat(browser.path()).startsWith("/records/");
        assertThat(browser.text()).contains("As found", "As left", "Loud bearing, greased");
        List<WebElement> shown = browser.driver().findElements(By.cssSelector(".pair img"));
        assertThat(shown).hasSize(2).allSatisfy(picture -> {
            browser.driver().executeScript("arguments[0].scrollIntoView()", picture);
            new WebDriverWait(browser.driver(), Duration.ofSeconds(5))
                    .until(loaded -> Integer.parseInt(picture.getDomProperty("naturalWidth")) > 100);
        });
        browser.picture("record-photos-390").phone();
        browser.paper("record-photos");
    }

    private void choose(CheckLine line, String moment, byte[] file, String said) throws Exception {
        Path picture = Files.write(phone.resolve(moment + file.length + ".jpg"), file);
        WebElement field = browser.driver().findElement(By.id("photo-c" + line.id() + "-" + moment));
        field.sendKeys(picture.toString());
        By says =
                By.xpath("//input[@id='" + field.getDomAttribute("id") + "']/ancestor::*[@data-choose]//*[@data-said]");
        new WebDriverWait(browser.driver(), Duration.ofSeconds(20))
                .until(chrome ->
                        chrome.findElement(says).getDomProperty("textContent").startsWith(said));
    }
}
