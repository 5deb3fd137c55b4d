package freshet.places;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import freshet.FreshetTest;
import freshet.measures.UnitSystem;
import freshet.people.NotFound;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import java.time.MonthDay;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.context.event.ApplicationEvents;
import org.springframework.test.context.event.RecordApplicationEvents;

@FreshetTest
@RecordApplicationEvents
class PlacesTests {

    private static final ZoneId CHICAGO = ZoneId.of("America/Chicago");

    @Autowired
    Places places;

    @Autowired
    People people;

    @Autowired
    ApplicationEvents events;

    Person me;

    @BeforeEach
    void signIn() {
        me = people.welcomeFirstOwner("ilse", "Ilse Marrow", "thaw-comes-early", UnitSystem.US);
    }

    private static WindowDraft opening(String name, int fromMonth, int fromDay, int toMonth, int toDay) {
        return new WindowDraft(
                null, WindowKind.OPENING, name, MonthDay.of(fromMonth, fromDay), MonthDay.of(toMonth, toDay));
    }

    private static SiteDraft yard(WindowDraft... windows) {
        return new SiteDraft("Brackenfold Pump Yard", CHICAGO, "Quay 3", null, List.of(windows));
    }

    private static SiteDraft again(Site site, List<WindowDraft> windows) {
        return new SiteDraft(site.name(), site.zone(), site.address(), site.customerId(), windows);
    }

    @Test
    void keepsASiteWithItsCustomerAndWindows() {
        Customer customer = places.addCustomer(new CustomerDraft("Quillmere Lettings", "555 0134", null), me);
        Site site = places.addSite(
                new SiteDraft(
                        "Dyer Court", CHICAGO, null, customer.id(), List.of(opening("Spring opening", 2, 15, 3, 31))),
                me);

        Site found = places.site(site.id());
        assertThat(found).isEqualTo(site);
        assertThat(found.customerName()).isEqualTo("Quillmere Lettings");
        assertThat(found.windows()).singleElement().satisfies(window -> {
            assertThat(window.siteId()).isEqualTo(site.id());
            assertThat(window.from()).isEqualTo(MonthDay.of(2, 15));
        });
        assertThat(places.siteNamed("dyer court")).contains(found);
        assertThat(places.sites()).containsExactly(found);
    }

    @Test
    void takesOneNameOnceWhateverItsCase() {
        places.addSite(yard(), me);

        assertThatThrownBy(() ->
                        places.addSite(new SiteDraft("BRACKENFOLD pump yard", CHICAGO, null, null, List.of()), me))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.wrongs())
                                .containsExactly(
                                        Refused.Wrong.at("name", "places.site.nameTaken", "BRACKENFOLD pump yard")));
    }

    @Test
    void keepsTheIdOfAWindowWhoseDaysChange() {
        Site site = places.addSite(yard(opening("First", 2, 1, 2, 20), opening("Second", 9, 1, 9, 20)), me);
        Window first = site.windows().get(0);

        Site changed = places.changeSite(
                site.id(),
                site.version(),
                again(
                        site,
                        List.of(
                                opening("first", 2, 5, 2, 29),
                                new WindowDraft(
                                        null, WindowKind.CLOSING, "Second", MonthDay.of(9, 1), MonthDay.of(9, 20)))),
                me);

        assertThat(changed.windows()).hasSize(2);
        assertThat(changed.windows().get(0).id()).isEqualTo(first.id());
        assertThat(changed.windows().get(0).to()).isEqualTo(MonthDay.of(2, 29));
        assertThat(changed.windows().get(1).id())
                .isNotIn(first.id(), site.windows().get(1).id());
        assertThat(places.site(site.id())).isEqualTo(changed);
    }

    @Test
    void makesANewVersionWhenOnlyADayOfAWindowChanged() {
        Site site = places.addSite(yard(opening("Opening", 2, 1, 2, 20)), me);
        places.changeSite(site.id(), site.version(), again(site, List.of(opening("Opening", 2, 1, 2, 21))), me);

        assertThatThrownBy(() -> places.changeSite(site.id(), site.version(), again(site, List.of()), me))
                .isInstanceOf(Stale.class);
        assertThat(places.site(site.id()).windows()).hasSize(1);
    }

    @Test
    void tellsWhoPlansWhenWindowsOrZoneChange() {
        Site site = places.addSite(yard(opening("Opening", 2, 1, 2, 20)), me);
        Site renamed =
                places.changeSite(site.id(), site.version(), new SiteDraft("Yard", CHICAGO, null, null, null), me);
        assertThat(renamed.windows()).hasSize(1);
        assertThat(events.stream(SitesChanged.class)).isEmpty();

        places.changeSite(
                site.id(), renamed.version(), new SiteDraft("Yard", ZoneId.of("America/Denver"), null, null, null), me);
        assertThat(events.stream(SitesChanged.class))
                .hasSize(1)
                .allSatisfy(event -> assertThat(event.siteIds()).containsExactly(site.id()));
    }

    @Test
    void refusesWindowsOfOneKindThatOverlapButNotOfTwoKinds() {
        WindowDraft winter =
                new WindowDraft(null, WindowKind.RUNNING, "Winter", MonthDay.of(11, 1), MonthDay.of(3, 31));
        places.addSite(yard(opening("Spring", 3, 1, 4, 1), opening("Autumn", 9, 1, 10, 1), winter), me);

        assertThatThrownBy(() -> places.addSite(
                        new SiteDraft(
                                "Other",
                                CHICAGO,
                                null,
                                null,
                                List.of(opening("Turn of the year", 12, 1, 1, 15), opening("January", 1, 15, 1, 20))),
                        me))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.wrongs())
                                .containsExactly(Refused.Wrong.at(
                                        "windows[1].fromDay", "places.window.overlaps", "Turn of the year")));
    }

    @Test
    void keepsPositionsOfASiteApartByName() {
        Site site = places.addSite(yard(), me);
        Position pit = places.addPosition(new PositionDraft(site.id(), "North pit", PositionKind.PIT, null), me);

        assertThat(places.positions(site.id())).containsExactly(pit);
        assertThatThrownBy(() ->
                        places.addPosition(new PositionDraft(site.id(), "north PIT", PositionKind.WELL, null), me))
                .isInstanceOf(Refused.class);
        Site other = places.addSite(new SiteDraft("Other", CHICAGO, null, null, null), me);
        places.addPosition(new PositionDraft(other.id(), "North pit", PositionKind.PIT, null), me);
        assertThatThrownBy(() -> places.changePosition(
                        pit.id(), pit.version() + 1, new PositionDraft(site.id(), "Pit", PositionKind.PIT, null), me))
                .isInstanceOf(Stale.class);
    }

    @Test
    void knowsNoUnknownId() {
        assertThatThrownBy(() -> places.site(404)).isInstanceOf(NotFound.class);
        assertThatThrownBy(() -> places.customer(404)).isInstanceOf(NotFound.class);
        assertThatThrownBy(() -> places.addPosition(new PositionDraft(404, "Pit", PositionKind.PIT, null), me))
                .isInstanceOf(NotFound.class);
        assertThatThrownBy(() -> places.addSite(new SiteDraft("Yard", CHICAGO, null, 404L, null), me))
                .isInstanceOf(Refused.class);
    }

    @Test
    void takesInManyCustomersAndSitesAndPositionsOnce() {
        List<CustomerDraft> customers = new ArrayList<>();
        for (int i = 0; i < 300; i++) {
            customers.add(new CustomerDraft("Customer " + i, i % 2 == 0 ? null : "555 01" + i, null));
        }
        assertThat(places.takeInCustomers(customers, me)).isEqualTo(new Intake(300, 0, 0));
        assertThat(places.takeInCustomers(customers, me)).isEqualTo(new Intake(0, 0, 300));
        customers.set(7, new CustomerDraft("CUSTOMER 7", "555 0199", "gate code at the office"));
        customers.add(new CustomerDraft("One more", null, null));
        assertThat(places.takeInCustomers(customers, me)).isEqualTo(new Intake(1, 1, 299));
        Customer seventh = places.customerNamed("customer 7").orElseThrow();
        assertThat(seventh.note()).isEqualTo("gate code at the office");
        assertThat(seventh.version()).isEqualTo(1);

        SiteDraft first = new SiteDraft("Site 1", CHICAGO, null, seventh.id(), List.of(opening("Opening", 2, 1, 3, 1)));
        SiteDraft second = new SiteDraft("Site 2", CHICAGO, null, null, null);
        assertThat(places.takeInSites(List.of(first, second), me)).isEqualTo(new Intake(2, 0, 0));
        assertThat(places.takeInSites(List.of(first, second), me)).isEqualTo(new Intake(0, 0, 2));
        SiteDraft later = new SiteDraft("site 1", CHICAGO, null, seventh.id(), List.of(opening("Opening", 2, 1, 3, 2)));
        assertThat(places.takeInSites(List.of(later, second), me)).isEqualTo(new Intake(0, 1, 1));
        Site site = places.siteNamed("Site 1").orElseThrow();
        assertThat(events.stream(SitesChanged.class)).containsExactly(new SitesChanged(java.util.Set.of(site.id())));

        List<PositionDraft> pits = List.of(
                new PositionDraft(site.id(), "Pit 1", PositionKind.PIT, null),
                new PositionDraft(site.id(), "Pit 2", PositionKind.PIT, "lid is heavy"));
        assertThat(places.takeInPositions(pits, me)).isEqualTo(new Intake(2, 0, 0));
        assertThat(places.takeInPositions(pits, me)).isEqualTo(new Intake(0, 0, 2));
        assertThat(places.positions(site.id())).extracting(Position::note).containsExactly(null, "lid is heavy");
    }

    @Test
    void takesInNothingWhenOneRowIsWrong() {
        assertThatThrownBy(() -> places.takeInCustomers(
                        List.of(
                                new CustomerDraft("Good", null, null),
                                new CustomerDraft(" ", null, null),
                                new CustomerDraft("GOOD", null, null)),
                        me))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.wrongs())
                                .extracting(Refused.Wrong::field)
                                .containsExactly("rows[1].name", "rows[2].name"));
        assertThat(places.customers()).isEmpty();
    }
}
