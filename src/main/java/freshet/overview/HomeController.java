package freshet.overview;

import freshet.board.Board;
import freshet.board.BoardSite;
import freshet.fleet.Fleet;
import freshet.fleet.FleetQuery;
import freshet.fleet.FleetRow;
import freshet.fleet.Word;
import freshet.hire.Hires;
import freshet.offline.Offline;
import freshet.people.Person;
import freshet.rounds.Rounds;
import freshet.rounds.WorkQuery;
import freshet.timetable.Timetable;
import java.time.Clock;
import java.time.LocalDate;
import java.time.temporal.IsoFields;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;

/** The first page: what needs the keeper now. */
@Controller
class HomeController {

    /** How many lines of one place, tags and places the first page shows before it says how many more there are. */
    private static final int LINES = 6;

    private static final int SITES = 8;
    private static final int DAYS = 14;
    private static final int TAGS = 8;
    private static final int PLACES = 3;
    private static final int MINE = 8;

    private final Board board;
    private final Fleet fleet;
    private final SeasonBoard seasons;
    private final Timetable timetable;
    private final Offline offline;
    private final Hires hires;
    private final Rounds rounds;
    private final Clock clock;

    HomeController(
            Board board,
            Fleet fleet,
            SeasonBoard seasons,
            Timetable timetable,
            Offline offline,
            Hires hires,
            Rounds rounds,
            Clock clock) {
        this.board = board;
        this.fleet = fleet;
        this.seasons = seasons;
        this.timetable = timetable;
        this.offline = offline;
        this.hires = hires;
        this.rounds = rounds;
        this.clock = clock;
    }

    /** The figures of the headline. */
    record News(int late, int soon, int notReady, int unknown) {}

    @GetMapping("/")
    String home(Model model, Locale locale, Person me) {
        Map<Word, Integer> tally = fleet.tally();
        model.addAttribute("way", "today");
        model.addAttribute("tally", tally);
        if (tally.values().stream().allMatch(count -> count == 0)) {
            return "overview/empty";
        }
        List<BoardSite> sites = board.sites(DAYS, LINES);
        List<BoardSite> latest = sites.stream()
                .sorted(Comparator.comparing(BoardSite::late).reversed().thenComparing(BoardSite::siteName))
                .limit(SITES)
                .toList();
        model.addAttribute("toSettle", offline.toSettle(me));
        model.addAttribute("failedRuns", me.owner() ? timetable.failed() : 0);
        model.addAttribute("myRounds", rounds.todaysRounds(me.id()));
        model.addAttribute("myWork", rounds.work(WorkQuery.assignedTo(me.id(), MINE)));
        model.addAttribute("myWorkTotal", rounds.countWork(WorkQuery.assignedTo(me.id(), MINE)));
        LocalDate today = LocalDate.now(clock);
        model.addAttribute("today", today);
        model.addAttribute("hires", hires.count());
        model.addAttribute("week", today.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR));
        model.addAttribute("board", latest);
        model.addAttribute("moreSites", sites.size() - latest.size());
        List<FleetRow> worst = fleet
                .find(FleetQuery.all().sorted(FleetQuery.Sort.WORST).page(0, TAGS))
                .rows()
                .stream()
                .filter(row -> row.readiness().word() != Word.READY)
                .toList();
        int unproven = tally.entrySet().stream()
                .filter(each -> each.getKey() != Word.READY)
                .mapToInt(Map.Entry::getValue)
                .sum();
        model.addAttribute("worst", worst);
        model.addAttribute("moreWorst", unproven - worst.size());
        model.addAttribute(
                "news",
                new News(
                        sites.stream().mapToInt(BoardSite::late).sum(),
                        sites.stream().mapToInt(BoardSite::soon).sum(),
                        tally.getOrDefault(Word.NOT_READY, 0),
                        tally.getOrDefault(Word.UNKNOWN, 0)));
        List<SeasonBoard.SiteYear> years = seasons.inSeasonFirst(seasons.years(locale));
        model.addAttribute("years", years.stream().limit(PLACES).toList());
        model.addAttribute("moreYears", Math.max(0, years.size() - PLACES));
        return "overview/home";
    }
}
