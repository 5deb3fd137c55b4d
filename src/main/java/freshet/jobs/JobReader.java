package freshet.jobs;

import freshet.hydraulics.Line;
import freshet.measures.Usual;
import freshet.people.Typed;
import freshet.readings.FlowTestDraft.Piece;
import freshet.readings.PieceForm;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads a job from what was typed. */
final class JobReader {

    private static final double HIGHEST_FLOW_M3H = 10_000;
    private static final double LARGEST_VOLUME_L = 1e9;
    private static final double LONGEST_HOURS = 10_000;
    private static final double LARGEST_AREA_M2 = 1e6;
    private static final double DEEPEST_M = 100;
    private static final double HIGHEST_SUCTION_M = 30;
    private static final double LONGEST_M = 20_000;
    private static final double HIGHEST_K = 10_000;

    private final JobForm form;
    private final Typed typed;
    private final Bounds bounds;

    private JobReader(JobForm form, Typed typed) {
        this.form = form;
        this.typed = typed;
        this.bounds = new Bounds(typed);
    }

    /** The job that was typed; null when anything is wrong with it, which is gathered in {@code typed}. */
    static @Nullable Job job(JobForm form, Typed typed) {
        return new JobReader(form, typed).read();
    }

    private @Nullable Job read() {
        JobLine line = line(typed, form.lift(), form.water(), form.pieces() == null ? List.of() : form.pieces());
        Double inflowM3h = bounds.quantity("inflow", form.inflow(), Usual.INFLOW, 0, HIGHEST_FLOW_M3H);
        double comesIn = inflowM3h == null ? 0 : inflowM3h;
        Double areaM2 = bounds.quantity("area", form.area(), Usual.AREA, 1e-4, LARGEST_AREA_M2);
        Double volumeL = volumeL(areaM2);
        Double wanted = wantedM3h(volumeL, comesIn);
        Double solidsMm = bounds.quantity("solids", form.solids(), Usual.SOLIDS, 0, 500);
        Double liquidC = line == null || Typed.text(form.water()) == null ? null : Double.valueOf(line.waterC());
        Job.Cord itsCord = cord();
        Job.Suction itsSuction = suction();
        return line == null || wanted == null
                ? null
                : new Job(line, wanted, volumeL, comesIn, areaM2, solidsMm, liquidC, itsCord, itsSuction);
    }

    /** The line that was typed; null when anything is wrong with it. */
    static @Nullable JobLine line(Typed typed, @Nullable String lift, @Nullable String water, List<PieceForm> pieces) {
        Bounds bounds = new Bounds(typed);
        Double liftM =
                typed.required("lift", bounds.quantity("lift", lift, Usual.LIFT, -100, 500), "jobs.lift.missing");
        Double waterC = bounds.quantity("water", water, Usual.WATER, 0, 60);
        List<LinePiece> line = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            List<Piece> parts = pieces.get(i).pieces("pieces[" + i + "].", typed);
            if (parts.stream().anyMatch(part -> part.lengthM() > LONGEST_M)) {
                typed.wrong("pieces[" + i + "].length", "jobs.outOfRange");
            } else if (parts.stream().anyMatch(part -> part.lossCoefficient() > HIGHEST_K)) {
                typed.wrong("pieces[" + i + "].k", "jobs.outOfRange");
            } else if (!parts.isEmpty()) {
                line.add(LinePiece.of(pieces.get(i), parts));
            }
        }
        return liftM == null || line.size() < pieces.size()
                ? null
                : new JobLine(liftM, waterC == null ? Line.USUAL_TEMPERATURE_C : waterC, line);
    }

    /** From the volume, or from area and depth; two of the three are enough and all three may not disagree. */
    private @Nullable Double volumeL(@Nullable Double areaM2) {
        Double volumeL = bounds.quantity("volume", form.volume(), Usual.VOLUME, 1e-3, LARGEST_VOLUME_L);
        Double depthM = bounds.quantity("depth", form.depth(), Usual.DEPTH, 1e-3, DEEPEST_M);
        if (Typed.text(form.volume()) != null && Typed.text(form.area()) != null && Typed.text(form.depth()) != null) {
            typed.wrong("depth", "jobs.volume.twoOfThree");
        } else if (Typed.text(form.depth()) != null && Typed.text(form.area()) == null) {
            typed.wrong("area", "jobs.area.missing");
        } else if (Typed.text(form.area()) != null
                && Typed.text(form.depth()) == null
                && Typed.text(form.volume()) == null) {
            typed.wrong("depth", "jobs.depth.missing");
        } else if (areaM2 != null && volumeL != null && volumeL / 1000 / areaM2 > DEEPEST_M) {
            typed.wrong("area", "jobs.outOfRange");
        }
        return volumeL == null && areaM2 != null && depthM != null ? Double.valueOf(1000 * areaM2 * depthM) : volumeL;
    }

    private @Nullable Double wantedM3h(@Nullable Double volumeL, double inflowM3h) {
        Double typedM3h = bounds.quantity("flow", form.flow(), Usual.FLOW, 1e-6, HIGHEST_FLOW_M3H);
        Double within = bounds.hours("hours", form.hours(), 1e-3, LONGEST_HOURS);
        boolean flowTyped = Typed.text(form.flow()) != null;
        boolean hoursTyped = Typed.text(form.hours()) != null;
        if (flowTyped && hoursTyped) {
            typed.wrong("hours", "jobs.hours.orFlow");
        } else if (hoursTyped && Typed.text(form.volume()) == null && Typed.text(form.area()) == null) {
            typed.wrong("volume", "jobs.volume.missing");
        } else if (!flowTyped && !hoursTyped) {
            typed.wrong("flow", "jobs.flow.missing");
        }
        if (within == null || volumeL == null) {
            return typedM3h;
        }
        double meanM3h = volumeL / 1000 / within + inflowM3h;
        if (meanM3h > HIGHEST_FLOW_M3H) {
            typed.wrong("hours", "jobs.outOfRange");
        }
        return meanM3h;
    }

    private Job.@Nullable Cord cord() {
        Double length = bounds.quantity("cordLength", form.cordLength(), Usual.CORD, 0, 2000);
        Double itsVolts = bounds.quantity("volts", form.volts(), Usual.VOLTAGE, 10, 1000);
        Double itsAmps = bounds.quantity("amps", form.amps(), Usual.CURRENT, 0, 500);
        CordSize size = CordSize.named(form.cord());
        if (!form.opensCord()) {
            return null;
        }
        typed.required("cord", size, "jobs.cord.missing");
        typed.required("cordLength", length, "jobs.cordLength.missing");
        return size == null || length == null ? null : new Job.Cord(size, length, itsVolts, itsAmps);
    }

    private Job.@Nullable Suction suction() {
        Double liftM = bounds.quantity("suction", form.suction(), Usual.SUCTION, 0, HIGHEST_SUCTION_M);
        Double altitudeM = bounds.quantity("altitude", form.altitude(), Usual.ALTITUDE, -500, 9000);
        if (!form.opensSuction()) {
            return null;
        }
        typed.required("suction", liftM, "jobs.suction.missing");
        return liftM == null ? null : new Job.Suction(liftM, altitudeM == null ? 0 : altitudeM);
    }
}
