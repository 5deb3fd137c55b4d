package freshet.care;

import freshet.board.Why;
import freshet.checklists.Phase;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The rows of tasks and of the answers that are not signed yet. */
@Component
class TaskTable {

    private static final String TASKS = """
            select t.*, u.tag, c.phase, s.name as site_name, s.zone, p.name as position_name,
                   (select r.id from service_record r where r.task_id = t.id
                      and not exists (select 1 from service_record n where n.corrects_id = r.id)) as record_id
            from task t
            join pump_unit u on u.id = t.unit_id
            join checklist c on c.id = t.checklist_id
            join site s on s.id = t.site_id
            left join position p on p.id = t.position_id
            """;

    private final JdbcClient jdbc;

    TaskTable(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<Task> task(long id) {
        return jdbc.sql(TASKS + "where t.id = ?")
                .param(id)
                .query((row, n) -> task(row))
                .optional();
    }

    /** Keeps the task from everybody else until the end of the transaction. */
    Optional<Task> locked(long id) {
        jdbc.sql("select id from task where id = ? for no key update")
                .param(id)
                .query(Long.class)
                .optional();
        return task(id);
    }

    List<Task> ofUnit(long unitId) {
        return jdbc.sql(TASKS + "where t.unit_id = ? order by t.due_on, t.id")
                .param(unitId)
                .query((row, n) -> task(row))
                .list();
    }

    List<Task> openAt(Set<Long> siteIds) {
        return jdbc.sql(TASKS + "where t.state = 'OPEN' and t.site_id = any(?) order by t.due_on, u.tag, t.id")
                .param(siteIds.toArray(Long[]::new))
                .query((row, n) -> task(row))
                .list();
    }

    Map<Long, SavedAnswer> answers(long taskId) {
        Map<Long, SavedAnswer> answers = new LinkedHashMap<>();
        jdbc.sql("""
                        select a.*, p.full_name from task_answer a join account p on p.id = a.answered_by
                        where a.task_id = ?""")
                .param(taskId)
                .query((row, n) -> saved(row))
                .list()
                .forEach(saved -> answers.put(saved.answer().lineId(), saved));
        return answers;
    }

    /** The version of the checklist that the task was begun with, if it was. */
    Optional<Long> begunVersion(long taskId) {
        return jdbc.sql("""
                        select coalesce(
                          (select checklist_version_id from task_sheet where task_id = :task),
                          (select max(l.checklist_version_id) from task_photo p join check_line l on l.id = p.check_line_id
                           where p.task_id = :task))""").param("task", taskId).query(Long.class).optional();
    }

    /** What is kept beside the lines. */
    TaskNotes notes(long taskId) {
        return jdbc.sql("select began, ended, instrument, note from task_sheet where task_id = ?")
                .param(taskId)
                .query((row, n) -> new TaskNotes(
                        row.getString("began"),
                        row.getString("ended"),
                        row.getString("instrument"),
                        row.getString("note")))
                .optional()
                .orElse(TaskNotes.NONE);
    }

    /** What the person measured with last. */
    Optional<String> inHand(long personId) {
        return jdbc.sql("select instrument from instrument_in_hand where account_id = ?")
                .param(personId)
                .query(String.class)
                .optional();
    }

    void takeInHand(long personId, String instrument) {
        jdbc.sql("""
                        insert into instrument_in_hand (account_id, instrument) values (?, ?)
                        on conflict (account_id) do update set instrument = excluded.instrument""").params(personId, instrument).update();
    }

    void keep(long taskId, Answer answer, long by, Instant now) {
        jdbc.sql("""
                        insert into task_answer
                          (task_id, check_line_id, answer, as_left, finding, severity, instrument, answered_by, answered_at)
                        values (:task, :line, :answer, :asLeft, :finding, :severity, :instrument, :by, :now)
                        on conflict (task_id, check_line_id) do update
                          set answer = excluded.answer, as_left = excluded.as_left, finding = excluded.finding,
                              severity = excluded.severity, instrument = excluded.instrument,
                              answered_by = excluded.answered_by, answered_at = excluded.answered_at
                          where (task_answer.answer, task_answer.as_left, task_answer.finding, task_answer.severity, task_answer.instrument)
                            is distinct from
                              (excluded.answer, excluded.as_left, excluded.finding, excluded.severity, excluded.instrument)""")
                .param("task", taskId)
                .param("line", answer.lineId())
                .param("answer", answer.answer())
                .param("asLeft", answer.asLeft())
                .param("finding", answer.finding())
                .param("severity", answer.severity())
                .param("instrument", answer.instrument())
                .param("by", by)
                .param("now", now.atOffset(ZoneOffset.UTC))
                .update();
    }

    void drop(long taskId, long lineId) {
        jdbc.sql("delete from task_answer where task_id = ? and check_line_id = ?")
                .params(taskId, lineId)
                .update();
    }

    /** No new version: who has it is no matter of its answers. */
    void assign(List<Long> ids, @Nullable Long personId) {
        jdbc.sql("update task set assigned_to = :person where id = any(:ids) and state = 'OPEN'")
                .param("person", personId, java.sql.Types.BIGINT)
                .param("ids", ids.toArray(Long[]::new))
                .update();
    }

    /** A new version of a task that somebody works on, by the version of its checklist that it was begun with. */
    void begun(long taskId, long checklistVersionId, TaskNotes notes, Instant now) {
        jdbc.sql("update task set started_at = coalesce(started_at, ?), version = version + 1 where id = ?")
                .params(now.atOffset(ZoneOffset.UTC), taskId)
                .update();
        jdbc.sql("""
                        insert into task_sheet as kept (task_id, checklist_version_id, began, ended, instrument, note)
                        values (:task, :version, :began, :ended, :instrument, :note)
                        on conflict (task_id) do update
                          set began = coalesce(excluded.began, kept.began), ended = coalesce(excluded.ended, kept.ended),
                              instrument = coalesce(excluded.instrument, kept.instrument),
                              note = coalesce(excluded.note, kept.note)""")
                .param("task", taskId)
                .param("version", checklistVersionId)
                .param("began", notes.began())
                .param("ended", notes.ended())
                .param("instrument", notes.instrument())
                .param("note", notes.note())
                .update();
    }

    /** The task is done, and with it any other of its rule whose days overlap and that nobody has begun. */
    void signed(Task task, Instant startedAt) {
        jdbc.sql("update task set state = 'SIGNED', started_at = ?, version = version + 1 where id = ?")
                .params(startedAt.atOffset(ZoneOffset.UTC), task.id())
                .update();
        jdbc.sql("""
                        update task t set state = 'WITHDRAWN', state_why = 'DONE_ALREADY'
                        from task done
                        where done.id = ? and t.unit_id = done.unit_id and t.rule_id = done.rule_id and t.id <> done.id
                          and t.state = 'OPEN' and t.started_at is null
                          and t.opens_on <= done.due_on and t.due_on >= done.opens_on""").param(task.id()).update();
    }

    /** Gives the units whose tasks changed. */
    Set<Long> planWith(long checklistId, int minutes) {
        return jdbc.sql("""
                        update task set minutes = :minutes
                        where checklist_id = :checklist and state = 'OPEN' and started_at is null and minutes <> :minutes
                        returning unit_id""")
                .param("checklist", checklistId)
                .param("minutes", minutes)
                .query(Long.class)
                .set();
    }

    /** A task without a rule, such as what a signed one left to do; gives its id. */
    long open(
            long unitId,
            long checklistId,
            String occurrence,
            String title,
            @Nullable Why why,
            LocalDate opensOn,
            LocalDate dueOn,
            Instant now) {
        return jdbc.sql("""
                        insert into task (unit_id, occurrence, site_id, position_id, checklist_id, title, why_code, why_args, opens_on,
                                          due_on, minutes, state, planned_at)
                        select :unit, :occurrence, st.site_id, st.position_id, c.id, :title, cast(:why as text), :args, :opensOn, :dueOn,
                               c.minutes, 'OPEN', :now
                        from stand st, checklist c where st.unit_id = :unit and st.until is null and c.id = :checklist
                        returning id""")
                .param("unit", unitId)
                .param("occurrence", occurrence)
                .param("title", title)
                .param("why", why == null ? null : why.name())
                .param("args", why == null ? new String[0] : why.args().toArray(String[]::new))
                .param("opensOn", opensOn)
                .param("dueOn", dueOn)
                .param("now", now.atOffset(ZoneOffset.UTC))
                .param("checklist", checklistId)
                .query(Long.class)
                .single();
    }

    private static Task task(ResultSet row) throws SQLException {
        return new Task(
                row.getLong("id"),
                row.getLong("unit_id"),
                row.getString("tag"),
                row.getString("title"),
                Why.of(row),
                row.getLong("checklist_id"),
                Phase.valueOf(row.getString("phase")),
                row.getLong("site_id"),
                row.getString("site_name"),
                ZoneId.of(row.getString("zone")),
                row.getString("position_name"),
                row.getObject("opens_on", LocalDate.class),
                row.getObject("due_on", LocalDate.class),
                row.getInt("grace_days"),
                row.getBoolean("predicted"),
                row.getInt("minutes"),
                TaskState.valueOf(row.getString("state")),
                row.getString("state_why"),
                instant(row, "started_at"),
                row.getObject("record_id", Long.class),
                row.getInt("version"));
    }

    private static SavedAnswer saved(ResultSet row) throws SQLException {
        Answer answer = new Answer(
                row.getLong("check_line_id"),
                row.getString("answer"),
                row.getString("as_left"),
                row.getString("finding"),
                row.getObject("severity", Integer.class),
                row.getString("instrument"));
        return new SavedAnswer(
                answer,
                row.getLong("answered_by"),
                row.getString("full_name"),
                row.getObject("answered_at", OffsetDateTime.class).toInstant());
    }

    private static @Nullable Instant instant(ResultSet row, String column) throws SQLException {
        OffsetDateTime at = row.getObject(column, OffsetDateTime.class);
        return at == null ? null : at.toInstant();
    }
}
