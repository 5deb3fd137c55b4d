package freshet.rules;

import freshet.happenings.HappeningKind;
import freshet.places.WindowKind;
import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The rows of the triggers. */
@Component
class TriggerTable {

    private static final String INSERT = """
            insert into care_trigger (rule_id, ordinal, kind, every_count, every_unit, window_kind, every_amount, first_amount,
                event, first_only, idle_days, measure, threshold, days_to_act)
            values (:rule, :ordinal, :kind, :count, :unit, :window, :every, :first,
                :event, :firstOnly, :idle, :measure, :threshold, :act)""";
    // the one event that nobody reports: the register knows it
    private static final String RELOCATED = "RELOCATED";

    private final JdbcClient jdbc;

    TriggerTable(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** All triggers by rule, in their order. */
    Map<Long, List<Trigger>> all() {
        Map<Long, List<Trigger>> triggers = new HashMap<>();
        jdbc.sql("select * from care_trigger order by rule_id, ordinal").query(row -> {
            triggers.computeIfAbsent(row.getLong("rule_id"), id -> new ArrayList<>())
                    .add(trigger(row));
        });
        return triggers;
    }

    void replace(long ruleId, List<Trigger> triggers) {
        jdbc.sql("delete from care_trigger where rule_id = ?").param(ruleId).update();
        for (int i = 0; i < triggers.size(); i++) {
            insert(ruleId, i + 1, triggers.get(i));
        }
    }

    private static Trigger trigger(ResultSet row) throws SQLException {
        int act = row.getInt("days_to_act");
        return switch (row.getString("kind")) {
            case "CALENDAR" ->
                new Trigger.Calendar(Span.valueOf(row.getString("every_unit")).times(row.getInt("every_count")));
            case "SEASON" -> new Trigger.Season(WindowKind.valueOf(row.getString("window_kind")));
            case "RUN_HOURS" -> new Trigger.RunHours(amount(row, "every_amount"), first(row));
            case "STARTS" -> new Trigger.Starts(amount(row, "every_amount"), first(row));
            case "EVENT" ->
                row.getString("event").equals(RELOCATED)
                        ? new Trigger.Relocated(act)
                        : new Trigger.Event(
                                HappeningKind.valueOf(row.getString("event")), row.getBoolean("first_only"), act);
            case "IDLE" -> new Trigger.Idle(row.getInt("idle_days"), act);
            default ->
                new Trigger.Condition(Measure.valueOf(row.getString("measure")), row.getDouble("threshold"), act);
        };
    }

    private static BigDecimal amount(ResultSet row, String column) throws SQLException {
        return plain(row.getBigDecimal(column));
    }

    private static @Nullable BigDecimal first(ResultSet row) throws SQLException {
        BigDecimal first = row.getBigDecimal("first_amount");
        return first == null ? null : plain(first);
    }

    /** 100, not 100.00. */
    private static BigDecimal plain(BigDecimal amount) {
        BigDecimal stripped = amount.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }

    private void insert(long ruleId, int ordinal, Trigger trigger) {
        Map<String, Object> row = row(trigger);
        jdbc.sql(INSERT)
                .param("rule", ruleId)
                .param("ordinal", ordinal)
                .param("kind", row.get("kind"))
                .param("count", row.get("count"), Types.INTEGER)
                .param("unit", row.get("unit"), Types.VARCHAR)
                .param("window", row.get("window"), Types.VARCHAR)
                .param("every", row.get("every"), Types.NUMERIC)
                .param("first", row.get("first"), Types.NUMERIC)
                .param("event", row.get("event"), Types.VARCHAR)
                .param("firstOnly", row.getOrDefault("firstOnly", false))
                .param("idle", row.get("idle"), Types.INTEGER)
                .param("measure", row.get("measure"), Types.VARCHAR)
                .param("threshold", row.get("threshold"), Types.DOUBLE)
                .param("act", row.get("act"), Types.INTEGER)
                .update();
    }

    private static Map<String, Object> row(Trigger trigger) {
        if (trigger instanceof Trigger.Calendar calendar) {
            Span unit = Span.of(calendar.every());
            return Map.of("kind", "CALENDAR", "count", unit.count(calendar.every()), "unit", unit.name());
        }
        if (trigger instanceof Trigger.Season season) {
            return Map.of("kind", "SEASON", "window", season.window().name());
        }
        if (trigger instanceof Trigger.RunHours hours) {
            return amounts("RUN_HOURS", hours.every(), hours.first());
        }
        if (trigger instanceof Trigger.Starts starts) {
            return amounts("STARTS", starts.every(), starts.first());
        }
        if (trigger instanceof Trigger.Event event) {
            return Map.of(
                    "kind",
                    "EVENT",
                    "event",
                    event.kind().name(),
                    "firstOnly",
                    event.firstOnly(),
                    "act",
                    event.daysToAct());
        }
        if (trigger instanceof Trigger.Relocated moved) {
            return Map.of("kind", "EVENT", "event", RELOCATED, "act", moved.daysToAct());
        }
        if (trigger instanceof Trigger.Idle idle) {
            return Map.of("kind", "IDLE", "idle", idle.days(), "act", idle.daysToAct());
        }
        Trigger.Condition condition = (Trigger.Condition) trigger;
        return Map.of(
                "kind",
                "CONDITION",
                "measure",
                condition.measure().name(),
                "threshold",
                condition.threshold(),
                "act",
                condition.daysToAct());
    }

    private static Map<String, Object> amounts(String kind, BigDecimal every, @Nullable BigDecimal first) {
        return first == null
                ? Map.of("kind", kind, "every", every)
                : Map.of("kind", kind, "every", every, "first", first);
    }
}
