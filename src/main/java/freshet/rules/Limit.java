package freshet.rules;

/** Between which limits a figure can be watched; fractions are typed and shown in percent. */
record Limit(double least, double most, boolean percent) {

    static Limit of(Measure measure) {
        return switch (measure) {
            case CAPACITY -> new Limit(0.01, 1.2, true);
            case DAYS_TO_CAPACITY_LOW -> new Limit(1, 3653, false);
            case STARTS_PER_HOUR -> new Limit(0.1, 600, false);
            case MINUTES_PER_START -> new Limit(0.05, 1440, false);
            case HOURS_APART -> new Limit(0.01, 1, true);
        };
    }

    /** As a person types it. */
    double shown(double inside) {
        return percent ? inside * 100 : inside;
    }

    double inside(double typed) {
        return percent ? typed / 100 : typed;
    }
}
