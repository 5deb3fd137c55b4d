package freshet.example;

import freshet.findings.Finding;
import freshet.findings.Findings;
import freshet.findings.HoldKind;
import freshet.findings.WaiverDraft;
import freshet.findings.Why;
import freshet.people.Person;
import freshet.places.Places;
import freshet.pumps.Pumps;
import freshet.repairs.Part;
import freshet.repairs.RepairPlan;
import freshet.repairs.Repairs;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;

/** What the yard means to do about its findings: a seal kit that takes 12 days, a cord tagged out, a repair that a customer declined. */
class Mending {

    private final Findings findings;
    private final Repairs repairs;
    private final Pumps pumps;
    private final Places places;
    private final Clock clock;

    Mending(Findings findings, Repairs repairs, Pumps pumps, Places places, Clock clock) {
        this.findings = findings;
        this.repairs = repairs;
        this.pumps = pumps;
        this.places = places;
        this.clock = clock;
    }

    void plan(Map<String, Person> crew) {
        long nicked = unit("BF-03");
        findings.hold(
                nicked,
                HoldKind.TAGGED_OUT,
                Why.typed("Cord nicked to the core. The plug is in the box by the desk."),
                crew.get("teo"));
        Finding milky = open("BF-14");
        LocalDate today = today("BF-14");
        Part kit = new Part("SK-1004", "Seal kit", BigDecimal.ONE, new BigDecimal("86.00"), 12, null, null, null);
        Part oil = new Part(
                null,
                "Chamber oil, 0.5 L",
                BigDecimal.ONE,
                new BigDecimal("9.50"),
                2,
                today.minusDays(9),
                today.minusDays(7),
                today.minusDays(6));
        repairs.plan(
                milky.unitId(),
                new RepairPlan(
                        List.of(milky.id()),
                        "New seals top and bottom, new oil; look at the shaft for scoring.",
                        today.plusDays(8),
                        List.of(kit, oil),
                        150,
                        new BigDecimal("68.00"),
                        null,
                        new BigDecimal("540.00"),
                        10),
                crew.get("ilse"));
        Finding worn = open("OS-05");
        findings.putOff(
                worn.id(),
                worn.version(),
                new WaiverDraft(
                        "Declined for now; the pit fills slowly and there is a second pump.",
                        "Edda Fairweather",
                        today("OS-05").plusMonths(5)),
                crew.get("freya"));
    }

    private long unit(String tag) {
        return pumps.unitTagged(tag).orElseThrow().id();
    }

    private Finding open(String tag) {
        return findings.findingsOf(unit(tag)).stream()
                .filter(Finding::open)
                .findFirst()
                .orElseThrow();
    }

    private LocalDate today(String tag) {
        return places.site(pumps.unit(unit(tag)).stand().siteId()).today(clock);
    }
}
