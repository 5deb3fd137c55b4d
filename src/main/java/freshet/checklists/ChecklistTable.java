package freshet.checklists;

import freshet.people.Competence;
import freshet.pumps.PumpKind;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The rows of checklists, their versions and their lines. */
@Component
class ChecklistTable {

    private static final String VERSIONS = """
            select c.*, v.id as version_id, v.number
            from checklist c join checklist_version v on v.checklist_id = c.id
            """;
    private static final String CURRENT =
            " v.number = (select max(n.number) from checklist_version n where n.checklist_id = c.id)";

    private final JdbcClient jdbc;

    ChecklistTable(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<Checklist> current() {
        return jdbc.sql(VERSIONS + "where" + CURRENT + " order by c.id")
                .query((row, n) -> checklist(row))
                .list();
    }

    Optional<Checklist> current(long checklistId) {
        return jdbc.sql(VERSIONS + "where c.id = ? and" + CURRENT)
                .param(checklistId)
                .query((row, n) -> checklist(row))
                .optional();
    }

    Optional<Checklist> version(long versionId) {
        return jdbc.sql(VERSIONS + "where v.id = ?")
                .param(versionId)
                .query((row, n) -> checklist(row))
                .optional();
    }

    private Checklist checklist(ResultSet row) throws SQLException {
        long versionId = row.getLong("version_id");
        return new Checklist(
                row.getLong("id"),
                row.getString("code"),
                row.getString("name"),
                one(PumpKind.class, row.getString("pump_kind")),
                Phase.valueOf(row.getString("phase")),
                Effect.valueOf(row.getString("effect")),
                row.getInt("minutes"),
                versionId,
                row.getInt("number"),
                lines(versionId));
    }

    private List<CheckLine> lines(long versionId) {
        return jdbc.sql("select * from check_line where checklist_version_id = ? order by ordinal")
                .param(versionId)
                .query((row, n) -> line(row))
                .list();
    }

    private static CheckLine line(ResultSet row) throws SQLException {
        return new CheckLine(
                row.getLong("id"),
                row.getInt("ordinal"),
                row.getString("section"),
                row.getString("question"),
                row.getString("hint"),
                row.getString("caution"),
                AnswerKind.valueOf(row.getString("answer_kind")),
                row.getString("unit"),
                new Limits(
                        row.getObject("pass_low", Double.class),
                        row.getObject("pass_high", Double.class),
                        row.getObject("watch_low", Double.class),
                        row.getObject("watch_high", Double.class)),
                one(RatedBy.class, row.getString("rated_by")),
                choices(row.getString("choices")),
                row.getObject("fail_severity", Integer.class),
                row.getBoolean("required"),
                row.getBoolean("safety"),
                row.getBoolean("may_not_apply"),
                row.getBoolean("as_left"),
                one(Competence.class, row.getString("competence")),
                row.getString("source"));
    }

    private static <E extends Enum<E>> @Nullable E one(Class<E> kind, @Nullable String name) {
        return name == null ? null : Enum.valueOf(kind, name);
    }

    private static List<Choice> choices(@Nullable String rows) {
        return rows == null
                ? List.of()
                : Arrays.stream(rows.split("\n"))
                        .map(row -> row.split("\t", 2))
                        .map(parts -> new Choice(Verdict.valueOf(parts[0]), parts[1]))
                        .toList();
    }

    /** Copies a default into the database unless a checklist of its code is there, and says whether it was new. */
    boolean install(DefaultChecklists.Draft draft, Instant now) {
        Optional<Long> id = jdbc.sql("""
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
                .optional();
        id.ifPresent(checklistId -> publish(checklistId, draft, now));
        return id.isPresent();
    }

    private void publish(long checklistId, DefaultChecklists.Draft draft, Instant now) {
        long versionId = jdbc.sql("""
                        insert into checklist_version (checklist_id, number, published_at)
                        values (?, 1, ?) returning id""")
                .params(checklistId, now.atOffset(ZoneOffset.UTC))
                .query(Long.class)
                .single();
        int ordinal = 0;
        for (DefaultChecklists.LineDraft line : draft.lines()) {
            ordinal++;
            insert(versionId, ordinal, line);
        }
    }

    private void insert(long versionId, int ordinal, DefaultChecklists.LineDraft line) {
        jdbc.sql("""
                        insert into check_line (checklist_version_id, ordinal, section, question, hint, caution, answer_kind, unit,
                            pass_low, pass_high, watch_low, watch_high, rated_by, choices, fail_severity, required, safety,
                            may_not_apply, as_left, competence, source)
                        values (:version, :ordinal, :section, :question, :hint, :caution, :kind, :unit,
                            :passLow, :passHigh, :watchLow, :watchHigh, :ratedBy, :choices, :failSeverity, :required, :safety,
                            :mayNotApply, :asLeft, :competence, :source)""")
                .param("version", versionId)
                .param("ordinal", ordinal)
                .param("section", line.section())
                .param("question", line.question())
                .param("hint", line.hint())
                .param("caution", line.caution())
                .param("kind", line.kind().name())
                .param("unit", line.unit())
                .param("passLow", line.passLow())
                .param("passHigh", line.passHigh())
                .param("watchLow", line.watchLow())
                .param("watchHigh", line.watchHigh())
                .param("ratedBy", name(line.ratedBy()))
                .param("choices", choices(line))
                .param("failSeverity", line.failSeverity())
                .param("required", line.required())
                .param("safety", line.safety())
                .param("mayNotApply", line.mayNotApply())
                .param("asLeft", line.asLeft())
                .param("competence", name(line.competence()))
                .param("source", line.source())
                .update();
    }

    private static @Nullable String name(@Nullable Enum<?> constant) {
        return constant == null ? null : constant.name();
    }

    private static @Nullable String choices(DefaultChecklists.LineDraft line) {
        return line.choices().isEmpty()
                ? null
                : line.choices().stream()
                        .map(choice -> choice.replaceFirst(" ", "\t"))
                        .collect(Collectors.joining("\n"));
    }
}
