package freshet.rounds;

import freshet.people.Person;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The rows of rounds and their stops. */
@Component
class RoundTable {

    private static final String ROUNDS = """
            select r.*, p.full_name as person_name, m.full_name as made_by_name
            from round r left join account p on p.id = r.person_id join account m on m.id = r.made_by
            """;

    private final JdbcClient jdbc;
    private final StopTable stops;

    RoundTable(JdbcClient jdbc, StopTable stops) {
        this.jdbc = jdbc;
        this.stops = stops;
    }

    long insert(RoundDraft draft, Person by, Instant now) {
        return jdbc.sql("""
                        insert into round (name, day, person_id, made_by, made_at)
                        values (:name, :day, :person, :by, :now) returning id""")
                .param("name", draft.name().strip())
                .param("day", draft.day())
                .param("person", draft.personId(), java.sql.Types.BIGINT)
                .param("by", by.id())
                .param("now", now.atOffset(ZoneOffset.UTC))
                .query(Long.class)
                .single();
    }

    /** Whether it was changed: not when somebody else did since that version. */
    boolean change(long id, int version, RoundDraft draft) {
        return jdbc.sql("""
                        update round set name = :name, day = :day, person_id = :person, version = version + 1
                        where id = :id and version = :version and withdrawn_at is null""")
                        .param("name", draft.name().strip())
                        .param("day", draft.day())
                        .param("person", draft.personId(), java.sql.Types.BIGINT)
                        .param("id", id)
                        .param("version", version)
                        .update()
                == 1;
    }

    void withdraw(long id, Person by, Instant now) {
        jdbc.sql("update round set withdrawn_at = ?, withdrawn_by = ?, version = version + 1 where id = ?")
                .params(now.atOffset(ZoneOffset.UTC), by.id(), id)
                .update();
    }

    /** Keeps the round from everybody else until the end of the transaction; empty when there is none. */
    Optional<Round> locked(long id) {
        jdbc.sql("select id from round where id = ? for no key update")
                .param(id)
                .query(Long.class)
                .optional();
        return round(id);
    }

    Optional<Round> round(long id) {
        return rounds(ROUNDS + "where r.id = :id", Map.of("id", id)).stream().findFirst();
    }

    /** Of one person (null: of everybody and nobody), from that day on, by day, given-up ones not among them. */
    List<Round> rounds(@Nullable Long personId, LocalDate from) {
        String of = personId == null ? "" : " and r.person_id = " + personId;
        return rounds(
                ROUNDS + "where r.withdrawn_at is null and r.day >= :from" + of + " order by r.day, r.name, r.id",
                Map.of("from", from));
    }

    /** Those before that day, the latest first. */
    List<Round> before(LocalDate day, int most) {
        return rounds(
                ROUNDS + "where r.withdrawn_at is null and r.day < :day order by r.day desc, r.name, r.id limit "
                        + most,
                Map.of("day", day));
    }

    /** Those before that day on which something is left, the latest first. */
    List<Round> leftBefore(LocalDate day, int most) {
        return rounds(ROUNDS + """
                where r.withdrawn_at is null and r.day < :day and exists (
                  select 1 from round_stop st left join task t on t.id = st.task_id
                  where st.round_id = r.id and (t.state = 'OPEN' or st.unit_id is not null and st.seen_at is null))
                order by r.day desc, r.name, r.id limit\s""" + most, Map.of("day", day));
    }

    private List<Round> rounds(String sql, Map<String, ?> params) {
        List<Head> heads =
                jdbc.sql(sql).params(params).query((row, n) -> head(row)).list();
        Map<Long, List<Stop>> byRound = stops
                .ofRounds(heads.stream().map(Head::id).toList())
                .stream()
                .collect(Collectors.groupingBy(Stop::roundId));
        return heads.stream()
                .map(head -> head.round(byRound.getOrDefault(head.id(), List.of())))
                .toList();
    }

    private record Head(
            long id,
            String name,
            LocalDate day,
            @Nullable Long personId,
            @Nullable String personName,
            String madeByName,
            boolean withdrawn,
            int version) {

        Round round(List<Stop> stops) {
            return new Round(id, name, day, personId, personName, madeByName, withdrawn, version, stops);
        }
    }

    private static Head head(ResultSet row) throws SQLException {
        return new Head(
                row.getLong("id"),
                row.getString("name"),
                row.getObject("day", LocalDate.class),
                row.getObject("person_id", Long.class),
                row.getString("person_name"),
                row.getString("made_by_name"),
                row.getObject("withdrawn_at") != null,
                row.getInt("version"));
    }

    long insertNoAccess(Stop stop, Instant at, NoAccessWhy why, @Nullable String note, Person by, Instant now) {
        return jdbc.sql("""
                        insert into no_access (round_id, task_id, unit_id, site_id, at, noted_at, noted_by, why, note)
                        values (:round, :task, :unit, :site, :at, :now, :by, :why, :note) returning id""")
                .param("round", stop.roundId())
                .param("task", stop.taskId(), java.sql.Types.BIGINT)
                .param("unit", stop.unitId())
                .param("site", stop.siteId())
                .param("at", at.atOffset(ZoneOffset.UTC))
                .param("now", now.atOffset(ZoneOffset.UTC))
                .param("by", by.id())
                .param("why", why.name())
                .param("note", note, java.sql.Types.VARCHAR)
                .query(Long.class)
                .single();
    }

    /** All of a unit, latest first. */
    List<NoAccess> noAccessOf(long unitId) {
        return jdbc.sql(StopTable.NO_ACCESS + "where n.unit_id = ? order by n.at desc, n.id desc")
                .param(unitId)
                .query((row, n) -> noAccess(row))
                .list();
    }

    static NoAccess noAccess(ResultSet row) throws SQLException {
        return new NoAccess(
                row.getLong("id"),
                row.getLong("round_id"),
                row.getObject("task_id", Long.class),
                row.getLong("unit_id"),
                row.getString("site_name"),
                ZoneId.of(row.getString("zone")),
                Objects.requireNonNull(instant(row, "at")),
                NoAccessWhy.valueOf(row.getString("why")),
                row.getString("note"),
                row.getString("noted_by_name"));
    }

    AccessNote access(long siteId) {
        return jdbc.sql("select * from access_note where site_id = ?")
                .param(siteId)
                .query((row, n) -> new AccessNote(siteId, row.getString("note"), row.getInt("version")))
                .optional()
                .orElse(new AccessNote(siteId, "", -1));
    }

    /** Whether it was written: not when somebody else did since that version. */
    boolean writeAccess(long siteId, int version, String note, Person by, Instant now) {
        return jdbc.sql("""
                        insert into access_note (site_id, note, written_at, written_by) values (:site, :note, :now, :by)
                        on conflict (site_id) do update
                          set note = excluded.note, written_at = excluded.written_at, written_by = excluded.written_by,
                              version = access_note.version + 1
                          where access_note.version = :version""")
                        .param("site", siteId)
                        .param("note", note)
                        .param("now", now.atOffset(ZoneOffset.UTC))
                        .param("by", by.id())
                        .param("version", version)
                        .update()
                == 1;
    }

    static @Nullable Instant instant(ResultSet row, String column) throws SQLException {
        OffsetDateTime at = row.getObject(column, OffsetDateTime.class);
        return at == null ? null : at.toInstant();
    }

    /** The tasks among these ids as they stand now, kept from everybody else until the end of the transaction. */
    List<NowTask> lockedTasks(Collection<Long> ids) {
        jdbc.sql("select id from task where id = any(?) order by id for no key update")
                .param(ids.toArray(Long[]::new))
                .query(Long.class)
                .list();
        return jdbc.sql("""
                        select t.id, t.title, t.state, t.version, coalesce(t.assigned_to, 0) as assigned_to, u.tag,
                               a.full_name as assigned_name,
                               (select r.signed_name from service_record r where r.task_id = t.id and r.corrects_id is null)
                                 as signed_name
                        from task t join pump_unit u on u.id = t.unit_id left join account a on a.id = t.assigned_to
                        where t.id = any(?)""")
                .param(ids.toArray(Long[]::new))
                .query((row, n) -> new NowTask(
                        row.getLong("id"),
                        row.getString("tag"),
                        row.getString("title"),
                        row.getString("state"),
                        row.getInt("version"),
                        row.getLong("assigned_to"),
                        row.getString("assigned_name"),
                        row.getString("signed_name")))
                .list();
    }

    /** A task as it stands now. */
    record NowTask(
            long id,
            String tag,
            String title,
            String state,
            int version,
            long assignedTo,
            @Nullable String assignedName,
            @Nullable String signedName) {

        @Nullable
        ChangedTask changedSince(Chosen chosen) {
            if (state.equals("SIGNED")) {
                return new ChangedTask(id, tag, title, ChangedTask.How.SIGNED, signedName);
            }
            if (!state.equals("OPEN")) {
                return new ChangedTask(id, tag, title, ChangedTask.How.WITHDRAWN, null);
            }
            if (chosen.version() == null) {
                return null;
            }
            if (chosen.assignedTo() != assignedTo) {
                return new ChangedTask(id, tag, title, ChangedTask.How.ASSIGNED, assignedName);
            }
            return version == chosen.version() ? null : new ChangedTask(id, tag, title, ChangedTask.How.BEGUN, null);
        }
    }
}
