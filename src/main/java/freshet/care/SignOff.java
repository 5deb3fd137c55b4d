package freshet.care;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * All answers of a task as they are to be signed. {@code version} is that of the task when the form was opened; {@code startedAt} null
 * is when the first answer was kept, else the end; {@code endedAt} null is now; {@code instrument} null is what was kept with the task.
 */
public record SignOff(
        int version,
        List<Answer> answers,
        @Nullable Instant startedAt,
        @Nullable Instant endedAt,
        @Nullable String note,
        @Nullable String instrument) {

    public SignOff(
            int version,
            List<Answer> answers,
            @Nullable Instant startedAt,
            @Nullable Instant endedAt,
            @Nullable String note) {
        this(version, answers, startedAt, endedAt, note, null);
    }

    public static SignOff of(int version, List<Answer> answers) {
        return new SignOff(version, answers, null, null, null);
    }
}
