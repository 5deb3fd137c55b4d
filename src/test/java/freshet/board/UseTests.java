package freshet.board;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import freshet.board.Series.Point;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The figures that rules watch, against cases worked by hand. */
class UseTests {

    private static final Instant START = Instant.parse("2026-06-01T00:00:00Z");

    /** Pairs of hours since the start and the total then. */
    private static Series series(double... hoursAndTotals) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < hoursAndTotals.length; i += 2) {
            Instant at = START.plusSeconds(Math.round(hoursAndTotals[i] * 3600));
            points.add(new Point(at, LocalDate.ofInstant(at, ZoneOffset.UTC), hoursAndTotals[i + 1]));
        }
        return new Series(points);
    }

    private static List<Double> values(List<Figure> figures) {
        return figures.stream().map(Figure::value).toList();
    }

    @Test
    void countsStartsByTheClockBetweenReadingsAnHourApartAtLeast() {
        // 48 starts in 24 h, then 6 in half an hour (too short to say), then 120 in 10 h since the last that counted
        Series starts = series(0, 100, 24, 148, 24.5, 154, 34, 268);
        List<Figure> figures = new Use(Series.NEVER_READ, starts).startsPerHour();
        assertThat(values(figures)).containsExactly(2.0, 12.0);
        assertThat(figures.get(1).at()).isEqualTo(START.plusSeconds(34 * 3600));
        assertThat(figures.get(1).day()).isEqualTo(LocalDate.of(2026, 6, 2));
        assertThat(figures).extracting(Figure::name).doesNotHaveDuplicates();
    }

    @Test
    void saysNothingOfUseFromOneReadingOrNone() {
        assertThat(new Use(Series.NEVER_READ, series(0, 100)).startsPerHour()).isEmpty();
        assertThat(new Use(Series.NEVER_READ, Series.NEVER_READ).startsPerHour())
                .isEmpty();
        assertThat(new Use(series(0, 5), series(0, 100)).minutesPerStart()).isEmpty();
        assertThat(new Use(Series.NEVER_READ, Series.NEVER_READ).hoursApart(List.of(series(0, 1))))
                .isEmpty();
        assertThat(new Use(series(0, 1), Series.NEVER_READ).hoursApart(List.of()))
                .isEmpty();
    }

    @Test
    void countsNoStartAsNoneAnHourAndAsNoLengthOfARun() {
        Use idle = new Use(series(0, 5, 24, 5), series(0, 100, 24, 100));
        assertThat(values(idle.startsPerHour())).containsExactly(0.0);
        assertThat(idle.minutesPerStart()).isEmpty();
    }

    @Test
    void dividesRunningMinutesByStartsWhereBothWereReadOnOneVisit() {
        // 6 h in 60 starts; the visit at 48 h read the hours 24 minutes away, so it says nothing; 10 h in 40 starts
        // over both
        Series starts = series(0, 100, 24, 160, 48, 180, 72, 200);
        Series hours = series(0, 50, 24.2, 56, 48.4, 61, 72, 66);
        assertThat(values(new Use(hours, starts).minutesPerStart())).containsExactly(6.0, 15.0);
    }

    @Test
    void asksOnlyTheMostUsedOfAPairAndByHowMuchOfItsOwnHours() {
        Series busy = series(0, 100, 24, 200);
        Series spared = series(0, 100, 24, 150);
        assertThat(values(new Use(busy, Series.NEVER_READ).hoursApart(List.of(spared))))
                .containsExactly(0.0, 0.25);
        assertThat(values(new Use(spared, Series.NEVER_READ).hoursApart(List.of(busy))))
                .containsExactly(0.0, 0.0);
    }

    @Test
    void takesEachOfAPairAsItWasLastReadByThen() {
        Series own = series(0, 100, 48, 160);
        Series other = series(0, 100, 24, 120);
        List<Figure> figures = new Use(own, Series.NEVER_READ).hoursApart(List.of(other));
        assertThat(figures).hasSize(3);
        // at 24 h its own was last read as 100, below the other: nothing is asked of it; at 48 h 160 stand against 120
        assertThat(figures.get(1).value()).isZero();
        assertThat(figures.get(2).value()).isCloseTo(0.25, within(1e-12));
    }

    @Test
    void asksNothingOfAUnitThatNeverRan() {
        assertThat(values(new Use(series(0, 0), Series.NEVER_READ).hoursApart(List.of(series(0, 0)))))
                .containsExactly(0.0);
    }
}
