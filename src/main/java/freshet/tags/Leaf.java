package freshet.tags;

import java.util.ArrayList;
import java.util.List;

/** One page of paper: so many places left empty because they are used up, then its labels. */
record Leaf(int empty, List<Label> labels) {

    /** Lays labels out on sheets, the first at a place counted from 1. */
    static List<Leaf> lay(List<Label> labels, int start, int places) {
        List<Leaf> leaves = new ArrayList<>();
        int empty = start - 1;
        int from = 0;
        while (from < labels.size()) {
            int to = Math.min(labels.size(), from + places - empty);
            leaves.add(new Leaf(empty, labels.subList(from, to)));
            from = to;
            empty = 0;
        }
        return leaves;
    }
}
