package freshet.findings;

import freshet.people.Person;
import freshet.people.Typed;
import org.jspecify.annotations.Nullable;

/** What was typed to put the work for a finding off. */
record WaiverForm(
        @Nullable String why,
        @Nullable String decidedBy,
        @Nullable String until,
        @Nullable String version) {

    static WaiverForm of(Finding finding) {
        return new WaiverForm(null, null, null, String.valueOf(finding.version()));
    }

    WaiverDraft draft(Person me) {
        Typed typed = new Typed(me);
        WaiverDraft draft = new WaiverDraft(Typed.text(why), Typed.text(decidedBy), typed.day("until", until));
        typed.refuseIfWrong();
        return draft;
    }
}
