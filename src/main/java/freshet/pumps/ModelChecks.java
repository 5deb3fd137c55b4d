package freshet.pumps;

import static freshet.people.Refused.Wrong.at;

import freshet.people.Refused;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a model may be. Outside the possible it is refused; outside the usual somebody is asked whether it is so, which finds units
 * mixed up. The ranges are common practice, no source; the messages say them in both systems.
 */
final class ModelChecks {

    private static final double GPM = 0.2271247070;
    private static final double FT = 0.3048;
    private static final double IN = 25.4;
    private static final double HP = 745.6998716;
    private static final double WATER_W_PER_M3H_M = 1000 * 9.80665 / 3600;
    static final int MOST_POINTS = 40;
    private static final double[] USUAL_VOLTS = {12, 24, 115, 120, 230, 240, 400, 460};

    private ModelChecks() {}

    static List<Refused.Wrong> wrongs(ModelDraft draft) {
        List<Refused.Wrong> wrongs = new ArrayList<>();
        Texts.name("name", draft.name(), wrongs);
        Texts.length("curveSource", draft.curveSource(), Texts.LINE, wrongs);
        Texts.length("note", draft.note(), Texts.NOTE, wrongs);
        Ratings ratings = draft.ratings();
        possible("voltageV", ratings.voltageV(), 1, 1000, wrongs);
        possible("frequencyHz", ratings.frequencyHz(), 1, 400, wrongs);
        possible("currentA", ratings.currentA(), 0.01, 200, wrongs);
        possible("powerW", ratings.powerW(), 1, 50 * HP, wrongs);
        possible("maxStartsPerHour", ratings.maxStartsPerHour(), 0.1, 60, wrongs);
        possible("minRunMinutesPerStart", ratings.minRunMinutesPerStart(), 0.01, 240, wrongs);
        possible("inletMm", ratings.inletMm(), 0.25 * IN, 12 * IN, wrongs);
        possible("outletMm", ratings.outletMm(), 0.25 * IN, 12 * IN, wrongs);
        possible("solidsMm", ratings.solidsMm(), 0, 4 * IN, wrongs);
        possible("maxLiquidC", ratings.maxLiquidC(), 0, 150, wrongs);
        possible("speedRpm", ratings.speedRpm(), 100, 20_000, wrongs);
        possible("curveUncertainty", draft.curveUncertainty(), 0, 0.5, wrongs);
        duty(ratings, wrongs);
        if (draft.curveForm() == CurveForm.TABLE) {
            table(draft.points(), wrongs);
        } else {
            twoParameters(draft.points(), wrongs);
        }
        if (wrongs.isEmpty() && motorOf(ratings) < waterPowerW(draft)) {
            wrongs.add(at(draft.curveForm() == CurveForm.TABLE ? "points" : "openFlow", "pumps.curve.morePower"));
        }
        return wrongs;
    }

    private static void duty(Ratings ratings, List<Refused.Wrong> wrongs) {
        if (ratings.duty() == null || ratings.duty() == Duty.S1) {
            if (ratings.dutyValue() != null) {
                wrongs.add(at("dutyValue", "pumps.dutyValue.none"));
            }
        } else if (ratings.dutyValue() == null) {
            wrongs.add(at("dutyValue", "pumps.dutyValue.missing." + ratings.duty()));
        } else {
            possible("dutyValue", ratings.dutyValue(), 1, ratings.duty() == Duty.S2 ? 240 : 100, wrongs);
        }
    }

    private static void table(List<CurvePoint> points, List<Refused.Wrong> wrongs) {
        if (points.size() < 2 || points.size() > MOST_POINTS) {
            wrongs.add(at("points", "pumps.curve.count", MOST_POINTS));
            return;
        }
        for (int row = 0; row < points.size(); row++) {
            CurvePoint point = points.get(row);
            String field = "points[" + row + "].";
            possible(field + "flow", point.flowM3h(), 0, 5000 * GPM, wrongs);
            possible(field + "head", point.headM(), 0, 300 * FT, wrongs);
            if (row == 0 && point.flowM3h() != 0) {
                wrongs.add(at(field + "flow", "pumps.curve.startsAtZero"));
            }
            if (row > 0 && !(point.flowM3h() > points.get(row - 1).flowM3h() + 1e-6)) {
                wrongs.add(at(field + "flow", "pumps.curve.crosses", row + 1, row));
            }
            if (row > 0 && !(point.headM() < points.get(row - 1).headM())) {
                wrongs.add(at(field + "head", "pumps.curve.rises", row + 1, row));
            }
        }
    }

    private static void twoParameters(List<CurvePoint> points, List<Refused.Wrong> wrongs) {
        if (points.size() != 2 || points.get(0).flowM3h() != 0 || points.get(1).headM() != 0) {
            throw new IllegalArgumentException("the two-parameter form is (0, shut-off head) and (open flow, 0)");
        }
        possible("shutOffHead", points.get(0).headM(), 0.001, 300 * FT, wrongs);
        possible("openFlow", points.get(1).flowM3h(), 0.001, 5000 * GPM, wrongs);
    }

    static List<Refused.Wrong> doubts(ModelDraft draft) {
        List<Refused.Wrong> doubts = new ArrayList<>();
        Ratings ratings = draft.ratings();
        Double volts = ratings.voltageV();
        if (volts != null && !nearOneOf(USUAL_VOLTS, volts)) {
            doubts.add(at("voltageV", "pumps.unusual.voltageV"));
        }
        if (ratings.frequencyHz() != null && ratings.frequencyHz() != 50 && ratings.frequencyHz() != 60) {
            doubts.add(at("frequencyHz", "pumps.unusual.frequencyHz"));
        }
        usual("currentA", ratings.currentA(), 0.5, 50, doubts);
        usual("powerW", ratings.powerW(), 0.1 * HP, 15 * HP, doubts);
        usual("maxStartsPerHour", ratings.maxStartsPerHour(), 1, 30, doubts);
        usual("minRunMinutesPerStart", ratings.minRunMinutesPerStart(), 0.1, 15, doubts);
        usual("inletMm", ratings.inletMm(), 0.5 * IN, 6 * IN, doubts);
        usual("outletMm", ratings.outletMm(), 0.5 * IN, 6 * IN, doubts);
        usual("solidsMm", ratings.solidsMm(), 0, 2 * IN, doubts);
        usual("maxLiquidC", ratings.maxLiquidC(), 0, 60, doubts);
        usual("speedRpm", ratings.speedRpm(), 700, 4000, doubts);
        usual("curveUncertainty", draft.curveUncertainty(), 0.005, 0.15, doubts);
        curve(draft, doubts);
        return doubts;
    }

    private static void curve(ModelDraft draft, List<Refused.Wrong> doubts) {
        if (draft.points().isEmpty()) {
            return;
        }
        boolean table = draft.curveForm() == CurveForm.TABLE;
        int last = draft.points().size() - 1;
        String flow = table ? "points[" + last + "].flow" : "openFlow";
        double mostFlowM3h = draft.points().get(last).flowM3h();
        usual(flow, mostFlowM3h, GPM, 1000 * GPM, doubts);
        usual(table ? "points[0].head" : "shutOffHead", draft.points().get(0).headM(), 5 * FT, 150 * FT, doubts);
        if (motorOf(draft.ratings()) * 0.8 < waterPowerW(draft)) {
            doubts.add(at(flow, "pumps.unusual.power"));
        } else if (draft.ratings().outletMm() != null
                && speedMs(mostFlowM3h, draft.ratings().outletMm()) > 10) {
            doubts.add(at(flow, "pumps.unusual.speed"));
        }
    }

    private static double speedMs(double flowM3h, double boreMm) {
        double boreM = boreMm / 1000;
        return flowM3h / 3600 / (Math.PI / 4 * boreM * boreM);
    }

    /** The most that the motor can give, W; without end when its plate is not known. */
    private static double motorOf(Ratings ratings) {
        return ratings.powerW() == null ? Double.POSITIVE_INFINITY : ratings.powerW();
    }

    /** The most power that the curve puts into water, W: density, gravity, flow and head multiplied. */
    private static double waterPowerW(ModelDraft draft) {
        if (draft.curveForm() == CurveForm.TWO_PARAMETER) {
            // Q H0 (1 - (Q/Q0)²) is largest at Q = Q0/√3
            double q = draft.points().get(1).flowM3h() / Math.sqrt(3);
            return WATER_W_PER_M3H_M * q * draft.points().get(0).headM() * 2 / 3;
        }
        return draft.points().stream()
                .mapToDouble(point -> WATER_W_PER_M3H_M * point.flowM3h() * point.headM())
                .max()
                .orElse(0);
    }

    private static boolean nearOneOf(double[] usual, double value) {
        for (double each : usual) {
            if (Math.abs(value - each) <= 0.1 * each) {
                return true;
            }
        }
        return false;
    }

    private static void possible(
            String field, @Nullable Double value, double low, double high, List<Refused.Wrong> wrongs) {
        outside(field, value, low, high, "pumps.impossible.", wrongs);
    }

    private static void usual(
            String field, @Nullable Double value, double low, double high, List<Refused.Wrong> doubts) {
        outside(field, value, low, high, "pumps.unusual.", doubts);
    }

    /** The message is named after the field, without the row: {@code points[2].flow} has {@code points.flow}. */
    private static void outside(
            String field, @Nullable Double value, double low, double high, String code, List<Refused.Wrong> into) {
        double slack = 1e-9 * Math.abs(high);
        if (value != null && !(value >= low - slack && value <= high + slack)) {
            into.add(at(field, code + field.replaceAll("\\[\\d+]", "")));
        }
    }
}
