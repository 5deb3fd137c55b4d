package freshet.readings;

import freshet.people.Person;
import freshet.people.SentForm;
import freshet.pumps.Unit;
import java.time.Instant;
import java.util.Map;

/** Reads the fields of the pages of this room when they come from elsewhere than the page. */
public final class SentReadings {

    private SentReadings() {}

    /** @throws freshet.people.Refused when anything cannot be read */
    public static ReadingDraft reading(Map<String, String> fields, Unit unit, Person by, Instant doneAt) {
        return SentForm.of(fields, ReadingForm.class).draft(unit, by, doneAt);
    }

    /** @throws freshet.people.Refused when anything cannot be read */
    public static FlowTestDraft flowTest(Map<String, String> fields, Unit unit, Person by, Instant doneAt) {
        return SentForm.of(fields, FlowTestForm.class).draft(unit, by, doneAt);
    }
}
