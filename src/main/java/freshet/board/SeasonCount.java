package freshet.board;

import freshet.checklists.Phase;
import freshet.places.Span;

/** How far the work of one turn of a season window is: tasks signed, tasks left, and the minutes left. */
public record SeasonCount(long siteId, String siteName, Span span, Phase phase, int done, int left, int minutesLeft) {

    public int all() {
        return done + left;
    }
}
