package freshet.care;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** All answers of a record as they should have been, and why the record was wrong; {@code instrument} null is as it was. */
public record Correction(
        List<Answer> answers,
        String why,
        @Nullable String note,
        @Nullable String instrument) {

    public Correction(List<Answer> answers, String why, @Nullable String note) {
        this(answers, why, note, null);
    }
}
