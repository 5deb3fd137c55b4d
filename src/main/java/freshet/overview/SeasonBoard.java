package freshet.overview;

import freshet.board.Board;
import freshet.board.SeasonCount;
import freshet.places.Places;
import freshet.places.Site;
import freshet.places.Span;
import freshet.places.Window;
import freshet.places.WindowKind;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Puts each place's year together: its band, its windows, and how much of each is done. */
@Component
class SeasonBoard {

    private final Places places;
    private final Board board;
    private final Clock clock;

    SeasonBoard(Places places, Board board, Clock clock) {
        this.places = places;
        this.board = board;
        this.clock = clock;
    }

    /** One place's year; {@code lines} is the band's table. */
    record SiteYear(Site site, LocalDate today, YearBand band, List<Line> lines, boolean begun) {

        int left() {
            return lines.stream()
                    .filter(Line::begun)
                    .mapToInt(line -> line.count() == null ? 0 : line.count().left())
                    .sum();
        }
    }

    /** One window's turn that is now or comes next: its days, whether it has begun, and its count where work belongs to it. */
    record Line(
            Window window,
            String pattern,
            Span span,
            boolean begun,
            boolean over,
            @Nullable SeasonCount count) {}

    /** The places that have windows, those with most work begun and not done first. */
    List<SiteYear> inSeasonFirst(List<SiteYear> years) {
        return years.stream()
                .filter(year -> !year.lines().isEmpty())
                .sorted(Comparator.comparing((SiteYear year) -> -year.left())
                        .thenComparing(year -> year.site().name()))
                .toList();
    }

    List<SiteYear> years(Locale locale) {
        Map<Long, List<SeasonCount>> counts =
                board.seasons().stream().collect(Collectors.groupingBy(SeasonCount::siteId));
        List<SiteYear> years = new ArrayList<>();
        for (Site site : places.sites()) {
            LocalDate today = site.today(clock);
            List<Line> lines = site.windows().stream()
                    .map(window -> line(window, today, counts.getOrDefault(site.id(), List.of())))
                    .sorted(Comparator.comparing(line -> line.span().opensOn()))
                    .toList();
            years.add(new SiteYear(
                    site,
                    today,
                    YearBand.of(today, site.windows(), List.of(), locale),
                    lines,
                    lines.stream().anyMatch(Line::begun)));
        }
        return years;
    }

    /** How long a turn that is over and done still stands on the board. */
    private static final int DAYS_AFTER = 30;

    /** The turn that is on; else one that is over but has work left, or was over only lately; else the next. */
    private static Line line(Window window, LocalDate today, List<SeasonCount> counts) {
        Span chosen = null;
        for (Span span : window.spans(today.minusYears(1), today.plusYears(1).plusDays(1))) {
            boolean left = count(counts, span) != null && count(counts, span).left() > 0;
            if (chosen == null && (!span.dueOn().isBefore(today.minusDays(DAYS_AFTER)) || left)) {
                chosen = span;
            }
        }
        Span span = chosen == null ? window.startingIn(today.getYear() + 1) : chosen;
        return new Line(
                window,
                YearBand.pattern(window.kind()),
                span,
                !span.opensOn().isAfter(today),
                span.dueOn().isBefore(today),
                window.kind() == WindowKind.RUNNING ? null : count(counts, span));
    }

    private static @Nullable SeasonCount count(List<SeasonCount> counts, Span span) {
        return counts.stream()
                .filter(count -> count.span().window().id() == span.window().id()
                        && count.span().year() == span.year())
                .findFirst()
                .orElse(null);
    }
}
