package freshet.hydraulics;

/**
 * Fittings and their loss coefficients K on the velocity head in their own bore. Handbooks differ by a factor of two and more:
 * these are the forms of Crane TP-410, K = (L/D) f_T with the friction factor f_T of rough turbulent flow in steel pipe of that
 * size (2009 edition), or a plain K. The valve forms were read in the documentation of an open hydraulics library, elbows and
 * tees are from memory.
 */
public enum Fitting {
    ELBOW_90(30, 0, Mark.FROM_MEMORY),
    ELBOW_45(16, 0, Mark.FROM_MEMORY),
    TEE_RUN(20, 0, Mark.FROM_MEMORY),
    TEE_BRANCH(60, 0, Mark.FROM_MEMORY),
    GATE_VALVE(8, 0, Mark.PUBLISHED),
    BALL_VALVE(3, 0, Mark.PUBLISHED),
    GLOBE_VALVE(340, 0, Mark.PUBLISHED),
    SWING_CHECK(100, 0, Mark.PUBLISHED),
    ANGLED_SWING_CHECK(50, 0, Mark.PUBLISHED),
    FOOT_VALVE_POPPET(420, 0, Mark.PUBLISHED),
    FOOT_VALVE_HINGED(75, 0, Mark.PUBLISHED),
    ENTRANCE_FLUSH(0, 0.5, Mark.PUBLISHED),
    ENTRANCE_INWARD(0, 0.78, Mark.FROM_MEMORY),
    FREE_END(0, 1.0, Mark.BY_DEFINITION);

    /** Bores of Schedule 40 pipe, 1/2 to 3 in (ASME B36.10, from memory), and f_T of Crane TP-410 (2009) for them. */
    private static final double[] BORES_MM = {15.8, 20.9, 26.6, 35.1, 40.9, 52.5, 62.7, 77.9};

    private static final double[] TURBULENT = {0.026, 0.024, 0.022, 0.021, 0.020, 0.019, 0.018, 0.017};

    private final double lengths;
    private final double plain;
    private final Mark mark;

    Fitting(double lengths, double plain, Mark mark) {
        this.lengths = lengths;
        this.plain = plain;
        this.mark = mark;
    }

    /** How far the figure can be trusted. */
    public Mark mark() {
        return mark;
    }

    /** Equivalent length over bore, L/D; 0 for a plain K. */
    public double equivalentLengths() {
        return lengths;
    }

    /**
     * K in a bore, 0.5 to 5000 mm.
     *
     * @throws OutOfRange outside that range
     */
    public double lossCoefficient(double boreMm) {
        OutOfRange.check("boreMm", boreMm, "mm", Section.LOWEST_BORE_MM, Section.HIGHEST_BORE_MM);
        return plain + lengths * turbulentFactor(boreMm);
    }

    /** f_T, linear between the sizes of the table and held at its ends. */
    static double turbulentFactor(double boreMm) {
        int last = BORES_MM.length - 1;
        if (boreMm <= BORES_MM[0]) {
            return TURBULENT[0];
        }
        for (int i = 1; i <= last; i++) {
            if (boreMm <= BORES_MM[i]) {
                double share = (boreMm - BORES_MM[i - 1]) / (BORES_MM[i] - BORES_MM[i - 1]);
                return TURBULENT[i - 1] + share * (TURBULENT[i] - TURBULENT[i - 1]);
            }
        }
        return TURBULENT[last];
    }

    /**
     * K of a cone, on the velocity head of its smaller bore, as in Crane TP-410 (form read in the documentation of an open
     * hydraulics library): contraction 0.8 sin(th/2)(1 - b²) up to 45°, 0.5 sqrt(sin(th/2))(1 - b²) above; enlargement
     * 2.6 sin(th/2)(1 - b²)² up to 45°, (1 - b²)² above.
     *
     * @param fromMm bore upstream, 0.5 to 5000 mm
     * @param toMm bore downstream, 0.5 to 5000 mm
     * @param includedAngleDeg whole angle of the cone, 1 to 180 degrees
     */
    public static double coneLossCoefficient(double fromMm, double toMm, double includedAngleDeg) {
        double sudden = Line.boreChangeCoefficient(fromMm, toMm);
        OutOfRange.check("includedAngleDeg", includedAngleDeg, "degrees", 1, 180);
        double sine = Math.sin(Math.toRadians(includedAngleDeg) / 2);
        if (toMm < fromMm) {
            return sudden * (includedAngleDeg <= 45 ? 1.6 * sine : Math.sqrt(sine));
        }
        return sudden * (includedAngleDeg <= 45 ? 2.6 * sine : 1);
    }

    /**
     * The same loss stated on another bore's velocity head: K (to/from)⁴.
     *
     * @param coefficient K on the velocity head in {@code fromMm}, 0 to 1 000 000
     */
    public static double onBore(double coefficient, double fromMm, double toMm) {
        OutOfRange.check("coefficient", coefficient, "", 0, Section.HIGHEST_LOSS_COEFFICIENT);
        OutOfRange.check("fromMm", fromMm, "mm", Section.LOWEST_BORE_MM, Section.HIGHEST_BORE_MM);
        OutOfRange.check("toMm", toMm, "mm", Section.LOWEST_BORE_MM, Section.HIGHEST_BORE_MM);
        double ratio = toMm / fromMm;
        return coefficient * ratio * ratio * ratio * ratio;
    }
}
