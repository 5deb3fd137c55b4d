package freshet.checklists;

import freshet.people.Competence;
import freshet.pumps.PumpKind;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Reads checklists, their versions and their lines. */
@Component
class ChecklistTable {

    private static final String VERSIONS = """
            select c.id, c.code, c.name, c.pump_kind, c.phase, c.effect, v.minutes, v.id as version_id, v.number
            from checklist c join checklist_version v on v.checklist_id = c.id
            """;
    private static final String EDITIONS = """
            select v.checklist_id, v.number, v.published_at, v.note, a.full_name,
                   (select count(*) from check_line l where l.checklist_version_id = v.id) as lines
            from checklist_version v left join account a on a.id = v.published_by
            """;
    private static final String CURRENT =
            " v.number = (select max(n.number) from checklist_version n where n.checklist_id = c.id)";

    private final JdbcClient jdbc;

    ChecklistTable(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<Checklist> current() {
        return withLines(jdbc.sql(VERSIONS + "where" + CURRENT + " order by c.id")
                .query((row, n) -> checklist(row))
                .list());
    }

    Optional<Checklist> current(long checklistId) {
        return jdbc.sql(VERSIONS + "where c.id = ? and" + CURRENT)
                .param(checklistId)
                .query((row, n) -> checklist(row))
                .optional()
                .map(this::withLines);
    }

    Optional<Checklist> version(long versionId) {
        return jdbc.sql(VERSIONS + "where v.id = ?")
                .param(versionId)
                .query((row, n) -> checklist(row))
                .optional()
                .map(this::withLines);
    }

    Optional<Checklist> version(long checklistId, int number) {
        return jdbc.sql(VERSIONS + "where c.id = ? and v.number = ?")
                .params(checklistId, number)
                .query((row, n) -> checklist(row))
                .optional()
                .map(this::withLines);
    }

    Optional<Long> versionOfLines(Collection<Long> lineIds) {
        List<Long> versions = jdbc.sql("select distinct checklist_version_id from check_line where id = any(?)")
                .param(lineIds.toArray(Long[]::new))
                .query(Long.class)
                .list();
        return versions.size() == 1 ? Optional.of(versions.get(0)) : Optional.empty();
    }

    List<Edition> editions(long checklistId) {
        return jdbc.sql(EDITIONS + "where v.checklist_id = ? order by v.number desc")
                .param(checklistId)
                .query((row, n) -> edition(row))
                .list();
    }

    Map<Long, Edition> newestEditions() {
        Map<Long, Edition> newest = new HashMap<>();
        jdbc.sql(
                        EDITIONS
                                + "where v.number = (select max(n.number) from checklist_version n where n.checklist_id = v.checklist_id)")
                .query(row -> {
                    newest.put(row.getLong("checklist_id"), edition(row));
                });
        return newest;
    }

    private static Edition edition(ResultSet row) throws SQLException {
        return new Edition(
                row.getInt("number"),
                row.getObject("published_at", OffsetDateTime.class).toInstant(),
                row.getString("full_name"),
                row.getString("note"),
                row.getInt("lines"));
    }

    private static Checklist checklist(ResultSet row) throws SQLException {
        return new Checklist(
                row.getLong("id"),
                row.getString("code"),
                row.getString("name"),
                one(PumpKind.class, row.getString("pump_kind")),
                Phase.valueOf(row.getString("phase")),
                Effect.valueOf(row.getString("effect")),
                row.getInt("minutes"),
                row.getLong("version_id"),
                row.getInt("number"),
                List.of());
    }

    private Checklist withLines(Checklist checklist) {
        return withLines(List.of(checklist)).get(0);
    }

    private List<Checklist> withLines(List<Checklist> checklists) {
        Map<Long, List<CheckLine>> lines = new HashMap<>();
        jdbc.sql("""
                        select l.*, coalesce(l.origin_id, l.id) as origin from check_line l
                        where l.checklist_version_id = any(?) order by l.checklist_version_id, l.ordinal""")
                .param(checklists.stream().map(Checklist::versionId).toArray(Long[]::new))
                .query(row -> {
                    lines.computeIfAbsent(row.getLong("checklist_version_id"), id -> new ArrayList<>())
                            .add(line(row));
                });
        return checklists.stream()
                .map(checklist -> checklist.with(lines.getOrDefault(checklist.versionId(), List.of())))
                .toList();
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
                row.getObject("held_severity", Integer.class),
                row.getBoolean("required"),
                row.getBoolean("safety"),
                row.getBoolean("may_not_apply"),
                row.getBoolean("as_left"),
                row.getBoolean("asks_instrument"),
                one(Competence.class, row.getString("competence")),
                row.getString("source"),
                row.getLong("origin"));
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
}
