package freshet.exchange;

import java.util.List;

/** Files that were looked through and wait for a word, and what was shown of them; kept with the sign-in, not beyond. */
record Waiting(List<NamedFile> files, Preview shown) {

    /** Under this name in the session. */
    static final String KEY = "freshet.exchange.waiting";
}
