package freshet.api;

import freshet.api.Shapes.CurvePoint;
import freshet.api.Shapes.WholeLine;
import freshet.hydraulics.Affinity;
import freshet.hydraulics.Curve;
import freshet.hydraulics.Cycling;
import freshet.hydraulics.Drawdown;
import freshet.hydraulics.DutyPoint;
import freshet.hydraulics.FrictionFactor;
import freshet.hydraulics.LineLoss;
import freshet.hydraulics.NpshAvailable;
import freshet.hydraulics.PumpOrLine;
import java.util.List;

/** The calculations of pumps and lines, as they are asked. */
final class PumpCalculations {

    private static final int FEWEST = Curve.FEWEST_POINTS;
    private static final int MOST = Curve.MOST_POINTS;
    private static final double HIGHEST_FLOW = LineLoss.HIGHEST_FLOW_M3H;

    private PumpCalculations() {}

    record FrictionFactorRequest(
            @Asked(
                    value = "Reynolds number",
                    from = FrictionFactor.LOWEST_REYNOLDS,
                    to = FrictionFactor.HIGHEST_REYNOLDS)
            double reynolds,

            @Asked(value = "roughness over bore", from = 0, to = FrictionFactor.HIGHEST_ROUGHNESS)
            double relativeRoughness)
            implements Calculation {

        record FrictionFactorAnswer(double frictionFactor) {}

        @Override
        public FrictionFactorAnswer answer() {
            return new FrictionFactorAnswer(FrictionFactor.of(reynolds, relativeRoughness));
        }
    }

    record LineLossRequest(
            @Asked("the line") WholeLine line,

            @Asked(value = "flow through it", unit = "m³/h", from = 0, to = HIGHEST_FLOW)
            double flowM3h)
            implements Calculation {

        @Override
        public LineLoss answer() {
            return LineLoss.of(line.under("line"), flowM3h);
        }
    }

    record DutyPointRequest(
            @Asked(value = "the pump's curve", fewest = FEWEST, most = MOST)
            List<CurvePoint> curve,

            @Asked("the line") WholeLine line)
            implements Calculation {

        @Override
        public DutyPoint answer() {
            return DutyPoint.of(Shapes.curve(curve), line.under("line"));
        }
    }

    /** One row of a vessel's table; the area is linear between rows. */
    record Level(
            @Asked(value = "height of the level, rising", unit = "m", from = -1000, to = 1000)
            double levelM,

            @Asked(value = "plan area there", unit = "m²", from = 0, to = 1e7)
            double areaM2) {}

    record DrawdownRequest(
            @Asked(value = "the pump's curve", fewest = FEWEST, most = MOST)
            List<CurvePoint> curve,

            @Asked("the line; its lift holds at the start level and grows as the level falls")
            WholeLine line,

            @Asked(value = "table of the vessel", fewest = 2, most = Drawdown.MOST_LEVELS)
            List<Level> vessel,

            @Asked(value = "level at the start, within the table", unit = "m", from = -1000, to = 1000)
            double startLevelM,

            @Asked(value = "level to reach, below the start", unit = "m", from = -1000, to = 1000)
            double stopLevelM,

            @Asked(value = "what runs in", unit = "m³/h", from = 0, to = HIGHEST_FLOW)
            double inflowM3h)
            implements Calculation {

        @Override
        public Drawdown answer() {
            List<Drawdown.Level> table = vessel.stream()
                    .map(row -> new Drawdown.Level(row.levelM, row.areaM2))
                    .toList();
            return Drawdown.of(Shapes.curve(curve), line.under("line"), table, startLevelM, stopLevelM, inflowM3h);
        }
    }

    record CyclingRequest(
            @Asked(value = "volume between the float's marks", unit = "m³", from = 1e-6, to = 1e6)
            double storageM3,

            @Asked(value = "what runs in", unit = "m³/h", from = 0, to = HIGHEST_FLOW)
            double inflowM3h,

            @Asked(value = "the pump's flow", unit = "m³/h", from = 1e-6, to = HIGHEST_FLOW)
            double pumpFlowM3h)
            implements Calculation {

        @Override
        public Cycling answer() {
            return Cycling.of(storageM3, inflowM3h, pumpFlowM3h);
        }
    }

    record PumpOrLineRequest(
            @Asked(value = "the reference curve", fewest = FEWEST, most = MOST)
            List<CurvePoint> curve,

            @Asked("the line on which the pump is rated, bare or of full bore")
            WholeLine ratedLine,

            @Asked("the line of the job") WholeLine usedLine,

            @Asked(value = "flow measured on the line of the job", unit = "m³/h", from = 0, to = HIGHEST_FLOW)
            double measuredFlowM3h)
            implements Calculation {

        @Override
        public PumpOrLine answer() {
            return PumpOrLine.of(
                    Shapes.curve(curve), ratedLine.under("ratedLine"), usedLine.under("usedLine"), measuredFlowM3h);
        }
    }

    record AffinityRequest(
            @Asked(value = "the pump's curve", fewest = FEWEST, most = MOST)
            List<CurvePoint> curve,

            @Asked(value = "new speed over old", from = 0.05, to = 20)
            double speedRatio)
            implements Calculation {

        record AffinityAnswer(List<Curve.Point> curve) {}

        @Override
        public AffinityAnswer answer() {
            return new AffinityAnswer(
                    new Affinity(speedRatio).curve(Shapes.curve(curve)).points());
        }
    }

    record NpshAvailableRequest(
            @Asked(value = "altitude of the site", unit = "m", from = -500, to = 9000)
            double altitudeM,

            @Asked(value = "water temperature", unit = "°C", from = 0, to = Shapes.HOTTEST_C)
            double waterTemperatureC,

            @Asked(value = "pump's inlet above the water, negative when flooded", unit = "m", from = -500, to = 100)
            double suctionLiftM,

            @Asked(value = "losses of the suction line", unit = "m", from = 0, to = 1000)
            double suctionLossM)
            implements Calculation {

        @Override
        public NpshAvailable answer() {
            return NpshAvailable.of(altitudeM, waterTemperatureC, suctionLiftM, suctionLossM);
        }
    }
}
