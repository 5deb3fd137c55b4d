package freshet.places;

import freshet.people.NotFound;
import freshet.people.People;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.people.Stale;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.orm.ObjectOptimisticLockingFailureException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The register of customers, sites and positions. */
@Service
@Transactional
public class Places {

    private final CustomerRepository customers;
    private final SiteRepository sites;
    private final PositionRepository positions;
    private final PlacesIntake intake;
    private final People people;
    private final ApplicationEventPublisher events;

    Places(
            CustomerRepository customers,
            SiteRepository sites,
            PositionRepository positions,
            PlacesIntake intake,
            People people,
            ApplicationEventPublisher events) {
        this.customers = customers;
        this.sites = sites;
        this.positions = positions;
        this.intake = intake;
        this.people = people;
        this.events = events;
    }

    @Transactional(readOnly = true)
    public Customer customer(long id) {
        return storedCustomer(id).seen();
    }

    /** All customers by name. */
    @Transactional(readOnly = true)
    public List<Customer> customers() {
        return customers.inOrder().stream().map(StoredCustomer::seen).toList();
    }

    @Transactional(readOnly = true)
    public Optional<Customer> customerNamed(String name) {
        return customers.named(name.strip()).map(StoredCustomer::seen);
    }

    public Customer addCustomer(CustomerDraft draft, Person by) {
        return keepCustomer(new StoredCustomer(), draft, "customer added", by);
    }

    /** Changes a customer, unless somebody did since the given version. */
    public Customer changeCustomer(long id, int version, CustomerDraft draft, Person by) {
        StoredCustomer customer = storedCustomer(id);
        stale(customer.version() != version, "customer", id);
        return keepCustomer(customer, draft, "customer changed", by);
    }

    private Customer keepCustomer(StoredCustomer customer, CustomerDraft draft, String done, Person by) {
        Refused.ifAny(PlaceChecks.of("", draft));
        customer.become(draft);
        Customer kept = unique(
                "customer_name",
                "places.customer.nameTaken",
                draft.name(),
                () -> customers.saveAndFlush(customer).seen());
        people.note(by, done, "customer:" + kept.id(), kept.name());
        return kept;
    }

    /** Takes in many customers by name; all or none. Wrongs name {@code rows[0].name} and so on. */
    public Intake takeInCustomers(List<CustomerDraft> drafts, Person by) {
        Intake done = intake.customers(drafts);
        people.note(by, "customers taken in", "customers", done.toString());
        return done;
    }

    @Transactional(readOnly = true)
    public Site site(long id) {
        return storedSite(id).seen();
    }

    /** All sites by name. */
    @Transactional(readOnly = true)
    public List<Site> sites() {
        return sites.inOrder().stream().map(StoredSite::seen).toList();
    }

    @Transactional(readOnly = true)
    public Map<Long, Site> sites(Collection<Long> ids) {
        return sites.among(Set.copyOf(ids)).stream()
                .map(StoredSite::seen)
                .collect(Collectors.toMap(Site::id, Function.identity(), (a, b) -> a, LinkedHashMap::new));
    }

    @Transactional(readOnly = true)
    public Optional<Site> siteNamed(String name) {
        return sites.named(name.strip()).map(StoredSite::seen);
    }

    public Site addSite(SiteDraft draft, Person by) {
        Site kept = keepSite(new StoredSite(), draft);
        people.note(by, "site added", "site:" + kept.id(), kept.name());
        return kept;
    }

    /** Changes a site, unless somebody did since the given version. */
    public Site changeSite(long id, int version, SiteDraft draft, Person by) {
        StoredSite site = storedSite(id);
        stale(site.version() != version, "site", id);
        Site before = site.seen();
        Site after = keepSite(site, draft);
        people.note(by, "site changed", "site:" + id, after.name());
        if (PlacesIntake.planningChanged(before, after)) {
            events.publishEvent(new SitesChanged(Set.of(id)));
        }
        return after;
    }

    private Site keepSite(StoredSite site, SiteDraft draft) {
        Refused.ifAny(PlaceChecks.of("", draft));
        @Nullable StoredCustomer owner = ownerOf(draft.customerId());
        return unique("site_name", "places.site.nameTaken", draft.name(), () -> {
            StoredSite kept = intake.keep(site, draft, owner);
            sites.flush();
            return kept.seen();
        });
    }

    private @Nullable StoredCustomer ownerOf(@Nullable Long customerId) {
        return customerId == null
                ? null
                : customers
                        .findById(customerId)
                        .orElseThrow(() -> Refused.because("customerId", "places.customer.unknown"));
    }

    /** Takes in many sites by name; all or none. */
    public Intake takeInSites(List<SiteDraft> drafts, Person by) {
        SitesIntake done = intake.sites(drafts);
        people.note(by, "sites taken in", "sites", done.counts().toString());
        if (!done.planningChanged().isEmpty()) {
            events.publishEvent(new SitesChanged(done.planningChanged()));
        }
        return done.counts();
    }

    @Transactional(readOnly = true)
    public Position position(long id) {
        return storedPosition(id).seen();
    }

    /** All positions, grouped by site, by name. */
    @Transactional(readOnly = true)
    public List<Position> positions() {
        return positions.inOrder().stream().map(StoredPosition::seen).toList();
    }

    @Transactional(readOnly = true)
    public List<Position> positions(long siteId) {
        return positions.at(siteId).stream().map(StoredPosition::seen).toList();
    }

    public Position addPosition(PositionDraft draft, Person by) {
        storedSite(draft.siteId());
        return keepPosition(new StoredPosition(), draft, "position added", by);
    }

    /** Changes a position, unless somebody did since the given version; it stays at its site. */
    public Position changePosition(long id, int version, PositionDraft draft, Person by) {
        StoredPosition position = storedPosition(id);
        stale(position.version() != version, "position", id);
        if (position.seen().siteId() != draft.siteId()) {
            throw Refused.because("siteId", "places.position.stays");
        }
        return keepPosition(position, draft, "position changed", by);
    }

    private Position keepPosition(StoredPosition position, PositionDraft draft, String done, Person by) {
        Refused.ifAny(PlaceChecks.of("", draft));
        position.become(draft);
        Position kept = unique(
                "position_name",
                "places.position.nameTaken",
                draft.name(),
                () -> positions.saveAndFlush(position).seen());
        people.note(by, done, "position:" + kept.id(), kept.name());
        return kept;
    }

    /** Takes in many positions by site and name; all or none. */
    public Intake takeInPositions(List<PositionDraft> drafts, Person by) {
        Intake done = intake.positions(drafts);
        people.note(by, "positions taken in", "positions", done.toString());
        return done;
    }

    private StoredCustomer storedCustomer(long id) {
        return customers.findById(id).orElseThrow(() -> new NotFound("customer", id));
    }

    private StoredSite storedSite(long id) {
        return sites.findById(id).orElseThrow(() -> new NotFound("site", id));
    }

    private StoredPosition storedPosition(long id) {
        return positions.findById(id).orElseThrow(() -> new NotFound("position", id));
    }

    private static void stale(boolean isStale, String what, long id) {
        if (isStale) {
            throw new Stale(what, id);
        }
    }

    /** Saves, and says it at the name when the database's unique index says no. */
    private static <T> T unique(String index, String code, String name, Supplier<T> saving) {
        try {
            return saving.get();
        } catch (ObjectOptimisticLockingFailureException meanwhile) {
            throw new Stale(index, name);
        } catch (DataIntegrityViolationException violation) {
            if (String.valueOf(violation.getMostSpecificCause().getMessage()).contains("\"" + index + "\"")) {
                throw Refused.because("name", code, name);
            }
            throw violation;
        }
    }
}
