package freshet.repairs;

import static freshet.people.Refused.Wrong.at;

import freshet.care.Care;
import freshet.findings.Finding;
import freshet.findings.Findings;
import freshet.findings.HoldKind;
import freshet.findings.Why;
import freshet.happenings.HappeningDraft;
import freshet.happenings.HappeningKind;
import freshet.happenings.Happenings;
import freshet.people.NotFound;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Refused.Wrong;
import freshet.people.Stale;
import freshet.places.Places;
import freshet.places.Site;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The door to the repairs. */
@Service
@Transactional
public class Repairs {

    private static final int LONGEST = 2000;
    /** From this severity on a finding is work: fix at next service. */
    private static final int WORK = 2;

    private final RepairTable table;
    private final Weighing weighing;
    private final Findings findings;
    private final Care care;
    private final Happenings happenings;
    private final Pumps pumps;
    private final Places places;
    private final People people;
    private final Currency currency;
    private final Clock clock;

    Repairs(
            RepairTable table,
            Weighing weighing,
            Findings findings,
            Care care,
            Happenings happenings,
            Pumps pumps,
            Places places,
            People people,
            @Value("${freshet.currency:USD}") Currency currency,
            Clock clock) {
        this.table = table;
        this.weighing = weighing;
        this.findings = findings;
        this.care = care;
        this.happenings = happenings;
        this.pumps = pumps;
        this.places = places;
        this.people = people;
        this.currency = currency;
        this.clock = clock;
    }

    /** How amounts are said to a reader of this language. */
    public Money money(Locale locale) {
        return new Money(currency, locale);
    }

    @Transactional(readOnly = true)
    public Repair repair(long id) {
        return table.repair(id).orElseThrow(() -> new NotFound("repair", id));
    }

    /** All repairs of a unit: open ones first, then the others, latest first. */
    @Transactional(readOnly = true)
    public List<Repair> repairsOf(long unitId) {
        return table.ofUnit(unitId);
    }

    /** All open repairs, by their day. */
    @Transactional(readOnly = true)
    public List<Repair> openRepairs() {
        return table.open();
    }

    /** The open repair that a finding is part of. */
    @Transactional(readOnly = true)
    public Optional<Long> openRepairFor(long findingId) {
        return table.openFor(findingId);
    }

    /** The findings from severity 2 on that no repair is planned for and that are not put off today at their site, worst first. */
    @Transactional(readOnly = true)
    public List<Finding> unplanned() {
        Set<Long> planned = table.planned();
        return findings.openFindings().stream()
                .filter(finding -> finding.severity() >= WORK && !planned.contains(finding.id()))
                .filter(finding -> finding.putOffOn(today(finding)) == null)
                .toList();
    }

    /** Those that are put off today at their site, by the day that it ends. */
    @Transactional(readOnly = true)
    public List<Finding> putOff() {
        return findings.openFindings().stream()
                .filter(finding -> finding.putOffOn(today(finding)) != null)
                .sorted(Comparator.comparing(
                        finding -> Objects.requireNonNull(finding.waiver()).until()))
                .toList();
    }

    private LocalDate today(Finding finding) {
        return LocalDate.ofInstant(clock.instant(), finding.zone());
    }

    /** Every part of an open repair that is not here, those to order first, each with the day to order it by. */
    @Transactional(readOnly = true)
    public List<ToOrder> parts() {
        List<Repair> open = table.open();
        Map<Long, Site> sites = places.sites(open.stream().map(Repair::siteId).collect(Collectors.toSet()));
        return open.stream()
                .flatMap(repair -> ordering(repair, sites.get(repair.siteId())))
                .filter(each -> !each.part().here())
                .sorted(Comparator.comparing((ToOrder each) -> !each.part().toOrder())
                        .thenComparing(ToOrder::orderBy, Comparator.nullsLast(Comparator.naturalOrder()))
                        .thenComparing(
                                each -> each.part().expectedOn(), Comparator.nullsLast(Comparator.naturalOrder())))
                .toList();
    }

    /** The parts of one repair, in the order of its plan. */
    @Transactional(readOnly = true)
    public List<ToOrder> partsOf(Repair repair) {
        return ordering(repair, places.site(repair.siteId())).toList();
    }

    private Stream<ToOrder> ordering(Repair repair, Site site) {
        LocalDate today = site.today(clock);
        LocalDate opens = Weighing.seasonOpensOn(site, today);
        return repair.plan().parts().stream().map(part -> ToOrder.of(repair, part, opens, today));
    }

    /** The sums for the question whether to repair or to replace. */
    @Transactional(readOnly = true)
    public ReplaceSheet sheet(long id) {
        Repair repair = repair(id);
        return weighing.sheet(repair, findingsOf(repair));
    }

    /** The findings that a repair is for, closed ones too. */
    @Transactional(readOnly = true)
    public List<Finding> findingsOf(Repair repair) {
        return repair.plan().findingIds().stream().map(findings::finding).toList();
    }

    /** Plans a repair and gives its id. */
    public long plan(long unitId, RepairPlan plan, Person by) {
        Unit unit = pumps.unit(unitId);
        refuse(unit, 0, plan);
        long id = table.insert(unitId, plan, by, clock.instant());
        people.note(by, "repair planned", "unit:" + unitId, "repair " + id + " for findings " + plan.findingIds());
        return id;
    }

    /**
     * Plans it otherwise.
     *
     * @throws Stale when somebody changed or ended it meanwhile
     */
    public void change(long id, int version, RepairPlan plan, Person by) {
        Repair repair = repair(id);
        refuse(pumps.unit(repair.unitId()), id, plan);
        if (!table.change(id, version, plan)) {
            throw new Stale("repair", id);
        }
        people.note(
                by,
                "repair changed",
                "unit:" + repair.unitId(),
                "repair " + id + ", total " + plan.costs().total());
    }

    private void refuse(Unit unit, long butRepair, RepairPlan plan) {
        List<Wrong> wrongs = new ArrayList<>(PlanChecks.wrongs(plan));
        if (unit.retired()) {
            wrongs.add(at("", "repairs.retired", unit.tag()));
        }
        Map<Long, Finding> known =
                findings.findingsOf(unit.id()).stream().collect(Collectors.toMap(Finding::id, Function.identity()));
        Set<Long> kept =
                butRepair == 0 ? Set.of() : Set.copyOf(repair(butRepair).plan().findingIds());
        for (long id : new TreeSet<>(plan.findingIds())) {
            Finding finding = known.get(id);
            if (finding == null || !finding.open() && !kept.contains(id)) {
                wrongs.add(at("findings", "repairs.findings.other", unit.tag()));
            }
        }
        if (wrongs.isEmpty() && !table.taken(plan.findingIds(), butRepair).isEmpty()) {
            wrongs.add(at("findings", "repairs.findings.taken"));
        }
        Refused.ifAny(wrongs);
    }

    /**
     * Ends a repair as done: closes its findings with how the pump was left, opens the check after repair, and, when a finding had stopped
     * use, holds the unit until that check passes.
     *
     * @throws Stale when somebody changed or ended it meanwhile
     */
    public void done(long id, int version, RepairDone done, Person by) {
        Repair repair = repair(id);
        LocalDate today = LocalDate.ofInstant(clock.instant(), repair.zone());
        LocalDate on = done.on() == null ? today : done.on();
        List<Finding> open = findingsOf(repair).stream().filter(Finding::open).toList();
        List<Wrong> wrongs = new ArrayList<>();
        words("asFound", done.asFound(), false, wrongs);
        words("asLeft", done.asLeft(), true, wrongs);
        if (on.isAfter(today)) {
            wrongs.add(at("doneOn", "repairs.doneOn.future"));
        }
        for (Finding finding : open) {
            if (finding.competence() != null && !by.competentFor(finding.competence())) {
                wrongs.add(at("", "repairs.done.needs." + finding.competence()));
            }
        }
        Refused.ifAny(wrongs);
        String left = String.valueOf(done.asLeft());
        end(repair, version, new Repair.Ending(true, on, by.fullName(), done.asFound(), left, null), by);
        people.note(by, "repair done", "unit:" + repair.unitId(), "repair " + id + ": " + left);
        happenings.report(HappeningDraft.toUnit(HappeningKind.REPAIRED, clock.instant(), repair.unitId(), null), by);
        open.forEach(finding -> findings.close(finding.id(), finding.version(), left, by));
        if (!open.isEmpty()) {
            care.checkAfterRepair(open.get(0));
        }
        if (open.stream().anyMatch(Finding::stopsUse)) {
            Why why = Why.of("repairs.hold", String.valueOf(id));
            findings.hold(repair.unitId(), HoldKind.TAGGED_OUT, why, by);
        }
    }

    /**
     * Ends a repair that will not be done; its findings stay open.
     *
     * @throws Stale when somebody changed or ended it meanwhile
     */
    public void giveUp(long id, int version, @Nullable String why, Person by) {
        Repair repair = repair(id);
        List<Wrong> wrongs = new ArrayList<>();
        words("why", why, true, wrongs);
        Refused.ifAny(wrongs);
        LocalDate today = LocalDate.ofInstant(clock.instant(), repair.zone());
        end(repair, version, new Repair.Ending(false, today, by.fullName(), null, null, why), by);
        people.note(by, "repair given up", "unit:" + repair.unitId(), "repair " + id + ": " + why);
    }

    private void end(Repair repair, int version, Repair.Ending ending, Person by) {
        if (!table.end(repair.id(), version, ending, by, clock.instant())) {
            throw new Stale("repair", repair.id());
        }
    }

    private static void words(String field, @Nullable String words, boolean needed, List<Wrong> wrongs) {
        if (needed && (words == null || words.isBlank())) {
            wrongs.add(at(field, "repairs." + field + ".missing"));
        } else if (words != null && words.length() > LONGEST) {
            wrongs.add(at(field, "repairs.long", LONGEST));
        }
    }
}
