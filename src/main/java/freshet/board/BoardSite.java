package freshet.board;

import java.util.List;

/** What is late or soon due at one site: how many, how many minutes, and the first lines, latest first. */
public record BoardSite(long siteId, String siteName, int late, int soon, int minutes, List<BoardLine> lines) {

    /** How many are on the board but not among the lines. */
    public int more() {
        return late + soon - lines.size();
    }
}
