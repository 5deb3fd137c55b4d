package freshet.care;

import freshet.checklists.Checklist;
import freshet.checklists.LimitWords;
import freshet.checklists.Verdict;
import freshet.findings.Finding;
import freshet.people.Competence;
import freshet.people.People;
import freshet.people.Person;
import freshet.pumps.Unit;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;

/** Lays out the lines of a checklist for a page, with who may answer what, and what follows as it stands. */
@Component
class TaskPages {

    private final Care care;
    private final People people;
    private final MessageSource messages;

    TaskPages(Care care, People people, MessageSource messages) {
        this.care = care;
        this.people = people;
        this.messages = messages;
    }

    /** What the sign bar says. */
    record Standing(int answered, int asked, int findings, boolean stopsUse, boolean leavesElectrical) {}

    void lines(
            Model model,
            Checklist checklist,
            Unit unit,
            Map<String, LineForm> forms,
            Map<Long, SavedAnswer> saved,
            Person me) {
        List<LineRow> rows = LineRow.rows(
                checklist.lines(),
                forms,
                saved,
                new LineRow.Reader(me, unit.model().ratings(), competent(), LimitWords.of(messages, me)));
        model.addAttribute("pump", unit);
        model.addAttribute("checklist", checklist);
        model.addAttribute("rows", rows);
        model.addAttribute("instruments", care.instruments(unit.id(), me));
        model.addAttribute("standing", standing(rows));
    }

    private Map<Competence, List<String>> competent() {
        Map<Competence, List<String>> competent = new EnumMap<>(Competence.class);
        for (Competence competence : Competence.values()) {
            competent.put(
                    competence,
                    people.everyone().stream()
                            .filter(person -> person.active() && person.competentFor(competence))
                            .map(Person::fullName)
                            .toList());
        }
        return competent;
    }

    private static Standing standing(List<LineRow> rows) {
        int answered = (int) rows.stream().filter(LineRow::answered).count();
        List<LineRow> failed = rows.stream()
                .filter(row -> row.verdict() == Verdict.FAIL && !row.check().safety())
                .toList();
        boolean stops = failed.stream()
                .map(row -> row.check().failSeverity())
                .anyMatch(severity -> severity != null && severity >= Finding.STOPS_USE);
        return new Standing(
                answered, rows.size(), failed.size(), stops, rows.stream().anyMatch(LineRow::locked));
    }
}
