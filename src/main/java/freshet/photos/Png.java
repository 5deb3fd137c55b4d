package freshet.photos;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.zip.CRC32;

/** Reads a PNG chunk by chunk (W3C PNG, third edition, section 5) and writes only those that make the picture. */
final class Png {

    private static final int SIGNATURE = 8;
    /** Length, type and check sum of a chunk. */
    private static final int AROUND = 12;

    private static final Set<String> PICTURE =
            Set.of("IHDR", "PLTE", "IDAT", "IEND", "tRNS", "gAMA", "cHRM", "sRGB", "sBIT", "pHYs");

    private Png() {}

    static CleanPhoto clean(byte[] bytes) throws NotAPhoto {
        ByteBuffer png = ByteBuffer.wrap(bytes);
        ByteArrayOutputStream kept = new ByteArrayOutputStream(bytes.length);
        kept.write(bytes, 0, SIGNATURE);
        boolean picture = false;
        String type = "";
        for (int at = SIGNATURE; !type.equals("IEND"); ) {
            int length = at + AROUND > bytes.length ? -1 : png.getInt(at);
            if (length < 0 || length > bytes.length - at - AROUND) {
                throw NotAPhoto.cut();
            }
            type = new String(bytes, at + 4, 4, StandardCharsets.ISO_8859_1);
            if ((at == SIGNATURE) != type.equals("IHDR") || type.equals("IHDR") && length != 13) {
                throw NotAPhoto.unreadable();
            }
            if (PICTURE.contains(type)) {
                check(png, at, length);
                kept.write(bytes, at, length + AROUND);
                picture |= type.equals("IDAT");
            }
            at += length + AROUND;
        }
        if (!picture) {
            throw NotAPhoto.unreadable();
        }
        return CleanPhoto.of("image/png", kept.toByteArray(), png.getInt(16), png.getInt(20), 1, null);
    }

    private static void check(ByteBuffer png, int at, int length) throws NotAPhoto {
        CRC32 sum = new CRC32();
        sum.update(png.array(), at + 4, length + 4);
        if ((int) sum.getValue() != png.getInt(at + 8 + length)) {
            throw NotAPhoto.unreadable();
        }
    }
}
