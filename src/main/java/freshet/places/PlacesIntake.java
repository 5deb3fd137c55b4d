package freshet.places;

import freshet.people.Refused;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Takes in many rows at once; what stands like that already is left alone. Runs in the door's transaction. */
@Component
class PlacesIntake {

    private final JdbcClient jdbc;
    private final EntityManager entities;
    private final SiteRepository sites;
    private final CustomerRepository customers;

    PlacesIntake(JdbcClient jdbc, EntityManager entities, SiteRepository sites, CustomerRepository customers) {
        this.jdbc = jdbc;
        this.entities = entities;
        this.sites = sites;
        this.customers = customers;
    }

    Intake customers(List<CustomerDraft> drafts) {
        check(drafts, (prefix, draft) -> PlaceChecks.of(prefix, draft), CustomerDraft::name);
        entities.flush();
        // xmax is 0 only in a row that this statement made
        List<Boolean> added = jdbc.sql("""
                        insert into customer as kept (name, phone, note)
                        select * from unnest(:names::text[], :phones::text[], :notes::text[])
                        on conflict (lower(name)) do update
                            set name = excluded.name, phone = excluded.phone, note = excluded.note, version = kept.version + 1
                            where (kept.name, kept.phone, kept.note)
                                is distinct from (excluded.name, excluded.phone, excluded.note)
                        returning xmax = 0""")
                .param("names", texts(drafts, CustomerDraft::name))
                .param("phones", texts(drafts, CustomerDraft::phone))
                .param("notes", texts(drafts, CustomerDraft::note))
                .query(Boolean.class)
                .list();
        entities.clear();
        return counts(drafts.size(), added);
    }

    Intake positions(List<PositionDraft> drafts) {
        check(drafts, (prefix, draft) -> PlaceChecks.of(prefix, draft), draft -> draft.siteId() + " " + draft.name());
        entities.flush();
        List<Boolean> added = jdbc.sql("""
                        insert into position as kept (site_id, name, kind, note)
                        select * from unnest(:sites::bigint[], :names::text[], :kinds::text[], :notes::text[])
                        on conflict (site_id, lower(name)) do update
                            set name = excluded.name, kind = excluded.kind, note = excluded.note, version = kept.version + 1
                            where (kept.name, kept.kind, kept.note) is distinct from (excluded.name, excluded.kind, excluded.note)
                        returning xmax = 0""")
                .param("sites", drafts.stream().map(PositionDraft::siteId).toArray(Long[]::new))
                .param("names", texts(drafts, PositionDraft::name))
                .param("kinds", texts(drafts, draft -> draft.kind().name()))
                .param("notes", texts(drafts, PositionDraft::note))
                .query(Boolean.class)
                .list();
        entities.clear();
        return counts(drafts.size(), added);
    }

    SitesIntake sites(List<SiteDraft> drafts) {
        check(drafts, (prefix, draft) -> PlaceChecks.of(prefix, draft), SiteDraft::name);
        Map<String, StoredSite> known = new HashMap<>();
        sites.inOrder().forEach(site -> known.put(site.seen().name().toLowerCase(Locale.ROOT), site));
        Map<Long, StoredCustomer> owners = customers.inOrder().stream()
                .collect(Collectors.toMap(owner -> owner.seen().id(), Function.identity()));
        Refused.ifAny(IntStream.range(0, drafts.size())
                .filter(row -> drafts.get(row).customerId() != null
                        && !owners.containsKey(drafts.get(row).customerId()))
                .mapToObj(row -> Refused.Wrong.at("rows[" + row + "].customerId", "places.customer.unknown"))
                .toList());
        Map<StoredSite, Site> before = new HashMap<>();
        List<StoredSite> kept = new ArrayList<>();
        for (SiteDraft draft : drafts) {
            StoredSite site = known.get(draft.name().toLowerCase(Locale.ROOT));
            if (site == null) {
                site = new StoredSite();
            } else {
                before.put(site, site.seen());
            }
            kept.add(keep(site, draft, draft.customerId() == null ? null : owners.get(draft.customerId())));
        }
        sites.flush();
        return compared(kept, before);
    }

    /** Saves a site; other windows alone make a new version of the site too. */
    StoredSite keep(StoredSite site, SiteDraft draft, @Nullable StoredCustomer owner) {
        boolean windowsChanged = site.become(draft, owner);
        if (windowsChanged && entities.contains(site)) {
            entities.lock(site, LockModeType.PESSIMISTIC_FORCE_INCREMENT);
        }
        return sites.save(site);
    }

    private static SitesIntake compared(List<StoredSite> kept, Map<StoredSite, Site> before) {
        Set<Long> planning = new HashSet<>();
        int added = 0;
        int changed = 0;
        for (StoredSite site : kept) {
            Site old = before.get(site);
            Site now = site.seen();
            if (old == null) {
                added++;
            } else if (!old.equals(now)) {
                changed++;
                if (planningChanged(old, now)) {
                    planning.add(now.id());
                }
            }
        }
        return new SitesIntake(new Intake(added, changed, kept.size() - added - changed), planning);
    }

    /** Whether other days than before may be due at the site. */
    static boolean planningChanged(Site before, Site after) {
        return !before.zone().equals(after.zone())
                || !Set.copyOf(before.windows()).equals(Set.copyOf(after.windows()));
    }

    private interface Check<T> {
        List<Refused.Wrong> of(String prefix, T draft);
    }

    private static <T> void check(List<T> drafts, Check<T> check, Function<T, String> name) {
        List<Refused.Wrong> wrongs = new ArrayList<>();
        IntStream.range(0, drafts.size())
                .forEach(row -> wrongs.addAll(check.of("rows[" + row + "].", drafts.get(row))));
        wrongs.addAll(PlaceChecks.twice(drafts.stream().map(name).toList()));
        Refused.ifAny(wrongs);
    }

    private static <T> String[] texts(List<T> drafts, Function<T, @Nullable String> of) {
        return drafts.stream().map(of).toArray(String[]::new);
    }

    private static Intake counts(int all, List<Boolean> added) {
        int isNew = (int) added.stream().filter(one -> one).count();
        return new Intake(isNew, added.size() - isNew, all - added.size());
    }
}
