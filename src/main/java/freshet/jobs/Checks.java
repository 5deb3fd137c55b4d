package freshet.jobs;

import static freshet.jobs.Check.Looks.FAILS;
import static freshet.jobs.Check.Looks.HOLDS;
import static freshet.jobs.Check.Looks.THIN;
import static freshet.jobs.Check.Looks.UNKNOWN;

import freshet.measures.Quantity;
import freshet.measures.Show;
import freshet.pumps.Ratings;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;

/**
 * Holds a worked-out job against the limits of the trade. All of them are common practice, no source: margin 15 to 25 %, lift up to
 * 75 % of the shut-off head, 3 to 10 ft/s in the hose.
 */
final class Checks {

    static final double MOST_OF_SHUT_OFF = 0.75;
    static final double SLOWEST_MS = 0.9144;
    static final double FASTEST_MS = 3.048;
    static final double HOT_C = 40;

    private final JobSheet sheet;
    private final Ratings ratings;
    private final Show show;
    private final List<Check> checks = new ArrayList<>();

    private Checks(JobSheet sheet, Show show) {
        this.sheet = sheet;
        this.ratings = sheet.pump().model().ratings();
        this.show = show;
    }

    static List<Check> of(JobSheet sheet, Show show) {
        Checks all = new Checks(sheet, show);
        all.margin();
        all.lift();
        all.velocity();
        all.inflow();
        all.liquid();
        all.checks.addAll(CordAndSuction.of(sheet, show));
        return List.copyOf(all.checks);
    }

    private void add(Check.Looks looks, String code, Object... arguments) {
        checks.add(Check.of(looks, "jobs.check." + code, arguments));
    }

    private void margin() {
        Gives gives = sheet.gives();
        if (gives.beyondCurve()) {
            add(UNKNOWN, "beyond", show.flow(gives.lastM3h()));
            return;
        }
        if (gives.noWater()) {
            return;
        }
        double margin = sheet.margin();
        String shown = show.percent(Math.abs(margin));
        if (sheet.pump().untested()) {
            add(UNKNOWN, "untested", show.flow(gives.flowM3h()));
        } else if (margin < 0) {
            add(FAILS, "short", shown);
        } else if (margin < Verdict.LEAST_MARGIN) {
            add(THIN, "margin.thin", shown);
        } else if (gives.lowM3h() < sheet.job().wantedM3h()) {
            add(THIN, "margin.doubt", shown, show.flow(gives.lowM3h()));
        } else {
            add(HOLDS, "margin", shown);
        }
    }

    private void lift() {
        double shutOff = sheet.pump().curves().curve().shutOffHeadM();
        double part = sheet.job().line().liftM() / shutOff;
        String code = part >= 1 ? "lift.never" : part > MOST_OF_SHUT_OFF ? "lift.high" : "lift";
        add(
                part >= 1 ? FAILS : part > MOST_OF_SHUT_OFF ? THIN : HOLDS,
                code,
                show.head(sheet.job().line().liftM()),
                show.percent(Math.max(0, part)),
                show.head(shutOff));
    }

    private void velocity() {
        DoubleSummaryStatistics speeds = sheet.pieces().stream()
                .filter(cost -> cost.piece().hose())
                .mapToDouble(JobSheet.PieceCost::velocityMs)
                .summaryStatistics();
        if (speeds.getCount() == 0 || speeds.getMax() == 0) {
            return;
        }
        if (speeds.getMax() > FASTEST_MS) {
            add(THIN, "fast", speed(speeds.getMax()), speed(FASTEST_MS));
        }
        if (speeds.getMin() < SLOWEST_MS) {
            add(THIN, "slow", speed(speeds.getMin()), speed(SLOWEST_MS));
        }
        if (speeds.getMax() <= FASTEST_MS && speeds.getMin() >= SLOWEST_MS) {
            add(HOLDS, "speed", speed(speeds.getMax()), speed(SLOWEST_MS), speed(FASTEST_MS));
        }
    }

    private String speed(double velocityMs) {
        return Quantity.VELOCITY.show(velocityMs, show.system());
    }

    private void inflow() {
        double inflow = sheet.job().inflowM3h();
        if (inflow > 0 && !sheet.gives().beyondCurve()) {
            boolean keepsUp = sheet.gives().flowM3h() > inflow;
            add(keepsUp ? HOLDS : FAILS, keepsUp ? "inflow" : "inflow.over", show.flow(inflow));
        }
    }

    private void liquid() {
        Double solids = sheet.job().solidsMm();
        if (solids != null) {
            Double passes = ratings.solidsMm();
            if (passes == null) {
                add(UNKNOWN, "solids.unknown", solid(solids));
            } else {
                add(
                        solids <= passes ? HOLDS : FAILS,
                        solids <= passes ? "solids" : "solids.over",
                        solid(solids),
                        solid(passes));
            }
        }
        Double liquid = sheet.job().liquidC();
        Double most = ratings.maxLiquidC();
        if (liquid != null && most != null) {
            add(
                    liquid <= most ? HOLDS : FAILS,
                    liquid <= most ? "warm" : "warm.over",
                    show.temperature(liquid),
                    show.temperature(most));
        } else if (liquid != null && liquid > HOT_C) {
            add(UNKNOWN, "warm.unknown", show.temperature(liquid), show.temperature(HOT_C));
        }
    }

    private String solid(double mm) {
        return Quantity.BORE.show(mm, show.system());
    }
}
