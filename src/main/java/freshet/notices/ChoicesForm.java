package freshet.notices;

import freshet.people.Typed;
import java.time.DayOfWeek;
import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Which mail a person wants, as the browser sends it. */
record ChoicesForm(
        @Nullable Rhythm rhythm,
        @Nullable DayOfWeek weekday,
        @Nullable Integer sendHour,
        @Nullable String quietFrom,
        @Nullable String quietTo,
        @Nullable Boolean everySite,
        @Nullable List<Long> siteIds,
        @Nullable Boolean tellOverdue,
        @Nullable String overdueDays,
        @Nullable Boolean tellDanger,
        @Nullable Integer version) {

    static ChoicesForm of(Choices its) {
        QuietHours quiet = its.quiet();
        return new ChoicesForm(
                its.rhythm(),
                its.weekday(),
                its.sendHour(),
                quiet == null ? null : quiet.from().toString(),
                quiet == null ? null : quiet.to().toString(),
                its.everySite(),
                List.copyOf(its.siteIds()),
                its.tellOverdue(),
                String.valueOf(its.overdueDays()),
                its.tellDanger(),
                its.version());
    }

    /** What was chosen; somebody who is not asked about urgent mail keeps what stands. */
    ChoicesDraft draft(Typed typed, Choices stands, boolean owner) {
        ChoicesDraft draft = new ChoicesDraft(
                Objects.requireNonNullElse(rhythm, Rhythm.NONE),
                Objects.requireNonNullElse(weekday, stands.weekday()),
                Objects.requireNonNullElse(sendHour, stands.sendHour()),
                time(typed, "quietFrom", quietFrom),
                time(typed, "quietTo", quietTo),
                Boolean.TRUE.equals(everySite),
                siteIds == null ? Set.of() : Set.copyOf(siteIds),
                owner ? Boolean.TRUE.equals(tellOverdue) : stands.tellOverdue(),
                owner ? days(typed, stands.overdueDays()) : stands.overdueDays(),
                owner ? Boolean.TRUE.equals(tellDanger) : stands.tellDanger());
        typed.refuseIfWrong();
        return draft;
    }

    private static @Nullable LocalTime time(Typed typed, String field, @Nullable String text) {
        String time = Typed.text(text);
        try {
            return time == null ? null : LocalTime.parse(time.length() == 4 ? "0" + time : time);
        } catch (DateTimeParseException wrong) {
            typed.wrong(field, "notices.noSuchTime", time);
            return null;
        }
    }

    private int days(Typed typed, int stands) {
        String text = Typed.text(overdueDays);
        if (text == null) {
            return stands;
        } else if (text.matches("\\d{1,4}")) {
            return Integer.parseInt(text);
        }
        typed.wrong("overdueDays", "notices.overdueDays.range", ChoiceChecks.MOST_DAYS);
        return stands;
    }

    public boolean hasSite(long siteId) {
        return siteIds != null && siteIds.contains(siteId);
    }
}
