package freshet.fleet;

import java.util.Locale;

/** How ready a unit is, worst first: untested, stale or unknown is never ready. */
public enum Word {
    NOT_READY("no"),
    UNKNOWN("unknown"),
    LIMITS("limits"),
    READY("ready");

    private final String mark;

    Word(String mark) {
        this.mark = mark;
    }

    /** The mark that stands beside the word on a page, {@code #m-...}. */
    public String mark() {
        return "m-" + mark;
    }

    /** The key of its message. */
    public String code() {
        return "fleet.word." + name().toLowerCase(Locale.ROOT);
    }

    boolean worseThan(Word other) {
        return ordinal() < other.ordinal();
    }
}
