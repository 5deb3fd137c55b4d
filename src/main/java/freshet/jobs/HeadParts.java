package freshet.jobs;

import freshet.hydraulics.LineLoss;
import freshet.readings.Part;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Where the head goes on the way: into the lift, each piece, what no piece explains, and out of the end. */
final class HeadParts {

    private static final String[] FILLS = {"open", "close", "law"};

    private HeadParts() {}

    /** @param hiddenM what a gauge shows beyond all of these; null without one */
    static List<Part> of(JobLine line, LineLoss losses, @Nullable Double hiddenM, Words words) {
        List<String> names = new ArrayList<>(List.of(words.say("jobs.part.lift")));
        List<String> fills = new ArrayList<>(List.of("run"));
        List<Double> heads = new ArrayList<>(List.of(losses.liftM()));
        List<Double> each = line.losses(losses);
        for (int i = 0; i < each.size(); i++) {
            names.add(words.piece(line.pieces().get(i)));
            fills.add(FILLS[i % FILLS.length]);
            heads.add(each.get(i));
        }
        names.add(words.say("jobs.part.exit"));
        fills.add("f-ink");
        heads.add(losses.exitM());
        if (hiddenM != null) {
            names.add(words.say("jobs.part.hidden"));
            fills.add("f-sheet");
            heads.add(hiddenM);
        }
        return Part.bar(
                names.toArray(String[]::new),
                fills.toArray(String[]::new),
                heads.stream().mapToDouble(Double::doubleValue).toArray());
    }
}
