package freshet.jobs;

import freshet.hydraulics.MeasuredHead;
import freshet.hydraulics.Pattern.Reading;
import freshet.measures.Quantity;
import freshet.measures.Usual;
import freshet.people.Typed;
import freshet.readings.FlowTestDraft;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads what was measured from what was typed. */
final class SplitReader {

    /** Usual standard uncertainty of a gauge: half of ±2 kPa (common practice, no source). */
    private static final double GAUGE_UNCERTAINTY_KPA = 1;

    private final SplitForm form;
    private final Typed typed;
    private final Bounds bounds;

    private SplitReader(SplitForm form, Typed typed) {
        this.form = form;
        this.typed = typed;
        this.bounds = new Bounds(typed);
    }

    /** Null when anything is wrong with it, which is gathered in {@code typed}. */
    static @Nullable Measured measured(SplitForm form, Typed typed, @Nullable Chosen pump) {
        return new SplitReader(form, typed).read(pump);
    }

    private @Nullable Measured read(@Nullable Chosen pump) {
        JobLine line =
                JobReader.line(typed, form.lift(), form.water(), form.pieces() == null ? List.of() : form.pieces());
        Double outlet = bounds.quantity("outlet", form.outlet(), Usual.BORE, 0.5, 1000);
        Double flow = typed.required(
                "flow", bounds.quantity("flow", form.flow(), Usual.FLOW, 1e-4, 10_000), "jobs.measured.missing");
        if (pump != null && flow != null) {
            double most = pump.model().curve().lastFlowM3h();
            typed.usual("flow", form.flow(), Quantity.FLOW, flow, most / 50, 1.15 * most);
        }
        Double percent = bounds.number("flowDoubt", form.flowDoubt(), 0, 100);
        MeasuredHead.ByGauge gauge = gauge(line);
        Double amps = bounds.quantity("amps", form.amps(), Usual.CURRENT, 0, 1000);
        if (Typed.text(form.unit()) == null && Typed.text(form.model()) == null) {
            typed.wrong("unit", "jobs.pump.missing");
        }
        if (line == null || flow == null || pump == null) {
            return null;
        }
        return new Measured(
                line,
                outlet == null ? pump.outletMm() : outlet,
                flow,
                percent == null ? Measured.USUAL_FLOW_DOUBT : percent / 100,
                gauge,
                amps,
                seen(form.headReads()),
                seen(form.flowReads()),
                seen(form.ampsReads()));
    }

    private MeasuredHead.@Nullable ByGauge gauge(@Nullable JobLine line) {
        Double kPa = bounds.quantity("gauge", form.gauge(), Usual.PRESSURE, -100, 5000);
        Double height = bounds.quantity("gaugeHeight", form.gaugeHeight(), Usual.LIFT, -100, 500);
        Double bore = bounds.quantity("gaugeBore", form.gaugeBore(), Usual.BORE, 0.5, 1000);
        if (!form.opensGauge()) {
            return null;
        }
        typed.required("gaugeHeight", height, "readings.gaugeHeight.missing");
        typed.required("gaugeBore", bore, "readings.gaugeBore.missing");
        return kPa == null || height == null || bore == null || line == null
                ? null
                : new MeasuredHead.ByGauge(
                        kPa,
                        height,
                        bore,
                        GAUGE_UNCERTAINTY_KPA,
                        line.waterC(),
                        FlowTestDraft.USUAL_HEIGHT_UNCERTAINTY_M);
    }

    private static @Nullable Reading seen(@Nullable String name) {
        for (Reading reading : Reading.values()) {
            if (reading.name().equals(name)) {
                return reading;
            }
        }
        return null;
    }
}
