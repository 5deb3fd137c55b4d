package freshet.measures;

/** The two ways in which people read quantities. */
public enum UnitSystem {
    US,
    SI;

    public UnitSystem other() {
        return this == US ? SI : US;
    }
}
