package freshet.checklists;

import freshet.people.Competence;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/** Drafts such as an owner, or somebody who means harm, might send: allowed ones and others. */
final class RandomEdits {

    private final Random random;

    RandomEdits(Random random) {
        this.random = random;
    }

    ChecklistDraft of(Checklist stands) {
        List<LineDraft> lines = new ArrayList<>(ChecklistDraft.of(stands).lines());
        int minutes = stands.minutes();
        for (int i = 0; i <= random.nextInt(2) && !lines.isEmpty(); i++) {
            int at = random.nextInt(lines.size());
            int other = random.nextInt(lines.size());
            switch (random.nextInt(8)) {
                case 0 -> Collections.swap(lines, at, other);
                case 1 -> Collections.swap(lines, at, Math.min(at + 1, lines.size() - 1));
                case 2 -> lines.remove(at);
                case 3 ->
                    lines.add(
                            at + 1,
                            own(lines.get(random.nextBoolean() ? at : other).section()));
                case 4 -> minutes = random.nextInt(500);
                default -> lines.set(at, changed(lines.get(at)));
            }
        }
        return new ChecklistDraft(minutes, "seed says so", lines);
    }

    private LineDraft own(String section) {
        return VersionTests.own(section, "Own line " + random.nextInt(10_000));
    }

    private LineDraft changed(LineDraft line) {
        return new LineDraft(
                line.origin(),
                line.section(),
                pick(line.question(), line.question() + " " + random.nextInt(100), " "),
                pick(line.hint(), null, "Look twice."),
                pick(line.caution(), "Mind your fingers.\nAnd your toes.", null),
                pick(line.kind(), line.kind(), AnswerKind.values()[random.nextInt(4)]),
                pick(line.unit(), line.unit(), "ppm"),
                pick(line.passLow(), scaled(line.passLow()), null),
                pick(line.passHigh(), scaled(line.passHigh()), null),
                pick(line.watchLow(), scaled(line.watchLow()), null),
                pick(line.watchHigh(), scaled(line.watchHigh()), 1e6),
                pick(line.choices(), line.choices(), List.of(new Choice(Verdict.PASS, "Fine"))),
                pick(line.failSeverity(), Integer.valueOf(random.nextInt(6)), null),
                pick(line.required(), line.required(), random.nextBoolean()),
                pick(line.mayNotApply(), line.mayNotApply(), random.nextBoolean()),
                random.nextBoolean(),
                random.nextBoolean(),
                pick(line.competence(), line.competence(), random.nextBoolean() ? null : Competence.GAS),
                pick(line.source(), "our own practice", line.source()));
    }

    private @Nullable Double scaled(@Nullable Double limit) {
        return limit == null ? null : limit * (0.8 + 0.4 * random.nextDouble());
    }

    /** Mostly the first. */
    private <T extends @Nullable Object> T pick(T usual, T other, T odd) {
        int die = random.nextInt(12);
        return die < 9 ? usual : die < 11 ? other : odd;
    }
}
