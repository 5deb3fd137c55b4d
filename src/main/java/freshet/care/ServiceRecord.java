package freshet.care;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A signed task, never changed. A correction is a new record: {@code correctsId} names the one it corrects, {@code correctedById} the
 * one that corrects this. {@code digest} is the SHA-256 over what was signed and the digest of the unit's record before it.
 */
public record ServiceRecord(
        long id,
        @Nullable Long correctsId,
        @Nullable Long correctedById,
        long taskId,
        long unitId,
        long checklistVersionId,
        String title,
        String tag,
        @Nullable String serial,
        String place,
        ZoneId zone,
        Instant startedAt,
        Instant endedAt,
        Instant signedAt,
        long signedBy,
        String signedName,
        @Nullable String correctionWhy,
        @Nullable String note,
        String digest,
        List<RecordLine> lines,
        List<RecordPhoto> photos) {

    /** What its lines were measured with, null when nobody said. */
    public @Nullable String instrument() {
        return lines.stream()
                .map(RecordLine::instrument)
                .filter(Objects::nonNull)
                .distinct()
                .reduce((one, other) -> one + ", " + other)
                .orElse(null);
    }

    /** Whether some line was left otherwise than it was found. */
    public boolean leftOtherwise() {
        return lines.stream().anyMatch(line -> line.asLeft() != null);
    }

    /** Whether this is what counts: no later record corrects it. */
    public boolean stands() {
        return correctedById == null;
    }
}
