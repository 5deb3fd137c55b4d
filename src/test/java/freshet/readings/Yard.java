package freshet.readings;

import freshet.measures.UnitSystem;
import freshet.people.People;
import freshet.people.Person;
import freshet.places.Places;
import freshet.places.SiteDraft;
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
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;

/** A small yard in a river town for the tests of this room: one site, models and units on request. */
final class Yard {

    static final ZoneId ZONE = ZoneId.of("America/Chicago");

    /** The curve of the reference case FT-02. */
    static final List<CurvePoint> FT_02 = List.of(
            new CurvePoint(0, 11.2),
            new CurvePoint(2, 10.3),
            new CurvePoint(4, 9.1),
            new CurvePoint(6, 7.5),
            new CurvePoint(8, 5.6),
            new CurvePoint(10, 3.3),
            new CurvePoint(11.4, 1.5));

    static final String PASSWORD = "thaw-comes-early";

    final Person me;
    final long siteId;
    private final Pumps pumps;

    Yard(People people, Places places, Pumps pumps, UnitSystem system) {
        this.pumps = pumps;
        me = people.welcomeFirstOwner("ilse", "Ilse Marrow", PASSWORD, system);
        siteId = places.addSite(new SiteDraft("Brackenfold Pump Yard", ZONE, null, null, List.of()), me)
                .id();
    }

    ModelDraft model(String name, double curveUncertainty, Ratings ratings, List<CurvePoint> points) {
        return new ModelDraft(
                name,
                PumpKind.UTILITY_SUBMERSIBLE,
                Drive.SINGLE_PHASE,
                false,
                ratings,
                CurveForm.TABLE,
                points,
                curveUncertainty,
                null,
                null);
    }

    Unit unit(String tag, ModelDraft model) {
        long modelId = pumps.modelNamed(model.name())
                .orElseGet(() -> pumps.addModel(model, me))
                .id();
        return pumps.register(
                new UnitDraft(tag, null, modelId, null, LocalDate.of(2025, 1, 1), null), Whereabouts.at(siteId), me);
    }

    Unit unit(String tag) {
        return unit(tag, model("Plain third-horse", 0.05, Ratings.NONE, FT_02));
    }
}
