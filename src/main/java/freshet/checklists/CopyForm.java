package freshet.checklists;

import freshet.measures.Durations;
import freshet.measures.NotAMeasure;
import freshet.people.Typed;
import freshet.pumps.PumpKind;
import java.util.Arrays;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What was typed for a new checklist that begins as a copy of another. */
record CopyForm(
        @Nullable String from,
        @Nullable String name,
        @Nullable String pumpKind,
        @Nullable String phase,
        @Nullable String effect,
        @Nullable String minutes) {

    static CopyForm of(@Nullable Checklist from) {
        return from == null
                ? new CopyForm(null, null, null, null, null, null)
                : new CopyForm(
                        String.valueOf(from.id()),
                        null,
                        from.pumpKind() == null ? null : from.pumpKind().name(),
                        from.phase().name(),
                        from.effect().name(),
                        String.valueOf(from.minutes()));
    }

    Optional<Long> fromId() {
        return from != null && from.matches("\\d{1,18}") ? Optional.of(Long.valueOf(from)) : Optional.empty();
    }

    /** As the checklist that it is copied from where nothing else was chosen. */
    CopyDraft draft(Checklist original) {
        String whole = Typed.textOrEmpty(minutes);
        return new CopyDraft(
                Typed.textOrEmpty(name),
                one(PumpKind.values(), pumpKind).orElse(null),
                one(Phase.values(), phase).orElse(original.phase()),
                one(Effect.values(), effect).orElse(original.effect()),
                whole.isEmpty() ? original.minutes() : minutesOf(whole));
    }

    /** Whole minutes of what was typed, such as 135 or 2h 15; 0, which the door refuses, when it is no such time. */
    static int minutesOf(String text) {
        try {
            double typed = Durations.parseMinutes(text);
            return typed == Math.rint(typed) && typed <= 999_999 ? (int) typed : 0;
        } catch (NotAMeasure none) {
            return 0;
        }
    }

    private static <E extends Enum<E>> Optional<E> one(E[] all, @Nullable String name) {
        return Arrays.stream(all).filter(each -> each.name().equals(name)).findFirst();
    }
}
