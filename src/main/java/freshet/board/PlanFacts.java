package freshet.board;

import freshet.happenings.HappeningKind;
import freshet.places.Places;
import freshet.places.Site;
import freshet.pumps.PumpKind;
import freshet.readings.MeterKind;
import freshet.readings.MeterLog;
import freshet.readings.Readings;
import freshet.rules.CareRule;
import freshet.rules.Measure;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Reads all that planning has to know of many units, in a number of statements that does not depend on how many. */
@Component
class PlanFacts {

    private static final String UNITS = """
            select u.id, u.model_id, m.kind, u.in_care_from, u.retired_on is not null as retired, st.site_id, st.position_id
            from pump_unit u join pump_model m on m.id = u.model_id
            cross join lateral (select * from stand where unit_id = u.id and until is null limit 1) st
            where u.id = any(:units) order by u.id
            """;

    // a record stands when no other corrects it
    private static final String WORKS = """
            select t.id, t.unit_id, t.position_id, t.rule_id, t.checklist_id, t.occurrence, t.opens_on, t.due_on, r.ended_at, s.zone
            from task t
            join service_record r on r.task_id = t.id and not exists (select 1 from service_record n where n.corrects_id = r.id)
            join site s on s.id = t.site_id
            where t.state = 'SIGNED' and (t.unit_id = any(:units) or t.position_id = any(:positions))
            order by r.ended_at, t.id
            """;

    private static final String EFFECTS = """
            select r.unit_id, r.ended_at, c.effect
            from service_record r
            join checklist_version v on v.id = r.checklist_version_id
            join checklist c on c.id = v.checklist_id and c.effect <> 'NONE'
            where r.unit_id = any(:units) and not exists (select 1 from service_record n where n.corrects_id = r.id)
            order by r.ended_at, r.id
            """;

    private static final String HAPPENINGS = """
            select h.unit_id, h.id, h.kind, h.happened_at from happening h
            where h.unit_id = any(:units) and h.withdrawn_at is null
            union all
            select st.unit_id, h.id, h.kind, h.happened_at
            from happening h join stand st on st.site_id = h.site_id and st.unit_id = any(:units)
              and st.since <= h.happened_at and (st.until is null or st.until > h.happened_at)
            where h.withdrawn_at is null and h.happened_at > :since
            union all
            select st.unit_id, h.id, h.kind, h.happened_at
            from happening h join stand st on st.position_id = h.position_id and st.unit_id = any(:units)
              and st.since <= h.happened_at and (st.until is null or st.until > h.happened_at)
            where h.withdrawn_at is null and h.happened_at > :since
            order by happened_at, id
            """;

    private static final String STANDS = """
            select unit_id, id, site_id, position_id, since from stand
            where unit_id = any(:units) and (until is null or until > since) order by unit_id, since, id
            """;

    private static final String OPEN = "select * from task where state = 'OPEN' and unit_id = any(:units) order by id";

    private static final String BESIDE = """
            select st.unit_id, st.position_id from stand st join pump_unit u on u.id = st.unit_id and u.retired_on is null
            where st.until is null and st.position_id = any(:positions)
            """;

    private static final String POSITIONS = """
            select st.position_id, min(greatest(cast(st.since at time zone s.zone as date), u.in_care_from)) as first_day
            from stand st join site s on s.id = st.site_id join pump_unit u on u.id = st.unit_id
            where st.position_id = any(:positions) group by st.position_id
            """;

    private static final String TESTED =
            "select unit_id, max(at) as at from flow_test where withdrawn_at is null and unit_id = any(:units) group by unit_id";

    private final Places places;
    private final Readings readings;
    private final Figures figures;
    private final JdbcClient jdbc;
    private final Clock clock;

    PlanFacts(Places places, Readings readings, Figures figures, JdbcClient jdbc, Clock clock) {
        this.places = places;
        this.readings = readings;
        this.figures = figures;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** A unit and where it stands. */
    record Standing(
            long id,
            long modelId,
            PumpKind kind,
            LocalDate inCareFrom,
            boolean retired,
            long siteId,
            @Nullable Long positionId) {}

    private record Effect(Instant at, boolean proves) {}

    private record Stood(long id, long siteId, @Nullable Long positionId, Instant since) {}

    /** What was read of a set of units. */
    record Loaded(
            List<Standing> units,
            Map<Long, List<OpenTask>> open,
            Map<Long, SiteDays> sites,
            Map<Long, List<Work>> works,
            Map<Long, List<Work>> positionWorks,
            Map<Long, LocalDate> positionSince,
            Map<Long, List<Effect>> effects,
            Map<Long, List<Occasion>> happenings,
            Map<Long, List<Stood>> stands,
            Map<Long, Instant> tested,
            Map<Long, Series> hours,
            Map<Long, Series> starts,
            Map<Long, Map<Measure, List<Figure>>> figures) {

        UnitFacts facts(Standing unit) {
            SiteDays site = Objects.requireNonNull(sites.get(unit.siteId()));
            long id = unit.id();
            Long position = unit.positionId();
            List<Occasion> happened = happenings.getOrDefault(id, List.of());
            List<Effect> itsEffects = effects.getOrDefault(id, List.of());
            Instant proved = itsEffects.stream()
                    .filter(Effect::proves)
                    .map(Effect::at)
                    .reduce((before, last) -> last)
                    .orElse(null);
            Series itsHours = hours.getOrDefault(id, Series.NEVER_READ);
            Series itsStarts = starts.getOrDefault(id, Series.NEVER_READ);
            Occasion hire = happened.stream()
                    .filter(each -> isHire(each.kind()))
                    .reduce((before, last) -> last)
                    .orElse(null);
            LocalDate used = Stream.of(
                            itsHours.lastRise(),
                            itsStarts.lastRise(),
                            tested.containsKey(id) ? site.day(tested.get(id)) : null,
                            hire == null ? null : hire.day(),
                            proved == null ? null : site.day(proved))
                    .filter(Objects::nonNull)
                    .max(Comparator.naturalOrder())
                    .orElse(null);
            return new UnitFacts(
                    unit.inCareFrom(),
                    site,
                    position,
                    position == null ? null : positionSince.get(position),
                    works.getOrDefault(id, List.of()),
                    position == null ? List.of() : positionWorks.getOrDefault(position, List.of()),
                    storage(itsEffects, site),
                    hire != null && hire.kind() == HappeningKind.HIRE_OUT,
                    used,
                    proved,
                    itsHours,
                    itsStarts,
                    happened,
                    moves(stands.getOrDefault(id, List.of()), site),
                    figures.getOrDefault(id, Map.of()));
        }

        private static boolean isHire(@Nullable HappeningKind kind) {
            return kind == HappeningKind.HIRE_OUT || kind == HappeningKind.HIRE_RETURN;
        }

        private static Storage storage(List<Effect> effects, SiteDays site) {
            List<Storage.Stretch> stretches = new ArrayList<>();
            Instant laidUp = null;
            for (Effect effect : effects) {
                if (effect.proves() && laidUp != null) {
                    stretches.add(new Storage.Stretch(laidUp, site.day(laidUp), effect.at(), site.day(effect.at())));
                    laidUp = null;
                } else if (!effect.proves() && laidUp == null) {
                    laidUp = effect.at();
                }
            }
            if (laidUp != null) {
                stretches.add(new Storage.Stretch(laidUp, site.day(laidUp), null, null));
            }
            return stretches.isEmpty() ? Storage.NEVER : new Storage(stretches);
        }

        private static List<Occasion> moves(List<Stood> stands, SiteDays site) {
            List<Occasion> moves = new ArrayList<>();
            for (int i = 1; i < stands.size(); i++) {
                Stood before = stands.get(i - 1);
                Stood after = stands.get(i);
                if (before.siteId() != after.siteId() || !Objects.equals(before.positionId(), after.positionId())) {
                    moves.add(new Occasion(after.id(), null, after.since(), site.day(after.since())));
                }
            }
            return moves;
        }
    }

    Loaded load(List<Long> unitIds, Map<Long, CareRule> rules) {
        Long[] ids = unitIds.toArray(Long[]::new);
        List<Standing> units = ask(UNITS, ids).query((row, n) -> standing(row)).list();
        Long[] positions = units.stream()
                .map(Standing::positionId)
                .filter(Objects::nonNull)
                .distinct()
                .toArray(Long[]::new);
        Map<Long, SiteDays> sites = sites(units);
        Map<Long, SiteDays> siteOf = new HashMap<>();
        units.forEach(unit -> siteOf.put(unit.id(), Objects.requireNonNull(sites.get(unit.siteId()))));
        Map<Long, List<Work>> positionWorks = new HashMap<>();
        Map<Long, Set<Long>> beside = beside(positions);
        Set<Long> read = new HashSet<>(unitIds);
        beside.values().forEach(read::addAll);
        Map<Long, Instant> tested = tested(ids);
        Map<Long, Series> hours = series(MeterKind.RUN_HOURS, read, siteOf);
        Map<Long, Series> starts = series(MeterKind.STARTS, unitIds, siteOf);
        return new Loaded(
                units,
                open(ids),
                sites,
                works(ids, positions, rules, positionWorks),
                positionWorks,
                positionSince(positions),
                effects(ids),
                happenings(ids, siteOf),
                stands(ids),
                tested,
                hours,
                starts,
                figures.of(units, tested.keySet(), rules.values(), siteOf, hours, starts, beside));
    }

    private JdbcClient.StatementSpec ask(String statement, Long[] ids) {
        return jdbc.sql(statement).param("units", ids);
    }

    private static Standing standing(ResultSet row) throws SQLException {
        return new Standing(
                row.getLong("id"),
                row.getLong("model_id"),
                PumpKind.valueOf(row.getString("kind")),
                row.getObject("in_care_from", LocalDate.class),
                row.getBoolean("retired"),
                row.getLong("site_id"),
                row.getObject("position_id", Long.class));
    }

    private Map<Long, SiteDays> sites(List<Standing> units) {
        Map<Long, SiteDays> days = new HashMap<>();
        Set<Long> ids = new HashSet<>();
        units.forEach(unit -> ids.add(unit.siteId()));
        if (!ids.isEmpty()) {
            for (Site site : places.sites(ids).values()) {
                days.put(site.id(), new SiteDays(site.zone(), site.today(clock), site.windows()));
            }
        }
        return days;
    }

    private Map<Long, List<OpenTask>> open(Long[] ids) {
        Map<Long, List<OpenTask>> open = new HashMap<>();
        ask(OPEN, ids).query(row -> {
            open.computeIfAbsent(row.getLong("unit_id"), id -> new ArrayList<>())
                    .add(openTask(row));
        });
        return open;
    }

    private static OpenTask openTask(ResultSet row) throws SQLException {
        return new OpenTask(
                row.getLong("id"),
                row.getObject("rule_id", Long.class),
                row.getString("occurrence"),
                row.getLong("site_id"),
                row.getObject("position_id", Long.class),
                row.getObject("checklist_id", Long.class),
                row.getString("title"),
                Why.of(row),
                row.getObject("opens_on", LocalDate.class),
                row.getObject("due_on", LocalDate.class),
                row.getBoolean("predicted"),
                row.getInt("grace_days"),
                row.getObject("started_at") != null);
    }

    private Map<Long, List<Work>> works(
            Long[] ids, Long[] positions, Map<Long, CareRule> rules, Map<Long, List<Work>> byPosition) {
        Map<Long, List<Work>> byUnit = new HashMap<>();
        ask(WORKS, ids).param("positions", positions).query(row -> {
            CareRule rule = rules.get(row.getLong("rule_id"));
            Instant at = instant(row, "ended_at");
            Work work = new Work(
                    row.getLong("id"),
                    rule == null ? Work.NO_RULE : rule.id(),
                    row.getString("occurrence"),
                    rule == null ? "" : rule.job(),
                    rule == null ? Set.of() : rule.covers(),
                    row.getObject("opens_on", LocalDate.class),
                    row.getObject("due_on", LocalDate.class),
                    at,
                    LocalDate.ofInstant(at, ZoneId.of(row.getString("zone"))),
                    row.getLong("checklist_id"));
            byUnit.computeIfAbsent(row.getLong("unit_id"), id -> new ArrayList<>())
                    .add(work);
            Long position = row.getObject("position_id", Long.class);
            if (position != null) {
                byPosition.computeIfAbsent(position, id -> new ArrayList<>()).add(work);
            }
        });
        return byUnit;
    }

    private Map<Long, LocalDate> positionSince(Long[] positions) {
        Map<Long, LocalDate> since = new HashMap<>();
        jdbc.sql(POSITIONS).param("positions", positions).query(row -> {
            since.put(row.getLong("position_id"), row.getObject("first_day", LocalDate.class));
        });
        return since;
    }

    /** The units in care of each position, where there are several. */
    private Map<Long, Set<Long>> beside(Long[] positions) {
        Map<Long, Set<Long>> beside = new HashMap<>();
        jdbc.sql(BESIDE).param("positions", positions).query(row -> {
            beside.computeIfAbsent(row.getLong("position_id"), id -> new HashSet<>())
                    .add(row.getLong("unit_id"));
        });
        beside.values().removeIf(those -> those.size() < 2);
        return beside;
    }

    private Map<Long, List<Effect>> effects(Long[] ids) {
        Map<Long, List<Effect>> effects = new HashMap<>();
        ask(EFFECTS, ids).query(row -> {
            effects.computeIfAbsent(row.getLong("unit_id"), id -> new ArrayList<>())
                    .add(new Effect(
                            instant(row, "ended_at"), row.getString("effect").equals("PROVES")));
        });
        return effects;
    }

    private Map<Long, List<Occasion>> happenings(Long[] ids, Map<Long, SiteDays> siteOf) {
        Map<Long, List<Occasion>> happenings = new HashMap<>();
        Instant since = clock.instant().minus(Duration.ofDays(SiteDays.DAYS_AHEAD + 3));
        ask(HAPPENINGS, ids).param("since", since.atOffset(ZoneOffset.UTC)).query(row -> {
            long unit = row.getLong("unit_id");
            SiteDays site = siteOf.get(unit);
            if (site == null) {
                return;
            }
            Instant at = instant(row, "happened_at");
            happenings
                    .computeIfAbsent(unit, id -> new ArrayList<>())
                    .add(new Occasion(
                            row.getLong("id"), HappeningKind.valueOf(row.getString("kind")), at, site.day(at)));
        });
        return happenings;
    }

    private Map<Long, List<Stood>> stands(Long[] ids) {
        Map<Long, List<Stood>> stands = new HashMap<>();
        ask(STANDS, ids).query(row -> {
            stands.computeIfAbsent(row.getLong("unit_id"), id -> new ArrayList<>(1))
                    .add(new Stood(
                            row.getLong("id"),
                            row.getLong("site_id"),
                            row.getObject("position_id", Long.class),
                            instant(row, "since")));
        });
        return stands;
    }

    private Map<Long, Instant> tested(Long[] ids) {
        Map<Long, Instant> tested = new HashMap<>();
        ask(TESTED, ids).query(row -> {
            tested.put(row.getLong("unit_id"), instant(row, "at"));
        });
        return tested;
    }

    /** Days are those of the unit's own site; a unit beside it is only compared by its hours. */
    private Map<Long, Series> series(MeterKind kind, Collection<Long> ids, Map<Long, SiteDays> siteOf) {
        Map<Long, Series> series = new HashMap<>();
        for (MeterLog log : readings.logs(kind, ids)) {
            SiteDays site = siteOf.get(log.unitId());
            List<Series.Point> points = log.lines().stream()
                    .filter(line -> line.lifetime() != null)
                    .map(line -> new Series.Point(
                            line.at(),
                            site == null ? LocalDate.ofInstant(line.at(), ZoneOffset.UTC) : site.day(line.at()),
                            Objects.requireNonNull(line.lifetime()).doubleValue()))
                    .toList();
            series.put(log.unitId(), new Series(points));
        }
        return series;
    }

    private static Instant instant(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }
}
