package freshet.jobs;

import freshet.hydraulics.MeasuredFlow;
import freshet.measures.Quantity;
import freshet.measures.UnitSystem;
import freshet.readings.FlowTestDraft;
import freshet.readings.PieceForm;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What was typed about a pump that seems weak; all of it stands in the page's address. */
record SplitForm(
        @Nullable String unit,
        @Nullable String model,
        @Nullable String lift,
        @Nullable List<PieceForm> pieces,
        @Nullable String water,
        @Nullable String outlet,
        @Nullable String flow,
        @Nullable String flowDoubt,
        @Nullable String gauge,
        @Nullable String gaugeHeight,
        @Nullable String gaugeBore,
        @Nullable String amps,
        @Nullable String headReads,
        @Nullable String flowReads,
        @Nullable String ampsReads,
        @Nullable String units) {

    SplitForm {
        pieces = PieceForm.kept(pieces);
    }

    /** What a kept flow test measured, as this reader types it. */
    static SplitForm of(FlowTestDraft facts, String tag, UnitSystem reader) {
        MeasuredFlow flow = facts.flow();
        FlowTestDraft.Gauge gauge = facts.gauge();
        return new SplitForm(
                tag,
                null,
                input(Quantity.HEAD, facts.liftM(), reader),
                PieceForm.of(facts.pieces(), reader),
                input(Quantity.TEMPERATURE, facts.waterC(), reader),
                input(Quantity.BORE, facts.pumpOutletMm(), reader),
                input(Quantity.FLOW, flow.flowM3h(), reader),
                Quantity.CURRENT.input(200 * flow.standardUncertaintyM3h() / flow.flowM3h(), reader),
                gauge == null ? null : input(Quantity.PRESSURE, gauge.kPa(), reader),
                gauge == null ? null : input(Quantity.HEAD, gauge.aboveWaterM(), reader),
                gauge == null ? null : input(Quantity.BORE, gauge.boreMm(), reader),
                input(Quantity.CURRENT, facts.amps(), reader),
                null,
                null,
                null,
                reader.name());
    }

    private static @Nullable String input(Quantity quantity, @Nullable Double inside, UnitSystem reader) {
        return inside == null ? null : quantity.input(inside, reader);
    }

    SplitForm withPieces(List<PieceForm> other) {
        return new SplitForm(
                unit,
                model,
                lift,
                other,
                water,
                outlet,
                flow,
                flowDoubt,
                gauge,
                gaugeHeight,
                gaugeBore,
                amps,
                headReads,
                flowReads,
                ampsReads,
                units);
    }

    /** The same as this reader types it: what was typed bare in the other system says its unit. */
    SplitForm readIn(UnitSystem reader) {
        UnitSystem typedIn = JobAddress.typedIn(units, reader);
        return new SplitForm(
                unit,
                model,
                JobAddress.said(lift, Quantity.HEAD, typedIn, reader),
                JobAddress.said(pieces, typedIn, reader),
                JobAddress.said(water, Quantity.TEMPERATURE, typedIn, reader),
                JobAddress.said(outlet, Quantity.BORE, typedIn, reader),
                JobAddress.said(flow, Quantity.FLOW, typedIn, reader),
                flowDoubt,
                JobAddress.said(gauge, Quantity.PRESSURE, typedIn, reader),
                JobAddress.said(gaugeHeight, Quantity.HEAD, typedIn, reader),
                JobAddress.said(gaugeBore, Quantity.BORE, typedIn, reader),
                amps,
                headReads,
                flowReads,
                ampsReads,
                reader.name());
    }

    public boolean opensGauge() {
        return gauge != null && !gauge.isBlank();
    }
}
