package freshet.reliability;

import org.hipparchus.special.Gamma;

/**
 * Chance that a part of a Weibull law does its next mission.
 *
 * @param conditionalSurvival chance to survive the mission given that it has reached its age
 * @param unconditionalSurvival chance of a new part to survive age and mission together
 * @param b10Hours age by which 10 % have failed
 */
public record Survival(double conditionalSurvival, double unconditionalSurvival, double b10Hours) {

    /** Least and greatest shape this room reckons with. */
    static final double LEAST_SHAPE = 0.01;

    static final double GREATEST_SHAPE = 1e9;

    /**
     * S(age + mission)/S(age) and S(age + mission), S(t) = exp(-(t/scale)^shape).
     *
     * @param shape 0.01 to 1e9
     * @param scaleHours 1e-6 to 1e9 h
     * @param ageHours 0 to 1e9 h
     * @param missionHours 0 to 1e9 h
     * @throws OutOfRange for a number outside its range
     */
    public static Survival of(double shape, double scaleHours, double ageHours, double missionHours) {
        checkLaw(shape, scaleHours);
        Limits.hours("ageHours", ageHours);
        Limits.hours("missionHours", missionHours);
        double atAge = Math.pow(ageHours / scaleHours, shape);
        double atEnd = Math.pow((ageHours + missionHours) / scaleHours, shape);
        double b10 = scaleHours * Math.pow(-Math.log(0.9), 1 / shape);
        return new Survival(
                Math.exp(-hazardOfMission(shape, ageHours, missionHours, atAge, atEnd)), Math.exp(-atEnd), b10);
    }

    private static double hazardOfMission(double shape, double age, double mission, double atAge, double atEnd) {
        if (mission == 0) {
            return 0;
        }
        if (atEnd >= 2 * atAge || Double.isInfinite(atAge)) {
            return Double.isInfinite(atEnd) ? Double.POSITIVE_INFINITY : atEnd - atAge;
        }
        // a short mission late in life: the difference of two near hazards without its loss of digits
        return atAge * Math.expm1(shape * Math.log1p(mission / age));
    }

    static void checkLaw(double shape, double scaleHours) {
        Limits.within("shape", shape, LEAST_SHAPE, GREATEST_SHAPE, "");
        Limits.within("scaleHours", scaleHours, Limits.SHORTEST_HOURS, Limits.LONGEST_HOURS, "h");
    }

    /** scale Γ(1 + 1/shape). */
    static double meanHours(double shape, double scaleHours) {
        return scaleHours * Gamma.gamma(1 + 1 / shape);
    }
}
