package freshet.repairs;

import freshet.people.Person;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The rows of repairs, their findings and their parts. */
@Component
class RepairTable {

    private static final String REPAIRS = """
            select r.*, u.tag, s.id as site_id, s.name as site_name, s.zone, planner.full_name as planned_name, ender.full_name as ended_name
            from repair r
            join pump_unit u on u.id = r.unit_id
            join stand st on st.unit_id = u.id and st.until is null
            join site s on s.id = st.site_id
            join account planner on planner.id = r.planned_by
            left join account ender on ender.id = r.ended_by
            """;

    private final JdbcClient jdbc;

    RepairTable(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<Repair> repair(long id) {
        return whole(jdbc.sql(REPAIRS + "where r.id = ?")
                        .param(id)
                        .query((row, n) -> row(row))
                        .list())
                .stream()
                .findFirst();
    }

    /** Open ones first, by their day, then the others, latest first. */
    List<Repair> ofUnit(long unitId) {
        return whole(jdbc.sql(REPAIRS + """
                        where r.unit_id = ?
                        order by r.ended_at desc nulls first, r.planned_for nulls last, r.id""")
                .param(unitId)
                .query((row, n) -> row(row))
                .list());
    }

    List<Repair> open() {
        return whole(jdbc.sql(REPAIRS + "where r.ended is null order by r.planned_for nulls last, u.tag, r.id")
                .query((row, n) -> row(row))
                .list());
    }

    /** Keeps these findings from any other repair until the end of the transaction, and gives those that an open one has already. */
    Set<Long> taken(Collection<Long> findingIds, long butRepair) {
        Long[] ids = findingIds.toArray(Long[]::new);
        jdbc.sql("select id from finding where id = any(?) order by id for no key update")
                .param(ids)
                .query(Long.class)
                .list();
        return jdbc.sql("""
                        select f.finding_id from repair_finding f join repair r on r.id = f.repair_id
                        where r.ended is null and f.finding_id = any(:ids) and r.id <> :but""")
                .param("ids", ids)
                .param("but", butRepair)
                .query(Long.class)
                .set();
    }

    /** The findings that an open repair is for. */
    Set<Long> planned() {
        return jdbc.sql("""
                        select f.finding_id from repair_finding f join repair r on r.id = f.repair_id
                        where r.ended is null""").query(Long.class).set();
    }

    Optional<Long> openFor(long findingId) {
        return jdbc.sql("""
                        select r.id from repair_finding f join repair r on r.id = f.repair_id
                        where f.finding_id = ? and r.ended is null""").param(findingId).query(Long.class).optional();
    }

    long insert(long unitId, RepairPlan plan, Person by, Instant now) {
        long id = jdbc.sql("insert into repair (unit_id, planned_at, planned_by) values (?, ?, ?) returning id")
                .params(unitId, now.atOffset(ZoneOffset.UTC), by.id())
                .query(Long.class)
                .single();
        change(id, 0, plan);
        return id;
    }

    /** Whether it was still open, and as it was when the form was opened. */
    boolean change(long id, int version, RepairPlan plan) {
        int changed = jdbc.sql("""
                        update repair set what = :what, planned_for = :day, labour_minutes = :minutes, labour_rate = :rate,
                               other_cost = :other, price_new = :price, life_years = :life, version = version + 1
                        where id = :id and version = :version and ended is null""")
                .param("what", plan.what())
                .param("day", plan.plannedFor())
                .param("minutes", plan.labourMinutes())
                .param("rate", plan.labourRate())
                .param("other", plan.otherCost())
                .param("price", plan.priceNew())
                .param("life", plan.lifeYears())
                .param("id", id)
                .param("version", version)
                .update();
        if (changed == 1) {
            jdbc.sql("delete from repair_finding where repair_id = ?").param(id).update();
            jdbc.sql("delete from repair_part where repair_id = ?").param(id).update();
            plan.findingIds()
                    .forEach(finding -> jdbc.sql("insert into repair_finding (repair_id, finding_id) values (?, ?)")
                            .params(id, finding)
                            .update());
            for (int i = 0; i < plan.parts().size(); i++) {
                insert(id, i + 1, plan.parts().get(i));
            }
        }
        return changed == 1;
    }

    private void insert(long repairId, int ordinal, Part part) {
        jdbc.sql("""
                        insert into repair_part (repair_id, ordinal, number, description, quantity, unit_price, lead_days,
                                                 ordered_on, expected_on, arrived_on)
                        values (:repair, :ordinal, :number, :description, :quantity, :price, :lead, :ordered, :expected, :arrived)""")
                .param("repair", repairId)
                .param("ordinal", ordinal)
                .param("number", part.number())
                .param("description", part.description())
                .param("quantity", part.quantity())
                .param("price", part.unitPrice())
                .param("lead", part.leadDays())
                .param("ordered", part.orderedOn())
                .param("expected", part.expectedOn())
                .param("arrived", part.arrivedOn())
                .update();
    }

    /** Whether it was still open, and as it was when the form was opened. */
    boolean end(long id, int version, Repair.Ending ending, Person by, Instant now) {
        return jdbc.sql("""
                        update repair set ended = :ended, ended_on = :on, ended_at = :now, ended_by = :by, as_found = :found,
                               as_left = :left, given_up_why = :why, version = version + 1
                        where id = :id and version = :version and ended is null""")
                        .param("ended", ending.done() ? "DONE" : "GIVEN_UP")
                        .param("on", ending.on())
                        .param("now", now.atOffset(ZoneOffset.UTC))
                        .param("by", by.id())
                        .param("found", ending.asFound())
                        .param("left", ending.asLeft())
                        .param("why", ending.why())
                        .param("id", id)
                        .param("version", version)
                        .update()
                == 1;
    }

    /** Adds findings and parts to what was read of the repairs themselves. */
    private List<Repair> whole(List<Repair> bare) {
        Long[] ids = bare.stream().map(Repair::id).toArray(Long[]::new);
        Map<Long, List<Long>> findings = new HashMap<>();
        jdbc.sql("select * from repair_finding where repair_id = any(?) order by repair_id, finding_id")
                .param(ids)
                .query(row -> {
                    findings.computeIfAbsent(row.getLong("repair_id"), id -> new ArrayList<>())
                            .add(row.getLong("finding_id"));
                });
        Map<Long, List<Part>> parts = new HashMap<>();
        jdbc.sql("select * from repair_part where repair_id = any(?) order by repair_id, ordinal")
                .param(ids)
                .query(row -> {
                    parts.computeIfAbsent(row.getLong("repair_id"), id -> new ArrayList<>())
                            .add(part(row));
                });
        return bare.stream()
                .map(repair -> with(
                        repair,
                        findings.getOrDefault(repair.id(), List.of()),
                        parts.getOrDefault(repair.id(), List.of())))
                .toList();
    }

    private static Repair with(Repair bare, List<Long> findings, List<Part> parts) {
        RepairPlan plan = bare.plan();
        return new Repair(
                bare.id(),
                bare.unitId(),
                bare.tag(),
                bare.siteId(),
                bare.siteName(),
                bare.zone(),
                new RepairPlan(
                        findings,
                        plan.what(),
                        plan.plannedFor(),
                        parts,
                        plan.labourMinutes(),
                        plan.labourRate(),
                        plan.otherCost(),
                        plan.priceNew(),
                        plan.lifeYears()),
                bare.plannedAt(),
                bare.plannedByName(),
                bare.ending(),
                bare.version());
    }

    private static Repair row(ResultSet row) throws SQLException {
        String ended = row.getString("ended");
        return new Repair(
                row.getLong("id"),
                row.getLong("unit_id"),
                row.getString("tag"),
                row.getLong("site_id"),
                row.getString("site_name"),
                ZoneId.of(row.getString("zone")),
                new RepairPlan(
                        List.of(),
                        row.getString("what"),
                        row.getObject("planned_for", LocalDate.class),
                        List.of(),
                        row.getObject("labour_minutes", Integer.class),
                        row.getBigDecimal("labour_rate"),
                        row.getBigDecimal("other_cost"),
                        row.getBigDecimal("price_new"),
                        row.getObject("life_years", Integer.class)),
                row.getObject("planned_at", OffsetDateTime.class).toInstant(),
                row.getString("planned_name"),
                ended == null
                        ? null
                        : new Repair.Ending(
                                ended.equals("DONE"),
                                row.getObject("ended_on", LocalDate.class),
                                row.getString("ended_name"),
                                row.getString("as_found"),
                                row.getString("as_left"),
                                row.getString("given_up_why")),
                row.getInt("version"));
    }

    private static Part part(ResultSet row) throws SQLException {
        return new Part(
                row.getString("number"),
                row.getString("description"),
                row.getBigDecimal("quantity"),
                row.getBigDecimal("unit_price"),
                row.getObject("lead_days", Integer.class),
                row.getObject("ordered_on", LocalDate.class),
                row.getObject("expected_on", LocalDate.class),
                row.getObject("arrived_on", LocalDate.class));
    }
}
