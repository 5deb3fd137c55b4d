package freshet.jobs;

import freshet.measures.UnitSystem;
import freshet.people.People;
import freshet.people.Person;
import freshet.places.Places;
import freshet.places.SiteDraft;
import freshet.pumps.CurveForm;
import freshet.pumps.CurvePoint;
import freshet.pumps.Drive;
import freshet.pumps.Model;
import freshet.pumps.ModelDraft;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Ratings;
import freshet.pumps.Unit;
import freshet.pumps.UnitDraft;
import freshet.pumps.Whereabouts;
import freshet.readings.FlowTestDraft;
import freshet.readings.Readings;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The pump yard of a caller's evening: its models with curves in feet and gallons, and units as worn as a test wants them. */
final class JobYard {

    static final String PASSWORD = "thaw-comes-early";

    private static final double FT = 0.3048;
    private static final double GPM = 0.2271247070;
    private static final double GAL = 3.785411784;

    /** 25 ft shut off, 42 gpm open: feet at gallons a minute. */
    private static final double[] THIRD_HORSE = {0, 25, 15, 22, 28, 16, 37, 8, 42, 0};

    final Person me;
    private final Pumps pumps;
    private final Readings readings;
    private final long siteId;

    JobYard(People people, Places places, Pumps pumps, Readings readings, UnitSystem system) {
        this.pumps = pumps;
        this.readings = readings;
        me = people.welcomeFirstOwner("ilse", "Ilse Marrow", PASSWORD, system);
        siteId = places.addSite(
                        new SiteDraft("Brackenfold Pump Yard", ZoneId.of("America/Chicago"), null, null, List.of()), me)
                .id();
    }

    Model thirdHorse() {
        return model(
                "Third-horse utility",
                PumpKind.UTILITY_SUBMERSIBLE,
                Drive.SINGLE_PHASE,
                ratings(120.0, 4.8, 10.0, 40.0),
                THIRD_HORSE);
    }

    Model trash() {
        return model(
                "Two-inch trash",
                PumpKind.ENGINE_TRASH,
                Drive.ENGINE,
                Ratings.NONE,
                0,
                90,
                70,
                80,
                120,
                62,
                165,
                30,
                185,
                0);
    }

    private static Ratings ratings(
            @Nullable Double volts, @Nullable Double amps, @Nullable Double solidsMm, @Nullable Double maxLiquidC) {
        return new Ratings(volts, 60.0, amps, null, null, null, null, null, null, null, solidsMm, maxLiquidC);
    }

    Model model(String name, PumpKind kind, Drive drive, Ratings ratings, double... gpmAndFeet) {
        List<CurvePoint> points = new ArrayList<>();
        for (int i = 0; i < gpmAndFeet.length; i += 2) {
            points.add(new CurvePoint(gpmAndFeet[i] * GPM, gpmAndFeet[i + 1] * FT));
        }
        return pumps.modelNamed(name)
                .orElseGet(() -> pumps.addModel(
                        new ModelDraft(name, kind, drive, false, ratings, CurveForm.TABLE, points, 0.05, null, null),
                        me));
    }

    Unit unit(String tag, Model model) {
        return pumps.register(
                new UnitDraft(tag, null, model.id(), null, LocalDate.of(2024, 1, 1), null), Whereabouts.at(siteId), me);
    }

    /** A third-horse unit whose tests, a day apart, find this much of the rated head at 15 and at 28 gpm. */
    Unit worn(String tag, double headFactor, Instant tested) {
        Unit unit = unit(tag, thirdHorse());
        test(unit, 15, 22 * headFactor, tested);
        test(unit, 28, 16 * headFactor, tested.plusSeconds(3600));
        return unit;
    }

    /** 20 gal, timed without a hose at a lift that is the whole head. */
    long test(Unit unit, double gpm, double feet, Instant at) {
        double seconds = 60 * 20 / gpm;
        return readings.recordFlowTest(
                new FlowTestDraft(
                        unit.id(),
                        at,
                        "R-1",
                        new FlowTestDraft.Container(20 * GAL, 0.2 * GAL, 0.25, null),
                        List.of(seconds, seconds + 0.2, seconds - 0.2),
                        feet * FT,
                        null,
                        0.03,
                        15,
                        null,
                        1,
                        List.of(),
                        118.0,
                        4.4,
                        null,
                        null),
                me);
    }
}
