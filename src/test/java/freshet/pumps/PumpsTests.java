package freshet.pumps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import freshet.FreshetTest;
import freshet.TestClock;
import freshet.measures.UnitSystem;
import freshet.people.NotFound;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import freshet.places.Intake;
import freshet.places.Places;
import freshet.places.Position;
import freshet.places.PositionDraft;
import freshet.places.PositionKind;
import freshet.places.Site;
import freshet.places.SiteDraft;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.context.event.ApplicationEvents;
import org.springframework.test.context.event.RecordApplicationEvents;

@FreshetTest
@RecordApplicationEvents
class PumpsTests {

    @Autowired
    Pumps pumps;

    @Autowired
    Places places;

    @Autowired
    People people;

    @Autowired
    TestClock clock;

    @Autowired
    ApplicationEvents events;

    Person me;
    Site yard;
    Site court;
    Model model;

    @BeforeEach
    void aYardAndAModel() {
        clock.set("2026-03-14T20:00:00Z");
        me = people.welcomeFirstOwner("ilse", "Ilse Marrow", "thaw-comes-early", UnitSystem.US);
        yard = places.addSite(new SiteDraft("Yard", ZoneId.of("America/Chicago"), null, null, null), me);
        court = places.addSite(new SiteDraft("Dyer Court", ZoneId.of("Pacific/Auckland"), null, null, null), me);
        model = pumps.addModel(model("Utility 1/3 hp").build(), me);
    }

    private static ModelBuilder model(String name) {
        return new ModelBuilder(name);
    }

    private UnitDraft draft(String tag) {
        return new UnitDraft(tag, null, model.id(), null, LocalDate.of(2026, 3, 1), null);
    }

    private Unit registered(String tag) {
        return pumps.register(draft(tag), Whereabouts.at(yard.id()), me);
    }

    private static void assertWrong(Throwable refused, String field, String code) {
        assertThat(((Refused) refused).wrongs())
                .anySatisfy(wrong ->
                        assertThat(List.of(wrong.field(), wrong.code())).containsExactly(field, code));
    }

    private void assertRefused(ModelDraft draft, String field, String code) {
        assertThatThrownBy(() -> pumps.addModel(draft, me))
                .isInstanceOfSatisfying(Refused.class, refused -> assertWrong(refused, field, code));
    }

    @Test
    void keepsAModelWithItsCurve() {
        Model found = pumps.model(model.id());

        assertThat(found).isEqualTo(model);
        assertThat(found.ratings()).isEqualTo(Ratings.NONE);
        assertThat(found.curve().shutOffHeadM()).isEqualTo(7.62);
        assertThat(found.curve().headAt(3.4)).isEqualTo(6.7);
        assertThat(pumps.modelNamed("utility 1/3 HP")).contains(found);
        assertThat(pumps.models()).containsExactly(found);
    }

    @Test
    void makesAParabolaOfTwoParameters() {
        Model parabola = pumps.addModel(model("Open").twoParameters(8, 10).build(), me);

        assertThat(pumps.model(parabola.id()).curve().headAt(5)).isCloseTo(6, within(1e-12));
        assertThat(parabola.points()).hasSize(2);
    }

    @Test
    void refusesACurveThatRisesNamingItsRow() {
        assertRefused(model("Hump").points(0, 8, 2, 8.2, 5, 3).build(), "points[1].head", "pumps.curve.rises");
    }

    @Test
    void refusesACurveThatCrossesItselfNamingItsRow() {
        assertRefused(model("Back").points(0, 8, 5, 6, 4, 5).build(), "points[2].flow", "pumps.curve.crosses");
        assertRefused(model("Late").points(1, 8, 5, 6).build(), "points[0].flow", "pumps.curve.startsAtZero");
        assertRefused(model("One").points(0, 8).build(), "points", "pumps.curve.count");
    }

    /** A sheet's 2,520 gal/h typed as gal/min is asked about; once the motor is known it is refused. */
    @Test
    void catchesGallonsAnHourTakenForGallonsAMinute() {
        ModelDraft mistaken = model("gph").points(0, 7.62, 286, 4, 572, 0).build();
        assertThat(mistaken.doubts()).extracting(Refused.Wrong::code).containsExactly("pumps.unusual.points.flow");

        assertRefused(
                model("gph").points(0, 7.62, 286, 4, 572, 0).powerW(250).build(), "points", "pumps.curve.morePower");
        assertThat(model("right")
                        .points(0, 7.62, 4.8, 4, 9.5, 0)
                        .powerW(250)
                        .build()
                        .doubts())
                .isEmpty();
    }

    @Test
    void refusesWhatNoSmallPumpCanBe() {
        assertRefused(model("big").points(0, 7.62, 1200, 0).build(), "points[1].flow", "pumps.impossible.points.flow");
        assertRefused(model("hp").powerW(746 * 60).build(), "powerW", "pumps.impossible.powerW");
    }

    @Test
    void takesAModelNameOnce() {
        assertRefused(model("UTILITY 1/3 hp").build(), "name", "pumps.model.nameTaken");
    }

    @Test
    void refusesAModelThatWasChangedMeanwhile() {
        pumps.changeModel(
                model.id(), model.version(), model("Utility").points(0, 8, 9, 0).build(), me);

        assertThatThrownBy(() -> pumps.changeModel(
                        model.id(), model.version(), model("Other").build(), me))
                .isInstanceOf(Stale.class);
        assertThat(pumps.model(model.id()).name()).isEqualTo("Utility");
        assertThat(pumps.model(model.id()).points()).hasSize(2);
    }

    @Test
    void registersAUnitThatStandsSinceItsFirstDayInCareAtThePlace() {
        Unit unit = pumps.register(draft("BF-07"), new Whereabouts(court.id(), null, "Bay 2"), me);

        assertThat(unit.stand().since()).isEqualTo("2026-02-28T11:00:00Z");
        assertThat(unit.stand().siteName()).isEqualTo("Dyer Court");
        assertThat(unit.model()).isEqualTo(model);
        assertThat(pumps.unitTagged(" bf-07")).contains(unit);
        assertThat(pumps.activeUnitIds()).containsExactly(unit.id());
        assertThat(events.stream(UnitsChanged.class)).containsExactly(new UnitsChanged(Set.of(unit.id())));
    }

    @Test
    void takesATagOnceWhateverItsCase() {
        registered("BF-07");

        assertThatThrownBy(() -> registered("bf-07"))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.wrongs())
                                .containsExactly(Refused.Wrong.at("tag", "pumps.tag.taken", "bf-07")));
    }

    @Test
    void refusesAFirstDayInCareThatIsTomorrowThere() {
        // 20:00 on the 14th in UTC is the 15th in Auckland, and still the 14th in Chicago
        UnitDraft tomorrow = new UnitDraft("BF-1", null, model.id(), null, LocalDate.of(2026, 3, 15), null);
        pumps.register(tomorrow, Whereabouts.at(court.id()), me);

        assertThatThrownBy(() -> pumps.register(
                        new UnitDraft("BF-2", null, model.id(), null, LocalDate.of(2026, 3, 15), null),
                        Whereabouts.at(yard.id()),
                        me))
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertWrong(refused, "inCareFrom", "pumps.inCareFrom.future"));
    }

    @Test
    void refusesWhatDoesNotExistAtItsField() {
        Position pit = places.addPosition(new PositionDraft(court.id(), "Pit", PositionKind.PIT, null), me);

        assertThatThrownBy(() -> pumps.register(
                        new UnitDraft("B 7", null, 404, 404L, LocalDate.of(2026, 3, 1), null),
                        new Whereabouts(yard.id(), pit.id(), null),
                        me))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.wrongs())
                                .extracting(Refused.Wrong::field)
                                .containsExactly("tag", "place", "modelId", "customer"));
        assertThatThrownBy(() -> pumps.unit(404)).isInstanceOf(NotFound.class);
        assertThatThrownBy(() -> pumps.model(404)).isInstanceOf(NotFound.class);
        assertThatThrownBy(() -> pumps.move(404, Whereabouts.at(yard.id()), clock.instant(), null, me))
                .isInstanceOf(NotFound.class);
    }

    @Test
    void keepsTheHistoryOfMoves() {
        Unit unit = registered("BF-07");
        Instant moved = Instant.parse("2026-03-10T15:30:20Z");
        Unit after = pumps.move(unit.id(), new Whereabouts(court.id(), null, "Cellar"), moved, "storm", me);

        assertThat(after.stand().spot()).isEqualTo("Cellar");
        assertThat(after.stand().note()).isEqualTo("storm");
        assertThat(pumps.stands(unit.id())).hasSize(2).satisfies(stands -> {
            assertThat(stands.get(0)).isEqualTo(after.stand());
            assertThat(stands.get(1).until()).isEqualTo("2026-03-10T15:30:00Z");
            assertThat(stands.get(1).siteName()).isEqualTo("Yard");
        });
    }

    @Test
    void refusesAMoveBeforeTheLastOneOrInTheFutureOrToWhereItStands() {
        Unit unit = registered("BF-07");
        Instant now = clock.instant();
        pumps.move(unit.id(), Whereabouts.at(court.id()), now.minus(Duration.ofDays(2)), null, me);

        assertThatThrownBy(
                        () -> pumps.move(unit.id(), Whereabouts.at(yard.id()), now.minus(Duration.ofDays(3)), null, me))
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertWrong(refused, "since", "pumps.move.beforeLast"));
        assertThatThrownBy(() ->
                        pumps.move(unit.id(), Whereabouts.at(yard.id()), now.plus(Duration.ofMinutes(1)), null, me))
                .isInstanceOfSatisfying(Refused.class, refused -> assertWrong(refused, "since", "pumps.move.future"));
        assertThatThrownBy(() -> pumps.move(unit.id(), Whereabouts.at(court.id()), now, null, me))
                .isInstanceOfSatisfying(Refused.class, refused -> assertWrong(refused, "place", "pumps.move.nowhere"));
        assertThat(pumps.stands(unit.id())).hasSize(2);
    }

    @Test
    void countsRetiredUnitsAmongThoseThatEverWereInCare() {
        Unit kept = registered("BF-02");
        Unit retired = registered("BF-01");
        pumps.retire(retired.id(), retired.version(), LocalDate.of(2026, 3, 14), "shaft bent", me);
        long other = pumps.addModel(model("Another").build(), me).id();
        Unit ofAnother = pumps.register(
                new UnitDraft("BF-03", null, other, null, LocalDate.of(2026, 3, 1), null),
                Whereabouts.at(yard.id()),
                me);
        assertThat(pumps.everyUnitId(null)).containsExactly(retired.id(), kept.id(), ofAnother.id());
        assertThat(pumps.everyUnitId(model.id())).containsExactly(retired.id(), kept.id());
        assertThat(pumps.everyUnitId(999_999L)).isEmpty();
    }

    @Test
    void retiresAUnitAndBringsItBack() {
        Unit unit = registered("BF-07");

        assertThatThrownBy(() -> pumps.retire(unit.id(), unit.version(), LocalDate.of(2026, 2, 1), "sold", me))
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertWrong(refused, "retiredOn", "pumps.retire.beforeCare"));
        Unit retired = pumps.retire(unit.id(), unit.version(), LocalDate.of(2026, 3, 14), "shaft bent", me);
        assertThat(retired.retired()).isTrue();
        assertThat(pumps.activeUnitIds()).isEmpty();
        assertThatThrownBy(() -> pumps.move(unit.id(), Whereabouts.at(court.id()), clock.instant(), null, me))
                .isInstanceOf(Refused.class);

        assertThat(pumps.bringBack(unit.id(), retired.version(), me).retired()).isFalse();
        assertThat(pumps.activeUnitIds()).containsExactly(unit.id());
    }

    @Test
    void replacesTheKitInItsOrder() {
        Unit unit = registered("BF-07");
        List<KitItem> kit = List.of(
                new KitItem(KitKind.ADAPTER, "1½ to 1 in", 38.1, 25.4, null, 1),
                new KitItem(KitKind.HOSE, "Garden hose", 25.4, null, 15.24, 2));
        Unit carrying = pumps.changeKit(unit.id(), unit.version(), kit, me);
        assertThat(carrying.kit()).isEqualTo(kit);

        Unit without = pumps.changeKit(unit.id(), carrying.version(), kit.subList(1, 2), me);
        assertThat(without.kit()).isEqualTo(kit.subList(1, 2));
        assertThatThrownBy(() -> pumps.changeKit(unit.id(), carrying.version(), List.of(), me))
                .isInstanceOf(Stale.class);
    }

    @Test
    void tellsWhoPlansWhenAModelBecomesAnotherKindOfPump() {
        Unit unit = registered("BF-07");
        registeredOfAnotherModel();
        events.clear();

        Model renamed =
                pumps.changeModel(model.id(), model.version(), model("New name").build(), me);
        assertThat(events.stream(UnitsChanged.class)).isEmpty();
        pumps.changeModel(
                model.id(),
                renamed.version(),
                model("New name").kind(PumpKind.SEWAGE).build(),
                me);
        assertThat(events.stream(UnitsChanged.class)).containsExactly(new UnitsChanged(Set.of(unit.id())));
    }

    private void registeredOfAnotherModel() {
        Model other = pumps.addModel(model("Another").build(), me);
        pumps.register(
                new UnitDraft("X-1", null, other.id(), null, LocalDate.of(2026, 3, 1), null),
                Whereabouts.at(yard.id()),
                me);
    }

    @Test
    void takesInTenThousandUnitsOnceAndMovesThoseThatStandElsewhere() {
        List<UnitArrival> arrivals = new ArrayList<>(IntStream.range(0, 10_000)
                .mapToObj(i -> new UnitArrival(draft("T-" + i), new Whereabouts(yard.id(), null, "Rack " + i % 40)))
                .toList());
        Instant start = Instant.now();
        assertThat(pumps.takeInUnits(arrivals, me)).isEqualTo(new Intake(10_000, 0, 0));
        assertThat(pumps.takeInUnits(arrivals, me)).isEqualTo(new Intake(0, 0, 10_000));
        assertThat(Duration.between(start, Instant.now())).isLessThan(Duration.ofSeconds(20));
        assertThat(events.stream(UnitsChanged.class)).hasSize(1);

        arrivals.set(3, new UnitArrival(draft("t-3"), arrivals.get(3).at()));
        arrivals.set(4, new UnitArrival(draft("T-4"), Whereabouts.at(court.id())));
        arrivals.add(new UnitArrival(draft("T-new"), Whereabouts.at(court.id())));
        assertThat(pumps.takeInUnits(arrivals, me)).isEqualTo(new Intake(1, 2, 9_998));

        Unit moved = pumps.unitTagged("T-4").orElseThrow();
        assertThat(moved.stand().since()).isEqualTo(clock.instant());
        assertThat(pumps.stands(moved.id())).hasSize(2);
        assertThat(pumps.unitTagged("T-3").orElseThrow().tag()).isEqualTo("t-3");
        assertThat(pumps.units(pumps.activeUnitIds())).hasSize(10_001);
    }

    @Test
    void takesInNothingWhenOneRowIsWrong() {
        assertThatThrownBy(() -> pumps.takeInUnits(
                        List.of(
                                new UnitArrival(draft("A-1"), Whereabouts.at(yard.id())),
                                new UnitArrival(draft("a-1"), Whereabouts.at(yard.id())),
                                new UnitArrival(draft("A-2"), Whereabouts.at(404))),
                        me))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.wrongs())
                                .extracting(Refused.Wrong::field)
                                .containsExactly("rows[1].tag", "rows[2].place"));
        assertThat(pumps.activeUnitIds()).isEmpty();
    }

    @Test
    void takesInModelsOnce() {
        List<ModelDraft> drafts =
                List.of(model("Utility 1/3 hp").build(), model("Trash 2 in").build());
        assertThat(pumps.takeInModels(drafts, me)).isEqualTo(new Intake(1, 0, 1));
        assertThat(pumps.takeInModels(drafts, me)).isEqualTo(new Intake(0, 0, 2));
        assertThat(pumps.takeInModels(
                        List.of(model("TRASH 2 in").points(0, 9, 12, 0).build()), me))
                .isEqualTo(new Intake(0, 1, 0));
        assertThat(pumps.modelNamed("Trash 2 in").orElseThrow().points()).hasSize(2);
    }
}
