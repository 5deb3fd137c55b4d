package freshet.checklists;

import java.sql.Types;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Writes checklists and their versions; what it wrote is never changed. */
@Component
class VersionTable {

    private static final String INSERT_LINE = """
            insert into check_line (checklist_version_id, ordinal, section, question, hint, caution, answer_kind, unit,
                pass_low, pass_high, watch_low, watch_high, rated_by, choices, fail_severity, held_severity, required,
                safety, may_not_apply, as_left, asks_instrument, competence, source, origin_id)
            values (:version, :ordinal, :section, :question, :hint, :caution, :kind, :unit,
                :passLow, :passHigh, :watchLow, :watchHigh, :ratedBy, :choices, :failSeverity, :heldSeverity, :required,
                :safety, :mayNotApply, :asLeft, :asksInstrument, :competence, :source, :origin)""";

    private final JdbcClient jdbc;

    VersionTable(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Set<String> codes() {
        return jdbc.sql("select code from checklist").query(String.class).set();
    }

    /** Keeps the checklist from everybody else who would publish, but not from who plans by it, until the end of the transaction. */
    void hold(long checklistId) {
        jdbc.sql("select id from checklist where id = ? for no key update")
                .param(checklistId)
                .query(Long.class)
                .optional();
    }

    /** Copies a default into the database unless a checklist of its code is there meanwhile. */
    void install(DefaultChecklists.Draft draft, Instant now) {
        jdbc.sql("""
                        insert into checklist (code, name, pump_kind, phase, effect, minutes)
                        values (?, ?, ?, ?, ?, ?) on conflict (code) do nothing returning id""")
                .params(
                        draft.code(),
                        draft.name(),
                        name(draft.pumpKind()),
                        draft.phase().name(),
                        draft.effect().name(),
                        draft.minutes())
                .query(Long.class)
                .optional()
                .ifPresent(id -> insertVersion(id, 1, draft.minutes(), null, null, draft.checkLines(), now));
    }

    boolean named(String name) {
        return jdbc.sql("select exists (select 1 from checklist where lower(name) = lower(?))")
                .param(name)
                .query(Boolean.class)
                .single();
    }

    /** Gives the id of the new checklist; its code is never asked for again. */
    long copy(Checklist from, CopyDraft draft, long by, Instant now) {
        long id = jdbc.sql("""
                        insert into checklist (code, name, pump_kind, phase, effect, minutes)
                        values ('own-' || gen_random_uuid(), ?, ?, ?, ?, ?) returning id""")
                .param(1, draft.name())
                .param(2, name(draft.pumpKind()), Types.VARCHAR)
                .param(3, draft.phase().name())
                .param(4, draft.effect().name())
                .param(5, draft.minutes())
                .query(Long.class)
                .single();
        insertVersion(
                id,
                1,
                draft.minutes(),
                null,
                by,
                from.lines().stream().map(CheckLine::copied).toList(),
                now);
        return id;
    }

    void publish(
            long checklistId,
            int number,
            int minutes,
            @Nullable String note,
            long by,
            List<CheckLine> lines,
            Instant now) {
        insertVersion(checklistId, number, minutes, note, by, lines, now);
        jdbc.sql("update checklist set minutes = ? where id = ?")
                .params(minutes, checklistId)
                .update();
    }

    private void insertVersion(
            long checklistId,
            int number,
            int minutes,
            @Nullable String note,
            @Nullable Long by,
            List<CheckLine> lines,
            Instant now) {
        long versionId = jdbc.sql("""
                        insert into checklist_version (checklist_id, number, published_at, published_by, minutes, note)
                        values (:checklist, :number, :now, :by, :minutes, :note) returning id""")
                .param("checklist", checklistId)
                .param("number", number)
                .param("now", now.atOffset(ZoneOffset.UTC))
                .param("by", by, Types.BIGINT)
                .param("minutes", minutes)
                .param("note", note, Types.VARCHAR)
                .query(Long.class)
                .single();
        lines.forEach(line -> insert(versionId, line));
    }

    private void insert(long versionId, CheckLine line) {
        jdbc.sql(INSERT_LINE)
                .param("version", versionId)
                .param("ordinal", line.ordinal())
                .param("section", line.section())
                .param("question", line.question())
                .param("hint", line.hint())
                .param("caution", line.caution())
                .param("kind", line.kind().name())
                .param("unit", line.unit())
                .param("passLow", line.limits().passLow())
                .param("passHigh", line.limits().passHigh())
                .param("watchLow", line.limits().watchLow())
                .param("watchHigh", line.limits().watchHigh())
                .param("ratedBy", name(line.ratedBy()))
                .param("choices", choices(line))
                .param("failSeverity", line.failSeverity())
                .param("heldSeverity", line.heldSeverity())
                .param("required", line.required())
                .param("safety", line.safety())
                .param("mayNotApply", line.mayNotApply())
                .param("asLeft", line.asLeft())
                .param("asksInstrument", line.asksInstrument())
                .param("competence", name(line.competence()))
                .param("source", line.source())
                .param("origin", line.origin() == 0 ? null : line.origin(), Types.BIGINT)
                .update();
    }

    private static @Nullable String name(@Nullable Enum<?> constant) {
        return constant == null ? null : constant.name();
    }

    private static @Nullable String choices(CheckLine line) {
        return line.choices().isEmpty()
                ? null
                : line.choices().stream()
                        .map(choice -> choice.verdict() + "\t" + choice.words())
                        .collect(Collectors.joining("\n"));
    }
}
