package freshet.database;

import org.jspecify.annotations.Nullable;

/** Says in one sentence, fit to be shown as it stands, why Freshet does not start. */
public class StartRefused extends RuntimeException {

    StartRefused(String sentence) {
        super(sentence);
    }

    StartRefused(String sentence, @Nullable Throwable cause) {
        super(sentence, cause);
    }

    /** The sentence for a web port that something else listens on. */
    public static String portTaken(int port) {
        return "Freshet cannot listen on port " + port
                + ": stop the program that uses it, or choose another port with --server.port=PORT.";
    }
}
