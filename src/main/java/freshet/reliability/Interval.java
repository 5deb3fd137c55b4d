package freshet.reliability;

import org.jspecify.annotations.Nullable;

/** Two limits around an estimate; an end that the data do not bound is null. */
public record Interval(@Nullable Double lower, @Nullable Double upper) {

    /** An interval with both ends known, or null when either is not a finite number. */
    static @Nullable Interval of(double lower, double upper) {
        return Double.isFinite(lower) && Double.isFinite(upper) ? new Interval(lower, upper) : null;
    }

    static @Nullable Interval around(double estimate, double halfWidth) {
        return of(estimate - halfWidth, estimate + halfWidth);
    }

    /** Wald interval of a positive quantity on the scale of its logarithm. */
    static @Nullable Interval aroundLogarithm(double estimate, double halfWidthOfLogarithm) {
        double factor = Math.exp(halfWidthOfLogarithm);
        return of(estimate / factor, estimate * factor);
    }
}
