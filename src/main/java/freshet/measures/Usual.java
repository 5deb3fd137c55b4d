package freshet.measures;

/**
 * What is usual on small pumps and their lines; common practice, no source. Outside of it nothing is refused, but somebody is asked,
 * which finds units that were mixed up and points one place off.
 */
public enum Usual {
    FLOW(Quantity.FLOW, 0.2, 228),
    INFLOW(Quantity.FLOW, 0, 228),
    LIFT(Quantity.HEAD, -10, 46),
    SUCTION(Quantity.HEAD, 0, 9),
    ALTITUDE(Quantity.LENGTH, -430, 4500),
    BORE(Quantity.BORE, 9.5, 203.2),
    SOLIDS(Quantity.BORE, 0, 76.2),
    LENGTH(Quantity.LENGTH, 0.3, 305),
    CORD(Quantity.LENGTH, 0, 153),
    DEPTH(Quantity.LENGTH, 0.005, 6.1),
    AREA(Quantity.AREA, 0.02, 10_000),
    PIT_DIAMETER(Quantity.BORE, 150, 6100),
    PIT_AREA(Quantity.AREA, 0.02, 30),
    VOLUME(Quantity.VOLUME, 1, 5_000_000),
    CONTAINER(Quantity.VOLUME, 0.5, 2000),
    PRESSURE(Quantity.PRESSURE, -40, 460),
    WATER(Quantity.TEMPERATURE, 0, 45),
    VOLTAGE(Quantity.VOLTAGE, 10, 500),
    CURRENT(Quantity.CURRENT, 0, 60);

    private final Quantity quantity;
    private final double low;
    private final double high;

    Usual(Quantity quantity, double low, double high) {
        this.quantity = quantity;
        this.low = low;
        this.high = high;
    }

    public Quantity quantity() {
        return quantity;
    }

    /** The least that is usual, in the unit inside. */
    public double low() {
        return low;
    }

    /** The most that is usual, in the unit inside. */
    public double high() {
        return high;
    }
}
