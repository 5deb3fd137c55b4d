package freshet.photos;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Set;

/**
 * Reads a still WebP chunk by chunk (RFC 9649) and writes only those that make the picture. Java cannot decode one, so only its
 * structure and the head of its picture are looked at.
 */
final class Webp {

    private static final int HEAD = 12;
    private static final Set<String> PICTURE = Set.of("VP8X", "ICCP", "ALPH", "VP8 ", "VP8L");
    /** Flags of VP8X: there is EXIF, there is XMP. */
    private static final int KNOWS_MORE = 0x08 | 0x04;

    private static final int ANIMATED = 0x02;

    private Webp() {}

    static CleanPhoto clean(byte[] bytes) throws NotAPhoto {
        ByteBuffer webp = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
        long end = (webp.getInt(4) & 0xFFFFFFFFL) + 8;
        if (end > bytes.length) {
            throw NotAPhoto.cut();
        }
        ByteArrayOutputStream kept = new ByteArrayOutputStream(bytes.length);
        kept.write(bytes, 0, HEAD);
        long size = 0;
        for (int at = HEAD; at < end; ) {
            long length = at + 8 > end ? -1 : webp.getInt(at + 4) & 0xFFFFFFFFL;
            if (length < 0 || at + 8 + length > end) {
                throw NotAPhoto.cut();
            }
            String type = new String(bytes, at, 4, StandardCharsets.ISO_8859_1);
            if (PICTURE.contains(type)) {
                size = type.startsWith("VP8") && size == 0 ? pictureSize(webp, type, at + 8, (int) length) : size;
                write(kept, bytes, type, at, (int) length);
            }
            at += 8 + (int) length + (int) (length & 1);
        }
        byte[] whole = kept.toByteArray();
        ByteBuffer.wrap(whole).order(ByteOrder.LITTLE_ENDIAN).putInt(4, whole.length - 8);
        return CleanPhoto.of("image/webp", whole, (int) (size >> 32), (int) size, 1, null);
    }

    /** The width in the upper half, the height in the lower; 0 for the extended head, which holds no picture yet. */
    private static long pictureSize(ByteBuffer webp, String type, int at, int length) throws NotAPhoto {
        if (length < 10 && !type.equals("VP8L") || length < 5) {
            throw NotAPhoto.unreadable();
        }
        if (type.equals("VP8X")) {
            if ((webp.get(at) & ANIMATED) != 0) {
                throw new NotAPhoto("photos.moves");
            }
            return 0;
        }
        if (type.equals("VP8L")) {
            int bits = webp.getInt(at + 1);
            return webp.get(at) == 0x2F ? both((bits & 0x3FFF) + 1, (bits >> 14 & 0x3FFF) + 1) : 0;
        }
        boolean key = (webp.get(at) & 1) == 0 && CleanPhoto.startsWith(webp.array(), at + 3, 0x9D, 0x01, 0x2A);
        return key ? both(webp.getShort(at + 6) & 0x3FFF, webp.getShort(at + 8) & 0x3FFF) : 0;
    }

    private static long both(int width, int height) {
        return (long) width << 32 | height;
    }

    private static void write(ByteArrayOutputStream kept, byte[] bytes, String type, int at, int length) {
        byte[] chunk = new byte[8 + length + (length & 1)];
        System.arraycopy(bytes, at, chunk, 0, 8 + length);
        if (type.equals("VP8X")) {
            chunk[8] &= (byte) ~KNOWS_MORE;
        }
        kept.writeBytes(chunk);
    }
}
