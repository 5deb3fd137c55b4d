package freshet.example;

import freshet.happenings.HappeningDraft;
import freshet.happenings.HappeningKind;
import freshet.happenings.Happenings;
import freshet.hire.Caution;
import freshet.hire.Hires;
import freshet.hire.IssueCheck;
import freshet.hire.IssueDraft;
import freshet.hire.Liquid;
import freshet.hire.ReturnDraft;
import freshet.hire.TurnAwayDraft;
import freshet.hire.TurnAwayReason;
import freshet.people.Person;
import freshet.places.Places;
import freshet.places.Site;
import freshet.places.WindowKind;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Unit;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.EnumSet;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** What is out on hire in the example yard, what came back from sewage, who was turned away, and the storm of last week. */
final class PastHires {

    /** They stayed open for hire when the others were laid up. */
    static final Set<String> TAGS = Set.of("BF-02", "BF-12", "BF-22", "BF-25");

    private final Hires hires;
    private final Happenings happenings;
    private final Pumps pumps;
    private final Places places;
    private final Clock clock;

    PastHires(Hires hires, Happenings happenings, Pumps pumps, Places places, Clock clock) {
        this.hires = hires;
        this.happenings = happenings;
        this.pumps = pumps;
        this.places = places;
        this.clock = clock;
    }

    void makeThem(Map<String, Person> crew) {
        Person teo = crew.get("teo");
        Person ilse = crew.get("ilse");
        Site yard = places.siteNamed("Brackenfold Pump Yard").orElseThrow();
        LocalDate today = yard.today(clock);
        hires.setEmergencyLine("Brackenfold Pump Yard, at any hour, 555 0142", ilse);
        send("BF-02", "Ansel Roofing", 9, today.minusDays(2), teo);
        send("BF-12", "Lorne Haig", 3, today.plusDays(1), teo);
        send("BF-22", "Gravel pit at Sedge Lane", 20, pastFrost(yard, today), teo);
        long sewage = send("BF-25", "Camp at Otter Ford", 6, today.plusDays(4), ilse);
        if (sewage > 0) {
            ReturnDraft back = new ReturnDraft(
                    at(today.minusDays(1), yard),
                    null,
                    40,
                    "Casing and hose brown inside, smells.",
                    Liquid.FOUL,
                    false,
                    null,
                    Map.of(0, 0));
            hires.takeBack(sewage, back, ilse);
        }
        turnAway(yard, today.minusDays(5), TurnAwayReason.ALL_OUT, PumpKind.ENGINE_TRASH, "2 in, for a weekend", teo);
        turnAway(yard, today.minusDays(4), TurnAwayReason.NOT_READY, PumpKind.UTILITY_SUBMERSIBLE, null, teo);
        turnAway(yard, today.minusDays(4), TurnAwayReason.NOT_ABLE, null, "80 ft of lift", ilse);
        storm(crew.get("nadia"), today.minusDays(6));
    }

    /** The last day: a few days into the closing that begins soon, or a few days from now. */
    private static LocalDate pastFrost(Site yard, LocalDate today) {
        return yard.windows().stream()
                .filter(window -> window.kind() == WindowKind.CLOSING)
                .flatMap(window -> window.spans(today, today.plusDays(60)).stream())
                .map(span -> span.opensOn().plusDays(5))
                .filter(day -> day.isAfter(today))
                .findFirst()
                .orElse(today.plusDays(4));
    }

    /** Gives the id of the hire; 0 on the few days of the year on which this pump cannot go out. */
    private long send(String tag, String hirer, int daysAgo, LocalDate dueBackOn, Person by) {
        Unit unit = pumps.unitTagged(tag).orElseThrow();
        IssueCheck check = hires.mayGoOut(unit.id());
        LocalDate proof = check.proofUntil();
        if (check.refused() || proof != null && proof.isBefore(dueBackOn)) {
            return 0;
        }
        Site yard = places.site(unit.stand().siteId());
        return hires.issue(
                new IssueDraft(
                        unit.id(),
                        hirer,
                        "555 0160",
                        at(yard.today(clock).minusDays(daysAgo), yard),
                        dueBackOn,
                        null,
                        check.proofUntil() == null ? 100 : null,
                        "Clean, no dents.",
                        "Jo Ferris",
                        true,
                        EnumSet.allOf(Caution.class),
                        IntStream.range(0, unit.kit().size()).boxed().collect(Collectors.toSet())),
                by);
    }

    private Instant at(LocalDate day, Site site) {
        Instant morning = day.atTime(LocalTime.of(8, 20)).atZone(site.zone()).toInstant();
        return morning.isAfter(clock.instant()) ? clock.instant() : morning;
    }

    private void turnAway(Site yard, LocalDate on, TurnAwayReason reason, PumpKind kind, String note, Person by) {
        hires.turnAway(new TurnAwayDraft(yard.id(), on, reason, kind, note), by);
    }

    private void storm(Person nadia, LocalDate on) {
        happenings.reportAll(
                places.sites().stream()
                        .filter(site -> Objects.equals(site.customerName(), "Quillmere Lettings"))
                        .map(site -> HappeningDraft.atSite(
                                HappeningKind.STORM, at(on, site), site.id(), "Rain all night on melting snow."))
                        .toList(),
                nadia);
    }
}
