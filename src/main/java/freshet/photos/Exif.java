package freshet.photos;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import org.jspecify.annotations.Nullable;

/** The two things we take from EXIF (CIPA DC-008): how to turn the picture, and when it was taken if the time zone is said with it. */
record Exif(int orientation, @Nullable Instant takenAt) {

    private static final Exif NOTHING = new Exif(1, null);

    private static final int ORIENTATION = 0x0112;
    private static final int FURTHER = 0x8769;
    private static final int TAKEN = 0x9003;
    private static final int TAKEN_OFFSET = 0x9011;
    private static final int ENTRY = 12;

    private static final DateTimeFormatter WRITTEN = DateTimeFormatter.ofPattern("yyyy:MM:dd HH:mm:ssXXX");

    /** Reads the TIFF structure between these bytes; one that is broken says nothing. */
    static Exif read(byte[] bytes, int from, int to) {
        try {
            ByteBuffer tiff = ByteBuffer.wrap(bytes, from, to - from).slice();
            tiff.order(tiff.get(0) == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
            int first = tiff.getInt(4);
            int turn = entry(tiff, first, ORIENTATION);
            int further = entry(tiff, first, FURTHER);
            int orientation = turn < 0 ? 1 : tiff.getShort(turn + 8);
            Instant taken = further < 0 ? null : taken(tiff, tiff.getInt(further + 8));
            return new Exif(orientation < 1 || orientation > 8 ? 1 : orientation, taken);
        } catch (IndexOutOfBoundsException | IllegalArgumentException broken) {
            return NOTHING;
        }
    }

    /** Where the entry of this tag stands in a directory; -1 when it has none. */
    private static int entry(ByteBuffer tiff, int directory, int tag) {
        int count = tiff.getShort(directory) & 0xFFFF;
        for (int i = 0; i < count; i++) {
            int at = directory + 2 + ENTRY * i;
            if ((tiff.getShort(at) & 0xFFFF) == tag) {
                return at;
            }
        }
        return -1;
    }

    private static @Nullable Instant taken(ByteBuffer tiff, int directory) {
        String day = text(tiff, entry(tiff, directory, TAKEN));
        String offset = text(tiff, entry(tiff, directory, TAKEN_OFFSET));
        try {
            return OffsetDateTime.parse(day + offset, WRITTEN).toInstant();
        } catch (DateTimeException unsaid) {
            return null;
        }
    }

    private static String text(ByteBuffer tiff, int entry) {
        if (entry < 0) {
            return "";
        }
        int length = Math.max(0, Math.min(tiff.getInt(entry + 4), 20));
        byte[] text = new byte[length];
        tiff.get(tiff.getInt(entry + 8), text);
        return new String(text, StandardCharsets.US_ASCII).replace("\0", "").strip();
    }

    /** An APP1 segment that says how to turn the picture and nothing else. */
    static byte[] onlyTheTurn(int orientation) {
        ByteBuffer segment = ByteBuffer.allocate(36);
        segment.putShort((short) 0xFFE1).putShort((short) 34).put("Exif\0\0".getBytes(StandardCharsets.US_ASCII));
        segment.put((byte) 'M').put((byte) 'M').putShort((short) 42).putInt(8);
        segment.putShort((short) 1);
        segment.putShort((short) ORIENTATION).putShort((short) 3).putInt(1);
        segment.putShort((short) orientation).putShort((short) 0);
        segment.putInt(0);
        return segment.array();
    }
}
