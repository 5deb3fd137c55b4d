package freshet.findings;

import freshet.people.SentForm;
import java.util.Map;

/** Reads the fields of the page on which a finding is written when they come from elsewhere than the page. */
public final class SentFindings {

    private SentFindings() {}

    public static FindingDraft finding(Map<String, String> fields, long unitId) {
        return SentForm.of(fields, FindingForm.class).draft(unitId);
    }
}
