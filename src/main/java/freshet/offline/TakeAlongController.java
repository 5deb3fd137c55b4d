package freshet.offline;

import freshet.board.Board;
import freshet.board.BoardSite;
import freshet.findings.Finding;
import freshet.findings.Findings;
import freshet.fleet.Fleet;
import freshet.people.Person;
import freshet.places.Places;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.readings.MeterKind;
import freshet.readings.Readings;
import freshet.rounds.Rounds;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.http.CacheControl;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;

/** The pages on which a person chooses what to take along, and the page that works without any network. */
@Controller
class TakeAlongController {

    private static final int DAYS = 14;

    private final Offline offline;
    private final Rounds rounds;
    private final Board board;
    private final Places places;
    private final Pumps pumps;
    private final Fleet fleet;
    private final Readings readings;
    private final Findings findings;
    private final Clock clock;

    TakeAlongController(
            Offline offline,
            Rounds rounds,
            Board board,
            Places places,
            Pumps pumps,
            Fleet fleet,
            Readings readings,
            Findings findings,
            Clock clock) {
        this.offline = offline;
        this.rounds = rounds;
        this.board = board;
        this.places = places;
        this.pumps = pumps;
        this.fleet = fleet;
        this.readings = readings;
        this.findings = findings;
        this.clock = clock;
    }

    @ModelAttribute("way")
    String way() {
        return "today";
    }

    /** Places with work first; {@code site} comes ticked. */
    @GetMapping("/take-along")
    String choose(
            @RequestParam(required = false) @Nullable Long site,
            @RequestParam(required = false) @Nullable Long round,
            Model model,
            Person me) {
        LocalDate day = LocalDate.now(clock).minusDays(1);
        model.addAttribute(
                "rounds",
                rounds.rounds(day).stream()
                        .filter(each -> each.personId() == null
                                || each.personId() == me.id()
                                || Long.valueOf(each.id()).equals(round))
                        .toList());
        model.addAttribute("chosenRound", round);
        Map<Long, BoardSite> due =
                board.sites(DAYS, 1).stream().collect(Collectors.toMap(BoardSite::siteId, Function.identity()));
        model.addAttribute("due", due);
        model.addAttribute("chosen", site);
        model.addAttribute(
                "busy",
                places.sites().stream()
                        .filter(each -> due.containsKey(each.id()))
                        .toList());
        model.addAttribute(
                "quiet",
                places.sites().stream()
                        .filter(each -> !due.containsKey(each.id()))
                        .toList());
        return "offline/take-along";
    }

    /** One unit as a phone keeps it. */
    @GetMapping("/take-along/units/{id}")
    String unit(@PathVariable long id, Model model) {
        Unit unit = pumps.unit(id);
        model.addAttribute("unit", unit);
        model.addAttribute("access", rounds.access(unit.stand().siteId()).note());
        model.addAttribute("readiness", fleet.readiness(id));
        model.addAttribute("capacity", readings.capacity(id).orElse(null));
        model.addAttribute("logs", List.of(readings.log(id, MeterKind.RUN_HOURS), readings.log(id, MeterKind.STARTS)));
        model.addAttribute(
                "found", findings.findingsOf(id).stream().filter(Finding::open).toList());
        return "offline/unit";
    }

    @GetMapping("/offline/bundle")
    ResponseEntity<Bundle> bundle(
            @RequestParam(required = false) @Nullable Set<Long> site,
            @RequestParam(required = false) @Nullable Set<Long> round,
            @RequestParam(required = false) @Nullable String mine,
            Person me) {
        Wanted wanted = new Wanted(site == null ? Set.of() : site, round == null ? Set.of() : round, mine != null);
        return ResponseEntity.ok().cacheControl(CacheControl.noStore()).body(offline.bundle(wanted, me));
    }

    /** The same for everybody: it holds words only, and the phone fills it. */
    @GetMapping("/offline")
    String shell(Model model) {
        model.asMap().remove("me");
        return "offline/offline";
    }
}
