package freshet.hire;

import static freshet.care.CareYard.allPass;

import freshet.TestClock;
import freshet.care.Care;
import freshet.care.CareYard;
import freshet.care.SignOff;
import freshet.care.Task;
import freshet.checklists.Phase;
import freshet.people.Person;
import freshet.pumps.CurveForm;
import freshet.pumps.CurvePoint;
import freshet.pumps.Drive;
import freshet.pumps.KitItem;
import freshet.pumps.KitKind;
import freshet.pumps.Model;
import freshet.pumps.ModelDraft;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Ratings;
import freshet.pumps.Unit;
import freshet.pumps.UnitDraft;
import freshet.pumps.Whereabouts;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.springframework.stereotype.Component;

/** Pumps with their kit that are proven ready, and drafts that are in order, for the tests of the hire desk. */
@Component
class HireYard {

    private final CareYard yard;
    private final Care care;
    private final Pumps pumps;
    private final TestClock clock;

    HireYard(CareYard yard, Care care, Pumps pumps, TestClock clock) {
        this.yard = yard;
        this.care = care;
        this.pumps = pumps;
        this.clock = clock;
    }

    /** A utility submersible at Brackenfold with three pieces, its opening just signed. */
    Unit ready(String tag) {
        return withKit(opened(yard.unit(tag)));
    }

    /** A trash pump that an engine drives, its opening just signed. */
    Unit readyEngine(String tag) {
        Ratings none = new Ratings(null, null, null, null, null, null, null, null, null, null, null, null);
        Model model = pumps.addModel(
                new ModelDraft(
                        "Trash 2 in",
                        PumpKind.ENGINE_TRASH,
                        Drive.ENGINE,
                        false,
                        none,
                        CurveForm.TABLE,
                        List.of(new CurvePoint(0, 27), new CurvePoint(20, 24), new CurvePoint(40, 2)),
                        0.05,
                        null,
                        null),
                yard.ilse());
        UnitDraft draft = new UnitDraft(tag, null, model.id(), null, CareYard.LONG_AGO, null);
        return opened(pumps.register(draft, Whereabouts.at(yard.brackenfold().id()), yard.ilse()));
    }

    private Unit opened(Unit unit) {
        sign(unit, Phase.OPENING, yard.ilse());
        // what is signed and what goes out do not share a minute
        clock.advance(Duration.ofMinutes(10));
        return unit;
    }

    Unit withKit(Unit unit) {
        return pumps.changeKit(
                unit.id(),
                unit.version(),
                List.of(
                        piece(KitKind.STRAINER, "Low-suction screen", 1),
                        piece(KitKind.HOSE, "Discharge hose", 2),
                        piece(KitKind.ROPE, "Lifting rope", 1)),
                yard.ilse());
    }

    private static KitItem piece(KitKind kind, String description, int quantity) {
        return new KitItem(kind, description, null, null, null, quantity);
    }

    /** Signs the task of this phase that is due first, everything passed. */
    void sign(Unit unit, Phase phase, Person by) {
        Task task = care.tasksOf(unit.id()).stream()
                .filter(each -> each.phase() == phase && each.openOn(LocalDate.ofInstant(clock.instant(), each.zone())))
                .min(Comparator.comparing(Task::dueOn))
                .orElseThrow();
        care.sign(task.id(), SignOff.of(task.version(), allPass(care.worksheet(task.id()), by)), by);
    }

    IssueDraft issue(Unit unit, String dueBackOn) {
        return new IssueDraft(
                unit.id(),
                "Ansel Roofing",
                "555 0100",
                clock.instant(),
                LocalDate.parse(dueBackOn),
                null,
                null,
                null,
                "Jo Ferris",
                true,
                EnumSet.allOf(Caution.class),
                Set.of(0, 1));
    }

    ReturnDraft back(Liquid liquid) {
        return new ReturnDraft(clock.instant(), null, null, null, liquid, false, null, Map.of());
    }
}
