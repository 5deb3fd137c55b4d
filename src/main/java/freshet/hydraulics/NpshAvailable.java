package freshet.hydraulics;

/**
 * Net positive suction head available: what the atmosphere leaves above the vapour pressure at the pump's inlet,
 * (p_atm - p_v)/(rho g) - lift - loss. Source of the sum: DOE-HDBK-1012/3-92, Fluid Flow, "Net positive suction head".
 *
 * @param npshM available, m; below 0 the suction cannot be
 * @param atmosphereM the atmosphere as a head of this water, m
 * @param vapourM its vapour pressure as a head, m
 */
public record NpshAvailable(double npshM, double atmosphereM, double vapourM) {

    /** What the suction promises. */
    public enum Suction {
        /** More than the pump needs, with the margin. */
        ENOUGH,
        /** More than the pump needs, but less than the margin above it. */
        THIN,
        /** Less than the pump needs: it will cavitate or lose its prime. */
        TOO_LITTLE
    }

    /** Margin above the pump's need that is usual, m; common practice, no source. */
    public static final double USUAL_MARGIN_M = 0.6;

    /**
     * NPSH available on a suction line.
     *
     * @param altitudeM of the site, -500 to 9000 m
     * @param waterTemperatureC 0 to 60 °C
     * @param suctionLiftM pump's inlet above the water, -500 to 100 m; negative when flooded
     * @param suctionLossM losses of the suction line, 0 to 1000 m
     */
    public static NpshAvailable of(
            double altitudeM, double waterTemperatureC, double suctionLiftM, double suctionLossM) {
        double pressure = atmospherePa(altitudeM);
        Water.checkTemperature("waterTemperatureC", waterTemperatureC);
        OutOfRange.check("suctionLiftM", suctionLiftM, "m", -500, 100);
        OutOfRange.check("suctionLossM", suctionLossM, "m", 0, 1000);
        Water water = Water.at(waterTemperatureC);
        double atmosphere = water.headM(pressure);
        double vapour = water.headM(water.vapourPressurePa());
        return new NpshAvailable(atmosphere - vapour - suctionLiftM - suctionLossM, atmosphere, vapour);
    }

    /**
     * Pressure of the standard atmosphere, Pa: 101325 (1 - 0.0065 z/288.15)^5.255876. Source: U.S. Standard Atmosphere 1976,
     * the same as ISO 2533:1975 below 11 km.
     *
     * @param altitudeM -500 to 9000 m
     */
    public static double atmospherePa(double altitudeM) {
        OutOfRange.check("altitudeM", altitudeM, "m", -500, 9000);
        return 101_325 * Math.pow(1 - 0.0065 * altitudeM / 288.15, 5.255876);
    }

    /**
     * Compares with what the pump needs.
     *
     * @param neededM the pump's NPSH required (3 % head drop), 0 to 100 m
     * @param marginM wanted above it, 0 to 100 m; usually {@link #USUAL_MARGIN_M}
     */
    public Suction against(double neededM, double marginM) {
        OutOfRange.check("neededM", neededM, "m", 0, 100);
        OutOfRange.check("marginM", marginM, "m", 0, 100);
        if (npshM < neededM) {
            return Suction.TOO_LITTLE;
        }
        return npshM < neededM + marginM ? Suction.THIN : Suction.ENOUGH;
    }
}
