package freshet.exchange;

import freshet.measures.UnitSystem;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.pumps.Unit;
import freshet.readings.MeterFact;
import freshet.readings.MeterFact.What;
import freshet.readings.MeterKind;
import freshet.readings.ReadingDraft;
import freshet.readings.Readings;
import freshet.readings.ReadingsTaken;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Rows about meters: what they showed, the first one fitted, one fitted in the place of another. */
final class ReadingRows implements RowKind<MeterFact> {

    private static final Map<String, String> FIELDS = Map.of(
            "at", "read at",
            "firstValue", "value",
            "lastValue", "last on old meter",
            "rolledOver", "rolled over",
            "rollsOverAt", "rolls over at",
            "unit", "tag");

    private final Readings readings;
    private final Names names;
    private final Set<Long> unitIds = new HashSet<>();
    /** Meters already fitted in this pass; the rows may come again. */
    private final Set<MeterFact> fitted = Collections.newSetFromMap(new IdentityHashMap<>());

    ReadingRows(Readings readings, Names names) {
        this.readings = readings;
        this.names = names;
    }

    @Override
    public FileKind kind() {
        return FileKind.READINGS;
    }

    @Override
    public List<Column> columns() {
        return List.of(
                Column.needed("tag"),
                Column.needed("meter").oneOf(MeterKind.class),
                Column.needed("read at"),
                Column.needed("value"),
                Column.of("what").oneOf(What.class),
                Column.of("last on old meter"),
                Column.of("rolled over"),
                Column.of("rolls over at"),
                Column.of("note"));
    }

    @Override
    public void lookThrough(List<Row> rows) {
        for (Row row : rows) {
            Unit unit = unit(row);
            if (unit != null) {
                unitIds.add(unit.id());
            }
        }
    }

    private @Nullable Unit unit(Row row) {
        String tag = row.text("tag");
        return tag == null ? null : names.units().byKey().get(Names.key(tag));
    }

    /** Made of what can be read without saying wrongs, which {@link #read} does. */
    @Override
    public @Nullable String key(Row row) {
        Unit unit = unit(row);
        String meter = row.text("meter");
        String at = row.text("read at");
        if (unit == null || meter == null || at == null) {
            return null;
        }
        try {
            MeterKind kind = Row.oneOf(meter, MeterKind.class);
            return kind == null
                    ? null
                    : key(unit.id(), kind, Days.moment(at, unit.stand().zone()), what(row));
        } catch (Unread unread) {
            return null;
        }
    }

    private static String key(long unitId, MeterKind kind, Instant at, What what) {
        return unitId + " " + kind + " " + at + " " + (what == What.READ);
    }

    private static What what(Row row) {
        String word = row.text("what");
        What what = word == null ? What.READ : Row.oneOf(word, What.class);
        return what == null ? What.READ : what;
    }

    @Override
    public String name(Row row) {
        return Written.text(row.text("tag")) + ", " + Written.text(row.text("read at"));
    }

    @Override
    public Map<String, MeterFact> standing() {
        return byKey(unitIds);
    }

    private Map<String, MeterFact> byKey(Collection<Long> units) {
        Map<String, MeterFact> standing = new LinkedHashMap<>();
        for (MeterFact fact : readings.meterFacts(units)) {
            standing.put(key(fact.unitId(), fact.kind(), fact.at(), fact.what()), fact);
        }
        return standing;
    }

    @Override
    public MeterFact read(Row row, @Nullable MeterFact stands) {
        row.needed("tag");
        Unit unit = names.find(row, "tag", FileKind.UNITS, names.units());
        MeterKind kind = row.choice("meter", MeterKind.class);
        row.needed("read at");
        Instant at = row.moment(
                "read at", unit == null ? ZoneId.of("UTC") : unit.stand().zone());
        row.needed("value");
        BigDecimal value = row.exact("value");
        What what = row.text("what") == null ? What.READ : row.choice("what", What.class);
        BigDecimal last = row.exact("last on old meter");
        if (what == What.SWAPPED) {
            row.needed("last on old meter");
        } else if (last != null) {
            row.wrong("last on old meter", "exchange.reading.notSwapped");
        }
        return new MeterFact(
                unit == null ? 0 : unit.id(),
                kind,
                what,
                at == null ? Instant.EPOCH : at,
                value == null ? BigDecimal.ZERO : value,
                last,
                row.yes("rolled over", false),
                row.exact("rolls over at"),
                row.text("note"));
    }

    @Override
    public Map<String, String> cells(MeterFact said, UnitSystem system) {
        Unit unit = names.units().of(said.unitId());
        Map<String, String> cells = new LinkedHashMap<>();
        cells.put("tag", unit.tag());
        cells.put("meter", Written.word(said.kind()));
        cells.put("read at", Days.written(said.at(), unit.stand().zone()));
        cells.put("value", Written.number(said.value()));
        cells.put("what", Written.word(said.what()));
        cells.put("last on old meter", Written.number(said.lastOnOld()));
        cells.put("rolled over", said.rolledOver() ? "yes" : "");
        cells.put("rolls over at", Written.number(said.rollsOverAt()));
        cells.put("note", Written.text(said.note()));
        return cells;
    }

    /** A reading stands for good, so that only another value is another reading; the door then refuses it. */
    @Override
    public List<Preview.Difference> differences(MeterFact before, MeterFact after, UnitSystem system) {
        return RowKind.super.differences(before, after, system).stream()
                .filter(each -> each.column().equals("value") || each.column().equals("last on old meter"))
                .toList();
    }

    /** Every meter's facts in their order of time, those of many meters together: first what was read, then the next meter, and so on. */
    @Override
    public void take(List<MeterFact> news, Person by) {
        List<Refused.Wrong> wrongs = new ArrayList<>();
        rounds(news).forEach((round, rows) -> {
            for (int row : rows) {
                if (news.get(row).what() != What.READ) {
                    fit(news.get(row), row, by, wrongs);
                }
            }
            List<Integer> read = rows.stream()
                    .filter(row -> news.get(row).what() == What.READ)
                    .toList();
            ReadingsTaken taken = readings.recordReadings(
                    read.stream().map(row -> draft(news.get(row))).toList(), by);
            for (ReadingsTaken.Row refused : taken.refused()) {
                wrongs.add(atRow(read.get(refused.index()), refused.wrong()));
            }
        });
        Refused.ifAny(wrongs);
    }

    /** The rows by how many meters were fitted before them, this one counted. */
    private static TreeMap<Integer, List<Integer>> rounds(List<MeterFact> news) {
        Map<String, Integer> fittings = new HashMap<>();
        TreeMap<Integer, List<Integer>> rounds = new TreeMap<>();
        IntStream.range(0, news.size())
                .boxed()
                .sorted(Comparator.<Integer, Instant>comparing(
                                row -> news.get(row).at())
                        .thenComparing(row -> news.get(row).what() == What.READ))
                .forEach(row -> {
                    MeterFact fact = news.get(row);
                    int round = fittings.merge(
                            fact.unitId() + " " + fact.kind(), fact.what() == What.READ ? 0 : 1, Integer::sum);
                    rounds.computeIfAbsent(round, any -> new ArrayList<>()).add(row);
                });
        return rounds;
    }

    private void fit(MeterFact fact, int row, Person by, List<Refused.Wrong> wrongs) {
        try {
            if (fact.what() == What.FITTED && fitted.add(fact)) {
                readings.fitMeter(
                        fact.unitId(), fact.kind(), fact.at(), fact.value(), fact.rollsOverAt(), fact.note(), by);
            } else if (fact.what() == What.SWAPPED && fitted.add(fact)) {
                readings.swapMeter(
                        fact.unitId(),
                        fact.kind(),
                        fact.at(),
                        Objects.requireNonNull(fact.lastOnOld()),
                        fact.value(),
                        fact.rollsOverAt(),
                        fact.note(),
                        by);
            }
        } catch (Refused refused) {
            refused.wrongs().forEach(wrong -> wrongs.add(atRow(row, wrong)));
        }
    }

    private static Refused.Wrong atRow(int row, Refused.Wrong wrong) {
        return new Refused.Wrong("rows[" + row + "]." + wrong.field(), wrong.code(), wrong.arguments());
    }

    private static ReadingDraft draft(MeterFact fact) {
        return new ReadingDraft(
                fact.unitId(),
                fact.kind(),
                fact.at(),
                fact.value(),
                fact.rolledOver(),
                fact.rollsOverAt(),
                fact.note());
    }

    @Override
    public @Nullable String column(String field, MeterFact said) {
        return field.isEmpty() ? null : FIELDS.getOrDefault(field, field);
    }

    @Override
    public Iterable<MeterFact> everything() {
        List<Long> inOrder = List.copyOf(names.units().byId().keySet());
        return readings.meterFacts(inOrder).stream()
                .sorted(Comparator.comparing(
                        fact -> Names.key(names.units().of(fact.unitId()).tag())))
                .toList();
    }
}
