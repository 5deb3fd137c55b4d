package freshet.hire;

import freshet.people.Person;
import freshet.people.Typed;
import freshet.pumps.Unit;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What was typed about a unit that goes out; {@code outAt} is by the clock of its site, empty for now. */
record IssueForm(
        @Nullable String hirer,
        @Nullable String phone,
        @Nullable String outAt,
        @Nullable String dueBackOn,
        @Nullable String hours,
        @Nullable String fuel,
        @Nullable String condition,
        @Nullable String takenBy,
        @Nullable Boolean limitsRead,
        @Nullable List<String> told,
        @Nullable List<String> kit) {

    static final IssueForm BLANK = new IssueForm(null, null, null, null, null, null, null, null, null, null, null);

    /** The same for another pump in the place of one that is out: who has it and until when stay. */
    static IssueForm inPlaceOf(Hire hire, LocalDate today) {
        LocalDate due = hire.dueBackOn().isBefore(today) ? today : hire.dueBackOn();
        return new IssueForm(
                hire.hirer(), hire.phone(), null, due.toString(), null, null, null, hire.takenBy(), null, null, null);
    }

    public boolean said(Caution caution) {
        return told != null && told.contains(caution.name());
    }

    public boolean takes(int ordinal) {
        return kit != null && kit.contains(String.valueOf(ordinal));
    }

    IssueDraft draft(Unit unit, String at, Person me, Instant now) {
        Typed typed = new Typed(me);
        Instant when = typed.moment(at + "outAt", outAt, unit.stand().zone());
        LocalDate due = typed.required(at + "dueBackOn", typed.day(at + "dueBackOn", dueBackOn), "hire.due.missing");
        BigDecimal shown = typed.exact(at + "hours", hours);
        Integer percent = percent(at + "fuel", fuel, typed);
        typed.refuseIfWrong();
        Set<Caution> cautions = Stream.of(Caution.values()).filter(this::said).collect(Collectors.toSet());
        Set<Integer> pieces = (kit == null ? List.<String>of() : kit)
                .stream()
                        .filter(piece -> piece.matches("\\d{1,4}"))
                        .map(Integer::valueOf)
                        .collect(Collectors.toSet());
        return new IssueDraft(
                unit.id(),
                Typed.textOrEmpty(hirer),
                Typed.text(phone),
                when == null ? now : when,
                due,
                shown,
                percent,
                Typed.text(condition),
                Typed.textOrEmpty(takenBy),
                Boolean.TRUE.equals(limitsRead),
                cautions,
                pieces);
    }

    /** Whole percent; null when nothing was typed. */
    static @Nullable Integer percent(String field, @Nullable String text, Typed typed) {
        String bare = text == null ? null : text.replace("%", "");
        Double number = typed.number(field, bare);
        if (number == null) {
            return null;
        }
        if (number != Math.rint(number) || number < 0 || number > 100) {
            typed.wrong(field, "hire.fuel.range");
            return null;
        }
        return number.intValue();
    }
}
