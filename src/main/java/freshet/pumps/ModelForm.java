package freshet.pumps;

import freshet.measures.Quantity;
import freshet.measures.UnitSystem;
import freshet.people.Refused;
import freshet.people.Typed;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.PropertyAccessorFactory;

/** What was typed about a model. The curve's table ends with blank rows. */
record ModelForm(
        @Nullable String name,
        @Nullable PumpKind kind,
        @Nullable Drive drive,
        @Nullable Boolean hasFloat,
        @Nullable String voltageV,
        @Nullable String frequencyHz,
        @Nullable String currentA,
        @Nullable String powerW,
        @Nullable Duty duty,
        @Nullable String dutyValue,
        @Nullable String maxStartsPerHour,
        @Nullable String minRunMinutesPerStart,
        @Nullable String inletMm,
        @Nullable String outletMm,
        @Nullable String solidsMm,
        @Nullable String maxLiquidC,
        @Nullable String speedRpm,
        @Nullable CurveForm curveForm,
        @Nullable List<PointRow> points,
        @Nullable String shutOffHead,
        @Nullable String openFlow,
        @Nullable String curveUncertainty,
        @Nullable String curveSource,
        @Nullable String note,
        @Nullable String more,
        @Nullable Integer version) {

    private static final int ROWS = 12;

    /** What was typed about one point of the curve. */
    record PointRow(@Nullable String flow, @Nullable String head) {

        boolean blank() {
            return Typed.text(flow) == null && Typed.text(head) == null;
        }
    }

    ModelForm {
        List<PointRow> rows = new ArrayList<>(points == null ? List.of() : points);
        rows.removeIf(row -> row == null || row.blank());
        int shown = Math.max(ROWS, rows.size() + (more == null ? 1 : 6));
        while (rows.size() < Math.min(shown, ModelChecks.MOST_POINTS)) {
            rows.add(new PointRow(null, null));
        }
        points = List.copyOf(rows);
    }

    /** The rows, blank ones at the end. */
    List<PointRow> rows() {
        return Objects.requireNonNull(points);
    }

    static ModelForm blank() {
        return ModelFormFilling.blank();
    }

    static ModelForm of(Model model, UnitSystem system) {
        return ModelFormFilling.of(model, system);
    }

    /** The model that was typed; refused at each text that cannot be read. {@code stands} is the model as it stands, if any. */
    ModelDraft draft(@Nullable Model stands, Typed typed) {
        Ratings old = stands == null ? Ratings.NONE : stands.ratings();
        Ratings ratings = new Ratings(
                typed.quantity("voltageV", voltageV, Quantity.VOLTAGE, old.voltageV()),
                typed.number("frequencyHz", frequencyHz),
                typed.quantity("currentA", currentA, Quantity.CURRENT, old.currentA()),
                typed.quantity("powerW", powerW, Quantity.POWER, old.powerW()),
                duty,
                typed.number("dutyValue", dutyValue),
                typed.number("maxStartsPerHour", maxStartsPerHour),
                typed.minutes("minRunMinutesPerStart", minRunMinutesPerStart),
                typed.quantity("inletMm", inletMm, Quantity.BORE, old.inletMm()),
                typed.quantity("outletMm", outletMm, Quantity.BORE, old.outletMm()),
                typed.quantity("solidsMm", solidsMm, Quantity.BORE, old.solidsMm()),
                typed.quantity("maxLiquidC", maxLiquidC, Quantity.TEMPERATURE, old.maxLiquidC()),
                typed.number("speedRpm", speedRpm));
        List<CurvePoint> oldPoints = stands == null ? List.of() : stands.points();
        List<CurvePoint> given =
                curveForm == CurveForm.TWO_PARAMETER ? twoPoints(typed, oldPoints) : table(typed, oldPoints);
        PumpKind itsKind = typed.required("kind", kind, "pumps.choose.kind");
        Drive itsDrive = typed.required("drive", drive, "pumps.choose.drive");
        typed.required("name", Typed.text(name), "pumps.missing");
        Double percent =
                typed.required("curveUncertainty", typed.number("curveUncertainty", curveUncertainty), "pumps.missing");
        typed.refuseIfWrong();
        return new ModelDraft(
                Typed.textOrEmpty(name),
                Objects.requireNonNull(itsKind),
                Objects.requireNonNull(itsDrive),
                Boolean.TRUE.equals(hasFloat),
                ratings,
                curveForm == null ? CurveForm.TABLE : curveForm,
                given,
                Objects.requireNonNull(percent) / 100,
                Typed.text(curveSource),
                Typed.text(note));
    }

    private List<CurvePoint> twoPoints(Typed typed, List<CurvePoint> old) {
        boolean two = old.size() == 2;
        Double head = typed.quantity(
                "shutOffHead",
                shutOffHead,
                Quantity.HEAD,
                two ? Double.valueOf(old.get(0).headM()) : null);
        Double flow = typed.quantity(
                "openFlow",
                openFlow,
                Quantity.FLOW,
                two ? Double.valueOf(old.get(1).flowM3h()) : null);
        typed.required("shutOffHead", head, "pumps.missing");
        typed.required("openFlow", flow, "pumps.missing");
        return head == null || flow == null ? List.of() : List.of(new CurvePoint(0, head), new CurvePoint(flow, 0));
    }

    private List<CurvePoint> table(Typed typed, List<CurvePoint> old) {
        List<CurvePoint> read = new ArrayList<>();
        for (int i = 0; i < rows().size(); i++) {
            PointRow row = rows().get(i);
            if (row.blank()) {
                continue;
            }
            String at = "points[" + i + "].";
            CurvePoint stands = i < old.size() ? old.get(i) : null;
            Double flow = typed.quantity(
                    at + "flow", row.flow(), Quantity.FLOW, stands == null ? null : Double.valueOf(stands.flowM3h()));
            Double head = typed.quantity(
                    at + "head", row.head(), Quantity.HEAD, stands == null ? null : Double.valueOf(stands.headM()));
            typed.required(at + "flow", flow, "pumps.curve.flowMissing");
            typed.required(at + "head", head, "pumps.curve.headMissing");
            if (flow != null && head != null) {
                read.add(new CurvePoint(flow, head));
            }
        }
        return read;
    }

    /** Refuses what is impossible, and asks about what is unusual. */
    void refuseUnlooked(ModelDraft draft, Typed typed) {
        for (Refused.Wrong wrong : ModelChecks.wrongs(draft)) {
            typed.wrong(wrong.field(), wrong.code(), wrong.arguments().toArray());
        }
        for (Refused.Wrong doubt : draft.doubts()) {
            Object text = PropertyAccessorFactory.forBeanPropertyAccess(this).getPropertyValue(doubt.field());
            typed.ask(doubt.field(), (String) text, doubt.code());
        }
        typed.refuseIfWrong();
    }
}
