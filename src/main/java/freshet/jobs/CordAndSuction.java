package freshet.jobs;

import static freshet.jobs.Check.Looks.FAILS;
import static freshet.jobs.Check.Looks.HOLDS;
import static freshet.jobs.Check.Looks.THIN;
import static freshet.jobs.Check.Looks.UNKNOWN;

import freshet.hydraulics.CordDrop;
import freshet.hydraulics.NpshAvailable;
import freshet.hydraulics.OutOfRange;
import freshet.measures.Show;
import freshet.pumps.Drive;
import freshet.pumps.PumpKind;
import freshet.pumps.Ratings;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Holds the cord and the suction of a job against the limits of the trade, all of them common practice, no source: 5 % lost in a cord;
 * two thirds of what the atmosphere lifts, and no more than 20 ft, for a suction, and from 15 ft on it wants planning.
 */
final class CordAndSuction {

    private static final double PRACTICAL = 2.0 / 3;
    private static final double LONGEST_M = 6.096;
    private static final double CAREFUL = 15.0 / 20;
    private static final double CORD_C = 20;

    private final JobSheet sheet;
    private final Ratings ratings;
    private final Show show;
    private final List<Check> checks = new ArrayList<>();

    private CordAndSuction(JobSheet sheet, Show show) {
        this.sheet = sheet;
        this.ratings = sheet.pump().model().ratings();
        this.show = show;
    }

    static List<Check> of(JobSheet sheet, Show show) {
        CordAndSuction both = new CordAndSuction(sheet, show);
        both.cord();
        both.suction();
        return both.checks;
    }

    private void add(Check.Looks looks, String code, Object... arguments) {
        checks.add(Check.of(looks, "jobs.check." + code, arguments));
    }

    private void cord() {
        Job.Cord cord = sheet.job().cord();
        if (cord == null) {
            return;
        }
        Double volts = first(cord.volts(), ratings.voltageV());
        Double amps = first(cord.amps(), ratings.currentA());
        if (sheet.pump().model().drive() == Drive.ENGINE) {
            add(UNKNOWN, "cord.engine");
        } else if (volts == null || amps == null) {
            add(UNKNOWN, "cord.unknown");
        } else {
            CordDrop.Phases phases =
                    sheet.pump().model().drive() == Drive.THREE_PHASE ? CordDrop.Phases.THREE : CordDrop.Phases.SINGLE;
            cord(cord, volts, amps, phases);
        }
    }

    private void cord(Job.Cord cord, double volts, double amps, CordDrop.Phases phases) {
        try {
            CordDrop drop = CordDrop.of(volts, amps, cord.lengthM(), cord.size().mm2(), CORD_C, phases);
            Object[] facts = {
                show.length(cord.lengthM()),
                show.number(100 * drop.dropFraction(), 1),
                show.number(drop.voltsAtPump(), 0),
                show.number(amps, 1)
            };
            if (drop.dropFraction() <= CordDrop.USUAL_LIMIT) {
                add(HOLDS, "cord", facts);
            } else {
                add(FAILS, "cord.refuse", facts);
                thicker(cord, drop.dropFraction());
            }
        } catch (OutOfRange losesAll) {
            add(FAILS, "cord.all", show.length(cord.lengthM()), show.number(amps, 1));
        }
    }

    /** The drop goes with one over the section. */
    private void thicker(Job.Cord cord, double fraction) {
        cord.size()
                .atLeast(cord.size().mm2() * fraction / CordDrop.USUAL_LIMIT)
                .ifPresentOrElse(
                        size -> add(UNKNOWN, "cord.thicker." + size, show.length(cord.lengthM())),
                        () -> add(UNKNOWN, "cord.nearer"));
    }

    private void suction() {
        Job.Suction suction = sheet.job().suction();
        if (suction == null) {
            return;
        }
        if (sheet.pump().model().kind() != PumpKind.ENGINE_TRASH) {
            add(FAILS, "suction.stands");
            return;
        }
        NpshAvailable left =
                NpshAvailable.of(suction.altitudeM(), sheet.job().line().waterC(), suction.liftM(), 0);
        double practical = Math.min(LONGEST_M, PRACTICAL * (left.atmosphereM() - left.vapourM()));
        double careful = practical * CAREFUL;
        Check.Looks looks = suction.liftM() > practical ? FAILS : suction.liftM() > careful ? THIN : HOLDS;
        add(
                looks,
                looks == FAILS ? "suction.over" : looks == THIN ? "suction.careful" : "suction",
                show.head(suction.liftM()),
                show.head(practical),
                show.head(Math.max(0, left.npshM())));
    }

    private static @Nullable Double first(@Nullable Double one, @Nullable Double other) {
        return one == null ? other : one;
    }
}
