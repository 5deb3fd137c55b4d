package freshet.exchange;

import freshet.measures.Quantity;
import freshet.measures.UnitSystem;
import freshet.people.Person;
import freshet.people.Refused;
import freshet.pumps.CurveForm;
import freshet.pumps.CurvePoint;
import freshet.pumps.Drive;
import freshet.pumps.Duty;
import freshet.pumps.Model;
import freshet.pumps.ModelDraft;
import freshet.pumps.PumpKind;
import freshet.pumps.Pumps;
import freshet.pumps.Ratings;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Rows about models with their rated curve: pairs of columns for its points, or its shut-off head and open flow. */
final class ModelRows implements RowKind<ModelRows.Line> {

    /** A model, and whether somebody says that what is unusual about it was checked. */
    record Line(ModelDraft model, boolean checked) {}

    private static final int MOST_POINTS = 40;
    private static final String CHECKED = "checked";
    private static final Pattern DUTY =
            Pattern.compile("(S[123])(?:\\s+(\\d+(?:\\.\\d+)?)\\s*(?:min|%)?)?", Pattern.CASE_INSENSITIVE);
    private static final Pattern POINT = Pattern.compile("points\\[(\\d+)]\\.(flow|head)");

    private static final List<Column> COLUMNS = Stream.of(
                    Stream.of(
                            Column.needed("model"),
                            Column.needed("pump kind").oneOf(PumpKind.class),
                            Column.needed("drive").oneOf(Drive.class),
                            Column.of("float"),
                            Column.of("voltage", Quantity.VOLTAGE),
                            Column.of("frequency", "Hz"),
                            Column.of("current", Quantity.CURRENT),
                            Column.of("power", Quantity.POWER),
                            Column.of("duty"),
                            Column.of("starts per hour"),
                            Column.of("run minutes per start"),
                            Column.of("inlet", Quantity.BORE),
                            Column.of("outlet", Quantity.BORE),
                            Column.of("solids", Quantity.BORE),
                            Column.of("hottest liquid", Quantity.TEMPERATURE),
                            Column.of("rated speed", "rpm")),
                    Column.series(
                            MOST_POINTS,
                            n -> Stream.of(
                                    Column.of("flow " + n, Quantity.FLOW), Column.of("head " + n, Quantity.HEAD))),
                    Stream.of(
                            Column.of("shut-off head", Quantity.HEAD),
                            Column.of("open flow", Quantity.FLOW),
                            Column.of("curve uncertainty", "%"),
                            Column.of("curve source"),
                            Column.of("note"),
                            Column.guide(CHECKED)))
            .flatMap(Function.identity())
            .toList();

    private static final Map<String, String> FIELDS = Map.ofEntries(
            Map.entry("name", "model"),
            Map.entry("voltageV", "voltage"),
            Map.entry("frequencyHz", "frequency"),
            Map.entry("currentA", "current"),
            Map.entry("powerW", "power"),
            Map.entry("dutyValue", "duty"),
            Map.entry("maxStartsPerHour", "starts per hour"),
            Map.entry("minRunMinutesPerStart", "run minutes per start"),
            Map.entry("inletMm", "inlet"),
            Map.entry("outletMm", "outlet"),
            Map.entry("solidsMm", "solids"),
            Map.entry("maxLiquidC", "hottest liquid"),
            Map.entry("speedRpm", "rated speed"),
            Map.entry("shutOffHead", "shut-off head"),
            Map.entry("openFlow", "open flow"),
            Map.entry("curveUncertainty", "curve uncertainty"),
            Map.entry("curveSource", "curve source"),
            Map.entry("points", "flow 1"));

    private final Pumps pumps;
    private final Names names;

    ModelRows(Pumps pumps, Names names) {
        this.pumps = pumps;
        this.names = names;
    }

    @Override
    public FileKind kind() {
        return FileKind.MODELS;
    }

    @Override
    public List<Column> columns() {
        return COLUMNS;
    }

    @Override
    public @Nullable String key(Row row) {
        String name = row.text("model");
        return name == null ? null : Names.key(name);
    }

    @Override
    public String name(Row row) {
        return Written.text(row.text("model"));
    }

    @Override
    public Map<String, Line> standing() {
        Map<String, Line> standing = new LinkedHashMap<>();
        names.models().byKey().forEach((key, model) -> standing.put(key, line(model)));
        return standing;
    }

    private static Line line(Model model) {
        ModelDraft draft = model.draft();
        return new Line(draft, !draft.doubts().isEmpty());
    }

    @Override
    public Line read(Row row, @Nullable Line stands) {
        ModelDraft before = stands == null ? null : stands.model();
        PumpKind kind = row.choice("pump kind", PumpKind.class);
        boolean twoParameters = row.text("shut-off head") != null || row.text("open flow") != null;
        ModelDraft model = new ModelDraft(
                row.needed("model"),
                kind,
                row.choice("drive", Drive.class),
                row.yes(
                        "float",
                        before == null || row.has("float") ? kind == PumpKind.SUMP_WITH_FLOAT : before.hasFloat()),
                ratings(row, before == null ? Ratings.NONE : before.ratings()),
                twoParameters ? CurveForm.TWO_PARAMETER : CurveForm.TABLE,
                twoParameters ? twoParameters(row) : points(row),
                uncertainty(row, before),
                row.text("curve source", before == null ? null : before.curveSource()),
                row.text("note", before == null ? null : before.note()));
        return new Line(model, row.yes(CHECKED, false));
    }

    private static Ratings ratings(Row row, Ratings before) {
        Duty duty = before.duty();
        Double dutyValue = before.dutyValue();
        if (row.has("duty")) {
            Matcher parts = row.read("duty", text -> {
                Matcher matcher = DUTY.matcher(text);
                if (!matcher.matches()) {
                    throw new Unread("exchange.duty", text);
                }
                return matcher;
            });
            duty = parts == null ? null : Duty.valueOf(parts.group(1).toUpperCase(Locale.ROOT));
            dutyValue = parts == null || parts.group(2) == null ? null : Double.valueOf(parts.group(2));
        }
        return new Ratings(
                measure(row, "voltage", before.voltageV()),
                number(row, "frequency", before.frequencyHz()),
                measure(row, "current", before.currentA()),
                measure(row, "power", before.powerW()),
                duty,
                dutyValue,
                number(row, "starts per hour", before.maxStartsPerHour()),
                number(row, "run minutes per start", before.minRunMinutesPerStart()),
                measure(row, "inlet", before.inletMm()),
                measure(row, "outlet", before.outletMm()),
                measure(row, "solids", before.solidsMm()),
                measure(row, "hottest liquid", before.maxLiquidC()),
                number(row, "rated speed", before.speedRpm()));
    }

    private static @Nullable Double measure(Row row, String column, @Nullable Double stands) {
        return row.has(column) ? row.measure(column) : stands;
    }

    private static @Nullable Double number(Row row, String column, @Nullable Double stands) {
        return row.has(column) ? row.number(column) : stands;
    }

    private static double uncertainty(Row row, @Nullable ModelDraft before) {
        if (row.text("curve uncertainty") == null) {
            return before == null || row.has("curve uncertainty")
                    ? ModelDraft.USUAL_CURVE_UNCERTAINTY
                    : before.curveUncertainty();
        }
        BigDecimal percent = row.exact("curve uncertainty");
        return percent == null ? 0 : percent.movePointLeft(2).doubleValue();
    }

    private static List<CurvePoint> twoParameters(Row row) {
        row.needed("shut-off head");
        row.needed("open flow");
        for (int n = 1; n <= MOST_POINTS; n++) {
            if (row.text("flow " + n) != null || row.text("head " + n) != null) {
                row.wrong("shut-off head", "exchange.curve.both");
                break;
            }
        }
        Double shutOff = row.measure("shut-off head");
        Double open = row.measure("open flow");
        return shutOff == null || open == null
                ? List.of()
                : List.of(new CurvePoint(0, shutOff), new CurvePoint(open, 0));
    }

    private static List<CurvePoint> points(Row row) {
        int last = IntStream.rangeClosed(1, MOST_POINTS)
                .filter(n -> row.text("flow " + n) != null || row.text("head " + n) != null)
                .max()
                .orElse(0);
        if (last < 2) {
            row.wrong(last == 0 ? "flow 1" : "flow 2", "exchange.curve.missing");
            return List.of();
        }
        List<CurvePoint> points = new ArrayList<>();
        for (int n = 1; n <= last; n++) {
            for (String each : List.of("flow " + n, "head " + n)) {
                if (row.text(each) == null) {
                    row.wrong(each, "exchange.curve.gap", String.valueOf(n));
                }
            }
            Double flow = row.measure("flow " + n);
            Double head = row.measure("head " + n);
            if (flow != null && head != null) {
                points.add(new CurvePoint(flow, head));
            }
        }
        oneUnit(row, "flow ", last);
        oneUnit(row, "head ", last);
        return points;
    }

    /** A curve is in one unit; a cell in another is most likely a slip, such as gph for gpm. */
    private static void oneUnit(Row row, String column, int last) {
        Map<String, Integer> units = new HashMap<>();
        for (int n = 1; n <= last; n++) {
            String unit = row.unit(column + n);
            if (unit != null) {
                units.merge(unit, 1, Integer::sum);
            }
        }
        if (units.size() > 1) {
            String usual = units.entrySet().stream()
                    .max(Map.Entry.comparingByValue())
                    .orElseThrow()
                    .getKey();
            for (int n = 1; n <= last; n++) {
                String unit = row.unit(column + n);
                String text = row.text(column + n);
                if (unit != null && text != null && !unit.equals(usual)) {
                    String number = text.replaceAll("\\s*[\\p{L}°'\"].*$", "");
                    row.wrong(column + n, "exchange.curve.units", unit, usual, number + " " + usual);
                }
            }
        }
    }

    @Override
    public Map<String, String> cells(Line said, UnitSystem system) {
        ModelDraft model = said.model();
        Ratings ratings = model.ratings();
        Map<String, String> cells = new LinkedHashMap<>();
        cells.put("model", Written.text(model.name()));
        cells.put("pump kind", Written.word(model.kind()));
        cells.put("drive", Written.word(model.drive()));
        cells.put("float", Written.yes(model.hasFloat()));
        cells.put("voltage", Written.measure(ratings.voltageV(), Quantity.VOLTAGE, system));
        cells.put("frequency", Written.number(ratings.frequencyHz()));
        cells.put("current", Written.measure(ratings.currentA(), Quantity.CURRENT, system));
        cells.put("power", Written.measure(ratings.powerW(), Quantity.POWER, system));
        cells.put("duty", duty(ratings));
        cells.put("starts per hour", Written.number(ratings.maxStartsPerHour()));
        cells.put("run minutes per start", Written.number(ratings.minRunMinutesPerStart()));
        cells.put("inlet", Written.measure(ratings.inletMm(), Quantity.BORE, system));
        cells.put("outlet", Written.measure(ratings.outletMm(), Quantity.BORE, system));
        cells.put("solids", Written.measure(ratings.solidsMm(), Quantity.BORE, system));
        cells.put("hottest liquid", Written.measure(ratings.maxLiquidC(), Quantity.TEMPERATURE, system));
        cells.put("rated speed", Written.number(ratings.speedRpm()));
        if (model.curveForm() == CurveForm.TWO_PARAMETER) {
            cells.put("shut-off head", Written.measure(model.points().get(0).headM(), Quantity.HEAD, system));
            cells.put("open flow", Written.measure(model.points().get(1).flowM3h(), Quantity.FLOW, system));
        } else {
            List<String> flows = Written.measures(
                    model.points().stream().map(CurvePoint::flowM3h).toList(), Quantity.FLOW, system);
            List<String> heads = Written.measures(
                    model.points().stream().map(CurvePoint::headM).toList(), Quantity.HEAD, system);
            for (int n = 1; n <= flows.size(); n++) {
                cells.put("flow " + n, flows.get(n - 1));
                cells.put("head " + n, heads.get(n - 1));
            }
        }
        cells.put("curve uncertainty", Written.percent(model.curveUncertainty()));
        cells.put("curve source", Written.text(model.curveSource()));
        cells.put("note", Written.text(model.note()));
        cells.put(CHECKED, said.checked() ? "yes" : "");
        return cells;
    }

    private static String duty(Ratings ratings) {
        Duty duty = ratings.duty();
        if (duty == null) {
            return "";
        }
        return ratings.dutyValue() == null
                ? duty.name()
                : duty + " " + Written.number(ratings.dutyValue()) + (duty == Duty.S2 ? " min" : " %");
    }

    @Override
    public void take(List<Line> news, Person by) {
        pumps.takeInModels(news.stream().map(Line::model).toList(), by);
        // what is unusual is asked about only when nothing is wrong
        List<Refused.Wrong> doubts = new ArrayList<>();
        for (int at = 0; at < news.size(); at++) {
            if (!news.get(at).checked()) {
                for (Refused.Wrong doubt : news.get(at).model().doubts()) {
                    doubts.add(new Refused.Wrong("rows[" + at + "]." + doubt.field(), doubt.code(), doubt.arguments()));
                }
            }
        }
        Refused.ifAny(doubts);
    }

    @Override
    public @Nullable String column(String field, Line said) {
        Matcher point = POINT.matcher(field);
        return point.matches()
                ? point.group(2) + " " + (Integer.parseInt(point.group(1)) + 1)
                : FIELDS.getOrDefault(field, field);
    }

    @Override
    public Iterable<Line> everything() {
        return standing().values();
    }
}
