package freshet.readings;

import freshet.readings.Meter.Point;
import freshet.readings.MeterLog.What;
import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Component;

/** The tables of meters and their readings, read and written for many units at once. */
@Component
class MeterTable {

    /** Which meters: those of one kind on one unit. */
    record Key(long unitId, MeterKind kind) {}

    /** A reading as it was written down. */
    record StoredReading(
            long id,
            long meterId,
            Instant at,
            BigDecimal value,
            boolean rolledOver,
            @Nullable String note,
            @Nullable Long recordedBy,
            @Nullable String withdrawnWhy) {

        MeterLog.Line line(What what, @Nullable BigDecimal rise, @Nullable BigDecimal lifetime) {
            return new MeterLog.Line(
                    what,
                    at,
                    value,
                    rolledOver,
                    id,
                    rise,
                    lifetime,
                    withdrawnWhy == null ? note : withdrawnWhy,
                    recordedBy);
        }

        Point point() {
            return new Point(at, What.READ, value, rolledOver);
        }
    }

    /** A reading to write down. */
    record NewReading(Meter meter, ReadingDraft draft) {

        boolean saysMoreOfTheMeter() {
            return draft.rollsOverAt() != null || draft.at().isBefore(meter.fittedAt);
        }
    }

    private static final int MANY = 500;

    private final JdbcTemplate jdbc;

    MeterTable(JdbcTemplate jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * Gives a meter that nobody saw fitted to every unit that has none of the kind, known from this first reading. Somebody else who
     * does the same at the same time waits, and then finds ours.
     */
    void supposeMeters(Collection<ReadingDraft> firstReadings) {
        int supposed = jdbc.update(
                """
                insert into meter (unit_id, kind, fitted_at, first_value, implied)
                select f.*, true
                from unnest(?::bigint[], ?::text[], ?::text[]::timestamptz[], ?::numeric[]) as f (unit_id, kind, at, value)
                where not exists (select from meter m where m.unit_id = f.unit_id and m.kind = f.kind)
                on conflict (unit_id, kind) where removed_at is null do nothing""",
                firstReadings.stream().map(ReadingDraft::unitId).toArray(Long[]::new),
                texts(firstReadings, draft -> draft.kind().name()),
                texts(firstReadings, draft -> draft.at().toString()),
                firstReadings.stream().map(ReadingDraft::value).toArray(BigDecimal[]::new));
        countAnew(supposed);
    }

    /** After many new rows the database would still believe its tables to be as small as before, and look them through one by one. */
    private void countAnew(int newRows) {
        if (newRows >= MANY) {
            jdbc.execute("analyze meter, meter_reading");
        }
    }

    private static <T> @Nullable String[] texts(Collection<T> all, Function<T, @Nullable String> of) {
        return all.stream().map(of).toArray(String[]::new);
    }

    /** Holds the meters of these units until the transaction ends; what is read after this is the last word. */
    void hold(Collection<Long> unitIds) {
        jdbc.query("select id from meter where unit_id = any(?) order by id for update", row -> {}, ids(unitIds));
    }

    Map<Key, MeterHistory> histories(Collection<Long> unitIds) {
        Map<Key, List<Meter>> meters = new LinkedHashMap<>();
        Map<Long, Meter> byId = new HashMap<>();
        jdbc.query(
                "select * from meter where unit_id = any(?) order by unit_id, kind, fitted_at, id",
                row -> {
                    Meter meter = meter(row);
                    byId.put(meter.id, meter);
                    meters.computeIfAbsent(new Key(row.getLong("unit_id"), meter.kind), any -> new ArrayList<>())
                            .add(meter);
                },
                ids(unitIds));
        jdbc.query(
                """
                select r.* from meter_reading r join meter m on m.id = r.meter_id
                where m.unit_id = any(?) and r.withdrawn_at is null""",
                row -> {
                    StoredReading reading = reading(row);
                    byId.get(reading.meterId()).add(reading.point());
                },
                ids(unitIds));
        Map<Key, MeterHistory> histories = new HashMap<>();
        meters.forEach((key, those) -> histories.put(key, new MeterHistory(those)));
        return histories;
    }

    /** All readings of a unit's meters of one kind, withdrawn ones too, oldest first. */
    List<StoredReading> readings(long unitId, MeterKind kind) {
        return jdbc.query("""
                select r.* from meter_reading r join meter m on m.id = r.meter_id
                where m.unit_id = ? and m.kind = ? order by r.at, r.id""", (row, n) -> reading(row), unitId, kind.name());
    }

    /** What was written down and still stands, by unit and kind, oldest first. */
    List<MeterFact> facts(Collection<Long> unitIds) {
        return jdbc.query(
                """
                select m.unit_id, m.kind, case when old.id is null then 'FITTED' else 'SWAPPED' end as what, m.fitted_at as at,
                       m.first_value as value, old.last_value, false as rolled_over, m.rolls_over_at, m.note
                from meter m left join lateral (
                    select o.id, o.last_value from meter o
                    where o.unit_id = m.unit_id and o.kind = m.kind and o.removed_at = m.fitted_at and o.id < m.id
                    order by o.id desc limit 1) old on true
                where not m.implied and m.unit_id = any(?)
                union all
                select m.unit_id, m.kind, 'READ', r.at, r.value, null, r.rolled_over,
                       case when m.implied and row_number() over (partition by m.id order by r.at) = 1
                            then m.rolls_over_at end,
                       r.note
                from meter_reading r join meter m on m.id = r.meter_id
                where r.withdrawn_at is null and m.unit_id = any(?)
                order by unit_id, kind, at, what""",
                (row, n) -> new MeterFact(
                        row.getLong("unit_id"),
                        MeterKind.valueOf(row.getString("kind")),
                        MeterFact.What.valueOf(row.getString("what")),
                        instant(row, "at"),
                        row.getBigDecimal("value"),
                        row.getBigDecimal("last_value"),
                        row.getBoolean("rolled_over"),
                        row.getBigDecimal("rolls_over_at"),
                        row.getString("note")),
                ids(unitIds),
                ids(unitIds));
    }

    void write(List<NewReading> readings, Instant now, @Nullable Long by) {
        jdbc.update(
                """
                insert into meter_reading (meter_id, at, value, rolled_over, note, recorded_by, recorded_at)
                select r.*, ?::bigint, ?::timestamptz
                from unnest(?::bigint[], ?::text[]::timestamptz[], ?::numeric[], ?::boolean[], ?::text[])
                     as r (meter_id, at, value, rolled_over, note)""",
                by,
                utc(now),
                readings.stream().map(reading -> reading.meter().id).toArray(Long[]::new),
                texts(readings, reading -> reading.draft().at().toString()),
                readings.stream().map(reading -> reading.draft().value()).toArray(BigDecimal[]::new),
                readings.stream().map(reading -> reading.draft().rolledOver()).toArray(Boolean[]::new),
                texts(readings, reading -> reading.draft().note()));
        countAnew(readings.size());
        // a meter that nobody saw fitted was there at its first reading, and perhaps turns over
        jdbc.batchUpdate(
                """
                update meter set
                    first_value = case when implied and ? < fitted_at then ? else first_value end,
                    fitted_at = case when implied then least(fitted_at, ?) else fitted_at end,
                    rolls_over_at = coalesce(rolls_over_at, ?)
                where id = ?""", readings.stream().filter(NewReading::saysMoreOfTheMeter).toList(), 500, (row, reading) -> {
                    row.setObject(1, utc(reading.draft().at()));
                    row.setBigDecimal(2, reading.draft().value());
                    row.setObject(3, utc(reading.draft().at()));
                    row.setBigDecimal(4, reading.draft().rollsOverAt());
                    row.setLong(5, reading.meter().id);
                });
    }

    void fit(
            long unitId,
            MeterKind kind,
            Instant at,
            BigDecimal firstValue,
            @Nullable BigDecimal rollsOverAt,
            @Nullable String note) {
        jdbc.update(
                "insert into meter (unit_id, kind, fitted_at, first_value, rolls_over_at, note) values (?, ?, ?, ?, ?, ?)",
                unitId,
                kind.name(),
                utc(at),
                firstValue,
                rollsOverAt,
                note);
    }

    void remove(long meterId, Instant at, BigDecimal lastValue) {
        jdbc.update("update meter set removed_at = ?, last_value = ? where id = ?", utc(at), lastValue, meterId);
    }

    void withdraw(long readingId, Instant now, long by, String why) {
        jdbc.update(
                "update meter_reading set withdrawn_at = ?, withdrawn_by = ?, withdrawn_why = ? where id = ?",
                utc(now),
                by,
                why,
                readingId);
    }

    private static Meter meter(ResultSet row) throws SQLException {
        return new Meter(
                row.getLong("id"),
                MeterKind.valueOf(row.getString("kind")),
                row.getBoolean("implied"),
                instant(row, "fitted_at"),
                row.getBigDecimal("first_value"),
                row.getBigDecimal("rolls_over_at"),
                row.getObject("removed_at") == null ? null : instant(row, "removed_at"),
                row.getBigDecimal("last_value"));
    }

    private static StoredReading reading(ResultSet row) throws SQLException {
        return new StoredReading(
                row.getLong("id"),
                row.getLong("meter_id"),
                instant(row, "at"),
                row.getBigDecimal("value"),
                row.getBoolean("rolled_over"),
                row.getString("note"),
                row.getObject("recorded_by", Long.class),
                row.getString("withdrawn_why"));
    }

    private static Instant instant(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }

    private static Object ids(Collection<Long> unitIds) {
        return unitIds.toArray(Long[]::new);
    }
}
