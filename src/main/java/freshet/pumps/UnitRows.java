package freshet.pumps;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Reads whole units, a handful of statements however many there are. */
@Component
class UnitRows {

    private static final String STAND = """
            s.site_id, site.name as site_name, site.zone, s.position_id, p.name as position_name, s.spot, s.since, s.until,
            s.note as stand_note""";

    private static final String STAND_TABLES = """
            stand s join site on site.id = s.site_id left join position p on p.id = s.position_id""";

    private final JdbcClient jdbc;
    private final ModelRepository models;

    UnitRows(JdbcClient jdbc, ModelRepository models) {
        this.jdbc = jdbc;
        this.models = models;
    }

    /** The units of these ids, by tag; ids that nobody has are left out. */
    List<Unit> units(Collection<Long> ids) {
        Long[] wanted = ids.toArray(Long[]::new);
        Map<Long, Model> itsModel = models(wanted);
        Map<Long, List<KitItem>> itsKit = kits(wanted);
        return jdbc.sql("""
                        select u.*, c.name as customer_name, %s
                        from pump_unit u join %s on s.unit_id = u.id and s.until is null
                             left join customer c on c.id = u.customer_id
                        where u.id = any(:ids) order by lower(u.tag)""".formatted(STAND, "(" + STAND_TABLES + ")"))
                .param("ids", wanted)
                .query((row, n) -> new Unit(
                        row.getLong("id"),
                        row.getString("tag"),
                        row.getString("serial"),
                        itsModel.get(row.getLong("model_id")),
                        row.getObject("customer_id", Long.class),
                        row.getString("customer_name"),
                        row.getObject("in_care_from", LocalDate.class),
                        stand(row),
                        itsKit.getOrDefault(row.getLong("id"), List.of()),
                        row.getString("note"),
                        row.getObject("retired_on", LocalDate.class),
                        row.getString("retired_why"),
                        row.getInt("version")))
                .list();
    }

    Optional<Long> idTagged(String tag) {
        return jdbc.sql("select id from pump_unit where lower(tag) = lower(?)")
                .param(tag.strip())
                .query(Long.class)
                .optional();
    }

    List<Long> idsTagged(Collection<String> tags) {
        return jdbc.sql("select id from pump_unit where lower(tag) = any(:tags)")
                .param(
                        "tags",
                        tags.stream().map(tag -> tag.toLowerCase(Locale.ROOT)).toArray(String[]::new))
                .query(Long.class)
                .list();
    }

    List<Long> activeIds() {
        return jdbc.sql("select id from pump_unit where retired_on is null order by lower(tag)")
                .query(Long.class)
                .list();
    }

    List<Long> everyId(@Nullable Long modelId) {
        return jdbc.sql(
                        "select id from pump_unit where cast(:model as bigint) is null or model_id = :model order by lower(tag)")
                .param("model", modelId, Types.BIGINT)
                .query(Long.class)
                .list();
    }

    /** Every stand of a unit, newest first. */
    List<Stand> stands(long unitId) {
        return jdbc.sql("select " + STAND + " from " + STAND_TABLES
                        + " where s.unit_id = :id order by s.since desc, s.id desc")
                .param("id", unitId)
                .query((row, n) -> stand(row))
                .list();
    }

    private Map<Long, Model> models(Long[] unitIds) {
        List<Long> modelIds = jdbc.sql("select distinct model_id from pump_unit where id = any(:ids)")
                .param("ids", unitIds)
                .query(Long.class)
                .list();
        Map<Long, Model> found = new HashMap<>();
        models.among(modelIds).forEach(model -> found.put(model.seen().id(), model.seen()));
        return found;
    }

    private Map<Long, List<KitItem>> kits(Long[] unitIds) {
        Map<Long, List<KitItem>> found = new HashMap<>();
        jdbc.sql("select * from kit_item where unit_id = any(:ids) order by unit_id, ordinal")
                .param("ids", unitIds)
                .query(row -> {
                    found.computeIfAbsent(row.getLong("unit_id"), unit -> new ArrayList<>())
                            .add(new KitItem(
                                    KitKind.valueOf(row.getString("kind")),
                                    row.getString("description"),
                                    row.getObject("bore_mm", Double.class),
                                    row.getObject("outlet_bore_mm", Double.class),
                                    row.getObject("length_m", Double.class),
                                    row.getInt("quantity")));
                });
        return found;
    }

    private static Stand stand(ResultSet row) throws SQLException {
        return new Stand(
                row.getLong("site_id"),
                row.getString("site_name"),
                ZoneId.of(row.getString("zone")),
                row.getObject("position_id", Long.class),
                row.getString("position_name"),
                row.getString("spot"),
                row.getObject("since", OffsetDateTime.class).toInstant(),
                instant(row.getObject("until", OffsetDateTime.class)),
                row.getString("stand_note"));
    }

    private static @Nullable Instant instant(@Nullable OffsetDateTime time) {
        return time == null ? null : time.toInstant();
    }
}
