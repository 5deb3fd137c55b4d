package freshet.exchange;

import java.util.List;

/** A file taken apart: its heading and its lines, blank ones left out. */
record Table(String file, Line heading, List<Line> lines) {

    /** The cells of a row and the line of the file where it begins. */
    record Line(int number, List<String> cells) {

        /** A cell, or nothing beyond the last. */
        String cell(int at) {
            return at < cells.size() ? cells.get(at) : "";
        }

        boolean blank() {
            return cells.stream().allMatch(String::isBlank);
        }
    }
}
