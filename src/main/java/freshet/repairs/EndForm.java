package freshet.repairs;

import freshet.people.Person;
import freshet.people.Typed;
import org.jspecify.annotations.Nullable;

/** What was typed to end a repair: as done, or as given up. */
record EndForm(
        @Nullable String asFound,
        @Nullable String asLeft,
        @Nullable String doneOn,
        @Nullable String why,
        @Nullable String version) {

    static EndForm of(Repair repair) {
        return new EndForm(null, null, null, null, String.valueOf(repair.version()));
    }

    int opened() {
        return Digits.version(version);
    }

    RepairDone done(Person me) {
        Typed typed = new Typed(me);
        RepairDone done = new RepairDone(Typed.text(asFound), Typed.text(asLeft), typed.day("doneOn", doneOn));
        typed.refuseIfWrong();
        return done;
    }
}
