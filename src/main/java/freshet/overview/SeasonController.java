package freshet.overview;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;

/** The season board: each place's year as a band, and how much of each window's work is done. */
@Controller
class SeasonController {

    private final SeasonBoard seasons;
    private final Clock clock;

    SeasonController(SeasonBoard seasons, Clock clock) {
        this.seasons = seasons;
        this.clock = clock;
    }

    /** What the headline says: of the windows that have begun, how much is done and left. */
    record News(int done, int left, int minutesLeft) {}

    @GetMapping("/season")
    String season(Model model, Locale locale) {
        List<SeasonBoard.SiteYear> years = seasons.years(locale);
        model.addAttribute("way", "season");
        model.addAttribute("today", LocalDate.now(clock));
        model.addAttribute(
                "years", years.stream().filter(year -> !year.lines().isEmpty()).toList());
        model.addAttribute(
                "without", years.stream().filter(year -> year.lines().isEmpty()).toList());
        List<SeasonBoard.Line> begun = years.stream()
                .flatMap(year -> year.lines().stream())
                .filter(line -> line.begun() && line.count() != null)
                .toList();
        model.addAttribute(
                "news",
                new News(
                        begun.stream().mapToInt(line -> line.count().done()).sum(),
                        begun.stream().mapToInt(line -> line.count().left()).sum(),
                        begun.stream()
                                .mapToInt(line -> line.count().minutesLeft())
                                .sum()));
        return "overview/season";
    }
}
