package freshet.care;

import freshet.checklists.CheckLine;
import freshet.checklists.Checklist;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What was typed on one version of a checklist, on the lines of another: a line is the same through all versions. {@code without} are
 * the typed lines that the other version does not have.
 */
record OtherVersion(Map<String, LineForm> lines, List<Typed> without) {

    /** A line that has no place in the other version, with what was typed at it. */
    record Typed(CheckLine check, LineForm typed) {}

    static OtherVersion of(Map<String, LineForm> typed, Checklist from, Checklist to) {
        Map<Long, CheckLine> there = to.lines().stream()
                .collect(Collectors.toMap(CheckLine::origin, Function.identity(), (one, other) -> one));
        Map<String, LineForm> lines = new LinkedHashMap<>();
        List<Typed> without = new ArrayList<>();
        for (CheckLine check : from.lines()) {
            LineForm form = typed.getOrDefault(LineForm.key(check.id()), LineForm.BLANK);
            CheckLine same = there.get(check.origin());
            if (same != null) {
                lines.put(LineForm.key(same.id()), form);
            } else if (!form.typed(check.id()).empty()) {
                without.add(new Typed(check, form));
            }
        }
        return new OtherVersion(LineForm.complete(to, lines), without);
    }
}
