package freshet.example;

import freshet.board.Board;
import freshet.care.Care;
import freshet.exchange.Exchange;
import freshet.exchange.NamedFile;
import freshet.findings.Cause;
import freshet.findings.FailureMode;
import freshet.findings.FindingDraft;
import freshet.findings.Findings;
import freshet.hands.Hands;
import freshet.happenings.Happenings;
import freshet.hire.Hires;
import freshet.measures.UnitSystem;
import freshet.people.Competence;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Role;
import freshet.photos.Photos;
import freshet.places.Places;
import freshet.pumps.Pumps;
import freshet.readings.Readings;
import freshet.repairs.Repairs;
import freshet.rounds.Rounds;
import freshet.rules.CareRules;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.springframework.context.annotation.Profile;
import org.springframework.core.io.ClassPathResource;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * The door to the example yard: people, files and stories, all invented. What happens by the season is dated by the seasons of the
 * files; what was measured and found is dated back from today, so that the yard looks alive on any day of the year.
 */
@Service
@Profile("example")
@Transactional
public class Example {

    /** Everybody in the example yard signs in with it; the example listens on this machine only. */
    static final String PASSWORD = "port ansel thaw";

    static final String TOKEN = "example-yard-token";

    private static final List<String> FILES =
            List.of("customers", "sites", "positions", "models", "units", "kit", "readings");

    private static final Map<String, FailureMode> MODES = Map.of(
            "BF-03", FailureMode.SMALL_DEFECT,
            "BF-07", FailureMode.WEAK,
            "BF-14", FailureMode.WATER_IN_OIL,
            "BF-19", FailureMode.WONT_START,
            "QM-302", FailureMode.OUT_OF_LIMIT,
            "OS-05", FailureMode.WEAK);

    private static final Map<String, Cause> CAUSES = Map.of(
            "BF-03", Cause.USER_DAMAGE,
            "BF-07", Cause.SAND,
            "BF-14", Cause.UNKNOWN,
            "BF-19", Cause.STALE_FUEL,
            "QM-302", Cause.BATTERY_AGE,
            "OS-05", Cause.SAND);

    private final People people;
    private final Pumps pumps;
    private final Readings readings;
    private final Findings findings;
    private final Board board;
    private final Care care;
    private final Photos photos;
    private final Exchange exchange;
    private final Hires hires;
    private final Happenings happenings;
    private final Repairs repairs;
    private final Places places;
    private final CareRules rules;
    private final Rounds rounds;
    private final Hands hands;
    private final Clock clock;

    Example(
            People people,
            Pumps pumps,
            Readings readings,
            Findings findings,
            Board board,
            Care care,
            Photos photos,
            Exchange exchange,
            Hires hires,
            Happenings happenings,
            Repairs repairs,
            Places places,
            CareRules rules,
            Rounds rounds,
            Hands hands,
            Clock clock) {
        this.people = people;
        this.pumps = pumps;
        this.readings = readings;
        this.findings = findings;
        this.board = board;
        this.care = care;
        this.photos = photos;
        this.exchange = exchange;
        this.hires = hires;
        this.happenings = happenings;
        this.repairs = repairs;
        this.places = places;
        this.rules = rules;
        this.rounds = rounds;
        this.hands = hands;
        this.clock = clock;
    }

    /** Sets the yard up in an empty install, whole or not at all; does nothing where anybody has an account already. */
    public boolean setUp() {
        if (people.anyone()) {
            return false;
        }
        Map<String, Person> crew = crew();
        Person ilse = crew.get("ilse");
        people.acceptToken(ilse.id(), "example", TOKEN);
        exchange.takeIn(FILES.stream().map(Example::file).toList(), ilse);
        new OwnRules(rules, places, pumps).setThem(ilse);
        board.plan();
        new PastTests(pumps, readings, clock).makeThem(crew);
        CrewsRounds crewsRounds = new CrewsRounds(pumps, care, rounds, hands, clock);
        crewsRounds.planThem(crew);
        DrawnPhotos drawn = new DrawnPhotos(photos, pumps, findings, care);
        drawn.ofAPump(crew);
        new PastSeasons(pumps, care, clock).workThem(crew);
        new PastHires(hires, happenings, pumps, places, clock).makeThem(crew);
        crewsRounds.noteShutDoors(crew);
        writeFindings(crew);
        drawn.ofAFinding(crew);
        new Mending(findings, repairs, pumps, places, clock).plan(crew);
        return true;
    }

    /** Who may sign in, in the order in which they are printed. */
    List<Person> signIns() {
        return Stream.of("ilse", "teo", "nadia", "wim", "freya", "jonah")
                .flatMap(name -> people.personNamed(name).stream())
                .toList();
    }

    private Map<String, Person> crew() {
        Person ilse = people.welcomeFirstOwner("ilse", "Ilse Marrow", PASSWORD, UnitSystem.US);
        people.changePerson(
                ilse.id(),
                ilse.version(),
                ilse.fullName(),
                Role.OWNER,
                Set.of(Competence.ELECTRICAL),
                true,
                null,
                ilse);
        Person by = people.person(ilse.id());
        return Map.of(
                "ilse", by,
                "teo", people.addPerson("teo", "Teo Brandt", PASSWORD, Role.TECHNICIAN, Set.of(), by),
                "nadia", people.addPerson("nadia", "Nadia Okoye", PASSWORD, Role.OWNER, Set.of(), by),
                "wim", people.addPerson("wim", "Wim Castell", PASSWORD, Role.TECHNICIAN, Set.of(), by),
                "freya",
                        people.addPerson(
                                "freya",
                                "Freya Osterby",
                                PASSWORD,
                                Role.OWNER,
                                Set.of(Competence.ELECTRICAL, Competence.GAS, Competence.LICENCE),
                                by),
                "jonah", people.addPerson("jonah", "Jonah Pell", PASSWORD, Role.TECHNICIAN, Set.of(), by));
    }

    private void writeFindings(Map<String, Person> crew) {
        write("BF-03", 4, "Cord nicked to the core, by the plug. Do not plug in.", crew.get("teo"));
        write("BF-07", 2, "Bottom plate gap 1.5 mm. Plate at the next service.", crew.get("teo"));
        write("BF-14", 3, "Milky oil: the seal lets water in. The seal kit takes 12 days.", crew.get("ilse"));
        write("BF-19", 3, "Stale fuel. Will not start.", crew.get("teo"));
        write("BF-25", 3, "Back from sewage, not yet washed and disinfected.", crew.get("ilse"));
        write("QM-302", 3, "11.6 V after 10 min under load. The battery is from 2019.", crew.get("wim"));
        write("OS-05", 2, "Impeller worn. Repair advised; Edda Fairweather declined for now.", crew.get("freya"));
    }

    private void write(String tag, int severity, String what, Person by) {
        long unitId = pumps.unitTagged(tag).orElseThrow().id();
        findings.write(FindingDraft.about(unitId, severity, what).failed(MODES.get(tag), CAUSES.get(tag)), by);
    }

    private static NamedFile file(String kind) {
        String name = kind + ".csv";
        try (InputStream content = new ClassPathResource("example/" + name).getInputStream()) {
            return new NamedFile(name, content.readAllBytes());
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
