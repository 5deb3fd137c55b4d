package freshet.overview;

import freshet.hands.Hands;
import freshet.hands.Outlook;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** The season board: each place's year as a band, and how much of each window's work is done. */
@Controller
class SeasonController {

    private final SeasonBoard seasons;
    private final Hands hands;
    private final Clock clock;

    SeasonController(SeasonBoard seasons, Hands hands, Clock clock) {
        this.seasons = seasons;
        this.hands = hands;
        this.clock = clock;
    }

    /** What the headline says: of the windows that have begun, how much is done and left. */
    record News(int done, int left, int minutesLeft) {}

    /** So many places fit on one page that a phone loads soon. */
    private static final int PLACES = 20;

    /** And so many of those who will not be ready, before it says how many more there are. */
    private static final int LATE = 10;

    private static final int LATE_AT_MOST = 500;

    @GetMapping("/season")
    String season(
            @RequestParam(defaultValue = "1") String page,
            @RequestParam(defaultValue = "") String late,
            Model model,
            Locale locale) {
        List<SeasonBoard.SiteYear> years = seasons.years(locale);
        model.addAttribute("way", "season");
        model.addAttribute("today", LocalDate.now(clock));
        List<SeasonBoard.SiteYear> worked = seasons.inSeasonFirst(years);
        int pages = Math.max(1, (worked.size() + PLACES - 1) / PLACES);
        int at = page.matches("\\d{1,6}") ? Math.min(Math.max(Integer.parseInt(page), 1), pages) : 1;
        model.addAttribute("page", at);
        model.addAttribute("pages", pages);
        model.addAttribute(
                "years",
                worked.stream().skip((long) (at - 1) * PLACES).limit(PLACES).toList());
        List<SeasonBoard.SiteYear> without =
                years.stream().filter(year -> year.lines().isEmpty()).toList();
        model.addAttribute("without", without.stream().limit(PLACES).toList());
        model.addAttribute("moreWithout", Math.max(0, without.size() - PLACES));
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
        Outlook outlook = hands.outlook();
        model.addAttribute("outlook", outlook);
        model.addAttribute("lateShown", late.equals("all") ? LATE_AT_MOST : LATE);
        return "overview/season";
    }
}
