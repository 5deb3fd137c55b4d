package freshet.hire;

import freshet.people.Refused.Wrong;
import freshet.pumps.Unit;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What is wrong with what was typed at the hire desk, each at its field. */
final class HireChecks {

    private static final int NAME = 100;
    private static final int PHONE = 40;
    private static final int WORDS = 500;
    /** A longer hire is a mistyped year. */
    private static final int LONGEST_DAYS = 731;

    private final List<Wrong> wrongs = new ArrayList<>();

    List<Wrong> wrongs() {
        return wrongs;
    }

    private void wrong(String field, String code, Object... arguments) {
        wrongs.add(Wrong.at(field, code, arguments));
    }

    void issue(IssueDraft draft, IssueCheck check, @Nullable Instant lastBack, Instant now) {
        Unit unit = check.unit();
        wrongs.addAll(check.refusals());
        named("hirer", draft.hirer());
        named("takenBy", draft.takenBy());
        length("phone", draft.phone(), PHONE);
        length("condition", draft.condition(), WORDS);
        percent("fuel", draft.fuel());
        if (draft.outAt().isAfter(now)) {
            wrong("outAt", "hire.at.future");
        } else if (lastBack != null && draft.outAt().isBefore(lastBack)) {
            wrong("outAt", "hire.outAt.beforeBack");
        } else if (draft.outAt().isBefore(unit.stand().since())) {
            wrong("outAt", "hire.outAt.beforeStand");
        }
        days(draft.dueBackOn(), LocalDate.ofInstant(draft.outAt(), unit.stand().zone()));
        if (check.limited() && !draft.limitsRead()) {
            wrong("limitsRead", "hire.limitsRead.missing");
        }
        if (!draft.told().containsAll(Caution.of(unit))) {
            wrong("told", "hire.told.missing");
        }
    }

    void days(LocalDate dueBackOn, LocalDate outOn) {
        if (dueBackOn.isBefore(outOn)) {
            wrong("dueBackOn", "hire.due.beforeOut");
        } else if (dueBackOn.isAfter(outOn.plusDays(LONGEST_DAYS))) {
            wrong("dueBackOn", "hire.due.far");
        }
    }

    void back(ReturnDraft draft, Hire hire, Instant now) {
        if (draft.inAt().isAfter(now)) {
            wrong("inAt", "hire.at.future");
        } else if (draft.inAt().isBefore(hire.outAt())) {
            wrong("inAt", "hire.inAt.beforeOut");
        }
        length("condition", draft.condition(), WORDS);
        length("cord", draft.cord(), WORDS);
        percent("fuel", draft.fuel());
        for (Piece piece : hire.kit()) {
            int back = draft.kit().getOrDefault(piece.ordinal(), piece.quantityOut());
            if (back < 0 || back > piece.quantityOut()) {
                wrong("kit[" + piece.ordinal() + "]", "hire.kit.count", piece.quantityOut());
            }
        }
    }

    private void named(String field, String text) {
        if (text.isBlank()) {
            wrong(field, "hire." + field + ".missing");
        } else {
            length(field, text, NAME);
        }
    }

    void length(String field, @Nullable String text, int most) {
        if (text != null && text.length() > most) {
            wrong(field, "hire.long", most);
        }
    }

    private void percent(String field, @Nullable Integer percent) {
        if (percent != null && (percent < 0 || percent > 100)) {
            wrong(field, "hire.fuel.range");
        }
    }
}
