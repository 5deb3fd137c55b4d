package freshet.care;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.jspecify.annotations.Nullable;

/**
 * The SHA-256 (FIPS 180-4) over what was signed, chained to the unit's record before it: changing, adding or removing a record breaks
 * every digest after it. Each value is written with its length, so that no two records read the same.
 */
final class Digest {

    private final StringBuilder text = new StringBuilder();

    private Digest() {}

    /** {@code before} is the digest of the unit's record before this one, null for its first. */
    static String of(@Nullable String before, ServiceRecord record) {
        Digest digest = new Digest();
        digest.add(before)
                .add(record.correctsId())
                .add(record.taskId())
                .add(record.unitId())
                .add(record.checklistVersionId())
                .add(record.title())
                .add(record.tag())
                .add(record.serial())
                .add(record.place())
                .add(record.startedAt())
                .add(record.endedAt())
                .add(record.signedAt())
                .add(record.signedBy())
                .add(record.signedName())
                .add(record.correctionWhy())
                .add(record.note());
        for (RecordLine line : record.lines()) {
            digest.add(line.ordinal())
                    .add(line.checkLineId())
                    .add(line.section())
                    .add(line.question())
                    .add(line.answer())
                    .add(line.number())
                    .add(line.unit())
                    .add(line.limits())
                    .add(line.verdict())
                    .add(line.asLeft());
            // only where there is one: records from before there were any keep their digest
            if (line.instrument() != null) {
                digest.add("instrument").add(line.instrument());
            }
        }
        // a record without photos reads as it did before there were any
        for (RecordPhoto photo : record.photos()) {
            digest.add("photo")
                    .add(photo.place().lineId())
                    .add(photo.place().moment())
                    .add(photo.photoId())
                    .add(photo.sha256());
        }
        return digest.sha256();
    }

    private Digest add(@Nullable Object value) {
        String written = value == null ? "" : value.toString();
        text.append(value == null ? "-" : written.length())
                .append(':')
                .append(written)
                .append('\n');
        return this;
    }

    private String sha256() {
        try {
            byte[] bytes = text.toString().getBytes(StandardCharsets.UTF_8);
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
