package freshet.rules;

import freshet.people.Typed;
import freshet.pumps.PumpKind;
import java.time.Month;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.springframework.context.support.DefaultMessageSourceResolvable;

/** What was typed about a rule; {@code press} asks for a trigger more or less, else it is to be kept. */
record RuleForm(
        @Nullable String name,
        @Nullable String job,
        @Nullable String ownJob,
        @Nullable ScopeKind scope,
        @Nullable PumpKind kind,
        @Nullable String model,
        @Nullable String site,
        @Nullable String position,
        @Nullable String tag,
        @Nullable List<TriggerForm> triggers,
        @Nullable TriggerKind addKind,
        @Nullable Long checklistId,
        @Nullable Boolean fixed,
        @Nullable Boolean followsPosition,
        @Nullable String opensDaysBefore,
        @Nullable String graceDays,
        @Nullable String accessFromDay,
        @Nullable Month accessFromMonth,
        @Nullable String accessToDay,
        @Nullable Month accessToMonth,
        @Nullable Boolean oncePerSeason,
        @Nullable Applies applies,
        @Nullable List<String> covers,
        @Nullable String source,
        @Nullable String press,
        @Nullable Integer version) {

    private static final int MOST_ROWS = 12;
    private static final String OUT = "out-";

    RuleForm {
        // as many rows as were sent: the binder goes through them once more
        List<TriggerForm> rows = new ArrayList<>(triggers == null ? List.of() : triggers);
        rows.replaceAll(row -> Objects.requireNonNullElseGet(row, () -> TriggerForm.blank(TriggerKind.CALENDAR)));
        triggers = rows;
        covers = covers == null
                ? List.of()
                : covers.stream().filter(Objects::nonNull).toList();
    }

    /** With the trigger more or less that was asked for. */
    RuleForm withRows() {
        List<TriggerForm> rows = new ArrayList<>(Objects.requireNonNull(triggers));
        String pressed = Objects.requireNonNull(press);
        if (pressed.equals("add") && addKind != null && rows.size() < MOST_ROWS) {
            rows.add(TriggerForm.blank(addKind));
        }
        if (!pressed.equals("add") && Integer.parseInt(pressed.substring(OUT.length())) < rows.size()) {
            rows.remove(Integer.parseInt(pressed.substring(OUT.length())));
        }
        return new RuleForm(
                name,
                job,
                ownJob,
                scope,
                kind,
                model,
                site,
                position,
                tag,
                rows,
                addKind,
                checklistId,
                fixed,
                followsPosition,
                opensDaysBefore,
                graceDays,
                accessFromDay,
                accessFromMonth,
                accessToDay,
                accessToMonth,
                oncePerSeason,
                applies,
                covers,
                source,
                press,
                version);
    }

    /** Whether only the triggers are to be more or fewer, and nothing is to be kept yet. */
    boolean asksForRows() {
        return press != null && press.matches("add|" + OUT + "\\d{1,2}");
    }

    public boolean covered(String each) {
        return covers != null && covers.contains(each);
    }

    static RuleForm blank() {
        return new RuleForm(
                null,
                null,
                null,
                ScopeKind.EVERY,
                null,
                null,
                null,
                null,
                null,
                List.of(TriggerForm.blank(TriggerKind.CALENDAR)),
                null,
                null,
                null,
                null,
                "14",
                "0",
                null,
                null,
                null,
                null,
                null,
                Applies.ALWAYS,
                List.of(),
                null,
                null,
                null);
    }

    /** The form of what stands, or of a rule like it, for the pumps that the scope's names name. */
    static RuleForm of(CareRule rule, ScopeForm meant, @Nullable Integer version) {
        MonthDay from = rule.accessFrom();
        MonthDay to = rule.accessTo();
        return new RuleForm(
                rule.name(),
                rule.job(),
                null,
                meant.scope(),
                meant.kind(),
                meant.model(),
                meant.site(),
                meant.position(),
                meant.tag(),
                rule.triggers().stream().map(TriggerForm::of).toList(),
                null,
                rule.checklistId(),
                rule.fixed() ? true : null,
                rule.followsPosition() ? true : null,
                String.valueOf(rule.opensDaysBefore()),
                String.valueOf(rule.graceDays()),
                from == null ? null : String.valueOf(from.getDayOfMonth()),
                from == null ? null : from.getMonth(),
                to == null ? null : String.valueOf(to.getDayOfMonth()),
                to == null ? null : to.getMonth(),
                rule.oncePerSeason() ? true : null,
                rule.applies(),
                List.copyOf(rule.covers()),
                version == null ? null : rule.source(),
                null,
                version);
    }

    ScopeForm meant() {
        return new ScopeForm(scope, kind, model, site, position, tag);
    }

    /** The rule that was typed, for the pumps that were found; refused where it is none. */
    RuleDraft draft(@Nullable Scope found, Typed typed) {
        List<Trigger> whens = new ArrayList<>();
        List<TriggerForm> rows = Objects.requireNonNull(triggers);
        for (int i = 0; i < rows.size(); i++) {
            Trigger trigger = rows.get(i).trigger("triggers[" + i + "].", typed);
            if (trigger != null) {
                whens.add(trigger);
            }
        }
        Integer opens = TriggerForm.whole("opensDaysBefore", opensDaysBefore, typed);
        Integer grace = TriggerForm.whole("graceDays", graceDays, typed);
        MonthDay from = monthDay("accessFrom", accessFromDay, accessFromMonth, typed);
        MonthDay to = monthDay("accessTo", accessToDay, accessToMonth, typed);
        Long list = typed.required("checklistId", checklistId, "rules.checklist.missing");
        String itsName = Typed.textOrEmpty(name);
        String own = Typed.text(ownJob);
        String itsJob = own == null ? Typed.textOrEmpty(job) : own;
        saidWithTheRest(itsName, itsJob, rows, typed);
        typed.refuseIfWrong();
        return new RuleDraft(
                itsJob,
                itsName,
                Objects.requireNonNull(found),
                whens,
                Objects.requireNonNull(list),
                Boolean.TRUE.equals(fixed),
                Boolean.TRUE.equals(followsPosition),
                Objects.requireNonNull(opens),
                Objects.requireNonNull(grace),
                from,
                to,
                Boolean.TRUE.equals(oncePerSeason),
                Objects.requireNonNullElse(applies, Applies.ALWAYS),
                new TreeSet<>(Objects.requireNonNull(covers)),
                Typed.text(source));
    }

    /** What the door would refuse too is said at once, so that nobody has to send the form twice. */
    private static void saidWithTheRest(String name, String job, List<TriggerForm> rows, Typed typed) {
        if (name.isEmpty()) {
            typed.wrong("name", "rules.name.missing");
        }
        if (job.isEmpty()) {
            typed.wrong("job", "rules.job.missing");
        }
        if (rows.isEmpty()) {
            typed.wrong("triggers", "rules.trigger.none");
        }
    }

    private static @Nullable MonthDay monthDay(String field, @Nullable String day, @Nullable Month month, Typed typed) {
        String text = Typed.textOrEmpty(day);
        if (text.isEmpty() && month == null) {
            return null;
        }
        if (month == null) {
            typed.wrong(field + "Month", "places.window.monthMissing");
            return null;
        }
        // the longest that the month ever is, so 29 February passes
        if (!text.matches("\\d{1,2}") || Integer.parseInt(text) < 1 || Integer.parseInt(text) > month.maxLength()) {
            var name = new DefaultMessageSourceResolvable("places.month." + month);
            boolean missing = text.isEmpty();
            typed.wrong(field + "Day", missing ? "places.window.dayMissing" : "places.window.noSuchDay", name, text);
            return null;
        }
        return MonthDay.of(month, Integer.parseInt(text));
    }
}
