package freshet.overview;

import freshet.care.Care;
import freshet.care.ServiceRecord;
import freshet.findings.Finding;
import freshet.findings.Findings;
import freshet.fleet.Fleet;
import freshet.happenings.Happening;
import freshet.happenings.Happenings;
import freshet.hire.Hires;
import freshet.hydraulics.Curve;
import freshet.measures.Show;
import freshet.people.People;
import freshet.photos.Photos;
import freshet.phrases.Phrases;
import freshet.places.Places;
import freshet.places.Site;
import freshet.pumps.CurveSheet;
import freshet.pumps.Pumps;
import freshet.pumps.Stand;
import freshet.pumps.Unit;
import freshet.readings.FlowTestResult;
import freshet.readings.MeterKind;
import freshet.readings.Readings;
import freshet.readings.TestPlot;
import freshet.repairs.Repair;
import freshet.repairs.RepairState;
import freshet.repairs.Repairs;
import freshet.rounds.NoAccess;
import freshet.rounds.Rounds;
import freshet.wear.Wear;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;

/** One unit's page: how ready and why, what it still gives, its curve sheet, year, due work and history. */
@Controller
class UnitPageController {

    /** How much of the history the page shows before it is asked for all. */
    private static final int RECENT = 12;

    private final Pumps pumps;
    private final Places places;
    private final Readings readings;
    private final Findings findings;
    private final Happenings happenings;
    private final Hires hires;
    private final Care care;
    private final Fleet fleet;
    private final People people;
    private final Wear wear;
    private final Photos photos;
    private final Repairs repairs;
    private final Rounds rounds;
    private final MessageSource messages;
    private final Clock clock;

    UnitPageController(
            Pumps pumps,
            Places places,
            Readings readings,
            Findings findings,
            Happenings happenings,
            Hires hires,
            Care care,
            Fleet fleet,
            People people,
            Wear wear,
            Photos photos,
            Repairs repairs,
            Rounds rounds,
            MessageSource messages,
            Clock clock) {
        this.pumps = pumps;
        this.places = places;
        this.readings = readings;
        this.findings = findings;
        this.happenings = happenings;
        this.hires = hires;
        this.care = care;
        this.fleet = fleet;
        this.people = people;
        this.wear = wear;
        this.photos = photos;
        this.repairs = repairs;
        this.rounds = rounds;
        this.messages = messages;
        this.clock = clock;
    }

    /** One line of the history: when, what as a message with its arguments, and where to read more. */
    record Past(
            Instant at,
            String code,
            List<Object> arguments,
            @Nullable String link,
            @Nullable String small) {}

    @GetMapping("/pumps/{id}")
    String unit(
            @PathVariable long id,
            @RequestParam(defaultValue = "false") boolean all,
            @ModelAttribute("show") Show show,
            Model model,
            Locale locale) {
        Unit unit = pumps.unit(id);
        Site site = places.site(unit.stand().siteId());
        LocalDate today = site.today(clock);
        List<FlowTestResult> tests =
                readings.flowTests(id).stream().filter(FlowTestResult::stands).toList();
        List<ServiceRecord> records = care.recordsOf(id);
        TestPlot plot = readings.plot(id);
        List<Past> past = history(unit, tests, records, show);
        model.addAttribute("way", "pumps");
        model.addAttribute("photos", photos.on("unit:" + id));
        model.addAttribute("unit", unit);
        model.addAttribute("site", site);
        model.addAttribute("today", today);
        model.addAttribute("hire", hires.openOf(id).orElse(null));
        model.addAttribute("readiness", fleet.readiness(id));
        model.addAttribute("capacity", readings.capacity(id).orElse(null));
        model.addAttribute("saying", wear.saying(id));
        model.addAttribute("tests", tests);
        model.addAttribute("own", plot.line());
        model.addAttribute("sheet", sheet(unit, plot, show, locale));
        model.addAttribute("hours", readings.log(id, MeterKind.RUN_HOURS));
        model.addAttribute("starts", readings.log(id, MeterKind.STARTS));
        model.addAttribute("duty", readings.dutyCycle(id).orElse(null));
        model.addAttribute(
                "tasks", care.tasksOf(id).stream().filter(task -> task.open()).toList());
        List<Repair> mending = repairs.repairsOf(id);
        model.addAttribute("repairs", mending);
        model.addAttribute("money", repairs.money(locale));
        model.addAttribute(
                "spent",
                mending.stream()
                        .filter(repair -> repair.state() == RepairState.DONE)
                        .map(Repair::total)
                        .reduce(BigDecimal.ZERO, BigDecimal::add));
        model.addAttribute(
                "findings",
                findings.findingsOf(id).stream().filter(Finding::open).toList());
        List<LocalDate> signed = records.stream()
                .map(record -> record.endedAt().atZone(site.zone()).toLocalDate())
                .toList();
        model.addAttribute("band", YearBand.of(today, site.windows(), signed, locale));
        model.addAttribute("past", all ? past : past.stream().limit(RECENT).toList());
        model.addAttribute("pastTotal", past.size());
        return "overview/unit";
    }

    /** The rated line, the unit's own line in its band of doubt, and the tests, numbered from the oldest. */
    private CurveSheet sheet(Unit unit, TestPlot plot, Show show, Locale locale) {
        Curve rated = unit.model().curve();
        CurveSheet sheet = new CurveSheet(show.system(), rated.lastFlowM3h(), rated.shutOffHeadM());
        sheet.rated(rated, messages.getMessage("overview.curve.rated", null, locale));
        TestPlot.OwnLine own = plot.line();
        if (own != null) {
            sheet.own(
                    own.curve(),
                    own.lower(),
                    own.upper(),
                    messages.getMessage("overview.curve.own", new Object[] {unit.tag()}, locale));
        }
        List<Long> testIds =
                plot.points().stream().map(TestPlot.Point::testId).distinct().toList();
        for (TestPlot.Point test : plot.points()) {
            sheet.test(
                    test.flowM3h(),
                    test.headM(),
                    test.flowUncertaintyM3h(),
                    test.headUncertaintyM(),
                    String.valueOf(testIds.size() - testIds.indexOf(test.testId())));
        }
        return sheet;
    }

    private List<Past> history(Unit unit, List<FlowTestResult> tests, List<ServiceRecord> records, Show show) {
        List<Past> past = new ArrayList<>();
        for (ServiceRecord record : records) {
            past.add(new Past(
                    record.endedAt(),
                    record.correctsId() == null ? "overview.past.signed" : "overview.past.corrected",
                    List.of(Phrases.said(show.locale(), record.title()), record.signedName()),
                    "/records/" + record.id(),
                    record.correctionWhy()));
        }
        for (Finding finding : findings.findingsOf(unit.id())) {
            past.add(new Past(
                    finding.openedAt(),
                    "overview.past.finding",
                    List.of(finding.severity(), finding.what()),
                    "/findings/" + finding.id(),
                    null));
            if (finding.closedAt() != null) {
                past.add(new Past(
                        finding.closedAt(),
                        "overview.past.closed",
                        List.of(finding.what(), name(finding.closedByName())),
                        "/findings/" + finding.id(),
                        finding.closedHow()));
            }
        }
        for (FlowTestResult test : tests) {
            String link = "/flow-tests/" + test.id();
            if (test.figures() == null) {
                past.add(new Past(test.facts().at(), "overview.past.testUnworkable", List.of(), link, null));
            } else {
                past.add(new Past(
                        test.facts().at(),
                        "overview.past.test",
                        List.of(
                                show.flow(test.figures().flowM3h()),
                                show.head(test.figures().headM()),
                                test.recordedBy() == null
                                        ? ""
                                        : people.person(test.recordedBy()).fullName()),
                        link,
                        test.facts().note()));
            }
        }
        for (Happening happening : happenings.ofUnit(unit.id())) {
            if (happening.stands()) {
                past.add(new Past(
                        happening.at(),
                        "happenings.kind." + happening.kind(),
                        List.of(),
                        "/happenings/" + happening.id(),
                        happening.note()));
            }
        }
        for (NoAccess shut : rounds.noAccessOf(unit.id())) {
            past.add(new Past(
                    shut.at(),
                    "rounds.noAccess.past",
                    List.of(messages.getMessage("rounds.why." + shut.why(), null, show.locale()), shut.notedByName()),
                    "/rounds/" + shut.roundId(),
                    shut.note()));
        }
        List<Stand> stands = pumps.stands(unit.id());
        Instant first =
                stands.stream().map(Stand::since).min(Comparator.naturalOrder()).orElse(Instant.MIN);
        for (Stand stand : stands) {
            String code = stand.since().equals(first) ? "overview.past.placed" : "overview.past.moved";
            past.add(new Past(stand.since(), code, List.of(place(stand)), null, stand.note()));
        }
        past.sort(Comparator.comparing(Past::at).reversed());
        return past;
    }

    private static String place(Stand stand) {
        StringBuilder place = new StringBuilder(stand.siteName());
        if (stand.positionName() != null) {
            place.append(", ").append(stand.positionName());
        }
        if (stand.spot() != null) {
            place.append(", ").append(stand.spot());
        }
        return place.toString();
    }

    private static String name(@Nullable String name) {
        return name == null ? "" : name;
    }
}
