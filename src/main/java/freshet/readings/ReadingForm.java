package freshet.readings;

import freshet.people.Person;
import freshet.people.Typed;
import freshet.pumps.Unit;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import org.jspecify.annotations.Nullable;

/** What was typed about one reading. */
record ReadingForm(
        @Nullable String kind,
        @Nullable String value,
        @Nullable String at,
        @Nullable Boolean rolledOver,
        @Nullable String rollsOverAt,
        @Nullable String note) {

    ReadingForm {
        kind = MeterKind.named(kind).name();
    }

    /** A meter below this may well show ten times as much at the next look. */
    private static final BigDecimal NO_LONGER_NEW = BigDecimal.valueOf(50);

    private static final DateTimeFormatter FIELD = DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm");

    static ReadingForm blank(MeterKind kind, Instant now, ZoneId zone) {
        return new ReadingForm(kind.name(), null, toTheMinute(now, zone), false, null, null);
    }

    /** A moment as a date and time field holds it. */
    static String toTheMinute(Instant at, ZoneId zone) {
        return FIELD.format(LocalDateTime.ofInstant(at, zone));
    }

    /** Asks about a reading of ten times the last and more: its point was likely left out. */
    void askAboutSlip(MeterLog.@Nullable Line last, ReadingDraft draft, Typed typed) {
        if (last == null || Boolean.TRUE.equals(rolledOver) || draft.at().isBefore(last.at())) {
            return;
        }
        BigDecimal tenth = draft.value().movePointLeft(1);
        if (last.value().compareTo(NO_LONGER_NEW) >= 0 && tenth.compareTo(last.value()) >= 0) {
            typed.ask("value", value, "readings.value.tenth", draft.value(), last.value(), tenth);
        }
    }

    /** The reading that was typed; an emptied time is now. */
    ReadingDraft draft(Unit unit, Person me, Instant now) {
        Typed typed = new Typed(me);
        BigDecimal shown = typed.required("value", typed.exact("value", value), "readings.value.missing");
        Instant when = typed.moment("at", at, unit.stand().zone());
        BigDecimal highest = typed.exact("rollsOverAt", rollsOverAt);
        typed.refuseIfWrong();
        return new ReadingDraft(
                unit.id(),
                MeterKind.named(kind),
                when == null ? now : when,
                shown,
                Boolean.TRUE.equals(rolledOver),
                highest,
                Typed.text(note));
    }
}
