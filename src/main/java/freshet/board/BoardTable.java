package freshet.board;

import freshet.checklists.Phase;
import freshet.happenings.Happenings;
import freshet.happenings.Out;
import freshet.places.Places;
import freshet.places.Site;
import freshet.places.Span;
import freshet.places.Window;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Reads what is late or soon due at each site, and how far each turn of a season window is. */
@Component
class BoardTable {

    // each site's own today; the first lines of each site by number, the counts over all of them
    private static final String LINES = """
            select * from (
              select t.*, u.tag, s.name as site_name, (d.today - t.due_on) as days_over,
                     row_number() over (partition by t.site_id order by t.due_on, u.tag, t.id) as place,
                     count(*) filter (where t.due_on + t.grace_days < d.today) over (partition by t.site_id) as late,
                     count(*) over (partition by t.site_id) as due,
                     sum(t.minutes) over (partition by t.site_id) as due_minutes
              from task t
              join pump_unit u on u.id = t.unit_id
              join site s on s.id = t.site_id
              cross join lateral (select cast(cast(:now as timestamptz) at time zone s.zone as date) as today) d
              where t.state = 'OPEN' and t.opens_on <= d.today and t.due_on <= d.today + :days
            ) line
            where place <= :lines
            order by site_name, place
            """;

    // the turn is told by the occurrence of its tasks: the window's id and the year it opens in
    private static final String COUNTS = """
            select t.occurrence, c.phase,
                   count(*) filter (where t.state = 'SIGNED') as done,
                   count(*) filter (where t.state = 'OPEN') as "left",
                   coalesce(sum(t.minutes) filter (where t.state = 'OPEN'), 0) as minutes_left
            from task t
            join checklist c on c.id = t.checklist_id
            where t.state <> 'WITHDRAWN' and t.occurrence = any(:turns)
            group by t.occurrence, c.phase
            """;

    private final Places places;
    private final Happenings happenings;
    private final JdbcClient jdbc;
    private final Clock clock;

    BoardTable(Places places, Happenings happenings, JdbcClient jdbc, Clock clock) {
        this.places = places;
        this.happenings = happenings;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    List<BoardSite> sites(int days, int linesOfEach) {
        Map<Long, BoardSite> sites = new LinkedHashMap<>();
        Map<Long, List<BoardLine>> lines = new HashMap<>();
        jdbc.sql(LINES)
                .param("now", clock.instant().atOffset(ZoneOffset.UTC))
                .param("days", days)
                .param("lines", linesOfEach)
                .query(row -> {
                    long site = row.getLong("site_id");
                    List<BoardLine> its = lines.computeIfAbsent(site, id -> new ArrayList<>());
                    its.add(line(row));
                    sites.computeIfAbsent(site, id -> site(id, row, its));
                });
        Set<Long> units = new HashSet<>();
        lines.values().forEach(its -> its.forEach(line -> units.add(line.unitId())));
        Map<Long, Out> out = happenings.out(units);
        lines.values().forEach(its -> its.replaceAll(line -> line.out(out.get(line.unitId()))));
        return List.copyOf(sites.values());
    }

    private static BoardSite site(long id, ResultSet row, List<BoardLine> lines) {
        try {
            int late = row.getInt("late");
            return new BoardSite(
                    id, row.getString("site_name"), late, row.getInt("due") - late, row.getInt("due_minutes"), lines);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private static BoardLine line(ResultSet row) throws SQLException {
        return new BoardLine(
                row.getLong("id"),
                row.getLong("unit_id"),
                row.getString("tag"),
                row.getString("title"),
                Why.of(row),
                row.getObject("opens_on", LocalDate.class),
                row.getObject("due_on", LocalDate.class),
                row.getInt("days_over"),
                row.getInt("grace_days"),
                row.getBoolean("predicted"),
                null,
                row.getInt("minutes"));
    }

    /** Of every turn that is being worked, that was worked last, or that opens within a year, and for which there is work. */
    List<SeasonCount> seasons() {
        Map<String, Turn> turns = new LinkedHashMap<>();
        for (Site site : places.sites()) {
            for (Window window : site.windows()) {
                for (Span span : SiteDays.due(window, site.today(clock))) {
                    turns.put(SiteDays.occurrence(span), new Turn(site, span));
                }
            }
        }
        List<SeasonCount> counts = new ArrayList<>();
        jdbc.sql(COUNTS).param("turns", turns.keySet().toArray(String[]::new)).query(row -> {
            Turn turn = Objects.requireNonNull(turns.get(row.getString("occurrence")));
            counts.add(new SeasonCount(
                    turn.site().id(),
                    turn.site().name(),
                    turn.span(),
                    Phase.valueOf(row.getString("phase")),
                    row.getInt("done"),
                    row.getInt("left"),
                    row.getInt("minutes_left")));
        });
        counts.sort(Comparator.comparing((SeasonCount count) -> count.span().opensOn())
                .thenComparing(SeasonCount::siteName));
        return counts;
    }

    private record Turn(Site site, Span span) {}
}
