package freshet.board;

import freshet.places.Span;
import freshet.places.Window;
import freshet.places.WindowKind;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** The calendar of one site: its today, the turns of its windows that are wanted now, and where its seasons begin. */
final class SiteDays {

    static final int DAYS_AHEAD = 366;

    private final ZoneId zone;
    private final LocalDate today;
    private final List<Window> openings;
    private final Map<WindowKind, List<Span>> turns = new EnumMap<>(WindowKind.class);

    SiteDays(ZoneId zone, LocalDate today, List<Window> windows) {
        this.zone = zone;
        this.today = today;
        openings = windows.stream()
                .filter(window -> window.kind() == WindowKind.OPENING)
                .toList();
        for (Window window : windows) {
            turns.computeIfAbsent(window.kind(), kind -> new ArrayList<>()).addAll(due(window, today));
        }
    }

    LocalDate today() {
        return today;
    }

    LocalDate day(Instant at) {
        return LocalDate.ofInstant(at, zone);
    }

    Instant begin(LocalDate day) {
        return day.atStartOfDay(zone).toInstant();
    }

    List<Span> turns(WindowKind kind) {
        return turns.getOrDefault(kind, List.of());
    }

    /** The turn that opened last, for it may still be owed, and those that open within a year; a newer turn takes the place of an older. */
    static List<Span> due(Window window, LocalDate today) {
        List<Span> due = new ArrayList<>();
        for (Span span : window.spans(today.minusDays(DAYS_AHEAD), today.plusDays(DAYS_AHEAD))) {
            if (!span.opensOn().isAfter(today)) {
                due.clear();
            }
            due.add(span);
        }
        return due;
    }

    static String occurrence(Span span) {
        return span.window().id() + ":" + span.year();
    }

    /** The first day of the season that holds a day: that of the last opening before, or of the year where nothing is opened. */
    LocalDate seasonOf(LocalDate day) {
        LocalDate begin = LocalDate.MIN;
        for (Window window : openings) {
            for (int year = day.getYear() - 1; year <= day.getYear(); year++) {
                LocalDate first = window.startingIn(year).opensOn();
                begin = !first.isAfter(day) && first.isAfter(begin) ? first : begin;
            }
        }
        return openings.isEmpty() ? LocalDate.of(day.getYear(), 1, 1) : begin;
    }

    /** The first day of the season after the one that holds a day. */
    LocalDate seasonAfter(LocalDate day) {
        LocalDate begin = LocalDate.MAX;
        for (Window window : openings) {
            for (int year = day.getYear(); year <= day.getYear() + 1; year++) {
                LocalDate first = window.startingIn(year).opensOn();
                begin = first.isAfter(day) && first.isBefore(begin) ? first : begin;
            }
        }
        return openings.isEmpty() ? LocalDate.of(day.getYear() + 1, 1, 1) : begin;
    }
}
