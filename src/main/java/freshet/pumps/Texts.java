package freshet.pumps;

import static freshet.people.Refused.Wrong.at;

import freshet.people.Refused;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** How long the texts of this room may be. */
final class Texts {

    static final int NAME = 100;
    static final int LINE = 200;
    static final int NOTE = 2000;

    private Texts() {}

    static void name(String field, String name, List<Refused.Wrong> wrongs) {
        if (name.isBlank()) {
            wrongs.add(at(field, "pumps.missing"));
        }
        length(field, name, NAME, wrongs);
    }

    static void length(String field, @Nullable String text, int longest, List<Refused.Wrong> wrongs) {
        if (text != null && text.length() > longest) {
            wrongs.add(at(field, "pumps.tooLong", longest));
        }
    }
}
