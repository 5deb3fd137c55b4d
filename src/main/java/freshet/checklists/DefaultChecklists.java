package freshet.checklists;

import freshet.people.Competence;
import freshet.pumps.PumpKind;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.context.properties.bind.Binder;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.springframework.boot.context.properties.source.ConfigurationPropertySources;
import org.springframework.boot.env.YamlPropertySourceLoader;
import org.springframework.core.env.MutablePropertySources;
import org.springframework.core.io.ClassPathResource;

/** The checklists that a new install begins with, as their file gives them. */
record DefaultChecklists(List<Draft> checklists) {

    record Draft(
            String code,
            String name,
            @Nullable PumpKind pumpKind,
            Phase phase,
            Effect effect,
            int minutes,
            List<LineDraft> lines) {}

    record LineDraft(
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
            @DefaultValue List<String> choices,
            @Nullable Integer failSeverity,
            @DefaultValue("false") boolean required,
            @DefaultValue("false") boolean safety,
            @DefaultValue("false") boolean mayNotApply,
            @DefaultValue("false") boolean asLeft,
            @Nullable Competence competence,
            String source) {}

    static List<Draft> read() {
        MutablePropertySources file = new MutablePropertySources();
        try {
            new YamlPropertySourceLoader()
                    .load("checklists", new ClassPathResource("checklists/defaults.yaml"))
                    .forEach(file::addLast);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new Binder(ConfigurationPropertySources.from(file))
                .bind("", DefaultChecklists.class)
                .get()
                .checklists();
    }
}
