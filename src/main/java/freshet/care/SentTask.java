package freshet.care;

import freshet.checklists.Checklist;
import freshet.people.Person;
import freshet.people.SentForm;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Reads the fields of a task's page when they come from elsewhere than the page. */
public final class SentTask {

    private final TaskForm form;

    public SentTask(Map<String, String> fields) {
        this.form = SentForm.of(fields, TaskForm.class);
    }

    /** The version of the checklist that the page showed. */
    public Optional<Long> checklistVersion() {
        return form.shown();
    }

    /** One for each line of the checklist, empty where nothing was typed. */
    public List<Answer> answers(Checklist checklist) {
        return form.answers(checklist);
    }

    public TaskNotes notes() {
        return form.notes();
    }

    /**
     * To sign what was typed; the times that were not typed are those given.
     *
     * @throws freshet.people.Refused when a time cannot be read
     */
    public SignOff signOff(Checklist checklist, Person by, ZoneId zone, @Nullable Instant begunAt, Instant doneAt) {
        SignOff typed = form.signOff(checklist, by, zone);
        Instant ended = typed.endedAt() == null ? doneAt : typed.endedAt();
        Instant begun = begunAt == null || begunAt.isAfter(ended) ? ended : begunAt;
        return new SignOff(
                typed.version(),
                typed.answers(),
                typed.startedAt() == null ? begun : typed.startedAt(),
                ended,
                typed.note(),
                typed.instrument());
    }
}
