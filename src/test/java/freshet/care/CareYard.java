package freshet.care;

import freshet.checklists.AnswerKind;
import freshet.checklists.CheckLine;
import freshet.checklists.Checklist;
import freshet.checklists.ChecklistDraft;
import freshet.checklists.Checklists;
import freshet.checklists.Limits;
import freshet.checklists.LineDraft;
import freshet.checklists.RatedBy;
import freshet.checklists.Verdict;
import freshet.measures.UnitSystem;
import freshet.people.Competence;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Role;
import freshet.places.Places;
import freshet.places.Site;
import freshet.places.SiteDraft;
import freshet.places.WindowDraft;
import freshet.places.WindowKind;
import freshet.pumps.CurveForm;
import freshet.pumps.CurvePoint;
import freshet.pumps.Drive;
import freshet.pumps.ModelDraft;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Ratings;
import freshet.pumps.Unit;
import freshet.pumps.UnitDraft;
import freshet.pumps.Whereabouts;
import freshet.readings.FlowTestDraft;
import java.time.Instant;
import java.time.LocalDate;
import java.time.MonthDay;
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** A yard with people, sites and pumps on request, and answers to whole checklists, for the tests of care and of the rooms above. */
@Component
public class CareYard {

    public static final ZoneId CHICAGO = ZoneId.of("America/Chicago");
    public static final LocalDate LONG_AGO = LocalDate.of(2020, 1, 1);

    private final People people;
    private final Places places;
    private final Pumps pumps;

    private final Checklists checklists;
    private final JdbcClient database;

    CareYard(People people, Places places, Pumps pumps, Checklists checklists, JdbcClient database) {
        this.checklists = checklists;
        this.database = database;
        this.people = people;
        this.places = places;
        this.pumps = pumps;
    }

    /** The owner, who is competent for electrical work, and has put all rules to rest but those of the season and of capacity. */
    public Person ilse() {
        return people.personNamed("ilse").orElseGet(() -> {
            Person ilse = people.welcomeFirstOwner("ilse", "Ilse Marrow", "river at thaw", UnitSystem.SI);
            database.sql("""
                            update care_rule set active = false where code <> 'capacity-below'
                              and id not in (select rule_id from care_trigger where kind = 'SEASON')""").update();
            people.changePerson(
                    ilse.id(),
                    ilse.version(),
                    ilse.fullName(),
                    Role.OWNER,
                    Set.of(Competence.ELECTRICAL),
                    true,
                    null,
                    ilse);
            return people.person(ilse.id());
        });
    }

    /** A technician who is competent for nothing special. */
    public Person teo() {
        return people.personNamed("teo")
                .orElseGet(
                        () -> people.addPerson("teo", "Teo Brandt", "mud on boots", Role.TECHNICIAN, Set.of(), ilse()));
    }

    /** An apprentice. */
    public Person jonah() {
        return people.addPerson("jonah", "Jonah Pell", "new to this work", Role.TECHNICIAN, Set.of(), ilse());
    }

    public Person ownerWithoutCompetence() {
        return people.addPerson("freya", "Freya Osterby", "books and keys", Role.OWNER, Set.of(), ilse());
    }

    /** An owner who is competent for nothing special, beside those who are. */
    public Person ownerOfNone() {
        return people.addPerson("dana", "Dana Ferrow", "keys and books", Role.OWNER, Set.of(), ilse());
    }

    /** An owner who may do everything, in foul pits too. */
    public Person freya() {
        return people.personNamed("freya")
                .orElseGet(() -> people.addPerson(
                        "freya",
                        "Freya Osterby",
                        "spring round",
                        Role.OWNER,
                        Set.of(Competence.ELECTRICAL, Competence.GAS, Competence.LICENCE),
                        ilse()));
    }

    public Site site(String name, ZoneId zone, WindowDraft... windows) {
        return places.addSite(new SiteDraft(name, zone, null, null, List.of(windows)), ilse());
    }

    /** The yard of a cold river town: opening 15 February to 20 March, closing 1 October to 15 November. */
    public Site brackenfold() {
        return places.siteNamed("Brackenfold Pump Yard")
                .orElseGet(() -> site(
                        "Brackenfold Pump Yard",
                        CHICAGO,
                        opening("Thaw opening", 2, 15, 3, 20),
                        closing("Frost closing", 10, 1, 11, 15)));
    }

    public static WindowDraft opening(String name, int fromMonth, int fromDay, int toMonth, int toDay) {
        return new WindowDraft(
                null, WindowKind.OPENING, name, MonthDay.of(fromMonth, fromDay), MonthDay.of(toMonth, toDay));
    }

    public static WindowDraft closing(String name, int fromMonth, int fromDay, int toMonth, int toDay) {
        return new WindowDraft(
                null, WindowKind.CLOSING, name, MonthDay.of(fromMonth, fromDay), MonthDay.of(toMonth, toDay));
    }

    public long model(PumpKind kind) {
        String name = "Model " + kind;
        Ratings ratings = new Ratings(120.0, 60.0, 4.8, 250.0, null, null, null, null, null, 31.75, 10.0, 40.0);
        List<CurvePoint> points = List.of(
                new CurvePoint(0, 11.2), new CurvePoint(4, 9.1), new CurvePoint(8, 5.6), new CurvePoint(11.4, 1.5));
        return pumps.modelNamed(name)
                .orElseGet(() -> pumps.addModel(
                        new ModelDraft(
                                name,
                                kind,
                                Drive.SINGLE_PHASE,
                                kind == PumpKind.SUMP_WITH_FLOAT,
                                ratings,
                                CurveForm.TABLE,
                                points,
                                0.05,
                                null,
                                null),
                        ilse()))
                .id();
    }

    public Unit unit(String tag, PumpKind kind, long siteId, LocalDate inCareFrom) {
        return pumps.register(
                new UnitDraft(tag, "S-" + tag, model(kind), null, inCareFrom, null), Whereabouts.at(siteId), ilse());
    }

    public void move(Unit unit, long siteId) {
        Instant since = Instant.parse("2026-03-14T13:00:00Z");
        pumps.move(unit.id(), Whereabouts.at(siteId), since, null, ilse());
    }

    /** A utility submersible at Brackenfold, in care for years. */
    public Unit unit(String tag) {
        return unit(tag, PumpKind.UTILITY_SUBMERSIBLE, brackenfold().id(), LONG_AGO);
    }

    /** Publishes a version in which one line asks what it is measured with. */
    public void askInstrument(long checklistId, String question) {
        Checklist list = checklists.checklist(checklistId);
        List<LineDraft> lines = list.lines().stream()
                .map(LineDraft::of)
                .map(line -> line.question().startsWith(question) ? asking(line) : line)
                .toList();
        checklists.publish(checklistId, list.number(), new ChecklistDraft(list.minutes(), "By meter", lines), ilse());
    }

    private static LineDraft asking(LineDraft line) {
        return new LineDraft(
                line.origin(),
                line.section(),
                line.question(),
                line.hint(),
                line.caution(),
                line.kind(),
                line.unit(),
                line.passLow(),
                line.passHigh(),
                line.watchLow(),
                line.watchHigh(),
                line.choices(),
                line.failSeverity(),
                line.required(),
                line.mayNotApply(),
                line.asLeft(),
                true,
                line.competence(),
                line.source());
    }

    /** Answers that pass every line that this person may answer. */
    public static List<Answer> allPass(Worksheet sheet, Person by) {
        return sheet.checklist().lines().stream()
                .filter(line -> line.competence() == null || by.competentFor(line.competence()))
                .filter(line -> line.kind() != AnswerKind.TEXT)
                .map(line -> Answer.of(line.id(), pass(line)).with(line.asksInstrument() ? "Tester 3" : null))
                .toList();
    }

    private static String pass(CheckLine line) {
        return switch (line.kind()) {
            case YES_NO -> CheckLine.YES;
            case CHOICE -> choice(line, Verdict.PASS);
            case NUMBER -> number(line);
            case TEXT -> "";
        };
    }

    public static String choice(CheckLine line, Verdict verdict) {
        return line.choices().stream()
                .filter(choice -> choice.verdict() == verdict)
                .findFirst()
                .orElseThrow()
                .words();
    }

    private static String number(CheckLine line) {
        if (line.ratedBy() != null) {
            return line.ratedBy() == RatedBy.CURRENT ? "4.5 A" : "118 V";
        }
        return switch (String.valueOf(line.unit())) {
            case "Ω" -> "0.2";
            case "MΩ" -> ">200";
            case "°C" -> "8 °C";
            default -> within(line.limits()) + " " + line.unit();
        };
    }

    private static double within(Limits limits) {
        Double low = limits.passLow();
        Double high = limits.passHigh();
        if (low != null && high != null) {
            return (low + high) / 2;
        }
        return low != null ? 1.2 * low : high != null ? 0.6 * high : 1;
    }

    public static CheckLine line(Worksheet sheet, String question) {
        return sheet.checklist().lines().stream()
                .filter(line -> line.question().startsWith(question))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no line " + question));
    }

    /** The answers with one replaced or added. */
    public static List<Answer> with(List<Answer> answers, Answer other) {
        return Stream.concat(answers.stream().filter(answer -> answer.lineId() != other.lineId()), Stream.of(other))
                .toList();
    }

    public static List<Answer> without(List<Answer> answers, CheckLine line) {
        return answers.stream().filter(answer -> answer.lineId() != line.id()).toList();
    }

    /** A flow test whose fraction of reference is about the one given: 60 L in so many seconds at 3 m lift through a wide hose. */
    public static FlowTestDraft flowTest(long unitId, Instant at, double seconds) {
        return new FlowTestDraft(
                unitId,
                at,
                "R-1",
                new FlowTestDraft.Container(60, 0.5, 0.2, null),
                List.of(seconds, seconds + 0.2, seconds - 0.2),
                3.0,
                null,
                0.03,
                15,
                null,
                1,
                List.of(),
                null,
                null,
                null,
                null);
    }
}
