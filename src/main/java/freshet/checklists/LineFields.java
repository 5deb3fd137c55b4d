package freshet.checklists;

import freshet.measures.UnitSystem;
import freshet.people.Competence;
import freshet.people.Refused.Wrong;
import freshet.people.Typed;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What was typed about one line of a checklist; {@code origin} names the line that it is, none for a new one. */
record LineFields(
        @Nullable String origin,
        @Nullable String section,
        @Nullable String kind,
        @Nullable String question,
        @Nullable String hint,
        @Nullable String caution,
        @Nullable String unit,
        @Nullable String passLow,
        @Nullable String passHigh,
        @Nullable String watchLow,
        @Nullable String watchHigh,
        @Nullable List<ChoiceFields> choices,
        @Nullable String failSeverity,
        @Nullable String required,
        @Nullable String mayNotApply,
        @Nullable String asLeft,
        @Nullable String asksInstrument,
        @Nullable String competence,
        @Nullable String source) {

    private static final int ROWS_MORE = 2;

    /** One answer to choose from, and what it means. */
    record ChoiceFields(@Nullable String verdict, @Nullable String words) {

        boolean blank() {
            return Typed.text(words) == null;
        }
    }

    static LineFields of(CheckLine line, UnitSystem system) {
        Limits limits = line.limits();
        return new LineFields(
                        String.valueOf(line.origin()),
                        line.section(),
                        line.kind().name(),
                        line.question(),
                        line.hint(),
                        line.caution(),
                        line.unit(),
                        limit(line, limits.passLow(), system),
                        limit(line, limits.passHigh(), system),
                        limit(line, limits.watchLow(), system),
                        limit(line, limits.watchHigh(), system),
                        line.choices().stream()
                                .map(choice -> new ChoiceFields(choice.verdict().name(), choice.words()))
                                .toList(),
                        line.failSeverity() == null ? null : line.failSeverity().toString(),
                        tick(line.required()),
                        tick(line.mayNotApply()),
                        tick(line.asLeft()),
                        tick(line.asksInstrument()),
                        line.competence() == null ? null : line.competence().name(),
                        line.source())
                .padded();
    }

    private static @Nullable String limit(CheckLine line, @Nullable Double limit, UnitSystem system) {
        return LimitText.of(limit, line.unit(), line.ratedBy(), system);
    }

    private static @Nullable String tick(boolean ticked) {
        return ticked ? "true" : null;
    }

    /** A new line of a kind, with nothing typed but what most lines are. */
    static LineFields blank(String section, AnswerKind kind) {
        return new LineFields(
                        null,
                        section,
                        kind.name(),
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        "true",
                        null,
                        null,
                        null,
                        null,
                        null)
                .padded();
    }

    /** The same line for a version that does not have it any more: as a new one. */
    LineFields asNew(CheckLine was) {
        return with(null, was.section(), was.kind().name());
    }

    private LineFields with(@Nullable String itsOrigin, @Nullable String itsSection, @Nullable String itsKind) {
        return new LineFields(
                itsOrigin,
                itsSection,
                itsKind,
                question,
                hint,
                caution,
                unit,
                passLow,
                passHigh,
                watchLow,
                watchHigh,
                choices,
                failSeverity,
                required,
                mayNotApply,
                asLeft,
                asksInstrument,
                competence,
                source);
    }

    /** With what the line that it is says of itself whatever a browser sent, and rows enough for more choices. */
    LineFields complete(@Nullable CheckLine was) {
        LineFields its = was == null
                ? with(null, Typed.textOrEmpty(section), answerKind().name())
                : with(String.valueOf(was.origin()), was.section(), was.kind().name());
        return its.padded();
    }

    private LineFields padded() {
        List<ChoiceFields> rows = new ArrayList<>();
        if (answerKind() == AnswerKind.CHOICE) {
            rows.addAll(typedChoices());
            int most = LineChecks.MOST_CHOICES + ROWS_MORE;
            while (rows.size() > most) {
                rows.remove(rows.size() - 1);
            }
            int wanted = Math.min(LineChecks.MOST_CHOICES, Math.max(3, rows.size() + ROWS_MORE));
            while (rows.size() < wanted) {
                rows.add(new ChoiceFields(rows.isEmpty() ? Verdict.PASS.name() : null, null));
            }
        }
        return new LineFields(
                origin,
                section,
                kind,
                question,
                hint,
                caution,
                unit,
                passLow,
                passHigh,
                watchLow,
                watchHigh,
                rows,
                failSeverity,
                required,
                mayNotApply,
                asLeft,
                asksInstrument,
                competence,
                source);
    }

    private List<ChoiceFields> typedChoices() {
        return choices == null
                ? List.of()
                : choices.stream()
                        .filter(choice -> choice != null && !choice.blank())
                        .collect(Collectors.toList());
    }

    /** Every field by its name. */
    void each(BiConsumer<String, @Nullable String> field) {
        field.accept("origin", origin);
        if (origin == null) {
            field.accept("section", section);
            field.accept("kind", kind);
        }
        field.accept("question", question);
        field.accept("hint", hint);
        field.accept("caution", caution);
        field.accept("unit", unit);
        field.accept("passLow", passLow);
        field.accept("passHigh", passHigh);
        field.accept("watchLow", watchLow);
        field.accept("watchHigh", watchHigh);
        List<ChoiceFields> rows = typedChoices();
        for (int i = 0; i < rows.size(); i++) {
            field.accept("choices[" + i + "].verdict", rows.get(i).verdict());
            field.accept("choices[" + i + "].words", rows.get(i).words());
        }
        field.accept("failSeverity", failSeverity);
        field.accept("required", required);
        field.accept("mayNotApply", mayNotApply);
        field.accept("asLeft", asLeft);
        field.accept("asksInstrument", asksInstrument);
        field.accept("competence", competence);
        field.accept("source", source);
    }

    @Nullable
    Long originId() {
        return origin != null && origin.matches("\\d{1,18}") ? Long.valueOf(origin) : null;
    }

    AnswerKind answerKind() {
        return Arrays.stream(AnswerKind.values())
                .filter(each -> each.name().equals(kind))
                .findFirst()
                .orElse(AnswerKind.TEXT);
    }

    boolean ticked(@Nullable String field) {
        return "true".equals(field);
    }

    /** The line as its draft, with what cannot be read put among the wrongs at its field. */
    LineDraft draft(@Nullable CheckLine was, UnitSystem system, String path, List<Wrong> wrongs) {
        Limits stands = was == null ? Limits.NONE : was.limits();
        String itsUnit = Typed.text(unit) == null && was != null ? was.unit() : Typed.text(unit);
        boolean sameUnit = was != null && String.valueOf(was.unit()).equals(String.valueOf(itsUnit));
        LimitReader reader = new LimitReader(itsUnit, was == null ? null : was.ratedBy(), system, path, wrongs);
        return new LineDraft(
                was == null ? null : was.origin(),
                Typed.textOrEmpty(section),
                Typed.textOrEmpty(question),
                lines(hint),
                lines(caution),
                answerKind(),
                itsUnit,
                reader.read("passLow", passLow, sameUnit ? stands.passLow() : null),
                reader.read("passHigh", passHigh, sameUnit ? stands.passHigh() : null),
                reader.read("watchLow", watchLow, sameUnit ? stands.watchLow() : null),
                reader.read("watchHigh", watchHigh, sameUnit ? stands.watchHigh() : null),
                typedChoices().stream()
                        .map(choice -> new Choice(verdict(choice), Typed.textOrEmpty(choice.words())))
                        .toList(),
                severity(was),
                was != null && was.safety() || ticked(required),
                (was == null || !was.safety()) && ticked(mayNotApply),
                ticked(asLeft),
                (was == null || !was.safety()) && ticked(asksInstrument),
                Arrays.stream(Competence.values())
                        .filter(each -> each.name().equals(competence))
                        .findFirst()
                        .orElse(null),
                Typed.text(source));
    }

    private @Nullable Integer severity(@Nullable CheckLine was) {
        if (was != null && was.safety()) {
            return was.failSeverity();
        }
        return failSeverity != null && failSeverity.matches("[0-4]") ? Integer.valueOf(failSeverity) : null;
    }

    private static Verdict verdict(ChoiceFields choice) {
        return Arrays.stream(Verdict.values())
                .filter(each -> each.name().equals(choice.verdict()))
                .findFirst()
                .orElse(Verdict.PASS);
    }

    /** Browsers end the lines of a text in their own way. */
    private static @Nullable String lines(@Nullable String typed) {
        String text = Typed.text(typed);
        return text == null ? null : text.replace("\r\n", "\n");
    }

    private record LimitReader(
            @Nullable String unit, @Nullable RatedBy ratedBy, UnitSystem system, String path, List<Wrong> wrongs) {

        @Nullable
        Double read(String part, @Nullable String typed, @Nullable Double stands) {
            String text = Typed.text(typed);
            try {
                return text == null ? null : LimitText.read(text, unit, ratedBy, system, stands);
            } catch (NotAnAnswer wrong) {
                wrongs.add(Wrong.at(path + part, wrong.code(), wrong.arguments()));
                return null;
            }
        }
    }
}
