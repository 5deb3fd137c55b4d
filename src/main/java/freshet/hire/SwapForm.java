package freshet.hire;

import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** What was typed about a unit that came back and about the one that goes out in its place. */
record SwapForm(
        @Nullable ReturnForm back,
        @Nullable IssueForm out,
        @Nullable String reason) {

    /** With both parts, however little was sent. */
    SwapForm whole(Hire hire) {
        return new SwapForm(back == null ? ReturnForm.blank(hire) : back, out == null ? IssueForm.BLANK : out, reason);
    }

    ReturnForm returned() {
        return Objects.requireNonNull(back);
    }

    IssueForm issued() {
        return Objects.requireNonNull(out);
    }
}
