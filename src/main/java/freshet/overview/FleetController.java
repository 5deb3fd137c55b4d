package freshet.overview;

import freshet.fleet.Fleet;
import freshet.fleet.FleetPage;
import freshet.fleet.FleetQuery;
import freshet.fleet.FleetRow;
import freshet.fleet.Word;
import freshet.happenings.Happenings;
import freshet.people.Typed;
import freshet.places.Places;
import freshet.pumps.PumpKind;
import java.time.Clock;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** The list of the fleet, searched, filtered, sorted and paged in the database. */
@Controller
class FleetController {

    private static final int ROWS = 50;

    private final Fleet fleet;
    private final Places places;
    private final Happenings happenings;
    private final Clock clock;

    FleetController(Fleet fleet, Places places, Happenings happenings, Clock clock) {
        this.fleet = fleet;
        this.places = places;
        this.happenings = happenings;
        this.clock = clock;
    }

    /** What was asked for, as the page's fields hold it; anything unreadable asks nothing. */
    record Asked(
            @Nullable String text,
            @Nullable PumpKind kind,
            @Nullable Long site,
            @Nullable Long customer,
            boolean own,
            @Nullable Word word,
            boolean retired,
            FleetQuery.Sort sort,
            int page) {

        FleetQuery query() {
            return new FleetQuery(Typed.text(text), kind, site, customer, own, word, retired, sort, page, ROWS);
        }
    }

    @GetMapping("/pumps")
    String list(
            Model model,
            @RequestParam(required = false) @Nullable String text,
            @RequestParam(required = false) @Nullable String kind,
            @RequestParam(required = false) @Nullable String site,
            @RequestParam(required = false) @Nullable String customer,
            @RequestParam(required = false) boolean own,
            @RequestParam(required = false) @Nullable String word,
            @RequestParam(required = false) boolean retired,
            @RequestParam(required = false) @Nullable String sort,
            @RequestParam(required = false) @Nullable String page) {
        Asked asked = new Asked(
                text,
                choice(PumpKind.class, kind),
                number(site),
                number(customer),
                own,
                choice(Word.class, word),
                retired,
                Optional.ofNullable(choice(FleetQuery.Sort.class, sort)).orElse(FleetQuery.Sort.TAG),
                Optional.ofNullable(number(page)).orElse(1L).intValue() - 1);
        FleetPage found = fleet.find(asked.query());
        model.addAttribute("way", "pumps");
        model.addAttribute("asked", asked);
        model.addAttribute("found", found);
        model.addAttribute(
                "out",
                happenings.out(found.rows().stream().map(FleetRow::unitId).toList()));
        model.addAttribute("now", clock.instant());
        model.addAttribute("sites", places.sites());
        model.addAttribute("customers", places.customers());
        return "overview/fleet";
    }

    private static <E extends Enum<E>> @Nullable E choice(Class<E> type, @Nullable String text) {
        for (E each : type.getEnumConstants()) {
            if (each.name().equals(text)) {
                return each;
            }
        }
        return null;
    }

    private static @Nullable Long number(@Nullable String text) {
        return text != null && text.matches("\\d{1,9}") ? Long.valueOf(text) : null;
    }
}
