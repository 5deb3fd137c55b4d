package freshet.checklists;

import freshet.people.Competence;
import freshet.pumps.PumpKind;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.springframework.core.io.ClassPathResource;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.PropertyNamingStrategies;
import tools.jackson.databind.json.JsonMapper;

/** The checklists that a new install begins with, as their files give them; each file is read after the lines that they share. */
record DefaultChecklists(List<Draft> checklists) {

    private static final List<String> FILES = List.of(
            "any-kind",
            "utility-submersible",
            "sump-with-float",
            "sewage",
            "engine-trash",
            "battery-backup",
            "circulator",
            "services");

    private static final JsonMapper MAPPER = JsonMapper.builder()
            .propertyNamingStrategy(PropertyNamingStrategies.KEBAB_CASE)
            .disable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    record Draft(
            String code,
            String name,
            @Nullable PumpKind pumpKind,
            Phase phase,
            Effect effect,
            int minutes,
            List<Line> lines) {

        List<CheckLine> checkLines() {
            return IntStream.range(0, lines.size())
                    .mapToObj(i -> lines.get(i).checkLine(i + 1))
                    .toList();
        }
    }

    record Line(
            String section,
            String question,
            @Nullable String hint,
            @Nullable String caution,
            AnswerKind kind,
            @Nullable String unit,
            @Nullable Double passLow,
            @Nullable Double passHigh,
            @Nullable Double watchLow,
            @Nullable Double watchHigh,
            @Nullable RatedBy ratedBy,
            @Nullable List<String> choices,
            @Nullable Integer failSeverity,
            boolean required,
            boolean safety,
            boolean mayNotApply,
            boolean asLeft,
            boolean asksInstrument,
            @Nullable Competence competence,
            String source) {

        /** As a line of a first version. A line that stops everything when it fails is held at that. */
        CheckLine checkLine(int ordinal) {
            boolean stops = Objects.equals(failSeverity, CheckLine.MOST_SEVERE);
            return new CheckLine(
                    0,
                    ordinal,
                    section,
                    question,
                    hint,
                    caution == null ? null : caution.strip(),
                    kind,
                    unit,
                    new Limits(passLow, passHigh, watchLow, watchHigh),
                    ratedBy,
                    choices == null
                            ? List.of()
                            : choices.stream().map(Line::choice).toList(),
                    failSeverity,
                    stops ? failSeverity : null,
                    required,
                    safety,
                    mayNotApply,
                    asLeft,
                    asksInstrument,
                    competence,
                    source,
                    0);
        }

        private static Choice choice(String written) {
            String[] parts = written.split(" ", 2);
            return new Choice(Verdict.valueOf(parts[0]), parts[1]);
        }
    }

    /** Read once, when first asked for. */
    private static final class Read {

        static final List<Draft> DRAFTS = read();
    }

    static List<Draft> all() {
        return Read.DRAFTS;
    }

    private static List<Draft> read() {
        LoaderOptions options = new LoaderOptions();
        // the lines that lists share are aliases
        options.setMaxAliasesForCollections(Integer.MAX_VALUE);
        String shared = text("lines");
        List<Draft> drafts = new ArrayList<>();
        for (String file : FILES) {
            Object content = new Yaml(new SafeConstructor(options)).load(shared + "\n" + text(file));
            drafts.addAll(MAPPER.convertValue(content, DefaultChecklists.class).checklists());
        }
        return drafts;
    }

    private static String text(String file) {
        try {
            return new ClassPathResource("checklists/" + file + ".yaml").getContentAsString(StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
