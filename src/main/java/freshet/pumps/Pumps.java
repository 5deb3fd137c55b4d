package freshet.pumps;

import freshet.people.NotFound;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import freshet.places.Intake;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The register of models and units: what they are, where they stand, what goes with them. */
@Service
@Transactional
public class Pumps {

    private final ModelKeeper models;
    private final UnitRepository units;
    private final StandRepository stands;
    private final UnitRows rows;
    private final UnitsIntake intake;
    private final KitsIntake kits;
    private final Ground ground;
    private final People people;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Pumps(
            ModelKeeper models,
            UnitRepository units,
            StandRepository stands,
            UnitRows rows,
            UnitsIntake intake,
            KitsIntake kits,
            Ground ground,
            People people,
            ApplicationEventPublisher events,
            Clock clock) {
        this.models = models;
        this.units = units;
        this.stands = stands;
        this.rows = rows;
        this.intake = intake;
        this.kits = kits;
        this.ground = ground;
        this.people = people;
        this.events = events;
        this.clock = clock;
    }

    @Transactional(readOnly = true)
    public Model model(long id) {
        return models.stored(id).seen();
    }

    /** All models by name. */
    @Transactional(readOnly = true)
    public List<Model> models() {
        return models.all();
    }

    @Transactional(readOnly = true)
    public Optional<Model> modelNamed(String name) {
        return models.named(name);
    }

    public Model addModel(ModelDraft draft, Person by) {
        Model kept = models.keep(new StoredModel(), draft);
        people.note(by, "model added", "model:" + kept.id(), kept.name());
        return kept;
    }

    /** Changes a model, unless somebody did since the given version. */
    public Model changeModel(long id, int version, ModelDraft draft, Person by) {
        StoredModel model = models.stored(id);
        stale(model.version() != version, "model", id);
        Model before = model.seen();
        Model after = models.keep(model, draft);
        people.note(by, "model changed", "model:" + id, after.name());
        changed(models.unitsToPlanAgain(before, after));
        return after;
    }

    /** Takes in many models by name; all or none. Wrongs name {@code rows[0].name} and so on. */
    public Intake takeInModels(List<ModelDraft> drafts, Person by) {
        Set<Long> toPlan = new HashSet<>();
        Intake done = models.takeIn(drafts, toPlan);
        people.note(by, "models taken in", "models", done.toString());
        changed(toPlan);
        return done;
    }

    @Transactional(readOnly = true)
    public Unit unit(long id) {
        return rows.units(List.of(id)).stream().findFirst().orElseThrow(() -> new NotFound("unit", id));
    }

    @Transactional(readOnly = true)
    public Optional<Unit> unitTagged(String tag) {
        return rows.idTagged(tag).map(this::unit);
    }

    /** The units with these tags, by tag; a tag that nobody has is left out. */
    @Transactional(readOnly = true)
    public List<Unit> unitsTagged(Collection<String> tags) {
        return rows.units(rows.idsTagged(tags));
    }

    /** The units of these ids, by tag; an id that nobody has is left out. */
    @Transactional(readOnly = true)
    public List<Unit> units(Collection<Long> ids) {
        return rows.units(ids);
    }

    /** Every unit that is not retired, by tag. */
    @Transactional(readOnly = true)
    public List<Long> activeUnitIds() {
        return rows.activeIds();
    }

    /** Every unit that ever was in care, retired ones too, by tag; of one model, or of all. */
    @Transactional(readOnly = true)
    public List<Long> everyUnitId(@Nullable Long modelId) {
        return rows.everyId(modelId);
    }

    /** Registers a unit; it stands at its place from the start of its first day in care there. */
    public Unit register(UnitDraft draft, Whereabouts at, Person by) {
        LocalDate today = ground.today(at, clock);
        List<Refused.Wrong> wrongs = new ArrayList<>(UnitChecks.unit("", draft, today));
        wrongs.addAll(ground.wrongs(at));
        wrongs.addAll(ground.wrongs(draft));
        Refused.ifAny(wrongs);
        StoredUnit unit = save(new StoredUnit(), draft);
        Instant since = draft.inCareFrom().atStartOfDay(ground.zone(at)).toInstant();
        stands.saveAndFlush(new StoredStand(unit.id(), at, since, null, by.id()));
        people.note(by, "unit registered", "unit:" + unit.id(), draft.tag());
        changed(Set.of(unit.id()));
        return unit(unit.id());
    }

    /** Changes what is written about a unit, unless somebody did since the given version; moves are made by {@link #move}. */
    public Unit changeUnit(long id, int version, UnitDraft draft, Person by) {
        StoredUnit unit = stored(id, version);
        List<Refused.Wrong> wrongs = new ArrayList<>(
                UnitChecks.unit("", draft, ground.today(stands.now(id).at(), clock)));
        wrongs.addAll(ground.wrongs(draft));
        Refused.ifAny(wrongs);
        boolean plansOtherwise = unit.plansOtherwiseThan(draft);
        save(unit, draft);
        people.note(by, "unit changed", "unit:" + id, draft.tag());
        if (plansOtherwise) {
            changed(Set.of(id));
        }
        return unit(id);
    }

    /** Writes down that a unit stands elsewhere since a moment (to the minute): not before its last move, not in the future. */
    public Unit move(long id, Whereabouts to, Instant since, @Nullable String note, Person by) {
        StoredUnit unit = units.held(id).orElseThrow(() -> new NotFound("unit", id));
        StoredStand now = stands.now(id);
        Instant at = since.truncatedTo(ChronoUnit.MINUTES);
        List<Refused.Wrong> wrongs = new ArrayList<>(ground.wrongs(to));
        Texts.length("note", note, Texts.LINE, wrongs);
        if (unit.retired()) {
            wrongs.add(Refused.Wrong.at("", "pumps.move.retired"));
        } else if (to.equals(now.at())) {
            wrongs.add(Refused.Wrong.at("place", "pumps.move.nowhere"));
        }
        if (at.isAfter(clock.instant())) {
            wrongs.add(Refused.Wrong.at("since", "pumps.move.future"));
        } else if (at.isBefore(now.since())) {
            wrongs.add(Refused.Wrong.at("since", "pumps.move.beforeLast"));
        }
        Refused.ifAny(wrongs);
        now.end(at);
        // the index of open stands wants the old one ended first
        stands.saveAndFlush(now);
        stands.saveAndFlush(new StoredStand(id, to, at, note, by.id()));
        people.note(by, "unit moved", "unit:" + id, ground.named(to));
        changed(Set.of(id));
        return unit(id);
    }

    /** Every stand of a unit, newest first. */
    @Transactional(readOnly = true)
    public List<Stand> stands(long unitId) {
        return rows.stands(unitId);
    }

    /** Takes a unit out of care for good; its records stay, and its tag stays taken. */
    public Unit retire(long id, int version, LocalDate on, String why, Person by) {
        StoredUnit unit = stored(id, version);
        List<Refused.Wrong> wrongs = new ArrayList<>();
        if (unit.retired()) {
            wrongs.add(Refused.Wrong.at("", "pumps.retire.already"));
        }
        if (on.isAfter(ground.today(stands.now(id).at(), clock))) {
            wrongs.add(Refused.Wrong.at("retiredOn", "pumps.retire.future"));
        } else if (on.isBefore(unit.inCareFrom())) {
            wrongs.add(Refused.Wrong.at("retiredOn", "pumps.retire.beforeCare"));
        }
        if (why.isBlank()) {
            wrongs.add(Refused.Wrong.at("retiredWhy", "pumps.missing"));
        }
        Texts.length("retiredWhy", why, Texts.LINE, wrongs);
        Refused.ifAny(wrongs);
        unit.retire(on, why);
        units.saveAndFlush(unit);
        people.note(by, "unit retired", "unit:" + id, why);
        changed(Set.of(id));
        return unit(id);
    }

    /** Takes a unit that was retired by mistake into care again. */
    public Unit bringBack(long id, int version, Person by) {
        StoredUnit unit = stored(id, version);
        unit.comeBack();
        units.saveAndFlush(unit);
        people.note(by, "unit brought back", "unit:" + id, null);
        changed(Set.of(id));
        return unit(id);
    }

    /** Replaces the list of what goes with a unit, unless somebody changed the unit since the given version. */
    public Unit changeKit(long id, int version, List<KitItem> items, Person by) {
        StoredUnit unit = stored(id, version);
        Refused.ifAny(UnitChecks.kit(items));
        unit.carry(items);
        units.saveAndFlush(unit);
        people.note(by, "kit changed", "unit:" + id, null);
        return unit(id);
    }

    /**
     * Takes in many units by tag, all or none: new ones are registered, others changed, and moved as of now where the place is
     * another. Wrongs name {@code rows[0].tag} and so on.
     */
    public Intake takeInUnits(List<UnitArrival> arrivals, Person by) {
        Set<Long> toPlan = new HashSet<>();
        Intake done = intake.takeIn(arrivals, by, toPlan);
        people.note(by, "units taken in", "units", done.toString());
        changed(toPlan);
        return done;
    }

    /** Replaces what goes with many units, all or none. Wrongs name {@code rows[0].items[2].bore} and so on. */
    public Intake takeInKits(List<Kit> arrivals, Person by) {
        Intake done = kits.takeIn(arrivals);
        people.note(by, "kits taken in", "units", done.toString());
        return done;
    }

    private StoredUnit save(StoredUnit unit, UnitDraft draft) {
        unit.become(draft);
        return ModelKeeper.unique(
                "pump_unit_tag", "tag", "pumps.tag.taken", draft.tag(), () -> units.saveAndFlush(unit));
    }

    private StoredUnit stored(long id, int version) {
        StoredUnit unit = units.findById(id).orElseThrow(() -> new NotFound("unit", id));
        stale(unit.version() != version, "unit", id);
        return unit;
    }

    private static void stale(boolean isStale, String what, long id) {
        if (isStale) {
            throw new Stale(what, id);
        }
    }

    private void changed(Collection<Long> unitIds) {
        if (!unitIds.isEmpty()) {
            events.publishEvent(new UnitsChanged(Set.copyOf(unitIds)));
        }
    }
}
