package freshet.example;

import freshet.happenings.HappeningKind;
import freshet.places.Places;
import freshet.places.Site;
import freshet.places.Window;
import freshet.places.WindowKind;
import freshet.pumps.Pumps;
import freshet.pumps.Stand;
import freshet.pumps.Unit;
import freshet.readings.FlowTestResult;
import freshet.readings.MeterKind;
import freshet.readings.MeterLog;
import freshet.readings.Readings;
import freshet.rules.Applies;
import freshet.rules.CareRule;
import freshet.rules.CareRules;
import freshet.rules.Measure;
import freshet.rules.Scope;
import freshet.rules.Trigger;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.MonthDay;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * Says which work is open on a day, slowly and simply: unit by unit, rule by rule and trigger by trigger, from the rows of what
 * happened. It knows the rules as they are written for people and nothing of how the product plans; of figures it judges remaining
 * capacity only.
 */
class YearOracle {

    private static final int AHEAD = 366;
    private static final LocalDate NEVER = LocalDate.MAX;

    private final Places places;
    private final Pumps pumps;
    private final Readings readings;
    private final CareRules careRules;
    private final JdbcClient jdbc;

    YearOracle(Places places, Pumps pumps, Readings readings, CareRules careRules, JdbcClient jdbc) {
        this.places = places;
        this.pumps = pumps;
        this.readings = readings;
        this.careRules = careRules;
        this.jdbc = jdbc;
    }

    /** A signed task. */
    private record Work(
            long taskId,
            long unitId,
            @Nullable Long positionId,
            @Nullable String job,
            Set<String> covers,
            long checklistId,
            LocalDate opensOn,
            LocalDate dueOn,
            Instant endedAt,
            LocalDate day) {}

    private record Effect(long unitId, boolean laysUp, Instant at, LocalDate day) {}

    private record Happened(
            long id,
            HappeningKind kind,
            Instant at,
            @Nullable Long siteId,
            @Nullable Long positionId,
            @Nullable Long unitId) {}

    private record Due(String key, LocalDate opensOn, LocalDate dueOn, boolean predicted) {}

    /** Whether the oracle can judge a rule. */
    static boolean judges(CareRule rule) {
        return rule.triggers().stream()
                .noneMatch(trigger ->
                        trigger instanceof Trigger.Condition condition && condition.measure() != Measure.CAPACITY);
    }

    // read again when there is more to read
    private String readAt = "";
    private final Map<String, List<MeterLog.Line>> logs = new HashMap<>();
    private final Map<Long, List<FlowTestResult>> tests = new HashMap<>();
    private final Map<String, LocalDate> firstDays = new HashMap<>();

    /** All open work that nobody has begun, a line each. */
    Set<String> open(Instant now) {
        String mark = jdbc.sql("""
                        select (select count(*) from meter_reading) || ':' || (select count(*) from meter) || ':'
                            || (select count(*) from flow_test)""").query(String.class).single();
        if (!mark.equals(readAt)) {
            logs.clear();
            tests.clear();
            readAt = mark;
        }
        firstDays.clear();
        List<CareRule> rules = careRules.active();
        Map<Long, Site> sites = new HashMap<>();
        places.sites().forEach(site -> sites.put(site.id(), site));
        Map<Long, List<Stand>> stands = new HashMap<>();
        List<Unit> units = pumps.units(pumps.activeUnitIds());
        units.forEach(unit -> stands.put(unit.id(), pumps.stands(unit.id())));
        List<Work> works = works();
        List<Effect> effects = effects();
        List<Happened> happened = happened();
        Set<String> begun = keys("state = 'OPEN' and started_at is not null");
        Set<String> signed = keys("state = 'SIGNED'");
        Set<String> loose = new HashSet<>(
                jdbc.sql("select unit_id || ':' || checklist_id from task where state = 'OPEN' and rule_id is null")
                        .query(String.class)
                        .list());
        Set<String> open = new TreeSet<>();
        for (Unit unit : units) {
            for (CareRule rule : nearest(rules, unit)) {
                if (!judges(rule)) {
                    continue;
                }
                OfUnit its =
                        new OfUnit(unit, rule, sites.get(unit.stand().siteId()), stands, works, effects, happened, now);
                boolean busy = begun.stream().anyMatch(key -> key.startsWith(unit.id() + "|" + rule.id() + "|"))
                        || loose.contains(unit.id() + ":" + rule.checklistId());
                for (Due due : its.wanted(busy)) {
                    String key = unit.id() + "|" + rule.id() + "|" + due.key();
                    if (!signed.contains(key) && !begun.contains(key)) {
                        open.add(line(unit.tag(), rule.code(), due.key(), due.opensOn(), due.dueOn(), due.predicted()));
                    }
                }
            }
        }
        return open;
    }

    static String line(String tag, String rule, String key, LocalDate opensOn, LocalDate dueOn, boolean predicted) {
        return "%s %s %s: %s to %s%s".formatted(tag, rule, key, opensOn, dueOn, predicted ? ", predicted" : "");
    }

    private Set<String> keys(String which) {
        return new HashSet<>(jdbc.sql(
                        "select unit_id || '|' || rule_id || '|' || occurrence from task where rule_id is not null and "
                                + which)
                .query(String.class)
                .list());
    }

    private static List<CareRule> nearest(List<CareRule> rules, Unit unit) {
        Map<String, CareRule> byJob = new HashMap<>();
        for (CareRule rule : rules) {
            if (fits(rule.scope(), unit)) {
                byJob.merge(rule.job(), rule, (one, other) -> {
                    int nearer = one.scope().nearness() - other.scope().nearness();
                    return nearer > 0 || nearer == 0 && one.id() > other.id() ? one : other;
                });
            }
        }
        return List.copyOf(byJob.values());
    }

    private static boolean fits(Scope scope, Unit unit) {
        if (scope instanceof Scope.OfUnit its) {
            return its.unitId() == unit.id();
        } else if (scope instanceof Scope.InPosition its) {
            return unit.stand().positionId() != null
                    && its.positionId() == unit.stand().positionId()
                    && (its.kind() == null || its.kind() == unit.model().kind());
        } else if (scope instanceof Scope.AtSite its) {
            return its.siteId() == unit.stand().siteId()
                    && (its.kind() == null || its.kind() == unit.model().kind());
        } else if (scope instanceof Scope.OfModel its) {
            return its.modelId() == unit.model().id();
        } else if (scope instanceof Scope.OfKind its) {
            return its.kind() == unit.model().kind();
        }
        return true;
    }

    private List<Work> works() {
        return jdbc.sql("""
                        select t.id, t.unit_id, t.position_id, cr.job, array_to_string(cr.covers, ',') as covers, t.checklist_id, t.opens_on,
                               t.due_on, r.ended_at, s.zone
                        from service_record r join task t on t.id = r.task_id join site s on s.id = t.site_id
                        left join care_rule cr on cr.id = t.rule_id
                        where not exists (select 1 from service_record n where n.corrects_id = r.id)
                        order by r.ended_at, t.id""")
                .query((row, n) -> {
                    Instant at = row.getObject("ended_at", OffsetDateTime.class).toInstant();
                    String covers = row.getString("covers");
                    return new Work(
                            row.getLong("id"),
                            row.getLong("unit_id"),
                            row.getObject("position_id", Long.class),
                            row.getString("job"),
                            covers == null ? Set.of() : Set.copyOf(Arrays.asList(covers.split(","))),
                            row.getLong("checklist_id"),
                            row.getObject("opens_on", LocalDate.class),
                            row.getObject("due_on", LocalDate.class),
                            at,
                            LocalDate.ofInstant(at, ZoneId.of(row.getString("zone"))));
                })
                .list();
    }

    private List<Effect> effects() {
        return jdbc.sql("""
                        select r.unit_id, c.effect, r.ended_at, s.zone
                        from service_record r join task t on t.id = r.task_id join site s on s.id = t.site_id
                        join checklist_version v on v.id = r.checklist_version_id join checklist c on c.id = v.checklist_id
                        where c.effect <> 'NONE' and not exists (select 1 from service_record n where n.corrects_id = r.id)
                        order by r.ended_at, r.id""")
                .query((row, n) -> {
                    Instant at = row.getObject("ended_at", OffsetDateTime.class).toInstant();
                    return new Effect(
                            row.getLong("unit_id"),
                            row.getString("effect").equals("LAYS_UP"),
                            at,
                            LocalDate.ofInstant(at, ZoneId.of(row.getString("zone"))));
                })
                .list();
    }

    private List<Happened> happened() {
        return jdbc.sql("select * from happening where withdrawn_at is null order by happened_at, id")
                .query((row, n) -> new Happened(
                        row.getLong("id"),
                        HappeningKind.valueOf(row.getString("kind")),
                        row.getObject("happened_at", OffsetDateTime.class).toInstant(),
                        row.getObject("site_id", Long.class),
                        row.getObject("position_id", Long.class),
                        row.getObject("unit_id", Long.class)))
                .list();
    }

    /** One rule for one unit on one day. */
    private final class OfUnit {

        private final Unit unit;
        private final CareRule rule;
        private final Site site;
        private final ZoneId zone;
        private final LocalDate today;
        private final Instant now;
        private final List<Stand> stands;
        private final @Nullable Long position;
        private final List<Work> history = new ArrayList<>();
        private final List<Effect> effects;
        private final List<Happened> happened = new ArrayList<>();
        private final LocalDate anchor;

        OfUnit(
                Unit unit,
                CareRule rule,
                Site site,
                Map<Long, List<Stand>> allStands,
                List<Work> works,
                List<Effect> effects,
                List<Happened> happened,
                Instant now) {
            this.unit = unit;
            this.rule = rule;
            this.site = site;
            this.zone = site.zone();
            this.now = now;
            this.today = LocalDate.ofInstant(now, zone);
            this.stands = allStands.get(unit.id()).stream()
                    .sorted(Comparator.comparing(Stand::since))
                    .toList();
            this.position = rule.followsPosition() ? unit.stand().positionId() : null;
            this.effects =
                    effects.stream().filter(each -> each.unitId() == unit.id()).toList();
            for (Work work : works) {
                boolean ofIt = position != null ? position.equals(work.positionId()) : work.unitId() == unit.id();
                if (ofIt && (own(work) || covering(work))) {
                    history.add(work);
                }
            }
            for (Happened each : happened) {
                if (touched(each)) {
                    this.happened.add(each);
                }
            }
            this.anchor = position == null ? unit.inCareFrom() : firstDayIn(position);
        }

        private LocalDate firstDayIn(long positionId) {
            return firstDays.computeIfAbsent(
                    zone + " " + positionId,
                    key -> jdbc
                            .sql("""
                            select st.since, u.in_care_from from stand st join pump_unit u on u.id = st.unit_id
                            where st.position_id = ?""")
                            .param(positionId)
                            .query((row, n) -> {
                                LocalDate since = LocalDate.ofInstant(
                                        row.getObject("since", OffsetDateTime.class)
                                                .toInstant(),
                                        zone);
                                LocalDate inCare = row.getObject("in_care_from", LocalDate.class);
                                return since.isBefore(inCare) ? inCare : since;
                            })
                            .list()
                            .stream()
                            .min(Comparator.naturalOrder())
                            .orElseThrow());
        }

        private List<MeterLog.Line> log(MeterKind kind) {
            return logs.computeIfAbsent(
                    unit.id() + " " + kind, key -> readings.log(unit.id(), kind).lines());
        }

        private List<FlowTestResult> tests() {
            return tests.computeIfAbsent(unit.id(), readings::flowTests);
        }

        private boolean own(Work work) {
            return work.job() == null
                    ? work.checklistId() == rule.checklistId()
                    : work.job().equals(rule.job());
        }

        private boolean covering(Work work) {
            return !own(work) && work.covers().contains(rule.job());
        }

        private boolean touched(Happened each) {
            if (each.unitId() != null) {
                return each.unitId() == unit.id();
            }
            for (Stand stand : stands) {
                boolean then = !stand.since().isAfter(each.at())
                        && (stand.until() == null || stand.until().isAfter(each.at()));
                if (then
                        && (each.siteId() != null
                                ? each.siteId() == stand.siteId()
                                : each.positionId().equals(stand.positionId()))) {
                    return true;
                }
            }
            return false;
        }

        private boolean laidUp() {
            return laidUp(now);
        }

        private boolean laidUp(Instant at) {
            boolean laidUp = false;
            for (Effect effect : effects) {
                laidUp = effect.at().isAfter(at) ? laidUp : effect.laysUp();
            }
            return laidUp;
        }

        private boolean out() {
            HappeningKind last = null;
            for (Happened each : happened) {
                if (each.kind() == HappeningKind.HIRE_OUT || each.kind() == HappeningKind.HIRE_RETURN) {
                    last = each.kind();
                }
            }
            return last == HappeningKind.HIRE_OUT;
        }

        List<Due> wanted(boolean busy) {
            if (rule.applies() == Applies.IN_USE && laidUp() || rule.applies() == Applies.LAID_UP && !laidUp()) {
                return List.of();
            }
            List<Due> standing = new ArrayList<>();
            Due earliest = null;
            for (Trigger trigger : rule.triggers()) {
                if (trigger instanceof Trigger.Season season) {
                    standing.addAll(turns(season.window()));
                } else if (trigger instanceof Trigger.Calendar calendar && rule.fixed()) {
                    fixed(calendar).forEach(due -> standing.add(shifted(due)));
                }
            }
            if (!busy) {
                earliest = earlier(interval(), occasion());
            }
            if (earliest != null) {
                LocalDate due = earliest.dueOn();
                if (standing.stream().noneMatch(other -> !other.dueOn().isAfter(due))) {
                    standing.add(shifted(earliest));
                }
            }
            standing.removeIf(due -> due.dueOn().isBefore(unit.inCareFrom()));
            return standing;
        }

        private @Nullable Due earlier(@Nullable Due one, @Nullable Due other) {
            if (one == null || other == null) {
                return one == null ? other : one;
            }
            return other.dueOn().isBefore(one.dueOn()) ? other : one;
        }

        // ---- by the windows

        private List<Due> turns(WindowKind kind) {
            List<Due> turns = new ArrayList<>();
            for (Window window : site.windows()) {
                if (window.kind() != kind) {
                    continue;
                }
                Due last = null;
                List<Due> next = new ArrayList<>();
                for (int year = today.getYear() - 3; year <= today.getYear() + 2; year++) {
                    Due turn = turn(window, year);
                    if (!turn.opensOn().isAfter(today)) {
                        last = turn;
                    } else if (!turn.opensOn().isAfter(today.plusDays(AHEAD))) {
                        next.add(turn);
                    }
                }
                if (last != null && !last.dueOn().isBefore(today.minusDays(AHEAD))) {
                    next.add(last);
                }
                next.stream().filter(turn -> !doneIn(window, turn)).forEach(turns::add);
            }
            return turns;
        }

        private Due turn(Window window, int year) {
            LocalDate opens = at(window.from(), year);
            LocalDate due = at(window.to(), year);
            if (due.isBefore(opens)) {
                due = at(window.to(), year + 1);
            }
            return new Due(window.id() + ":" + year, opens, due, false);
        }

        private boolean doneIn(Window window, Due turn) {
            LocalDate following = turn(window, turn.opensOn().getYear() + 1).opensOn();
            for (Work work : history) {
                if (own(work)) {
                    if (work.job() != null
                            && !work.opensOn().isAfter(turn.dueOn())
                            && !work.dueOn().isBefore(turn.opensOn())) {
                        return true;
                    }
                } else if (!work.day().isBefore(turn.opensOn()) && work.day().isBefore(following)) {
                    return true;
                }
            }
            return false;
        }

        // ---- at fixed distances

        private List<Due> fixed(Trigger.Calendar calendar) {
            List<Due> all = new ArrayList<>();
            for (int k = 1; ; k++) {
                LocalDate due = anchor.plus(calendar.every().multipliedBy(k));
                LocalDate before = anchor.plus(calendar.every().multipliedBy(k - 1));
                LocalDate opens = later(due.minusDays(rule.opensDaysBefore()), before.plusDays(1));
                all.add(new Due("k:" + k + ":" + anchor + (position == null ? "" : "@" + position), opens, due, false));
                if (opens.isAfter(today) && k > 1) {
                    break;
                }
            }
            Due next = all.get(all.size() - 1);
            List<Due> wanted = new ArrayList<>();
            for (int at = Math.max(0, all.size() - 2); at < all.size(); at++) {
                Due due = all.get(at);
                LocalDate following = due == next ? NEVER : next.opensOn();
                if (history.stream()
                        .noneMatch(work -> !work.day().isBefore(due.opensOn())
                                && work.day().isBefore(following))) {
                    wanted.add(due);
                }
            }
            return wanted;
        }

        // ---- by interval

        private @Nullable Due interval() {
            Work last = null;
            for (Work work : history) {
                if (own(work)) {
                    last = work;
                } else {
                    // as it stood just before that work
                    Due then = intervalAfter(last, work.endedAt().minus(1, ChronoUnit.MICROS), work.day());
                    if (then != null
                            && !work.day()
                                    .isBefore(shifted(then, last == null ? null : last.day())
                                            .opensOn())) {
                        last = work;
                    }
                }
            }
            return intervalAfter(last, now, today);
        }

        private @Nullable Due intervalAfter(@Nullable Work last, Instant asOf, LocalDate day) {
            String key =
                    "after:" + (last == null ? "start" + (position == null ? "" : "@" + position) : "" + last.taskId());
            Due earliest = null;
            for (Trigger trigger : rule.triggers()) {
                Due due = null;
                if (trigger instanceof Trigger.Calendar calendar && !rule.fixed()) {
                    due = sliding(key, calendar, last, asOf);
                } else if (trigger instanceof Trigger.RunHours hours && !laidUp(asOf)) {
                    due = counted(key, MeterKind.RUN_HOURS, hours.every(), hours.first(), last, asOf, day);
                } else if (trigger instanceof Trigger.Starts starts && !laidUp(asOf)) {
                    due = counted(key, MeterKind.STARTS, starts.every(), starts.first(), last, asOf, day);
                }
                earliest = earlier(earliest, due);
            }
            return earliest;
        }

        private Due sliding(String key, Trigger.Calendar calendar, @Nullable Work last, Instant asOf) {
            LocalDate from = last == null ? anchor : last.day();
            if (rule.applies() == Applies.LAID_UP) {
                LocalDate since = null;
                for (Effect effect : effects) {
                    if (effect.at().isAfter(asOf)) {
                        break;
                    }
                    since = !effect.laysUp() ? null : since == null ? effect.day() : since;
                }
                from = since == null ? from : later(from, since);
            }
            LocalDate due = from.plus(calendar.every());
            if (rule.applies() == Applies.IN_USE) {
                due = openedAgain(due);
            }
            return interval(key, due, last, false);
        }

        private LocalDate openedAgain(LocalDate due) {
            LocalDate since = null;
            for (Effect effect : effects) {
                if (effect.laysUp() && since == null) {
                    since = effect.day();
                } else if (!effect.laysUp() && since != null) {
                    if (!due.isBefore(since) && due.isBefore(effect.day())) {
                        return effect.day();
                    }
                    since = null;
                }
            }
            return due;
        }

        private Due interval(String key, LocalDate due, @Nullable Work last, boolean predicted) {
            LocalDate from = last == null ? anchor : last.day();
            LocalDate opens = later(due.minusDays(rule.opensDaysBefore()), from.plusDays(1));
            return new Due(key, opens.isAfter(due) ? due : opens, due, predicted);
        }

        private @Nullable Due counted(
                String key,
                MeterKind kind,
                BigDecimal every,
                @Nullable BigDecimal first,
                @Nullable Work last,
                Instant asOf,
                LocalDate day) {
            List<MeterLog.Line> lines = log(kind).stream()
                    .filter(line -> line.lifetime() != null && !line.at().isAfter(asOf))
                    .toList();
            if (lines.isEmpty()) {
                return null;
            }
            Instant from = last == null ? anchor.atStartOfDay(zone).toInstant() : last.endedAt();
            double limit = (last == null && first != null ? first : every).doubleValue() + lifetime(lines, from);
            for (MeterLog.Line line : lines) {
                if (line.at().isAfter(from) && line.lifetime().doubleValue() >= limit) {
                    return interval(key, LocalDate.ofInstant(line.at(), zone), last, false);
                }
            }
            MeterLog.Line end = lines.get(lines.size() - 1);
            MeterLog.Line begin = lines.get(0);
            for (MeterLog.Line line : lines) {
                if (!line.at().isAfter(end.at().minus(Duration.ofDays(90)))) {
                    begin = line;
                }
            }
            double days = (millis(begin.at(), end.at()) - laidUpMillis(begin.at(), end.at())) / 86_400_000.0;
            double rise = end.lifetime().doubleValue() - begin.lifetime().doubleValue();
            if (days < 1 || rise <= 0) {
                return null;
            }
            // a whole number of days is one, whatever the last digits of the division say
            long more = (long) Math.ceil((limit - end.lifetime().doubleValue()) * days / rise - 1e-9);
            LocalDate due =
                    more > 4_000 ? NEVER : LocalDate.ofInstant(end.at(), zone).plusDays(more);
            return due.isAfter(day.plusDays(AHEAD)) ? null : interval(key, due, last, true);
        }

        private double laidUpMillis(Instant from, Instant to) {
            double sum = 0;
            Instant since = null;
            for (Effect effect : effects) {
                if (effect.laysUp() && since == null) {
                    since = effect.at();
                } else if (!effect.laysUp() && since != null) {
                    sum += overlap(since, effect.at(), from, to);
                    since = null;
                }
            }
            return since == null ? sum : sum + overlap(since, to, from, to);
        }

        private double overlap(Instant from, Instant to, Instant low, Instant high) {
            Instant begin = from.isAfter(low) ? from : low;
            Instant end = to.isBefore(high) ? to : high;
            return end.isAfter(begin) ? millis(begin, end) : 0;
        }

        private double millis(Instant from, Instant to) {
            return ChronoUnit.MICROS.between(from, to) / 1000.0;
        }

        private double lifetime(List<MeterLog.Line> lines, Instant at) {
            MeterLog.Line before = null;
            for (MeterLog.Line line : lines) {
                if (line.at().isAfter(at)) {
                    if (before == null) {
                        return line.lifetime().doubleValue();
                    }
                    double share = millis(before.at(), at) / millis(before.at(), line.at());
                    double low = before.lifetime().doubleValue();
                    return low + share * (line.lifetime().doubleValue() - low);
                }
                before = line;
            }
            return before.lifetime().doubleValue();
        }

        // ---- after something

        private @Nullable Due occasion() {
            Work last = history.isEmpty() ? null : history.get(history.size() - 1);
            Due earliest = null;
            for (Trigger trigger : rule.triggers()) {
                Due due = null;
                if (trigger instanceof Trigger.Event event) {
                    due = event(event, last);
                } else if (trigger instanceof Trigger.Relocated relocated) {
                    due = relocated(relocated, last);
                } else if (trigger instanceof Trigger.Idle idle && !laidUp() && !out()) {
                    due = idle(idle, last);
                } else if (trigger instanceof Trigger.Condition condition) {
                    due = weak(condition, last);
                }
                earliest = earlier(earliest, due);
            }
            return earliest;
        }

        private @Nullable Due event(Trigger.Event event, @Nullable Work last) {
            Instant proved = null;
            for (Effect effect : effects) {
                proved = effect.laysUp() ? proved : effect.at();
            }
            for (Happened each : happened) {
                LocalDate day = LocalDate.ofInstant(each.at(), zone);
                if (each.kind() != event.kind()
                        || day.isBefore(today.minusDays(AHEAD))
                        || day.isBefore(unit.inCareFrom())) {
                    continue;
                }
                if (event.firstOnly() && proved != null && !each.at().isAfter(proved)) {
                    continue;
                }
                if (last == null || each.at().isAfter(last.endedAt())) {
                    return new Due("event:" + each.id(), day, day.plusDays(event.daysToAct()), false);
                }
                if (event.firstOnly()) {
                    return null;
                }
            }
            return null;
        }

        private @Nullable Due relocated(Trigger.Relocated relocated, @Nullable Work last) {
            for (int at = 1; at < stands.size(); at++) {
                Stand stand = stands.get(at);
                Stand before = stands.get(at - 1);
                boolean elsewhere = stand.siteId() != before.siteId()
                        || !java.util.Objects.equals(stand.positionId(), before.positionId());
                LocalDate day = LocalDate.ofInstant(stand.since(), zone);
                if (elsewhere
                        && !day.isBefore(today.minusDays(AHEAD))
                        && !day.isBefore(unit.inCareFrom())
                        && (last == null || stand.since().isAfter(last.endedAt()))) {
                    long id = jdbc.sql("select id from stand where unit_id = ? and since = ?")
                            .params(unit.id(), stand.since().atOffset(java.time.ZoneOffset.UTC))
                            .query(Long.class)
                            .single();
                    return new Due("moved:" + id, day, day.plusDays(relocated.daysToAct()), false);
                }
            }
            return null;
        }

        private @Nullable Due idle(Trigger.Idle idle, @Nullable Work last) {
            LocalDate since = last == null ? unit.inCareFrom() : later(unit.inCareFrom(), last.day());
            for (MeterKind kind : MeterKind.values()) {
                for (MeterLog.Line line : log(kind)) {
                    if (line.rise() != null && line.rise().signum() > 0) {
                        since = later(since, LocalDate.ofInstant(line.at(), zone));
                    }
                }
            }
            for (FlowTestResult test : tests()) {
                if (test.withdrawn() == null) {
                    since = later(since, LocalDate.ofInstant(test.facts().at(), zone));
                }
            }
            for (Happened each : happened) {
                if (each.kind() == HappeningKind.HIRE_OUT || each.kind() == HappeningKind.HIRE_RETURN) {
                    since = later(since, LocalDate.ofInstant(each.at(), zone));
                }
            }
            for (Effect effect : effects) {
                since = effect.laysUp() ? since : later(since, effect.day());
            }
            LocalDate opens = since.plusDays(idle.days());
            return opens.isBefore(today)
                    ? new Due("idle:" + since, opens, opens.plusDays(idle.daysToAct()), false)
                    : null;
        }

        /** Below the limit in the newest test and in all before it back to the first of the row. */
        private @Nullable Due weak(Trigger.Condition condition, @Nullable Work last) {
            Due due = null;
            Instant firstAt = null;
            for (FlowTestResult test : tests()) { // newest first
                if (test.withdrawn() != null || test.capacity() == null) {
                    continue;
                }
                if (test.capacity().fraction() >= condition.threshold()) {
                    break;
                }
                firstAt = test.capacity().testedAt();
                LocalDate day = LocalDate.ofInstant(firstAt, zone);
                due = new Due("test:" + test.capacity().testId(), day, day.plusDays(condition.daysToAct()), false);
            }
            return due != null && last != null && last.endedAt().isAfter(firstAt) ? null : due;
        }

        // ---- moved to where it can be done

        private Due shifted(Due due) {
            return shifted(
                    due,
                    history.stream()
                            .map(Work::day)
                            .max(Comparator.naturalOrder())
                            .orElse(null));
        }

        private Due shifted(Due due, @Nullable LocalDate lastDay) {
            Due open = access(due);
            if (rule.oncePerSeason() && lastDay != null) {
                LocalDate begin = seasonOf(open.dueOn());
                if (!lastDay.isBefore(begin)) {
                    LocalDate next = nextSeason(open.dueOn());
                    open = access(new Due(open.key(), next, next.plusDays(rule.opensDaysBefore()), open.predicted()));
                }
            }
            return open;
        }

        private Due access(Due due) {
            MonthDay from = rule.accessFrom();
            MonthDay to = rule.accessTo();
            if (from == null || to == null) {
                return due;
            }
            for (int year = due.dueOn().getYear() - 1; ; year++) {
                LocalDate begin = at(from, year);
                LocalDate end = at(to, year).isBefore(begin) ? at(to, year + 1) : at(to, year);
                if (due.dueOn().isAfter(end)) {
                    continue;
                }
                if (due.dueOn().isBefore(begin)) {
                    LocalDate then = begin.plusDays(rule.opensDaysBefore());
                    return new Due(due.key(), begin, then.isAfter(end) ? end : then, due.predicted());
                }
                return new Due(due.key(), later(due.opensOn(), begin), due.dueOn(), due.predicted());
            }
        }

        private List<LocalDate> seasons(int around) {
            List<LocalDate> begins = new ArrayList<>();
            for (int year = around - 2; year <= around + 2; year++) {
                for (Window window : site.windows()) {
                    if (window.kind() == WindowKind.OPENING) {
                        begins.add(at(window.from(), year));
                    }
                }
            }
            if (begins.isEmpty()) {
                for (int year = around - 2; year <= around + 2; year++) {
                    begins.add(LocalDate.of(year, 1, 1));
                }
            }
            begins.sort(Comparator.naturalOrder());
            return begins;
        }

        private LocalDate seasonOf(LocalDate day) {
            return seasons(day.getYear()).stream()
                    .filter(begin -> !begin.isAfter(day))
                    .max(Comparator.naturalOrder())
                    .orElseThrow();
        }

        private LocalDate nextSeason(LocalDate day) {
            return seasons(day.getYear()).stream()
                    .filter(begin -> begin.isAfter(day))
                    .min(Comparator.naturalOrder())
                    .orElseThrow();
        }

        private static LocalDate at(MonthDay day, int year) {
            return day.atYear(year); // 29 February is the 28th in a common year
        }

        private static LocalDate later(LocalDate one, LocalDate other) {
            return one.isAfter(other) ? one : other;
        }
    }
}
