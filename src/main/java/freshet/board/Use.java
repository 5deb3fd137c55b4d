package freshet.board;

import freshet.board.Series.Point;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** How a unit was worked between readings, each figure named by the reading at the end of its stretch. */
record Use(Series hours, Series starts) {

    /** The two meters are read on one visit. */
    private static final Duration ONE_VISIT = Duration.ofMinutes(15);
    /** Over less time than this nothing is said about starts an hour. */
    private static final Duration SHORTEST = Duration.ofHours(1);

    /** Starts by the clock's hours. */
    List<Figure> startsPerHour() {
        List<Figure> figures = new ArrayList<>();
        Point from = null;
        for (Point to : starts.points()) {
            if (from != null && Duration.between(from.at(), to.at()).compareTo(SHORTEST) >= 0) {
                double passed = Duration.between(from.at(), to.at()).toMillis() / 3_600_000.0;
                figures.add(figure(to, (to.total() - from.total()) / passed));
                from = to;
            }
            from = from == null ? to : from;
        }
        return figures;
    }

    /** Running minutes a start, where hours and starts were read together; stretches without a start say nothing. */
    List<Figure> minutesPerStart() {
        List<Figure> figures = new ArrayList<>();
        Point from = null;
        Double hoursFrom = null;
        for (Point to : starts.points()) {
            Double hoursTo = hoursOnTheVisit(to.at());
            if (hoursTo == null) {
                continue;
            }
            boolean far = from != null && Duration.between(from.at(), to.at()).compareTo(SHORTEST) >= 0;
            if (from != null && hoursFrom != null && far) {
                if (to.total() > from.total()) {
                    figures.add(figure(to, 60 * (hoursTo - hoursFrom) / (to.total() - from.total())));
                }
                from = null;
            }
            if (from == null) {
                from = to;
                hoursFrom = hoursTo;
            }
        }
        return figures;
    }

    private @Nullable Double hoursOnTheVisit(Instant at) {
        Point nearest = null;
        for (Point point : hours.points()) {
            if (nearest == null || apart(point, at).compareTo(apart(nearest, at)) < 0) {
                nearest = point;
            }
        }
        return nearest == null || apart(nearest, at).compareTo(ONE_VISIT) > 0 ? null : (Double) nearest.total();
    }

    private static Duration apart(Point point, Instant at) {
        return Duration.between(point.at(), at).abs();
    }

    /**
     * How far this unit's hours are above those of the least used beside it, as a fraction of its own, at each reading of either; 0 when it is
     * not the most used, so that only one of a pair is asked for.
     */
    List<Figure> hoursApart(List<Series> others) {
        List<Figure> figures = new ArrayList<>();
        if (hours.empty() || others.isEmpty()) {
            return figures;
        }
        TreeMap<Instant, Point> moments = new TreeMap<>();
        others.forEach(series -> series.points().forEach(point -> moments.put(point.at(), point)));
        hours.points().forEach(point -> moments.put(point.at(), point));
        for (Point point : moments.values()) {
            double own = readAt(hours, point.at());
            double most = own;
            double least = own;
            for (Series other : others) {
                double its = readAt(other, point.at());
                most = Math.max(most, its);
                least = Math.min(least, its);
            }
            figures.add(figure(point, own < most || own <= 0 ? 0 : (own - least) / own));
        }
        return figures;
    }

    /** As the meter was last read by then. */
    private static double readAt(Series series, Instant at) {
        Series known = series.upTo(at);
        return known.empty() ? series.points().get(0).total() : known.last().total();
    }

    private static Figure figure(Point at, double value) {
        return new Figure(at.at().toString(), at.at(), at.day(), value);
    }
}
