package freshet.pumps;

import static freshet.people.Refused.Wrong.at;

import freshet.people.Person;
import freshet.people.Refused;
import freshet.places.Customer;
import freshet.places.Intake;
import freshet.places.Places;
import freshet.places.Position;
import freshet.places.Site;
import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.stereotype.Component;

/** Takes in many units at once with a handful of statements. Runs in the door's transaction. */
@Component
class UnitsIntake {

    private static final int MANY = 500;

    private final JdbcClient jdbc;
    private final EntityManager entities;
    private final Places places;
    private final ModelRepository models;
    private final Clock clock;

    UnitsIntake(JdbcClient jdbc, EntityManager entities, Places places, ModelRepository models, Clock clock) {
        this.jdbc = jdbc;
        this.entities = entities;
        this.places = places;
        this.models = models;
        this.clock = clock;
    }

    /** Takes the units in, and adds to {@code touched} those that are new, changed or moved. */
    Intake takeIn(List<UnitArrival> arrivals, Person by, Set<Long> touched) {
        entities.flush();
        Map<Long, Site> sites = places.sites().stream().collect(Collectors.toMap(Site::id, Function.identity()));
        check(arrivals, sites);
        List<Kept> kept = keepUnits(arrivals.stream().map(UnitArrival::unit).toList());
        kept.forEach(unit -> touched.add(unit.id()));
        touched.addAll(endStands(arrivals));
        openStands(arrivals, sites, by);
        entities.clear();
        if (touched.size() >= MANY) {
            // what is planned for them now is asked of tables that the database believes to be as small as before
            jdbc.sql("analyze pump_unit, stand").update();
        }
        int added = (int) kept.stream().filter(Kept::added).count();
        return new Intake(added, touched.size() - added, arrivals.size() - touched.size());
    }

    private record Kept(long id, boolean added) {}

    private List<Kept> keepUnits(List<UnitDraft> drafts) {
        // xmax is 0 only in a row that this statement made
        return jdbc.sql("""
                        insert into pump_unit as kept (tag, serial, model_id, customer_id, in_care_from, note)
                        select * from unnest(:tags::text[], :serials::text[], :models::bigint[], :customers::bigint[],
                                             :days::text[]::date[], :notes::text[])
                        on conflict (lower(tag)) do update
                            set tag = excluded.tag, serial = excluded.serial, model_id = excluded.model_id,
                                customer_id = excluded.customer_id, in_care_from = excluded.in_care_from,
                                note = excluded.note, version = kept.version + 1
                            where (kept.tag, kept.serial, kept.model_id, kept.customer_id, kept.in_care_from, kept.note)
                                is distinct from (excluded.tag, excluded.serial, excluded.model_id, excluded.customer_id,
                                                  excluded.in_care_from, excluded.note)
                        returning id, xmax = 0 as added""")
                .param("tags", texts(drafts, UnitDraft::tag))
                .param("serials", texts(drafts, UnitDraft::serial))
                .param("models", drafts.stream().map(UnitDraft::modelId).toArray(Long[]::new))
                .param("customers", drafts.stream().map(UnitDraft::customerId).toArray(Long[]::new))
                .param("days", texts(drafts, draft -> draft.inCareFrom().toString()))
                .param("notes", texts(drafts, UnitDraft::note))
                .query((row, n) -> new Kept(row.getLong("id"), row.getBoolean("added")))
                .list();
    }

    private static final String ARRIVED = """
            (select u.id as unit_id, r.site_id, r.position_id, r.spot, r.since
             from unnest(:tags::text[], :sites::bigint[], :positions::bigint[], :spots::text[], :since::text[]::timestamptz[])
                  as r (tag, site_id, position_id, spot, since)
             join pump_unit u on lower(u.tag) = lower(r.tag)) r""";

    /** Ends the stands of units that stand elsewhere now. */
    private List<Long> endStands(List<UnitArrival> arrivals) {
        return arrived("update stand s set until = :now::timestamptz from " + ARRIVED + """
                                 where s.unit_id = r.unit_id and s.until is null
                                   and (s.site_id, s.position_id, s.spot) is distinct from (r.site_id, r.position_id, r.spot)
                                returning s.unit_id""", arrivals, Map.of())
                .query(Long.class)
                .list();
    }

    /** Gives units without an open stand one: new ones since their first day in care, moved ones since now. */
    private void openStands(List<UnitArrival> arrivals, Map<Long, Site> sites, Person by) {
        arrived(
                        "insert into stand (unit_id, site_id, position_id, spot, since, moved_by)"
                                + """
                                 select r.unit_id, r.site_id, r.position_id, r.spot,
                                        case when exists (select from stand s where s.unit_id = r.unit_id)
                                             then :now::timestamptz else r.since end,
                                        :by
                                from """ + ARRIVED
                                + " where not exists (select from stand s where s.unit_id = r.unit_id and s.until is null)",
                        arrivals,
                        sites)
                .param("by", by.id())
                .update();
    }

    private StatementSpec arrived(String sql, List<UnitArrival> arrivals, Map<Long, Site> sites) {
        return jdbc.sql(sql)
                .param("now", clock.instant().truncatedTo(ChronoUnit.MINUTES).toString())
                .param("tags", texts(arrivals, arrival -> arrival.unit().tag()))
                .param(
                        "sites",
                        arrivals.stream().map(arrival -> arrival.at().siteId()).toArray(Long[]::new))
                .param(
                        "positions",
                        arrivals.stream()
                                .map(arrival -> arrival.at().positionId())
                                .toArray(Long[]::new))
                .param("spots", texts(arrivals, arrival -> arrival.at().spot()))
                .param("since", texts(arrivals, arrival -> firstMoment(arrival, sites)));
    }

    private static @Nullable String firstMoment(UnitArrival arrival, Map<Long, Site> sites) {
        Site site = sites.get(arrival.at().siteId());
        return site == null
                ? null
                : arrival.unit()
                        .inCareFrom()
                        .atStartOfDay(site.zone())
                        .toInstant()
                        .toString();
    }

    private void check(List<UnitArrival> arrivals, Map<Long, Site> sites) {
        Map<Long, Position> positions =
                places.positions().stream().collect(Collectors.toMap(Position::id, Function.identity()));
        Set<Long> customers = places.customers().stream().map(Customer::id).collect(Collectors.toSet());
        Set<Long> known =
                models.findAll().stream().map(model -> model.seen().id()).collect(Collectors.toSet());
        Set<String> retired = new HashSet<>(jdbc.sql("select lower(tag) from pump_unit where retired_on is not null")
                .query(String.class)
                .list());
        Set<String> tags = new HashSet<>();
        Instant now = clock.instant();
        List<Refused.Wrong> wrongs = new ArrayList<>();
        for (int row = 0; row < arrivals.size(); row++) {
            UnitDraft unit = arrivals.get(row).unit();
            Whereabouts at = arrivals.get(row).at();
            String prefix = "rows[" + row + "].";
            Site site = sites.get(at.siteId());
            LocalDate today = site == null ? LocalDate.MAX : LocalDate.ofInstant(now, site.zone());
            wrongs.addAll(UnitChecks.unit(prefix, unit, today));
            wrongs.addAll(UnitChecks.place(prefix, at, site, positions.get(at.positionId())));
            if (!known.contains(unit.modelId())) {
                wrongs.add(at(prefix + "modelId", "pumps.model.unknown"));
            }
            if (unit.customerId() != null && !customers.contains(unit.customerId())) {
                wrongs.add(at(prefix + "customer", "pumps.customer.unknown"));
            }
            String key = unit.tag().toLowerCase(Locale.ROOT);
            if (!tags.add(key)) {
                wrongs.add(at(prefix + "tag", "pumps.rowTwice", unit.tag()));
            } else if (retired.contains(key)) {
                wrongs.add(at(prefix + "tag", "pumps.rowRetired", unit.tag()));
            }
        }
        Refused.ifAny(wrongs);
    }

    private static <T> @Nullable String[] texts(List<T> list, Function<T, @Nullable String> of) {
        return list.stream().map(of).toArray(String[]::new);
    }
}
