package freshet.checklists;

import org.jspecify.annotations.Nullable;

/**
 * The band in which a number passes and the wider band in which it is watched, ends included; null is open to that side for
 * passing, and no wider than passing for watching.
 */
public record Limits(
        @Nullable Double passLow,
        @Nullable Double passHigh,
        @Nullable Double watchLow,
        @Nullable Double watchHigh) {

    /** Nothing to judge by. */
    public static final Limits NONE = new Limits(null, null, null, null);

    public Limits {
        if (above(passLow, passHigh) || above(watchLow, passLow) || above(passHigh, watchHigh)) {
            throw new IllegalArgumentException("limits out of order: watch from " + watchLow + ", pass from " + passLow
                    + ", pass to " + passHigh + ", watch to " + watchHigh);
        }
    }

    public Verdict judge(double number) {
        if (none()) {
            return Verdict.NOTED;
        }
        if (within(passLow, number, passHigh)) {
            return Verdict.PASS;
        }
        boolean watched =
                within(watchLow == null ? passLow : watchLow, number, watchHigh == null ? passHigh : watchHigh);
        return watched ? Verdict.WATCH : Verdict.FAIL;
    }

    /** The same limits for a rated figure that they are fractions of. */
    public Limits times(double rated) {
        return new Limits(
                times(passLow, rated), times(passHigh, rated), times(watchLow, rated), times(watchHigh, rated));
    }

    public boolean none() {
        return passLow == null && passHigh == null;
    }

    /** Whether more is never worse, so that "over the meter's range" is an answer. */
    boolean onlyFromBelow() {
        return passLow != null && passHigh == null && watchHigh == null;
    }

    private static boolean within(@Nullable Double low, double number, @Nullable Double high) {
        return (low == null || number >= low) && (high == null || number <= high);
    }

    private static boolean above(@Nullable Double low, @Nullable Double high) {
        return low != null && high != null && low > high;
    }

    private static @Nullable Double times(@Nullable Double limit, double rated) {
        return limit == null ? null : limit * rated;
    }
}
