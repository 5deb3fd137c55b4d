package freshet.pumps;

import freshet.measures.Quantity;
import freshet.measures.UnitSystem;
import freshet.pumps.ModelForm.PointRow;
import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Fills the form of a model with what stands, in the units that a person reads. */
final class ModelFormFilling {

    private ModelFormFilling() {}

    static ModelForm blank() {
        return new ModelForm(
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                CurveForm.TABLE,
                null,
                null,
                null,
                plain(100 * ModelDraft.USUAL_CURVE_UNCERTAINTY),
                null,
                null,
                null,
                null);
    }

    static ModelForm of(Model model, UnitSystem system) {
        Ratings ratings = model.ratings();
        boolean table = model.curveForm() == CurveForm.TABLE;
        List<PointRow> points = model.points().stream()
                .map(point -> new PointRow(
                        Quantity.FLOW.input(point.flowM3h(), system), Quantity.HEAD.input(point.headM(), system)))
                .toList();
        return new ModelForm(
                model.name(),
                model.kind(),
                model.drive(),
                model.hasFloat(),
                text(ratings.voltageV(), Quantity.VOLTAGE, system),
                plain(ratings.frequencyHz()),
                text(ratings.currentA(), Quantity.CURRENT, system),
                text(ratings.powerW(), Quantity.POWER, system),
                ratings.duty(),
                plain(ratings.dutyValue()),
                plain(ratings.maxStartsPerHour()),
                plain(ratings.minRunMinutesPerStart()),
                text(ratings.inletMm(), Quantity.BORE, system),
                text(ratings.outletMm(), Quantity.BORE, system),
                text(ratings.solidsMm(), Quantity.BORE, system),
                text(ratings.maxLiquidC(), Quantity.TEMPERATURE, system),
                plain(ratings.speedRpm()),
                model.curveForm(),
                table ? points : null,
                table ? null : points.get(0).head(),
                table ? null : points.get(1).flow(),
                plain(100 * model.curveUncertainty()),
                model.curveSource(),
                model.note(),
                null,
                model.version());
    }

    private static @Nullable String text(@Nullable Double value, Quantity quantity, UnitSystem system) {
        return value == null ? null : quantity.input(value, system);
    }

    private static @Nullable String plain(@Nullable Double value) {
        return value == null
                ? null
                : new BigDecimal(value)
                        .round(new java.math.MathContext(10))
                        .stripTrailingZeros()
                        .toPlainString();
    }
}
