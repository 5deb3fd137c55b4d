package freshet.rounds;

import freshet.people.Typed;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What was typed about a round, with the tasks and pumps that were chosen for it. */
record RoundForm(
        @Nullable String name,
        @Nullable String day,
        @Nullable String person,
        @Nullable List<String> chosen,
        @Nullable List<String> units,
        @Nullable Integer version) {

    static RoundForm of(Round round) {
        String person = round.personId() == null ? null : round.personId().toString();
        return new RoundForm(round.name(), round.day().toString(), person, null, null, round.version());
    }

    /** The round that was typed; refused where it is none. */
    RoundDraft draft(freshet.people.Person me) {
        Typed typed = new Typed(me);
        RoundDraft draft = RoundDraft.of(Typed.textOrEmpty(name), typed.day("day", day), personId())
                .with(Chosen.read(chosen))
                .looking(unitIds());
        typed.refuseIfWrong();
        return draft;
    }

    /** Somebody who is not there is refused by the door. */
    private @Nullable Long personId() {
        String text = Typed.text(person);
        return text == null ? null : Long.valueOf(text.matches("\\d{1,15}") ? text : "-1");
    }

    public List<Long> unitIds() {
        List<Long> ids = new ArrayList<>();
        for (String each : units == null ? List.<String>of() : units) {
            if (each != null && each.matches("\\d{1,15}")) {
                ids.add(Long.valueOf(each));
            }
        }
        return ids.stream().distinct().toList();
    }
}
