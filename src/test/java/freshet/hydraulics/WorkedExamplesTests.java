package freshet.hydraulics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import freshet.hydraulics.CurveFit.Form;
import freshet.hydraulics.MeasuredFlow.LevelChange;
import freshet.hydraulics.Pattern.Reading;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Worked examples of handbooks and pages, each with its source: [published] where a page prints the figure, [computed] where it
 * was worked out separately.
 */
class WorkedExamplesTests {

    /** 231 cubic inches, 0.0254 m: NIST SP 811 (2008), appendix B, exact by definition. */
    private static final double GPM = 3.785411784 * 60 / 1000;

    private static final double FT = 0.3048;

    /** DOE-HDBK-1012/3-92, Fluid Flow, p. 50: twice the speed of 400 gpm, 48 ft, 45 kW [published]. */
    @Test
    void doublesTheSpeed() {
        Affinity twice = Affinity.ofSpeeds(3600, 1800);
        assertThat(twice.flow(400)).isEqualTo(800);
        assertThat(twice.head(48)).isEqualTo(192);
        assertThat(twice.power(45)).isEqualTo(360);
    }

    /** Affinity laws in closed form [computed]: 60 to 50 Hz of 20 gpm, 18 ft, 0.25 hp; trim from 100 to 94 mm. */
    @Test
    void changesFrequencyAndTrim() {
        Affinity slower = Affinity.ofFrequencies(50, 60);
        assertThat(slower.flow(20)).isCloseTo(16.666667, within(1e-6));
        assertThat(slower.head(18)).isCloseTo(12.5, within(1e-12));
        assertThat(slower.power(0.25)).isCloseTo(0.1446759, within(1e-7));
        Affinity trim = new Affinity(0.94);
        assertThat(trim.flow(2)).isCloseTo(1.88, within(1e-12));
        assertThat(trim.head(10)).isCloseTo(8.836, within(1e-12));
        assertThat(trim.power(350)).isCloseTo(290.7044, within(1e-8));
    }

    /** The pump 28 - 0.2 Q - 0.015 Q² (gpm, ft) at 50 Hz on 75 ft of 1 in hose, lift 5 ft: 13.12902 gpm, 14.67071 ft [computed]. */
    @Test
    void seeksTheDutyPointAnewAtAnotherSpeed() {
        Curve slower = Affinity.ofFrequencies(50, 60).curve(pump());
        Line line = new Line(5 * FT, 15, 38.1, 1, List.of(Section.rough(25.4, 75 * FT, 0.0015, 0)));
        DutyPoint duty = DutyPoint.of(slower, line);
        assertThat(duty.flowM3h() / GPM).isCloseTo(13.12902, within(13 * 2e-5));
        assertThat(duty.headM() / FT).isCloseTo(14.67071, within(14 * 2e-5));
    }

    /** At 10 % under voltage a motor of 5 % slip runs at 6.17 % slip: closed form. */
    @Test
    void slowsWithTheVoltage() {
        assertThat(Affinity.ofVoltages(103.5, 115, 0.05).ratio()).isCloseTo((1 - 0.05 / 0.81) / 0.95, within(1e-15));
        assertThat(Affinity.ofVoltages(230, 230, 0.04).ratio()).isEqualTo(1);
        assertThatThrownBy(() -> Affinity.ofVoltages(50, 115, 0.05)).hasMessageContaining("50 V");
    }

    /** H = 7.46 - 0.0453 Q², system 3.52 + 0.0261 Q² (m, L/min): textbook exercise on a public page; 7.428464, 4.960252 [computed]. */
    @Test
    void crossesTwoParabolas() {
        double openFlow = Math.sqrt(7.46 / 0.0453) * 0.06;
        Curve curve = Curve.parabola(7.46, openFlow);
        double area = Math.PI / 4 * 0.02 * 0.02;
        double k = 0.0261 * 60_000 * 60_000 * area * area * 2 * 9.80665;
        DutyPoint duty = DutyPoint.of(curve, new Line(3.52, 15, null, 0, List.of(Section.rough(20, 0, 0, k))));
        assertThat(duty.flowM3h() / 0.06).isCloseTo(7.428464, within(1e-6));
        assertThat(duty.headM()).isCloseTo(4.960252, within(1e-6));
    }

    /**
     * Three points fitted as a + cQ², 3884 ft of 20 in pipe, eps 0.0005 ft, lift 30 ft: open R package hydraulics, vignette section
     * 6. With Colebrook solved at the flow itself 12.7768 cfs and 49.6650 ft [computed]; the vignette's 12.051 cfs has the factor
     * frozen at 1 cfs. Viscosity 1.23e-5 ft²/s is that of water at 14.87 °C.
     */
    @Test
    void solvesTheFrictionAtTheFlowItself() {
        double gpm = GPM;
        CurveFit fit = CurveFit.of(
                Form.PURE_SQUARE,
                List.of(
                        new Curve.Point(0, 81 * FT),
                        new Curve.Point(5000 * gpm, 60 * FT),
                        new Curve.Point(7850 * gpm, 20 * FT)));
        Line line = new Line(
                30 * FT, temperatureOf(1.23e-5 * FT * FT), null, 0, List.of(Section.rough(508, 3884 * FT, 0.1524, 0)));
        DutyPoint duty = DutyPoint.of(fit.curve(), line);
        double cfs = 3600 * FT * FT * FT;
        assertThat(duty.flowM3h() / cfs).isCloseTo(12.7768, within(12.7768e-3));
        assertThat(duty.headM() / FT).isCloseTo(49.6650, within(49.665e-3));
    }

    private static double temperatureOf(double viscosity) {
        return new BrentSolver(1e-10).solve(100, t -> Water.kinematicViscosity(t) - viscosity, 0, 60);
    }

    /** EPA 625/1-80-012, p. 295: 3 in pipe, 54 gpm, 75 ft, lift 7 ft and pressure 2 ft make 9.5 ft [published]. */
    @Test
    void addsUpTheHeadOfASmallEffluentPump() {
        Line line = new Line(9 * FT, 15, null, 0, List.of(Section.hazenWilliams(3.068 * 25.4, 75 * FT, 150, 0)));
        LineLoss loss = LineLoss.of(line, 54 * GPM);
        assertThat(loss.frictionM() / FT).isCloseTo(0.5, within(0.05));
        assertThat(loss.headM() / FT).isCloseTo(9.5, within(0.05));
    }

    /** Operator training pages, flow from a fall of level [published]; the last is a wastewater text's example 11.1. */
    @ParameterizedTest
    @CsvSource({"78.5398163, 0.5, 2, 146.8", "314.159265, 0.25, 20, 29.36", "180, 3, 30, 134.64", "90, 2.2, 5, 296.2286"
    })
    void measuresAFlowByTheFallOfLevel(double squareFeet, double fallFt, double minutes, double gpm) {
        MeasuredFlow flow = MeasuredFlow.levelDrop(
                squareFeet * FT * FT, 0, 0, new LevelChange(fallFt * FT, 60 * minutes), List.of(), 0, 0);
        assertThat(flow.flowM3h() / GPM).isCloseTo(gpm, within(1e-3 * gpm));
        assertThat(flow.assumptions()).contains(MeasuredFlow.Assumption.NO_INFLOW);
    }

    @Test
    void addsWhatRunsInMeanwhile() {
        MeasuredFlow flow = MeasuredFlow.levelDrop(
                0.164,
                0.01,
                0.05,
                new LevelChange(0.2, 30),
                List.of(new LevelChange(0.2, 300), new LevelChange(0.2, 400)),
                0.002,
                0.3);
        double speed = 0.2 / 30 + (0.2 / 300 + 0.2 / 400) / 2;
        assertThat(flow.flowM3h()).isCloseTo(3600 * 0.164 * 0.95 * speed, within(1e-12));
        assertThat(flow.standardUncertaintyM3h() / flow.flowM3h()).isBetween(0.018, 0.025);
        assertThat(flow.assumptions()).contains(MeasuredFlow.Assumption.SAME_INFLOW);
    }

    /** u_r of diameter 0.5 %, fall 1 %, time 0.2 %: 1.428286 %, the diameter counts twice [computed]. */
    @Test
    void countsTheDiameterTwice() {
        MeasuredFlow flow = MeasuredFlow.levelDrop(
                2, 2 * 0.005, 0, new LevelChange(0.5, 100), List.of(), 0.5 * 0.01 / Math.sqrt(2), 0.2);
        assertThat(flow.standardUncertaintyM3h() / flow.flowM3h()).isCloseTo(0.01428286, within(1e-8));
    }

    /** 1.04 gpm per square inch of pipe and inch of reach at a fall of 12 in: the trade's rule, from free fall [computed]. */
    @Test
    void measuresAFlowByItsTrajectory() {
        double bore = Math.sqrt(4 / Math.PI) * 25.4;
        MeasuredFlow flow = MeasuredFlow.trajectory(bore, 10 * 0.0254, 12 * 0.0254, 0, 0.05);
        assertThat(flow.flowM3h() / GPM).isCloseTo(10.4, within(0.05));
        assertThat(flow.standardUncertaintyM3h()).isCloseTo(0.05 * flow.flowM3h(), within(1e-12));
    }

    /** 18.9 L in 25.0 s, mark ±0.1 L, watch ±0.25 s: 0.756 L/s, u 0.0049381 L/s; GUM equation 10 [computed]. */
    @Test
    void propagatesASingleRun() {
        MeasuredFlow flow = MeasuredFlow.timedContainer(
                18.9, Uncertainty.rectangular(0.1), List.of(25.0), Uncertainty.rectangular(0.25));
        assertThat(flow.flowM3h() / 3.6).isCloseTo(0.756, within(1e-12));
        assertThat(flow.flowM3h() / GPM).isCloseTo(11.982844, within(1e-6));
        assertThat(flow.standardUncertaintyM3h() / 3.6).isCloseTo(0.0049381, within(1e-7));
        assertThat(flow.repeatability()).isNull();
    }

    /** 24.8, 25.3, 25.1 s: mean 25.066667, s 0.2516611 [computed]; here the larger of watch and scatter counts. */
    @Test
    void takesTheLargerOfWatchAndScatter() {
        MeasuredFlow flow = MeasuredFlow.timedContainer(18.9, 0.0577350269, List.of(24.8, 25.3, 25.1), 0.1);
        assertThat(flow.meanSeconds()).isCloseTo(25.066667, within(1e-6));
        assertThat(flow.repeatability() * flow.meanSeconds()).isCloseTo(0.2516611, within(1e-7));
        assertThat(flow.flowM3h() / 3.6).isCloseTo(0.7539894, within(1e-7));
        double byTime = 0.2516611 / Math.sqrt(3) / 25.066667;
        double byVolume = 0.0577350269 / 18.9;
        assertThat(flow.standardUncertaintyM3h() / flow.flowM3h())
                .isCloseTo(Math.hypot(byTime, byVolume), within(1e-8));
        assertThat(flow.scatterM3h()).isCloseTo(byTime * flow.flowM3h(), within(1e-7));
    }

    /** JCGM 100:2008, 4.3.4, 4.3.7, 4.3.9 (clause numbers from memory); Student's t from scipy 1.17.1 [computed]. */
    @Test
    void turnsMarksIntoStandardUncertainties() {
        assertThat(Uncertainty.rectangular(0.25)).isCloseTo(0.1443375673, within(1e-10));
        assertThat(Uncertainty.triangular(0.25)).isCloseTo(0.1020620726, within(1e-10));
        assertThat(Uncertainty.fromStated95(0.5)).isCloseTo(0.2551067, within(1e-7));
    }

    @ParameterizedTest
    @CsvSource({"1, 12.706205", "2, 4.302653", "3, 3.182446", "5, 2.570582", "10, 2.228139", "30, 2.042272"})
    void knowsStudentsFactors(double degrees, double t) {
        assertThat(Uncertainty.coverageFactor95(degrees)).isCloseTo(t, within(1e-6));
    }

    /** JCGM 100:2008 G.4.1: relative u 0.25, 0.57, 0.82 %, n 10, 5, 15 gives 1.03 %, 19.0, 2.2 % (from memory; recomputed). */
    @Test
    void combinesDegreesOfFreedom() {
        double u = Math.sqrt(0.25 * 0.25 + 0.57 * 0.57 + 0.82 * 0.82);
        double degrees = Uncertainty.effectiveDegrees(u, new double[] {0.25, 0.57, 0.82}, new double[] {9, 4, 14});
        assertThat(u).isCloseTo(1.0295, within(1e-4));
        assertThat(degrees).isCloseTo(18.999, within(1e-3));
        assertThat(u * Uncertainty.coverageFactor95(degrees)).isCloseTo(2.15, within(0.01));
        // three runs with a watch of ±0.25 s and a mark of ±0.1 L, root sum of squares: 10.2567, 2.220604
        double scatter = 0.2516611 / Math.sqrt(3) / 25.066667;
        double all = Math.sqrt(scatter * scatter
                + Math.pow(Uncertainty.rectangular(0.25) / 25.066667, 2)
                + Math.pow(Uncertainty.rectangular(0.1) / 18.9, 2));
        double few = Uncertainty.effectiveDegrees(all, new double[] {scatter}, new double[] {2});
        assertThat(few).isCloseTo(10.2567, within(1e-3));
        assertThat(Uncertainty.coverageFactor95(few)).isCloseTo(2.220604, within(1e-5));
    }

    /** 21.0 gpm at 14.0 ft on the pump 28 - 0.2 Q - 0.015 Q²: 0.853562 by flow, 0.814664 by head [computed]. */
    @Test
    void statesCapacityByFlowAndByHead() {
        double kPa = Water.at(15).densityKgM3() * Water.GRAVITY_MS2 * 14 * FT / 1000;
        FlowTestReduction test = FlowTestReduction.of(
                pump(), MeasuredFlow.meter(21 * GPM, 0, 0), new MeasuredHead.ByGauge(kPa, 0, 5000, 0, 15, 0), 0);
        assertThat(test.referenceFlowM3h() / GPM).isCloseTo(24.602772, within(1e-5));
        assertThat(test.remainingFraction()).isCloseTo(0.853562, within(1e-6));
        assertThat(test.headFraction()).isCloseTo(0.814664, within(1e-6));
        assertThat(test.expandedUncertainty()).isCloseTo(0, within(1e-12));
    }

    private static Curve pump() {
        List<Curve.Point> points = new ArrayList<>();
        for (double q : new double[] {0, 10, 20, 30, 35}) {
            points.add(new Curve.Point(q * GPM, (28 - 0.2 * q - 0.015 * q * q) * FT));
        }
        return CurveFit.of(Form.QUADRATIC, points).curve();
    }

    /** A pump of 25 ft and 42 gpm lifting 10 ft through 50 ft of hose, C 140, no exit loss: 24.1 and 9.2 gpm; what the hose takes, what wear of 15 % takes [computed]. */
    @Test
    void dividesTheLossBetweenPumpAndLine() {
        Curve pump = Curve.parabola(25 * FT, 42 * GPM);
        Line wide = new Line(10 * FT, 15, null, 0, List.of(Section.hazenWilliams(31.75, 50 * FT, 140, 0)));
        Line narrow = new Line(10 * FT, 15, null, 0, List.of(Section.hazenWilliams(19.05, 50 * FT, 140, 0)));
        double measured = DutyPoint.of(pump.scaled(1, 0.85), narrow).flowM3h();
        PumpOrLine parts = PumpOrLine.of(pump, wide, narrow, measured);
        assertThat(parts.ratedFlowM3h() / GPM).isCloseTo(24.1, within(0.1));
        assertThat(parts.expectedFlowM3h() / GPM).isCloseTo(9.2, within(0.1));
        assertThat(parts.lostToLineM3h() + parts.lostToPumpM3h())
                .isCloseTo(parts.ratedFlowM3h() - measured, within(1e-12));
        assertThat(parts.shareOfLine()).isBetween(0.85, 0.97);
        assertThat(PumpOrLine.of(pump, wide, wide, parts.ratedFlowM3h()).shareOfLine())
                .isNull();
        assertThatThrownBy(() -> PumpOrLine.of(pump, Line.of(-5), narrow, 1))
                .isInstanceOfSatisfying(
                        OutOfRange.class, e -> assertThat(e.field()).isEqualTo("ratedLine"));
    }

    /** AWG 12 is 3.309 mm² and about 5.21 ohm/km at 20 °C: ASTM B258 and IEC 60028, from memory. */
    @Test
    void losesVoltsInACord() {
        assertThat(CordDrop.awgMm2(12)).isCloseTo(3.309, within(1e-3));
        assertThat(CordDrop.awgMm2(16)).isCloseTo(1.309, within(1e-3));
        assertThat(CordDrop.awgMm2(-3)).isCloseTo(107.2, within(0.05));
        CordDrop drop = CordDrop.of(115, 10, 30.48, CordDrop.awgMm2(12), 20, CordDrop.Phases.SINGLE);
        assertThat(drop.resistanceOhmPerM() * 1000).isCloseTo(5.21, within(0.01));
        assertThat(drop.dropV()).isCloseTo(2 * 30.48 * 5.21e-3 * 10, within(0.01));
        assertThat(drop.voltsAtPump()).isCloseTo(115 - drop.dropV(), within(1e-12));
        assertThat(CordDrop.of(230, 10, 50, 2.5, 20, CordDrop.Phases.THREE).dropV())
                .isCloseTo(Math.sqrt(3) * 50 / 58 / 2.5 * 10, within(1e-12));
        assertThatThrownBy(() -> CordDrop.of(115, 100, 2000, 1.5, 20, CordDrop.Phases.SINGLE))
                .hasMessageContaining("2000 m");
    }

    @Test
    void weighsWhatThePumpNeedsAgainstWhatTheSuctionLeaves() {
        NpshAvailable high = NpshAvailable.of(1600, 30, 4, 0.65);
        assertThat(high.against(2, 0.6)).isEqualTo(NpshAvailable.Suction.ENOUGH);
        assertThat(high.against(3, 0.6)).isEqualTo(NpshAvailable.Suction.THIN);
        assertThat(high.against(4, 0.6)).isEqualTo(NpshAvailable.Suction.TOO_LITTLE);
        assertThat(NpshAvailable.of(0, 60, 12, 0).npshM()).isNegative();
    }

    @ParameterizedTest
    @EnumSource(Fitting.class)
    void givesEveryFittingACoefficientAndAMark(Fitting fitting) {
        assertThat(fitting.lossCoefficient(25.4)).isBetween(0.01, 12.0);
        assertThat(fitting.lossCoefficient(0.5)).isGreaterThanOrEqualTo(fitting.lossCoefficient(5000));
        assertThat(fitting.mark()).isNotNull();
    }

    @ParameterizedTest
    @EnumSource(HoseKind.class)
    void makesALineOfEveryKindOfHose(HoseKind kind) {
        for (double bore : HoseKind.USUAL_BORES_MM) {
            Line line = Line.of(1, kind.section(bore, 10, 0));
            assertThat(LineLoss.of(line, 3).frictionM()).isPositive();
        }
        assertThat(kind.mark()).isNotNull();
    }

    @Test
    void readsHeadFlowAndAmpsTogether() {
        assertThat(Pattern.matching(Reading.HIGH, Reading.LOW, Reading.LOW))
                .containsExactly(Pattern.RESTRICTION_AFTER_GAUGE);
        assertThat(Pattern.matching(Reading.LOW, Reading.LOW, Reading.LOW))
                .containsExactly(Pattern.WEAK_PUMP, Pattern.BLOCKED_SUCTION);
        assertThat(Pattern.matching(Reading.NONE, Reading.NONE, Reading.LOCKED)).containsExactly(Pattern.SEIZED);
        assertThat(Pattern.matching(Reading.HIGH, Reading.HIGH, Reading.NONE)).isEmpty();
        assertThat(Pattern.WEAK_PUMP.causeKeys()).contains("hydraulics.cause.worn-impeller");
        assertThat(Pattern.reading(40, 8, 0.1)).isEqualTo(Reading.LOCKED);
        assertThat(Pattern.reading(7.5, 8, 0.1)).isEqualTo(Reading.NORMAL);
        assertThat(Pattern.reading(0, 8, 0.1)).isEqualTo(Reading.NONE);
    }
}
