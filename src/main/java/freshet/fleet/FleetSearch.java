package freshet.fleet;

import freshet.pumps.PumpKind;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Searches, sorts and counts the whole fleet in one statement each. */
@Component
class FleetSearch {

    private static final String FROM = """
            from pump_unit u
            join pump_model m on m.id = u.model_id
            join stand st on st.unit_id = u.id and st.until is null
            join site s on s.id = st.site_id
            left join position p on p.id = st.position_id
            left join customer c on c.id = u.customer_id
            left join unit_summary y on y.unit_id = u.id
            where (u.retired_on is not null) = :retired
              and (cast(:kind as text) is null or m.kind = :kind)
              and (cast(:site as bigint) is null or st.site_id = :site)
              and (cast(:customer as bigint) is null or u.customer_id = :customer)
              and (not :ownOnly or u.customer_id is null)
              and (cast(:word as text) is null or y.readiness = :word)
              and (cast(:text as text) is null
                   or concat_ws(' ', u.tag, u.serial, m.name, c.name, s.name, p.name, st.spot) ilike :text)
            """;

    // P-2 stands before P-10
    private static final String BY_TAG = "lower(regexp_replace(u.tag, '[0-9]+$', '')), length(u.tag), lower(u.tag)";

    private final JdbcClient jdbc;
    private final SummaryTable summaries;

    FleetSearch(JdbcClient jdbc, SummaryTable summaries) {
        this.jdbc = jdbc;
        this.summaries = summaries;
    }

    FleetPage find(FleetQuery query) {
        int total = asked("select count(*) " + FROM, query).query(Integer.class).single();
        List<FleetRow> rows = asked(
                        """
                        select u.id, u.tag, u.serial, u.retired_on, m.name as model_name, m.kind, c.name as customer_name,
                               s.id as site_id, s.name as site_name, p.name as position_name, st.spot, y.*
                        """ + FROM + "order by " + order(query.sort()) + " limit :size offset :offset", query)
                .param("size", query.size())
                .param("offset", (long) query.page() * query.size())
                .query((row, n) -> row(row))
                .list();
        return new FleetPage(query, rows, total);
    }

    /** How many units in care stand at each word, of a site or of all. */
    Map<Word, Integer> tally(@Nullable Long siteId) {
        Map<Word, Integer> tally = new EnumMap<>(Word.class);
        for (Word word : Word.values()) {
            tally.put(word, 0);
        }
        jdbc.sql("""
                        select y.readiness, count(*) as units from unit_summary y
                        join stand st on st.unit_id = y.unit_id and st.until is null
                        where cast(:site as bigint) is null or st.site_id = :site
                        group by y.readiness""").param("site", siteId).query(row -> {
            tally.put(Word.valueOf(row.getString("readiness")), row.getInt("units"));
        });
        return tally;
    }

    private JdbcClient.StatementSpec asked(String sql, FleetQuery query) {
        String text = query.text() == null || query.text().isBlank()
                ? null
                : query.text().strip();
        return jdbc.sql(sql)
                .param("retired", query.retired())
                .param("kind", query.kind() == null ? null : query.kind().name())
                .param("site", query.siteId())
                .param("customer", query.customerId())
                .param("ownOnly", query.ownOnly())
                .param("word", query.word() == null ? null : query.word().name())
                .param("text", text == null ? null : "%" + text.replaceAll("([\\\\%_])", "\\\\$1") + "%");
    }

    private static String order(FleetQuery.Sort sort) {
        return switch (sort) {
            case TAG -> BY_TAG;
            case WORST -> "array_position(array['NOT_READY', 'UNKNOWN', 'LIMITS', 'READY'], y.readiness), " + BY_TAG;
            case DUE -> "y.next_due_on nulls last, " + BY_TAG;
            case CAPACITY -> "y.remaining_fraction nulls last, " + BY_TAG;
            case SITE -> "lower(s.name), lower(p.name) nulls first, " + BY_TAG;
        };
    }

    private FleetRow row(ResultSet row) throws SQLException {
        boolean summed = row.getString("readiness") != null;
        Double fraction = row.getObject("remaining_fraction", Double.class);
        return new FleetRow(
                row.getLong("id"),
                row.getString("tag"),
                row.getString("serial"),
                row.getString("model_name"),
                PumpKind.valueOf(row.getString("kind")),
                row.getString("customer_name"),
                row.getLong("site_id"),
                row.getString("site_name"),
                row.getString("position_name"),
                row.getString("spot"),
                row.getObject("retired_on", LocalDate.class),
                summed ? summaries.readiness(row) : new Readiness(Word.UNKNOWN, List.of(), null),
                fraction,
                row.getObject("expanded_uncertainty", Double.class),
                row.getObject("stated_at_head_m", Double.class),
                row.getObject("next_due_on", LocalDate.class),
                row.getInt("open_tasks"));
    }
}
