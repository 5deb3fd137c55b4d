package freshet.care;

import freshet.checklists.CheckLine;
import freshet.checklists.Checklist;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** One line as somebody typed it, beside how another signed it; one of the two is null where only the other's version has the line. */
record BesideRow(
        String question, @Nullable LineForm typed, @Nullable RecordLine signed) {

    /** Every line of both versions, those of the record first. */
    static List<BesideRow> rows(
            ServiceRecord record, Checklist ofRecord, Map<String, LineForm> typed, Checklist ofForm) {
        Map<Long, CheckLine> byOrigin = new HashMap<>();
        ofForm.lines().forEach(check -> byOrigin.put(check.origin(), check));
        Set<Long> shown = new HashSet<>();
        List<BesideRow> rows = new ArrayList<>();
        for (RecordLine line : record.lines()) {
            CheckLine check = line.checkLineId() == null ? null : ofRecord.line(line.checkLineId());
            CheckLine mine = check == null ? null : byOrigin.get(check.origin());
            if (mine != null) {
                shown.add(mine.id());
            }
            rows.add(new BesideRow(line.question(), mine == null ? null : typed.get(LineForm.key(mine.id())), line));
        }
        for (CheckLine check : ofForm.lines()) {
            LineForm form = typed.getOrDefault(LineForm.key(check.id()), LineForm.BLANK);
            if (!shown.contains(check.id()) && !form.typed(check.id()).empty()) {
                rows.add(new BesideRow(check.question(), form, null));
            }
        }
        return rows;
    }
}
