package freshet.rules;

import freshet.happenings.HappeningKind;
import freshet.places.WindowKind;
import freshet.pumps.PumpKind;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.MonthDay;
import java.time.Period;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.core.io.ClassPathResource;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;
import tools.jackson.databind.PropertyNamingStrategies;
import tools.jackson.databind.json.JsonMapper;

/** The rules that a new install begins with, as their files give them. */
record DefaultRules(List<Given> rules) {

    private static final List<String> FILES = List.of(
            "any-kind",
            "utility-submersible",
            "sump-with-float",
            "sewage",
            "engine-trash",
            "battery-backup",
            "circulator");
    private static final int OPENS_DAYS_BEFORE = 14;

    private static final JsonMapper MAPPER = JsonMapper.builder()
            .propertyNamingStrategy(PropertyNamingStrategies.KEBAB_CASE)
            .build();

    /** A rule as written; its checklist is named by code, and what is not said is as usual. */
    record Given(
            String code,
            String job,
            String name,
            @Nullable PumpKind kind,
            String checklist,
            List<When> when,
            @Nullable Boolean fixed,
            @Nullable Boolean followsPosition,
            @Nullable Integer opensDaysBefore,
            @Nullable Integer graceDays,
            @Nullable MonthDay accessFrom,
            @Nullable MonthDay accessTo,
            @Nullable Boolean oncePerSeason,
            @Nullable Applies applies,
            @Nullable Set<String> covers,
            boolean active,
            String source) {

        RuleDraft draft(long checklistId) {
            return new RuleDraft(
                    job,
                    name,
                    kind == null ? new Scope.Every() : new Scope.OfKind(kind),
                    when.stream().map(When::trigger).toList(),
                    checklistId,
                    Boolean.TRUE.equals(fixed),
                    Boolean.TRUE.equals(followsPosition),
                    Objects.requireNonNullElse(opensDaysBefore, OPENS_DAYS_BEFORE),
                    Objects.requireNonNullElse(graceDays, 0),
                    accessFrom,
                    accessTo,
                    Boolean.TRUE.equals(oncePerSeason),
                    Objects.requireNonNullElse(applies, Applies.ALWAYS),
                    Objects.requireNonNullElse(covers, Set.of()),
                    source);
        }
    }

    /** One trigger as written: exactly one of the first eight says which. */
    record When(
            @Nullable Period each,
            @Nullable WindowKind season,
            @Nullable BigDecimal runHours,
            @Nullable BigDecimal starts,
            @Nullable HappeningKind after,
            @Nullable Boolean relocated,
            @Nullable Integer idleDays,
            @Nullable Measure beyond,
            @Nullable BigDecimal first,
            @Nullable Boolean firstOnly,
            @Nullable Double limit,
            @Nullable Integer days) {

        Trigger trigger() {
            if (each != null) {
                return new Trigger.Calendar(each);
            }
            if (season != null) {
                return new Trigger.Season(season);
            }
            if (runHours != null) {
                return new Trigger.RunHours(runHours, first);
            }
            if (starts != null) {
                return new Trigger.Starts(starts, first);
            }
            int act = Objects.requireNonNull(days);
            if (after != null) {
                return new Trigger.Event(after, Boolean.TRUE.equals(firstOnly), act);
            }
            if (relocated != null) {
                return new Trigger.Relocated(act);
            }
            return idleDays != null
                    ? new Trigger.Idle(idleDays, act)
                    : new Trigger.Condition(Objects.requireNonNull(beyond), Objects.requireNonNull(limit), act);
        }
    }

    /** Read once, when first asked for. */
    private static final class Read {

        static final List<Given> RULES = read();
    }

    static List<Given> all() {
        return Read.RULES;
    }

    /** Whether it is a job that the product has words for. */
    static boolean knowsJob(@Nullable String job) {
        return all().stream().anyMatch(rule -> rule.job().equals(job));
    }

    private static List<Given> read() {
        List<Given> rules = new ArrayList<>();
        for (String file : FILES) {
            Object content = new Yaml(new SafeConstructor(new LoaderOptions())).load(text(file));
            rules.addAll(MAPPER.convertValue(content, DefaultRules.class).rules());
        }
        return rules;
    }

    private static String text(String file) {
        try {
            return new ClassPathResource("rules/" + file + ".yaml").getContentAsString(StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
