package freshet.rules;

import freshet.pumps.PumpKind;
import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.MonthDay;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The rows of the rules. */
@Component
class RuleTable {

    private static final String INSERT = """
            insert into care_rule (code, job, name, pump_kind, model_id, site_id, position_id, unit_id, checklist_id, completion, follows,
                opens_days_before, grace_days, access_from, access_to, once_per_season, applies, covers, active, source)
            values (:code, :job, :name, :kind, :model, :site, :position, :unit, :checklist, :completion, :follows,
                :opens, :grace, :accessFrom, :accessTo, :once, :applies, :covers, :active, :source)
            on conflict (code) do nothing returning id""";

    private static final String UPDATE = """
            update care_rule
            set job = :job, name = :name, pump_kind = :kind, model_id = :model, site_id = :site, position_id = :position, unit_id = :unit,
                checklist_id = :checklist, completion = :completion, follows = :follows, opens_days_before = :opens,
                grace_days = :grace, access_from = :accessFrom, access_to = :accessTo, once_per_season = :once,
                applies = :applies, covers = :covers, source = :source, version = version + 1
            where id = :id and version = :version""";

    private final JdbcClient jdbc;
    private final TriggerTable triggers;

    RuleTable(JdbcClient jdbc, TriggerTable triggers) {
        this.jdbc = jdbc;
        this.triggers = triggers;
    }

    List<CareRule> all() {
        Map<Long, List<Trigger>> byRule = triggers.all();
        return jdbc.sql("select * from care_rule order by id")
                .query((row, n) -> rule(row, byRule))
                .list();
    }

    Optional<CareRule> one(long id) {
        Map<Long, List<Trigger>> byRule = triggers.all();
        return jdbc.sql("select * from care_rule where id = ?")
                .param(id)
                .query((row, n) -> rule(row, byRule))
                .optional();
    }

    Set<String> codes() {
        return jdbc.sql("select code from care_rule").query(String.class).set();
    }

    /** Adds a rule of the owner's own and gives its id. */
    long addOwn(RuleDraft draft) {
        long id = add(UUID.randomUUID().toString(), draft, true).orElseThrow();
        jdbc.sql("update care_rule set code = 'own-' || id where id = ?")
                .param(id)
                .update();
        return id;
    }

    /** Its id; empty when a rule of this code is there. */
    Optional<Long> add(String code, RuleDraft draft, boolean active) {
        Optional<Long> id = written(INSERT, draft)
                .param("code", code)
                .param("active", active)
                .query(Long.class)
                .optional();
        id.ifPresent(added -> triggers.replace(added, draft.triggers()));
        return id;
    }

    /** Whether the rule still had this version. */
    boolean change(long id, int version, RuleDraft draft) {
        boolean changed =
                written(UPDATE, draft).param("id", id).param("version", version).update() == 1;
        if (changed) {
            triggers.replace(id, draft.triggers());
        }
        return changed;
    }

    /** Whether the rule still had this version. */
    boolean activate(long id, int version, boolean active) {
        return jdbc.sql("update care_rule set active = ?, version = version + 1 where id = ? and version = ?")
                        .params(active, id, version)
                        .update()
                == 1;
    }

    private JdbcClient.StatementSpec written(String statement, RuleDraft draft) {
        Scope scope = draft.scope();
        PumpKind kind = kind(scope);
        return jdbc.sql(statement)
                .param("job", draft.job())
                .param("name", draft.name())
                .param("kind", kind == null ? null : kind.name(), Types.VARCHAR)
                .param("model", scope instanceof Scope.OfModel model ? model.modelId() : null, Types.BIGINT)
                .param("site", scope instanceof Scope.AtSite site ? site.siteId() : null, Types.BIGINT)
                .param(
                        "position",
                        scope instanceof Scope.InPosition position ? position.positionId() : null,
                        Types.BIGINT)
                .param("unit", scope instanceof Scope.OfUnit unit ? unit.unitId() : null, Types.BIGINT)
                .param("checklist", draft.checklistId())
                .param("completion", draft.fixed() ? "FIXED" : "SLIDING")
                .param("follows", draft.followsPosition() ? "POSITION" : "UNIT")
                .param("opens", draft.opensDaysBefore())
                .param("grace", draft.graceDays())
                .param("accessFrom", text(draft.accessFrom()), Types.VARCHAR)
                .param("accessTo", text(draft.accessTo()), Types.VARCHAR)
                .param("once", draft.oncePerSeason())
                .param("applies", draft.applies().name())
                .param("covers", new TreeSet<>(draft.covers()).toArray(String[]::new))
                .param("source", draft.source(), Types.VARCHAR);
    }

    private static @Nullable PumpKind kind(Scope scope) {
        if (scope instanceof Scope.OfKind kind) {
            return kind.kind();
        }
        if (scope instanceof Scope.AtSite site) {
            return site.kind();
        }
        return scope instanceof Scope.InPosition position ? position.kind() : null;
    }

    private static @Nullable String text(@Nullable MonthDay day) {
        return day == null ? null : day.toString();
    }

    private static CareRule rule(ResultSet row, Map<Long, List<Trigger>> triggers) throws SQLException {
        return new CareRule(
                row.getLong("id"),
                row.getString("code"),
                row.getString("job"),
                row.getString("name"),
                scope(row),
                List.copyOf(triggers.getOrDefault(row.getLong("id"), List.of())),
                row.getLong("checklist_id"),
                row.getString("completion").equals("FIXED"),
                row.getString("follows").equals("POSITION"),
                row.getInt("opens_days_before"),
                row.getInt("grace_days"),
                day(row.getString("access_from")),
                day(row.getString("access_to")),
                row.getBoolean("once_per_season"),
                Applies.valueOf(row.getString("applies")),
                covers(row.getArray("covers")),
                row.getBoolean("active"),
                row.getString("source"),
                row.getInt("version"));
    }

    private static Scope scope(ResultSet row) throws SQLException {
        String named = row.getString("pump_kind");
        PumpKind kind = named == null ? null : PumpKind.valueOf(named);
        if (row.getObject("unit_id") != null) {
            return new Scope.OfUnit(row.getLong("unit_id"));
        }
        if (row.getObject("position_id") != null) {
            return new Scope.InPosition(row.getLong("position_id"), kind);
        }
        if (row.getObject("site_id") != null) {
            return new Scope.AtSite(row.getLong("site_id"), kind);
        }
        if (row.getObject("model_id") != null) {
            return new Scope.OfModel(row.getLong("model_id"));
        }
        return kind == null ? new Scope.Every() : new Scope.OfKind(kind);
    }

    private static @Nullable MonthDay day(@Nullable String text) {
        return text == null ? null : MonthDay.parse(text);
    }

    private static Set<String> covers(Array jobs) throws SQLException {
        return new TreeSet<>(Arrays.asList((String[]) jobs.getArray()));
    }
}
