package freshet.repairs;

import freshet.findings.Finding;
import freshet.measures.Show;
import freshet.places.Places;
import freshet.places.Site;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.LongPredicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.RequestParam;

/** The list of repairs and of what is to order. */
@Controller
class RepairListController {

    /** More findings than this nobody reads at once; the page says how many there are. */
    private static final int MOST = 200;

    private final Repairs repairs;
    private final Pumps pumps;
    private final Places places;
    private final Clock clock;

    RepairListController(Repairs repairs, Pumps pumps, Places places, Clock clock) {
        this.repairs = repairs;
        this.pumps = pumps;
        this.places = places;
        this.clock = clock;
    }

    @ModelAttribute("way")
    String way() {
        return "pumps";
    }

    @GetMapping("/repairs")
    String list(
            @RequestParam(required = false) @Nullable String site,
            @RequestParam(required = false) @Nullable String unit,
            @ModelAttribute("show") Show show,
            Model model) {
        List<Site> sites = places.sites();
        Site at = sites.stream()
                .filter(each -> String.valueOf(each.id()).equals(site))
                .findFirst()
                .orElse(null);
        Unit of = unit == null || unit.isBlank()
                ? null
                : pumps.unitTagged(unit.strip()).orElse(null);
        List<Repair> open = repairs.openRepairs().stream()
                .filter(repair -> at == null || repair.siteId() == at.id())
                .filter(repair -> of == null || repair.unitId() == of.id())
                .toList();
        List<Finding> unplanned = repairs.unplanned();
        List<Finding> putOff = repairs.putOff();
        LongPredicate asked = asked(at, of, unplanned, putOff);
        List<Finding> work =
                unplanned.stream().filter(each -> asked.test(each.unitId())).toList();
        Set<Long> late = open.stream()
                .filter(repair -> repair.late(LocalDate.ofInstant(clock.instant(), repair.zone())))
                .map(Repair::id)
                .collect(Collectors.toCollection(HashSet::new));
        repairs.parts().stream()
                .filter(ToOrder::late)
                .forEach(each -> late.add(each.repair().id()));
        model.addAttribute(
                "sites", sites.stream().sorted(Comparator.comparing(Site::name)).toList());
        model.addAttribute("at", at);
        model.addAttribute("of", of);
        model.addAttribute("asked", unit);
        model.addAttribute("late", late);
        model.addAttribute(
                "waiting",
                open.stream()
                        .filter(each -> each.state() == RepairState.WAITING)
                        .toList());
        model.addAttribute(
                "toDo",
                open.stream().filter(each -> each.state() == RepairState.TO_DO).toList());
        model.addAttribute("unplanned", work.stream().limit(MOST).toList());
        model.addAttribute("unplannedTotal", work.size());
        model.addAttribute(
                "putOff",
                putOff.stream()
                        .filter(each -> asked.test(each.unitId()))
                        .limit(MOST)
                        .toList());
        model.addAttribute("money", repairs.money(show.locale()));
        return "repairs/list";
    }

    /** Whether findings about a unit belong on the page. */
    private LongPredicate asked(@Nullable Site at, @Nullable Unit of, List<Finding> unplanned, List<Finding> putOff) {
        if (of != null) {
            return id -> id == of.id();
        }
        if (at == null) {
            return id -> true;
        }
        Set<Long> ids = new HashSet<>();
        unplanned.forEach(finding -> ids.add(finding.unitId()));
        putOff.forEach(finding -> ids.add(finding.unitId()));
        Set<Long> there = pumps.units(ids).stream()
                .filter(each -> each.stand().siteId() == at.id())
                .map(Unit::id)
                .collect(Collectors.toSet());
        return there::contains;
    }

    @GetMapping("/repairs/parts")
    String parts(@ModelAttribute("show") Show show, Model model) {
        List<ToOrder> parts = repairs.parts();
        model.addAttribute(
                "toOrder", parts.stream().filter(each -> each.part().toOrder()).toList());
        model.addAttribute(
                "ordered", parts.stream().filter(each -> !each.part().toOrder()).toList());
        model.addAttribute("money", repairs.money(show.locale()));
        return "repairs/parts";
    }
}
