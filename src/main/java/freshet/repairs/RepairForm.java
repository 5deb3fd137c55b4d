package freshet.repairs;

import freshet.people.Person;
import freshet.people.Typed;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** What was typed to plan a repair; it ends with blank rows for parts. */
record RepairForm(
        @Nullable List<String> findings,
        @Nullable String what,
        @Nullable String plannedFor,
        @Nullable List<Row> parts,
        @Nullable String labourMinutes,
        @Nullable String labourRate,
        @Nullable String otherCost,
        @Nullable String priceNew,
        @Nullable String lifeYears,
        @Nullable String more,
        @Nullable String version) {

    /** What was typed about one part. */
    record Row(
            @Nullable String number,
            @Nullable String description,
            @Nullable String quantity,
            @Nullable String unitPrice,
            @Nullable String leadDays,
            @Nullable String orderedOn,
            @Nullable String expectedOn,
            @Nullable String arrivedOn,
            @Nullable Boolean takeAway) {

        static final Row BLANK = new Row(null, null, null, null, null, null, null, null, null);

        boolean gone() {
            return Boolean.TRUE.equals(takeAway)
                    || Typed.text(description) == null && Typed.text(number) == null && Typed.text(unitPrice) == null;
        }
    }

    RepairForm {
        List<Row> rows = new ArrayList<>(parts == null ? List.of() : parts);
        rows.removeIf(row -> row == null || row.gone());
        int blanks = more == null ? 1 : 3;
        for (int i = 0; i < blanks; i++) {
            rows.add(Row.BLANK);
        }
        parts = List.copyOf(rows);
        findings = findings == null
                ? List.of()
                : findings.stream().filter(Objects::nonNull).toList();
    }

    static RepairForm forFinding(long findingId) {
        return new RepairForm(
                List.of(String.valueOf(findingId)), null, null, null, null, null, null, null, null, null, null);
    }

    static RepairForm of(Repair repair) {
        RepairPlan plan = repair.plan();
        return new RepairForm(
                plan.findingIds().stream().map(String::valueOf).toList(),
                plan.what(),
                text(plan.plannedFor()),
                plan.parts().stream().map(RepairForm::row).toList(),
                text(plan.labourMinutes()),
                text(plan.labourRate()),
                text(plan.otherCost()),
                text(plan.priceNew()),
                text(plan.lifeYears()),
                null,
                String.valueOf(repair.version()));
    }

    private static Row row(Part part) {
        return new Row(
                part.number(),
                part.description(),
                part.quantity().stripTrailingZeros().toPlainString(),
                text(part.unitPrice()),
                text(part.leadDays()),
                text(part.orderedOn()),
                text(part.expectedOn()),
                text(part.arrivedOn()),
                null);
    }

    private static @Nullable String text(@Nullable Object value) {
        return value == null ? null : value.toString();
    }

    int opened() {
        return Digits.version(version);
    }

    /** The plan that was typed; refused at each text that cannot be read. */
    RepairPlan read(Person me) {
        Typed typed = new Typed(me);
        List<Part> read = new ArrayList<>();
        List<Row> rows = Objects.requireNonNull(parts);
        for (int i = 0; i < rows.size(); i++) {
            if (!rows.get(i).gone()) {
                read.add(part(rows.get(i), "parts[" + i + "].", typed));
            }
        }
        RepairPlan plan = new RepairPlan(
                Objects.requireNonNull(findings).stream()
                        .filter(each -> each.matches("\\d{1,18}"))
                        .map(Long::valueOf)
                        .distinct()
                        .toList(),
                Typed.text(what),
                typed.day("plannedFor", plannedFor),
                read,
                whole("labourMinutes", typed.minutes("labourMinutes", labourMinutes), typed),
                typed.exact("labourRate", labourRate),
                typed.exact("otherCost", otherCost),
                typed.exact("priceNew", priceNew),
                whole("lifeYears", lifeYears, typed));
        typed.refuseIfWrong();
        return plan;
    }

    private static Part part(Row row, String at, Typed typed) {
        BigDecimal quantity = typed.exact(at + "quantity", row.quantity());
        return new Part(
                Typed.text(row.number()),
                Typed.textOrEmpty(row.description()),
                quantity == null ? BigDecimal.ONE : quantity,
                typed.exact(at + "unitPrice", row.unitPrice()),
                whole(at + "leadDays", row.leadDays(), typed),
                typed.day(at + "orderedOn", row.orderedOn()),
                typed.day(at + "expectedOn", row.expectedOn()),
                typed.day(at + "arrivedOn", row.arrivedOn()));
    }

    private static @Nullable Integer whole(String field, @Nullable String text, Typed typed) {
        return whole(field, typed.number(field, text), typed);
    }

    private static @Nullable Integer whole(String field, @Nullable Double number, Typed typed) {
        if (number != null && (number != Math.rint(number) || Math.abs(number) > 1_000_000)) {
            typed.wrong(field, "repairs.whole");
            return null;
        }
        return number == null ? null : number.intValue();
    }
}
