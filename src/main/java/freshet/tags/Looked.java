package freshet.tags;

import freshet.pumps.Unit;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What became of a tag that was typed or scanned: its unit; or, when there is none or its check character contradicts it, the units
 * that it may have meant, likeliest first. {@code itsCheck} is the character that would belong to the tag as typed.
 */
public record Looked(
        String tag,
        @Nullable Character typedCheck,
        char itsCheck,
        @Nullable Unit unit,
        List<Near> near) {

    /** A unit that may have been meant, with the check character of its tag; {@code fits} when that is the one typed. */
    public record Near(Unit unit, char check, boolean fits) {}

    /** The check character that was typed does not belong to the tag that was typed. */
    public boolean mistyped() {
        return typedCheck != null && typedCheck != itsCheck;
    }
}
