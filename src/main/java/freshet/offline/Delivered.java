package freshet.offline;

import freshet.people.Refused.Wrong;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What became of an entry; {@code link} leads to what was made of it. A refused one is kept nowhere but on the phone. */
public record Delivered(Outcome outcome, @Nullable String link, List<Wrong> wrongs) {

    /** Taken in, to be put right, or at odds with what happened meanwhile. */
    public enum Outcome {
        DONE,
        REFUSED,
        CONFLICT
    }

    static Delivered done(String link) {
        return new Delivered(Outcome.DONE, link, List.of());
    }

    static Delivered refused(List<Wrong> wrongs) {
        return new Delivered(Outcome.REFUSED, null, wrongs);
    }

    static Delivered conflict(long id) {
        return new Delivered(Outcome.CONFLICT, "/offline/conflicts/" + id, List.of());
    }
}
