package freshet.places;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;

/** A window of a site with the turn that is open today, or else comes next. */
record SpanRow(Window window, Span span, boolean open) {

    static List<SpanRow> around(Site site, LocalDate today) {
        return site.windows().stream()
                .map(window -> {
                    // a turn lasts a year at most, so one that is open or next touches the year from today
                    Span span = window.spans(today, today.plusDays(366)).get(0);
                    return new SpanRow(window, span, span.contains(today));
                })
                .sorted(Comparator.comparing((SpanRow row) -> row.span().opensOn()))
                .toList();
    }
}
