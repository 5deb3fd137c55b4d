package freshet.hire;

import freshet.fleet.Reason;
import freshet.people.Person;
import freshet.pumps.KitKind;
import freshet.pumps.PumpKind;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** The rows of hires with their kit, of those who were turned away, and of what stands on every sheet. */
@Component
class HireTable {

    private static final String HIRES = """
            select h.*, u.tag, m.name as model_name, s.name as site_name, s.zone, issuer.full_name as issued_name,
                   returner.full_name as returned_name, before.id as swapped_from, bu.tag as swapped_from_tag, au.tag as swapped_to_tag
            from hire h
            join pump_unit u on u.id = h.unit_id
            join pump_model m on m.id = u.model_id
            join site s on s.id = h.site_id
            join account issuer on issuer.id = h.issued_by
            left join account returner on returner.id = h.returned_by
            left join hire before on before.swapped_to = h.id
            left join pump_unit bu on bu.id = before.unit_id
            left join hire after on after.id = h.swapped_to
            left join pump_unit au on au.id = after.unit_id
            """;

    private final JdbcClient jdbc;
    private final JsonMapper json;

    HireTable(JdbcClient jdbc, JsonMapper json) {
        this.jdbc = jdbc;
        this.json = json;
    }

    Optional<Hire> hire(long id) {
        return hires(HIRES + "where h.id = :id", Map.of("id", id)).stream().findFirst();
    }

    /** Held until the transaction ends. */
    Optional<Hire> held(long id) {
        jdbc.sql("select id from hire where id = ? for update")
                .param(id)
                .query(Long.class)
                .optional();
        return hire(id);
    }

    Optional<Hire> openOf(long unitId) {
        return hires(HIRES + "where h.unit_id = :unit and h.in_at is null", Map.of("unit", unitId)).stream()
                .findFirst();
    }

    /** What is out, the day it is due back first; at most so many. */
    List<Hire> open(int size, long offset) {
        return hires(
                HIRES + "where h.in_at is null order by h.due_back_on, h.id limit :size offset :offset",
                Map.of("size", size, "offset", offset));
    }

    /** What is back, the latest first. */
    List<Hire> back(int size, long offset) {
        return hires(
                HIRES + "where h.in_at is not null order by h.in_at desc, h.id desc limit :size offset :offset",
                Map.of("size", size, "offset", offset));
    }

    List<Hire> ofUnit(long unitId) {
        return hires(HIRES + "where h.unit_id = :unit order by h.out_at desc, h.id desc", Map.of("unit", unitId));
    }

    /** How many are out, and of these how many are over their last day at their site; and how many are back. */
    Hires.Count count(Instant now) {
        return jdbc.sql("""
                        select count(*) filter (where in_at is null) as out, count(*) filter (where in_at is not null) as back,
                               count(*) filter (where in_at is null
                                   and due_back_on < cast(cast(:now as timestamptz) at time zone s.zone as date)) as late
                        from hire h join site s on s.id = h.site_id""")
                .param("now", now.atOffset(ZoneOffset.UTC))
                .query((row, n) -> new Hires.Count(row.getInt("out"), row.getInt("late"), row.getInt("back")))
                .single();
    }

    /** The last moment at which the unit came back; empty when it was never out. */
    Optional<Instant> lastBack(long unitId) {
        return jdbc.sql("select max(in_at) as at from hire where unit_id = ?")
                .param(unitId)
                .query((row, n) -> Optional.ofNullable(instant(row, "at")))
                .single();
    }

    /** Fails at the index {@code hire_open} when the unit is out already. */
    long insert(IssueDraft draft, @Nullable Long customerId, long siteId, IssueCheck check, Person by, Instant now) {
        Map<String, @Nullable Object> params = new HashMap<>();
        params.put("unit", draft.unitId());
        params.put("site", siteId);
        params.put("customer", customerId);
        params.put("hirer", draft.hirer());
        params.put("phone", draft.phone());
        params.put("outAt", utc(draft.outAt()));
        params.put("due", draft.dueBackOn());
        params.put("hours", draft.hours());
        params.put("fuel", draft.fuel());
        params.put("condition", draft.condition());
        params.put("takenBy", draft.takenBy());
        params.put("told", Caution.of(check.unit()).stream().map(Enum::name).toArray(String[]::new));
        params.put("limits", json.writeValueAsString(check.against()));
        params.put("proof", check.proofUntil());
        params.put("by", by.id());
        params.put("now", utc(now));
        return jdbc.sql("""
                        insert into hire (unit_id, site_id, customer_id, hirer, phone, out_at, due_back_on, hours_out, fuel_out,
                            condition_out, taken_by, told, limits, proof_until, issued_by, issued_at)
                        values (:unit, :site, :customer, :hirer, :phone, :outAt, :due, :hours, :fuel, :condition, :takenBy, :told,
                            cast(:limits as jsonb), :proof, :by, :now) returning id""").params(params).query(Long.class).single();
    }

    void insert(long hireId, List<Piece> kit) {
        for (Piece piece : kit) {
            jdbc.sql("insert into hire_piece values (?, ?, ?, ?, ?, ?, null)")
                    .params(
                            hireId,
                            piece.ordinal(),
                            piece.kind().name(),
                            piece.description(),
                            piece.quantity(),
                            piece.quantityOut())
                    .update();
        }
    }

    void back(Hire hire, ReturnDraft draft, Person by) {
        Map<String, @Nullable Object> params = new HashMap<>();
        params.put("id", hire.id());
        params.put("at", utc(draft.inAt()));
        params.put("hours", draft.hours());
        params.put("fuel", draft.fuel());
        params.put("condition", draft.condition());
        params.put("liquid", draft.liquid().name());
        params.put("dry", draft.ranDry());
        params.put("cord", draft.cord() != null);
        params.put("by", by.id());
        jdbc.sql("""
                        update hire set in_at = :at, hours_in = :hours, fuel_in = :fuel, condition_in = :condition, liquid = :liquid,
                            ran_dry = :dry, cord_damaged = :cord, returned_by = :by, version = version + 1 where id = :id""").params(params).update();
        for (Piece piece : hire.kit()) {
            jdbc.sql("update hire_piece set quantity_in = ? where hire_id = ? and ordinal = ?")
                    .params(draft.kit().getOrDefault(piece.ordinal(), piece.quantityOut()), hire.id(), piece.ordinal())
                    .update();
        }
    }

    void swapped(long id, long to, SwapReason reason) {
        jdbc.sql("update hire set swapped_to = ?, swap_reason = ? where id = ?")
                .params(to, reason.name(), id)
                .update();
    }

    void extend(Hire hire, LocalDate dueBackOn, Person by, Instant now) {
        jdbc.sql("update hire set due_back_on = ?, version = version + 1 where id = ?")
                .params(dueBackOn, hire.id())
                .update();
        jdbc.sql("insert into hire_extension (hire_id, was_due_on, due_back_on, by_person, at) values (?, ?, ?, ?, ?)")
                .params(hire.id(), hire.dueBackOn(), dueBackOn, by.id(), utc(now))
                .update();
    }

    List<Extension> extensions(long hireId) {
        return jdbc.sql("""
                        select e.*, a.full_name from hire_extension e join account a on a.id = e.by_person
                        where e.hire_id = ? order by e.id""")
                .param(hireId)
                .query((row, n) -> new Extension(
                        row.getObject("was_due_on", LocalDate.class),
                        row.getObject("due_back_on", LocalDate.class),
                        row.getString("full_name"),
                        Objects.requireNonNull(instant(row, "at"))))
                .list();
    }

    void turnAway(long siteId, LocalDate on, TurnAwayDraft draft, Person by, Instant now) {
        Map<String, @Nullable Object> params = new HashMap<>();
        params.put("site", siteId);
        params.put("on", on);
        params.put("reason", draft.reason().name());
        params.put("kind", draft.kind() == null ? null : draft.kind().name());
        params.put("note", draft.note());
        params.put("by", by.id());
        params.put("now", utc(now));
        jdbc.sql("""
                        insert into turn_away (site_id, on_day, reason, pump_kind, note, noted_by, noted_at)
                        values (:site, :on, :reason, :kind, :note, :by, :now)""").params(params).update();
    }

    List<TurnAway> turnAways(LocalDate from, LocalDate to, int most) {
        return jdbc.sql("""
                        select t.*, s.name as site_name, a.full_name from turn_away t
                        join site s on s.id = t.site_id join account a on a.id = t.noted_by
                        where t.on_day between :from and :to order by t.on_day desc, t.id desc limit :most""")
                .param("from", from)
                .param("to", to)
                .param("most", most)
                .query((row, n) -> new TurnAway(
                        row.getLong("site_id"),
                        row.getString("site_name"),
                        row.getObject("on_day", LocalDate.class),
                        TurnAwayReason.valueOf(row.getString("reason")),
                        row.getString("pump_kind") == null ? null : PumpKind.valueOf(row.getString("pump_kind")),
                        row.getString("note"),
                        row.getString("full_name")))
                .list();
    }

    Optional<String> emergencyLine() {
        return jdbc.sql("select emergency_line from hire_desk")
                .query(String.class)
                .optional();
    }

    void emergencyLine(@Nullable String line) {
        if (line == null) {
            jdbc.sql("delete from hire_desk").update();
        } else {
            jdbc.sql("""
                            insert into hire_desk (emergency_line) values (?)
                            on conflict (id) do update set emergency_line = excluded.emergency_line""").param(line).update();
        }
    }

    private List<Hire> hires(String sql, Map<String, ?> params) {
        List<Long> ids = jdbc.sql("select id from (" + sql + ") as asked")
                .params(params)
                .query(Long.class)
                .list();
        Map<Long, List<Piece>> kits = kits(ids);
        return jdbc.sql(sql)
                .params(params)
                .query((row, n) -> hire(row, kits.getOrDefault(row.getLong("id"), List.of())))
                .list();
    }

    private record OfHire(long hireId, Piece piece) {}

    private Map<Long, List<Piece>> kits(Collection<Long> hireIds) {
        return jdbc
                .sql("select * from hire_piece where hire_id = any(?) order by hire_id, ordinal")
                .param(hireIds.toArray(Long[]::new))
                .query((row, n) -> new OfHire(
                        row.getLong("hire_id"),
                        new Piece(
                                row.getInt("ordinal"),
                                KitKind.valueOf(row.getString("kind")),
                                row.getString("description"),
                                row.getInt("quantity"),
                                row.getInt("quantity_out"),
                                row.getObject("quantity_in", Integer.class))))
                .list()
                .stream()
                .collect(Collectors.groupingBy(OfHire::hireId, Collectors.mapping(OfHire::piece, Collectors.toList())));
    }

    private Hire hire(ResultSet row, List<Piece> kit) throws SQLException {
        return new Hire(
                row.getLong("id"),
                row.getLong("unit_id"),
                row.getString("tag"),
                row.getString("model_name"),
                row.getLong("site_id"),
                row.getString("site_name"),
                ZoneId.of(row.getString("zone")),
                row.getObject("customer_id", Long.class),
                row.getString("hirer"),
                row.getString("phone"),
                Objects.requireNonNull(instant(row, "out_at")),
                row.getObject("due_back_on", LocalDate.class),
                row.getBigDecimal("hours_out"),
                fuel(row, "fuel_out"),
                row.getString("condition_out"),
                row.getString("taken_by"),
                Arrays.stream((String[]) row.getArray("told").getArray())
                        .map(Caution::valueOf)
                        .toList(),
                List.of(json.readValue(row.getString("limits"), Reason[].class)),
                row.getObject("proof_until", LocalDate.class),
                row.getString("issued_name"),
                kit,
                back(row),
                row.getObject("swapped_from", Long.class),
                row.getString("swapped_from_tag"),
                row.getInt("version"));
    }

    private static Hire.@Nullable Back back(ResultSet row) throws SQLException {
        Instant at = instant(row, "in_at");
        String reason = row.getString("swap_reason");
        return at == null
                ? null
                : new Hire.Back(
                        at,
                        row.getBigDecimal("hours_in"),
                        fuel(row, "fuel_in"),
                        row.getString("condition_in"),
                        Liquid.valueOf(row.getString("liquid")),
                        row.getBoolean("ran_dry"),
                        row.getBoolean("cord_damaged"),
                        row.getString("returned_name"),
                        reason == null ? null : SwapReason.valueOf(reason),
                        row.getObject("swapped_to", Long.class),
                        row.getString("swapped_to_tag"));
    }

    private static @Nullable Integer fuel(ResultSet row, String column) throws SQLException {
        int percent = row.getInt(column);
        return row.wasNull() ? null : percent;
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }

    private static @Nullable Instant instant(ResultSet row, String column) throws SQLException {
        OffsetDateTime at = row.getObject(column, OffsetDateTime.class);
        return at == null ? null : at.toInstant();
    }
}
