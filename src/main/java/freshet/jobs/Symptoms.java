package freshet.jobs;

import freshet.hydraulics.Pattern;
import freshet.hydraulics.Pattern.Reading;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * How head, flow and current read together, and the patterns that they fit.
 *
 * @param head null when nobody knows, and so flow and current
 * @param fits patterns that fit all that is known; none when less than two are known
 */
record Symptoms(
        @Nullable Reading head,
        @Nullable Reading flow,
        @Nullable Reading current,
        Set<Pattern> fits) {

    /** What still counts as normal, of head and flow, and of the plate's amps; common practice, no source. */
    private static final double NORMAL = 0.10;

    private static final double NORMAL_AMPS = 0.15;
    private static final double WIDEST = 0.5;

    /** Nothing is known yet. */
    static final Symptoms NONE = new Symptoms(null, null, null, Set.of());

    static Symptoms of(Split split) {
        Measured measured = split.measured();
        Reading flow = measured.flow() == null ? flow(split) : measured.flow();
        Reading head = measured.head() == null ? head(split, flow) : measured.head();
        Reading current = measured.current() == null ? current(split) : measured.current();
        return new Symptoms(head, flow, current, fits(head, flow, current));
    }

    /** Against what a new pump would give there; a doubt wider than usual counts as normal too. */
    private static @Nullable Reading flow(Split split) {
        double expected = split.expected().flowM3h();
        if (expected < 1e-6) {
            return null;
        }
        double tolerance = Math.min(WIDEST, Math.max(NORMAL, split.wearDoubtM3h() / expected));
        return Pattern.reading(split.measured().flowM3h(), expected, tolerance);
    }

    /**
     * A pump that is held up gives the head of its curve at the little flow that comes, and a weak one does not: low is below the curve
     * there. A pump that runs out gives less head than it should have on its line.
     */
    private static @Nullable Reading head(Split split, @Nullable Reading flow) {
        Double gauge = split.gaugeM();
        if (gauge == null) {
            return null;
        }
        Double rated = split.ratedHeadM();
        Double duty = split.expected().duty().headM();
        boolean runsOut = rated == null || flow == Reading.HIGH || flow == Reading.LOCKED;
        Double usual = runsOut ? duty : rated;
        if (usual == null || usual < 1e-3) {
            return null;
        }
        Reading reading = Pattern.reading(Math.max(0, gauge), usual, NORMAL);
        boolean heldUp = reading == Reading.NORMAL && duty != null && gauge > duty * (1 + NORMAL);
        return heldUp || reading == Reading.LOCKED ? Reading.HIGH : reading;
    }

    private static @Nullable Reading current(Split split) {
        Double amps = split.measured().amps();
        Double plate = split.pump().model().ratings().currentA();
        return amps == null || plate == null || plate <= 0 ? null : Pattern.reading(amps, plate, NORMAL_AMPS);
    }

    private static Set<Pattern> fits(@Nullable Reading head, @Nullable Reading flow, @Nullable Reading current) {
        long known = Arrays.asList(head, flow, current).stream()
                .filter(reading -> reading != null)
                .count();
        Set<Pattern> fits = EnumSet.noneOf(Pattern.class);
        if (known >= 2) {
            for (Reading itsHead : any(head)) {
                for (Reading itsFlow : any(flow)) {
                    for (Reading itsCurrent : any(current)) {
                        fits.addAll(Pattern.matching(itsHead, itsFlow, itsCurrent));
                    }
                }
            }
        }
        return fits;
    }

    private static List<Reading> any(@Nullable Reading reading) {
        return reading == null ? List.of(Reading.values()) : List.of(reading);
    }

    public boolean fits(Pattern pattern) {
        return fits.contains(pattern);
    }
}
