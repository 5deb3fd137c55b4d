package freshet.jobs;

import freshet.measures.Quantity;
import freshet.measures.UnitSystem;
import freshet.people.Typed;
import freshet.readings.PieceForm;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What was typed about a job; all of it stands in the page's address. */
record JobForm(
        @Nullable String unit,
        @Nullable String model,
        @Nullable String lift,
        @Nullable List<PieceForm> pieces,
        @Nullable String water,
        @Nullable String flow,
        @Nullable String volume,
        @Nullable String hours,
        @Nullable String inflow,
        @Nullable String area,
        @Nullable String depth,
        @Nullable String solids,
        @Nullable String cord,
        @Nullable String cordLength,
        @Nullable String volts,
        @Nullable String amps,
        @Nullable String suction,
        @Nullable String altitude,
        @Nullable String units) {

    JobForm {
        pieces = PieceForm.kept(pieces);
    }

    JobForm withPieces(List<PieceForm> other) {
        return new JobForm(
                unit,
                model,
                lift,
                other,
                water,
                flow,
                volume,
                hours,
                inflow,
                area,
                depth,
                solids,
                cord,
                cordLength,
                volts,
                amps,
                suction,
                altitude,
                units);
    }

    JobForm withUnit(String tag) {
        return new JobForm(
                tag,
                null,
                lift,
                pieces,
                water,
                flow,
                volume,
                hours,
                inflow,
                area,
                depth,
                solids,
                cord,
                cordLength,
                volts,
                amps,
                suction,
                altitude,
                units);
    }

    /** The same job as this reader types it: what was typed bare in the other system says its unit. */
    JobForm readIn(UnitSystem reader) {
        UnitSystem typedIn = JobAddress.typedIn(units, reader);
        return new JobForm(
                unit,
                model,
                JobAddress.said(lift, Quantity.HEAD, typedIn, reader),
                JobAddress.said(pieces, typedIn, reader),
                JobAddress.said(water, Quantity.TEMPERATURE, typedIn, reader),
                JobAddress.said(flow, Quantity.FLOW, typedIn, reader),
                JobAddress.said(volume, Quantity.VOLUME, typedIn, reader),
                hours,
                JobAddress.said(inflow, Quantity.FLOW, typedIn, reader),
                JobAddress.said(area, Quantity.AREA, typedIn, reader),
                JobAddress.said(depth, Quantity.LENGTH, typedIn, reader),
                JobAddress.said(solids, Quantity.BORE, typedIn, reader),
                cord,
                JobAddress.said(cordLength, Quantity.LENGTH, typedIn, reader),
                volts,
                amps,
                JobAddress.said(suction, Quantity.HEAD, typedIn, reader),
                JobAddress.said(altitude, Quantity.LENGTH, typedIn, reader),
                reader.name());
    }

    /** The same job on hoses and fittings of one bore, the adapters left out. */
    JobForm throughout(double boreMm, UnitSystem system) {
        return withPieces(pieces.stream()
                .filter(piece -> piece.family() != PieceForm.Family.ADAPTER)
                .map(piece -> new PieceForm(
                        piece.piece(),
                        Quantity.BORE.input(boreMm, system),
                        null,
                        piece.length(),
                        piece.c(),
                        piece.roughness(),
                        piece.k()))
                .toList());
    }

    String address() {
        return new JobAddress("/jobs/sheet")
                .with("units", units)
                .with("unit", unit)
                .with("model", model)
                .with("lift", lift)
                .with(pieces)
                .with("water", water)
                .with("flow", flow)
                .with("volume", volume)
                .with("hours", hours)
                .with("inflow", inflow)
                .with("area", area)
                .with("depth", depth)
                .with("solids", solids)
                .with("cord", cord)
                .with("cordLength", cordLength)
                .with("volts", volts)
                .with("amps", amps)
                .with("suction", suction)
                .with("altitude", altitude)
                .toString();
    }

    public boolean opensVolume() {
        return Typed.text(volume) != null || Typed.text(area) != null || Typed.text(inflow) != null;
    }

    public boolean opensCord() {
        return Typed.text(cord) != null || Typed.text(cordLength) != null;
    }

    public boolean opensSuction() {
        return Typed.text(suction) != null || Typed.text(altitude) != null;
    }
}
