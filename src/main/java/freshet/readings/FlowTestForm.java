package freshet.readings;

import freshet.hydraulics.Line;
import freshet.measures.Quantity;
import freshet.measures.UnitSystem;
import freshet.measures.Usual;
import freshet.people.Person;
import freshet.people.Typed;
import freshet.pumps.Unit;
import freshet.readings.FlowTestDraft.Container;
import freshet.readings.FlowTestDraft.Gauge;
import freshet.readings.FlowTestDraft.Piece;
import freshet.readings.FlowTestDraft.ShutOff;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.PropertyAccessorFactory;

/** What was typed about a flow test. */
record FlowTestForm(
        @Nullable String at,
        @Nullable String rig,
        @Nullable FlowByForm by,
        @Nullable String container,
        @Nullable String containerUncertainty,
        @Nullable String lap1,
        @Nullable String lap2,
        @Nullable String lap3,
        @Nullable String lap4,
        @Nullable String lap5,
        @Nullable String timingUncertainty,
        @Nullable String meterFlow,
        @Nullable String lift,
        @Nullable String heightUncertainty,
        @Nullable String gauge,
        @Nullable String gaugeHeight,
        @Nullable String gaugeBore,
        @Nullable String gaugeUncertainty,
        @Nullable String shutOff,
        @Nullable String shutOffHeight,
        @Nullable String pumpOutlet,
        @Nullable List<PieceForm> pieces,
        @Nullable String volts,
        @Nullable String amps,
        @Nullable String frequency,
        @Nullable String speed,
        @Nullable String water,
        @Nullable String note) {

    /** Usual standard uncertainty of a gauge: half of ±2 kPa (common practice, no source). */
    static final double USUAL_GAUGE_UNCERTAINTY_KPA = 1;

    private static final double LITTLE = 0.1;

    FlowTestForm {
        pieces = PieceForm.kept(pieces);
        by = by == null ? FlowByForm.blank(null, UnitSystem.SI) : by;
    }

    /** A blank one with the rig of the unit's latest test, or else with the hoses and adapters of its kit. */
    static FlowTestForm blank(Unit unit, @Nullable FlowTestDraft latest, Person me, Instant now) {
        UnitSystem system = me.unitSystem();
        Double outlet = latest == null ? unit.model().ratings().outletMm() : latest.pumpOutletMm();
        return new FlowTestForm(
                ReadingForm.toTheMinute(now, unit.stand().zone()),
                latest == null ? null : latest.rig(),
                FlowByForm.blank(latest, system),
                latest == null || latest.container() == null
                        ? null
                        : Quantity.VOLUME.input(latest.container().volumeL(), system),
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                outlet == null ? null : Quantity.BORE.input(outlet, system),
                latest == null ? PieceForm.of(unit, system) : PieceForm.of(latest.pieces(), system),
                null,
                null,
                null,
                null,
                null,
                null);
    }

    FlowTestForm withPieces(List<PieceForm> other) {
        return new FlowTestForm(
                at,
                rig,
                by,
                container,
                containerUncertainty,
                lap1,
                lap2,
                lap3,
                lap4,
                lap5,
                timingUncertainty,
                meterFlow,
                lift,
                heightUncertainty,
                gauge,
                gaugeHeight,
                gaugeBore,
                gaugeUncertainty,
                shutOff,
                shutOffHeight,
                pumpOutlet,
                other,
                volts,
                amps,
                frequency,
                speed,
                water,
                note);
    }

    /**
     * The test that was typed, with the usual uncertainties where none was.
     *
     * @throws freshet.people.Refused when anything cannot be read
     */
    FlowTestDraft draft(Unit unit, Person me, Instant now) {
        Typed typed = new Typed(me);
        Instant when = typed.moment("at", at, unit.stand().zone());
        Double timing = typed.seconds("timingUncertainty", timingUncertainty);
        FlowByForm way = Objects.requireNonNull(by);
        FlowBy other = way.read(typed, timing);
        Container filled = way.container() ? container(typed, timing) : null;
        List<Double> laps = way.container() ? laps(typed) : List.of();
        Gauge read = gauge(typed);
        Double liftM = typed.usual("lift", lift, Usual.LIFT);
        if (Typed.text(gauge) == null) {
            typed.required("lift", liftM, "readings.lift.missing");
        }
        ShutOff shut = shutOff(typed);
        Double height = typed.quantity("heightUncertainty", heightUncertainty, Quantity.HEAD);
        Double outlet = typed.usual("pumpOutlet", pumpOutlet, Usual.BORE);
        List<Piece> line = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            line.addAll(pieces.get(i).pieces("pieces[" + i + "].", typed));
        }
        Double waterC = typed.usual("water", water, Usual.WATER);
        Double itsVolts =
                rated("volts", volts, Quantity.VOLTAGE, unit.model().ratings().voltageV(), typed);
        Double itsAmps =
                rated("amps", amps, Quantity.CURRENT, unit.model().ratings().currentA(), typed);
        Double hertz = typed.number("frequency", frequency);
        Double rpm = typed.number("speed", speed);
        typed.refuseIfWrong();
        return new FlowTestDraft(
                unit.id(),
                when == null ? now : when,
                Typed.text(rig),
                filled,
                laps,
                liftM,
                read,
                height == null ? FlowTestDraft.USUAL_HEIGHT_UNCERTAINTY_M : height,
                waterC == null ? Line.USUAL_TEMPERATURE_C : waterC,
                outlet,
                Line.FREE_END,
                line,
                itsVolts,
                itsAmps,
                hertz,
                Typed.text(note),
                shut,
                other,
                rpm);
    }

    /** Asks about a flow of under a tenth of what a new pump gives at this head, which is hardly wear. */
    void askAboutSlip(FlowTestResult worked, Typed typed) {
        FlowTestResult.Figures figures = worked.figures();
        if (figures != null && figures.rated().remainingFraction() < LITTLE) {
            FlowByForm way = Objects.requireNonNull(by);
            String field = way.container() ? "container" : way.mainField();
            Object text = PropertyAccessorFactory.forBeanPropertyAccess(this).getPropertyValue(field);
            typed.ask(
                    field,
                    (String) text,
                    "readings.flow.tooLittle",
                    Quantity.FLOW.show(figures.flowM3h(), typed.system()),
                    Quantity.FLOW.show(figures.rated().referenceFlowM3h(), typed.system()));
        }
        typed.refuseIfWrong();
    }

    /** Asks about what is far from the plate: more than four times it, as with a locked rotor and beyond, or under a fifth. */
    private static @Nullable Double rated(
            String field, @Nullable String text, Quantity quantity, @Nullable Double rated, Typed typed) {
        Double value = typed.quantity(field, text, quantity);
        return rated == null || value == null || value == 0
                ? value
                : typed.usual(field, text, quantity, value, rated / 5, 4 * rated);
    }

    private @Nullable Container container(Typed typed, @Nullable Double timing) {
        Double volumeL = typed.required(
                "container", typed.usual("container", container, Usual.CONTAINER), "readings.container.missing");
        Double uncertaintyL = typed.quantity("containerUncertainty", containerUncertainty, Quantity.VOLUME);
        Double meter = typed.quantity("meterFlow", meterFlow, Quantity.FLOW);
        return volumeL == null
                ? null
                : new Container(
                        volumeL,
                        uncertaintyL == null ? FlowTestDraft.USUAL_CONTAINER_UNCERTAINTY * volumeL : uncertaintyL,
                        timing == null ? FlowTestDraft.USUAL_TIMING_UNCERTAINTY_S : timing,
                        meter);
    }

    private List<Double> laps(Typed typed) {
        List<Double> laps = new ArrayList<>();
        List<String> all = Arrays.asList(lap1, lap2, lap3, lap4, lap5);
        for (int i = 0; i < all.size(); i++) {
            Double seconds = typed.seconds("lap" + (i + 1), all.get(i));
            if (seconds != null) {
                laps.add(seconds);
            }
        }
        if (all.stream().allMatch(lap -> Typed.text(lap) == null)) {
            typed.wrong("lap1", "readings.laps.missing");
        }
        return laps;
    }

    /** What the gauge showed with the valve shut; null when that was not tried. Its height may stand with the running gauge alone. */
    private @Nullable ShutOff shutOff(Typed typed) {
        if (Typed.text(shutOff) == null) {
            return null;
        }
        boolean own = Typed.text(shutOffHeight) != null;
        String field = own ? "shutOffHeight" : "gaugeHeight";
        Double kPa = typed.usual("shutOff", shutOff, Usual.PRESSURE);
        Double height = typed.required(
                "shutOffHeight",
                typed.usual(field, own ? shutOffHeight : gaugeHeight, Usual.LIFT),
                "readings.gaugeHeight.missing");
        Double uncertainty = typed.quantity("gaugeUncertainty", gaugeUncertainty, Quantity.PRESSURE);
        return kPa == null || height == null
                ? null
                : new ShutOff(kPa, uncertainty == null ? USUAL_GAUGE_UNCERTAINTY_KPA : uncertainty, height);
    }

    /** What the gauge showed; null when none was read. */
    private @Nullable Gauge gauge(Typed typed) {
        if (Typed.text(gauge) == null) {
            return null;
        }
        Double kPa = typed.usual("gauge", gauge, Usual.PRESSURE);
        Double height = typed.required(
                "gaugeHeight", typed.usual("gaugeHeight", gaugeHeight, Usual.LIFT), "readings.gaugeHeight.missing");
        Double bore = typed.required(
                "gaugeBore", typed.usual("gaugeBore", gaugeBore, Usual.BORE), "readings.gaugeBore.missing");
        Double uncertainty = typed.quantity("gaugeUncertainty", gaugeUncertainty, Quantity.PRESSURE);
        return kPa == null || height == null || bore == null
                ? null
                : new Gauge(kPa, uncertainty == null ? USUAL_GAUGE_UNCERTAINTY_KPA : uncertainty, height, bore);
    }
}
