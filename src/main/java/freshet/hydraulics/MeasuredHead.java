package freshet.hydraulics;

/** The total head of a flow test: computed from the line, or read from a gauge; either way it depends on the flow. */
public sealed interface MeasuredHead {

    /** Total head at a flow, m. */
    double headAt(double flowM3h);

    /** How the total head changes with the flow, m per m³/h. */
    double slopeAt(double flowM3h);

    /** Standard uncertainty of the head at a given flow, m. */
    double standardUncertaintyM();

    /** Path of the input to blame when the head does not fit the curve. */
    String blame();

    /**
     * Lift by tape and losses by computation; the line's data are taken as exact.
     *
     * @param line what the water was pumped through
     * @param liftUncertaintyM standard uncertainty of the lift, 0 to 100 m
     */
    record ByLine(Line line, double liftUncertaintyM) implements MeasuredHead {

        /** @throws OutOfRange for the uncertainty */
        public ByLine {
            OutOfRange.check("liftUncertaintyM", liftUncertaintyM, "m", 0, 100);
        }

        @Override
        public double headAt(double flowM3h) {
            return line.liftM() + new Losses(line).at(flowM3h).headM;
        }

        @Override
        public double slopeAt(double flowM3h) {
            return new Losses(line).at(flowM3h).slope;
        }

        @Override
        public double standardUncertaintyM() {
            return liftUncertaintyM;
        }

        @Override
        public String blame() {
            return "line.liftM";
        }
    }

    /**
     * Gauge pressure, height of the gauge above the suction water, and velocity head in the gauge's bore.
     *
     * @param gaugeKPa pressure, -100 to 20 000 kPa
     * @param gaugeAboveWaterM height of the gauge above the suction water, -500 to 500 m
     * @param gaugeBoreMm bore where the gauge is tapped, 0.5 to 5000 mm
     * @param gaugeUncertaintyKPa standard uncertainty of the pressure, 0 to 2000 kPa
     * @param waterTemperatureC 0 to 60 °C
     * @param liftUncertaintyM standard uncertainty of the gauge's height, 0 to 100 m
     */
    record ByGauge(
            double gaugeKPa,
            double gaugeAboveWaterM,
            double gaugeBoreMm,
            double gaugeUncertaintyKPa,
            double waterTemperatureC,
            double liftUncertaintyM)
            implements MeasuredHead {

        /** @throws OutOfRange with the name of the value that is refused */
        public ByGauge {
            OutOfRange.check("gaugeKPa", gaugeKPa, "kPa", -100, 20_000);
            OutOfRange.check("gaugeAboveWaterM", gaugeAboveWaterM, "m", -500, 500);
            OutOfRange.check("gaugeBoreMm", gaugeBoreMm, "mm", Section.LOWEST_BORE_MM, Section.HIGHEST_BORE_MM);
            OutOfRange.check("gaugeUncertaintyKPa", gaugeUncertaintyKPa, "kPa", 0, 2000);
            Water.checkTemperature("waterTemperatureC", waterTemperatureC);
            OutOfRange.check("liftUncertaintyM", liftUncertaintyM, "m", 0, 100);
        }

        @Override
        public double headAt(double flowM3h) {
            return Water.at(waterTemperatureC).headM(1000 * gaugeKPa) + gaugeAboveWaterM + velocityHead(flowM3h);
        }

        @Override
        public double slopeAt(double flowM3h) {
            return 2 * velocityHead(1) * flowM3h;
        }

        @Override
        public double standardUncertaintyM() {
            return Math.hypot(liftUncertaintyM, Water.at(waterTemperatureC).headM(1000 * gaugeUncertaintyKPa));
        }

        @Override
        public String blame() {
            return "gaugeKPa";
        }

        private double velocityHead(double flowM3h) {
            double velocity = flowM3h / 3600 / (Math.PI / 4 * gaugeBoreMm * gaugeBoreMm * 1e-6);
            return velocity * velocity / (2 * Water.GRAVITY_MS2);
        }
    }
}
