package freshet.hire;

import freshet.findings.Finding;
import freshet.findings.FindingDraft;
import freshet.findings.Findings;
import freshet.findings.HoldKind;
import freshet.findings.Why;
import freshet.fleet.Fleet;
import freshet.happenings.HappeningDraft;
import freshet.happenings.HappeningKind;
import freshet.happenings.Happenings;
import freshet.measures.Show;
import freshet.people.NotFound;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Refused.Wrong;
import freshet.people.Stale;
import freshet.places.Customer;
import freshet.places.Places;
import freshet.pumps.KitItem;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import freshet.readings.MeterKind;
import freshet.readings.ReadingDraft;
import freshet.readings.Readings;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The door to the hire desk: units go out when they are proven fit for every day of the hire, and come back into quarantine. */
@Service
@Transactional
public class Hires {

    private final HireTable table;
    private final FiguresTable figures;
    private final Fleet fleet;
    private final Findings findings;
    private final Readings readings;
    private final Happenings happenings;
    private final Pumps pumps;
    private final Places places;
    private final People people;
    private final Clock clock;

    Hires(
            HireTable table,
            FiguresTable figures,
            Fleet fleet,
            Findings findings,
            Readings readings,
            Happenings happenings,
            Pumps pumps,
            Places places,
            People people,
            Clock clock) {
        this.table = table;
        this.figures = figures;
        this.fleet = fleet;
        this.findings = findings;
        this.readings = readings;
        this.happenings = happenings;
        this.pumps = pumps;
        this.places = places;
        this.people = people;
        this.clock = clock;
    }

    /** How many hires are out, how many of these are late, and how many are back. */
    public record Count(int out, int late, int back) {}

    @Transactional(readOnly = true)
    public Hire hire(long id) {
        return table.hire(id).orElseThrow(() -> new NotFound("hire", id));
    }

    /** The hire that a unit is out on. */
    @Transactional(readOnly = true)
    public Optional<Hire> openOf(long unitId) {
        return table.openOf(unitId);
    }

    /** All hires of a unit, the latest first. */
    @Transactional(readOnly = true)
    public List<Hire> ofUnit(long unitId) {
        return table.ofUnit(unitId);
    }

    /** What is out, due back first. */
    @Transactional(readOnly = true)
    public List<Hire> out(int page, int size) {
        return table.open(size, (long) page * size);
    }

    /** What came back, the latest first. */
    @Transactional(readOnly = true)
    public List<Hire> past(int page, int size) {
        return table.back(size, (long) page * size);
    }

    @Transactional(readOnly = true)
    public Count count() {
        return table.count(clock.instant());
    }

    @Transactional(readOnly = true)
    public List<Extension> extensions(long hireId) {
        return table.extensions(hireId);
    }

    /** Whether a unit may go out now, with the reasons of its readiness. */
    @Transactional(readOnly = true)
    public IssueCheck mayGoOut(long unitId) {
        return new IssueCheck(pumps.unit(unitId), fleet.readiness(unitId));
    }

    /**
     * Sends a unit out and gives the id of its hire.
     *
     * @throws Refused when it is not proven fit for every day of the hire, when something was not told, or what was typed cannot be
     * @throws Stale when it is out already
     */
    public long issue(IssueDraft draft, Person by) {
        IssueCheck check = notOut(draft.unitId());
        Refused.ifAny(issueWrongs(draft, check, by));
        return sendOut(draft, check, "", by);
    }

    private IssueCheck notOut(long unitId) {
        IssueCheck check = mayGoOut(unitId);
        if (table.openOf(unitId).isPresent()) {
            throw new Stale("hire of unit", unitId);
        }
        return check;
    }

    private List<Wrong> issueWrongs(IssueDraft draft, IssueCheck check, Person by) {
        HireChecks checks = new HireChecks();
        checks.issue(draft, check, table.lastBack(draft.unitId()).orElse(null), clock.instant());
        if (!check.refused()) {
            Wrong proof = check.proofWrong(draft.dueBackOn());
            if (proof != null) {
                checks.wrongs().add(worded(proof, check.unit(), by));
            }
        }
        return checks.wrongs();
    }

    /** The same wrong with its days as the reader reads them. */
    private Wrong worded(Wrong wrong, Unit unit, Person reader) {
        LocalDate today = LocalDate.now(clock.withZone(unit.stand().zone()));
        Show show = new Show(reader.unitSystem(), LocaleContextHolder.getLocale(), today);
        return new Wrong(
                wrong.field(),
                wrong.code(),
                wrong.arguments().stream()
                        .map(said -> said instanceof LocalDate day ? show.day(day) : said)
                        .toList());
    }

    private long sendOut(IssueDraft draft, IssueCheck check, String at, Person by) {
        Unit unit = check.unit();
        Long customerId = places.customerNamed(draft.hirer()).map(Customer::id).orElse(null);
        long id;
        try {
            id = table.insert(draft, customerId, unit.stand().siteId(), check, by, clock.instant());
        } catch (DuplicateKeyException meanwhile) {
            throw new Stale("hire of unit", unit.id());
        }
        table.insert(id, kit(unit, draft.kit()));
        read(unit.id(), draft.outAt(), draft.hours(), at, "outAt", by);
        happenings.report(HappeningDraft.hireOut(draft.outAt(), unit.id(), draft.dueBackOn()), by);
        people.note(by, "hire issued", "unit:" + unit.id(), "hire " + id + ", " + draft.hirer());
        return id;
    }

    private static List<Piece> kit(Unit unit, Set<Integer> taken) {
        List<Piece> kit = new ArrayList<>();
        for (int at = 0; at < unit.kit().size(); at++) {
            KitItem item = unit.kit().get(at);
            int out = taken.contains(at) ? item.quantity() : 0;
            kit.add(new Piece(at, item.kind(), item.description(), item.quantity(), out, null));
        }
        return kit;
    }

    /** Writes the meter down by the door of the readings; what that refuses is said at our field. */
    private void read(long unitId, Instant when, @Nullable BigDecimal hours, String at, String timeField, Person by) {
        if (hours == null) {
            return;
        }
        try {
            readings.recordReading(ReadingDraft.of(unitId, MeterKind.RUN_HOURS, when, hours), by);
        } catch (Refused refused) {
            throw new Refused(refused.wrongs().stream()
                    .map(wrong -> new Wrong(
                            at + (wrong.field().equals("at") ? timeField : "hours"), wrong.code(), wrong.arguments()))
                    .toList());
        }
    }

    /**
     * Takes a unit back: it stays in quarantine until the check after hire is signed, whatever the hirer says.
     *
     * @throws Stale when it is back already
     */
    public void takeBack(long hireId, ReturnDraft draft, Person by) {
        Hire hire = stillOut(hireId);
        Refused.ifAny(returnWrongs(draft, hire));
        receive(hire, draft, "", by);
    }

    private Hire stillOut(long hireId) {
        Hire hire = table.held(hireId).orElseThrow(() -> new NotFound("hire", hireId));
        if (!hire.open()) {
            throw new Stale("hire", hireId);
        }
        return hire;
    }

    private List<Wrong> returnWrongs(ReturnDraft draft, Hire hire) {
        HireChecks checks = new HireChecks();
        checks.back(draft, hire, clock.instant());
        return checks.wrongs();
    }

    private void receive(Hire hire, ReturnDraft draft, String at, Person by) {
        table.back(hire, draft, by);
        read(hire.unitId(), draft.inAt(), draft.hours(), at, "inAt", by);
        Stream<HappeningKind> happened = Stream.of(
                        draft.liquid().happening(), draft.ranDry() ? HappeningKind.DRY_RUN : null)
                .flatMap(Stream::ofNullable);
        happenings.reportAll(
                Stream.concat(happened, Stream.of(HappeningKind.HIRE_RETURN))
                        .map(kind -> HappeningDraft.toUnit(kind, draft.inAt(), hire.unitId(), null))
                        .toList(),
                by);
        if (draft.cord() != null) {
            findings.write(FindingDraft.about(hire.unitId(), Finding.DANGER, draft.cord()), by);
        }
        findings.hold(
                hire.unitId(), HoldKind.QUARANTINE, Why.of("hire.quarantine." + draft.liquid(), hire.hirer()), by);
        people.note(by, "hire returned", "unit:" + hire.unitId(), "hire " + hire.id() + ", " + hire.hirer());
    }

    /** Takes a unit back and sends another in its place, both or neither, and gives the id of the new hire. */
    public long swap(long hireId, ReturnDraft back, SwapReason reason, IssueDraft out, Person by) {
        Hire hire = stillOut(hireId);
        IssueCheck check = notOut(out.unitId());
        Refused.ifAny(
                Stream.concat(within("back.", returnWrongs(back, hire)), within("out.", issueWrongs(out, check, by)))
                        .toList());
        receive(hire, back, "back.", by);
        long id = sendOut(out, check, "out.", by);
        table.swapped(hireId, id, reason);
        return id;
    }

    private static Stream<Wrong> within(String at, Collection<Wrong> wrongs) {
        return wrongs.stream()
                .map(wrong -> wrong.field().isEmpty()
                        ? wrong
                        : new Wrong(at + wrong.field(), wrong.code(), wrong.arguments()));
    }

    /** Gives a hire another last day, on which its electrical proof must still hold, unless somebody changed it since the given version. */
    public void extend(long hireId, int version, LocalDate dueBackOn, Person by) {
        Hire hire = stillOut(hireId);
        if (hire.version() != version) {
            throw new Stale("hire", hireId);
        }
        HireChecks checks = new HireChecks();
        checks.days(dueBackOn, LocalDate.ofInstant(hire.outAt(), hire.zone()));
        IssueCheck check = mayGoOut(hire.unitId());
        Wrong proof = check.proofWrong(dueBackOn);
        if (proof != null) {
            checks.wrongs().add(worded(proof, check.unit(), by));
        }
        if (dueBackOn.equals(hire.dueBackOn())) {
            checks.wrongs().add(Wrong.at("dueBackOn", "hire.due.same"));
        }
        Refused.ifAny(checks.wrongs());
        table.extend(hire, dueBackOn, by, clock.instant());
        happenings.extendHire(hire.unitId(), dueBackOn, by);
        people.note(by, "hire extended", "unit:" + hire.unitId(), "hire " + hireId + " to " + dueBackOn);
    }

    /** Writes down that somebody who asked for a pump went without one. */
    public void turnAway(TurnAwayDraft draft, Person by) {
        LocalDate today = places.site(draft.siteId()).today(clock);
        LocalDate on = draft.on() == null ? today : draft.on();
        HireChecks checks = new HireChecks();
        checks.length("note", draft.note(), 500);
        if (on.isAfter(today)) {
            checks.wrongs().add(Wrong.at("on", "hire.at.future"));
        } else if (on.isBefore(today.minusYears(1))) {
            checks.wrongs().add(Wrong.at("on", "hire.turnAway.old"));
        }
        Refused.ifAny(checks.wrongs());
        table.turnAway(draft.siteId(), on, draft, by, clock.instant());
    }

    /** The figures of the desk from the first day to the last, both included, by the calendars of the yards. */
    @Transactional(readOnly = true)
    public DeskFigures figures(LocalDate from, LocalDate to) {
        return figures.figures(from, to, table.turnAways(from, to, 200));
    }

    /** What is printed on every sheet that goes out for when something goes wrong; empty when nobody wrote it. */
    @Transactional(readOnly = true)
    public Optional<String> emergencyLine() {
        return table.emergencyLine();
    }

    public void setEmergencyLine(@Nullable String line, Person by) {
        HireChecks checks = new HireChecks();
        checks.length("emergencyLine", line, 200);
        Refused.ifAny(checks.wrongs());
        table.emergencyLine(line);
        people.note(by, "emergency line changed", "hires", line);
    }
}
