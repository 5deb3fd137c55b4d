package freshet.checklists;

import freshet.pumps.Ratings;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** A change as a page tells it to a reader, with every part of a line that differs. */
record ChangeRow(Change.Kind kind, String words, List<Part> parts) {

    /** One part before and after; {@code coded} when the two are message keys, else they are shown as they are. */
    record Part(
            String code, @Nullable String before, @Nullable String after, boolean coded) {}

    static List<ChangeRow> rows(Checklist before, Checklist after, LimitWords words) {
        return Change.between(before, after).stream()
                .map(change -> new ChangeRow(change.kind(), change.words(), parts(change, words)))
                .toList();
    }

    private static List<Part> parts(Change change, LimitWords words) {
        CheckLine was = change.was();
        CheckLine is = change.is();
        if (was == null || is == null) {
            return List.of();
        }
        List<Part> parts = new ArrayList<>();
        text(parts, "question", was.question(), is.question());
        text(parts, "hint", was.hint(), is.hint());
        text(parts, "caution", was.caution(), is.caution());
        text(parts, "limits", limits(was, words), limits(is, words));
        text(parts, "choices", choices(was), choices(is));
        text(parts, "severity", number(was.failSeverity()), number(is.failSeverity()));
        coded(parts, "required", yesOrNo(was.required()), yesOrNo(is.required()));
        coded(parts, "mayNotApply", yesOrNo(was.mayNotApply()), yesOrNo(is.mayNotApply()));
        coded(parts, "asLeft", yesOrNo(was.asLeft()), yesOrNo(is.asLeft()));
        coded(parts, "asksInstrument", yesOrNo(was.asksInstrument()), yesOrNo(is.asksInstrument()));
        coded(parts, "competence", needs(was), needs(is));
        text(parts, "source", was.source(), is.source());
        return parts;
    }

    private static void text(List<Part> parts, String code, @Nullable String before, @Nullable String after) {
        if (!Objects.equals(before, after)) {
            parts.add(new Part(code, before, after, false));
        }
    }

    private static void coded(List<Part> parts, String code, String before, String after) {
        if (!before.equals(after)) {
            parts.add(new Part(code, before, after, true));
        }
    }

    /** The limits with their unit; of the plate's figure, in percent. */
    private static @Nullable String limits(CheckLine line, LimitWords words) {
        if (line.ratedBy() == null) {
            String said = line.limitsInWords(Ratings.NONE, words);
            return said == null ? line.unitFor(words.system()) : said;
        }
        Limits limits = line.limits();
        return java.util.stream.Stream.of(limits.watchLow(), limits.passLow(), limits.passHigh(), limits.watchHigh())
                .map(limit -> limit == null ? "–" : LimitText.percent(limit) + " %")
                .collect(Collectors.joining(" | "));
    }

    private static @Nullable String choices(CheckLine line) {
        return line.choices().isEmpty()
                ? null
                : line.choices().stream().map(Choice::words).collect(Collectors.joining(", "))
                        + line.choices().stream()
                                .map(choice -> choice.verdict().name().substring(0, 1))
                                .collect(Collectors.joining("", " (", ")"));
    }

    private static @Nullable String number(@Nullable Integer severity) {
        return severity == null ? null : severity.toString();
    }

    private static String yesOrNo(boolean flag) {
        return flag ? "checklists.yes" : "checklists.no";
    }

    private static String needs(CheckLine line) {
        return line.competence() == null ? "checklists.needs.nobody" : "checklists.needs." + line.competence();
    }
}
