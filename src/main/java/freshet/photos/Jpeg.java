package freshet.photos;

import java.io.ByteArrayOutputStream;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Reads a JPEG segment by segment (ITU-T T.81, annex B) and writes only those that make the picture: tables, frame, scans, the JFIF
 * head without its little picture, the colour profile and Adobe's colour word. Of EXIF only the turn is written again.
 */
final class Jpeg {

    private static final int SOI = 0xD8;
    private static final int EOI = 0xD9;
    private static final int SOS = 0xDA;
    private static final int COMMENT = 0xFE;
    private static final int APP0 = 0xE0;
    private static final int APP1 = 0xE1;
    private static final int APP2 = 0xE2;
    private static final int APP14 = 0xEE;
    private static final int JFIF_HEAD = 16;

    private final byte[] bytes;
    private final ByteArrayOutputStream head = new ByteArrayOutputStream();
    private final ByteArrayOutputStream rest = new ByteArrayOutputStream();
    private int at = 2;
    private int width;
    private int height;
    private boolean scanned;
    private int orientation = 1;
    private @Nullable Instant takenAt;

    private Jpeg(byte[] bytes) {
        this.bytes = bytes;
    }

    static CleanPhoto clean(byte[] bytes) throws NotAPhoto {
        Jpeg jpeg = new Jpeg(bytes);
        jpeg.read();
        return CleanPhoto.of("image/jpeg", jpeg.written(), jpeg.width, jpeg.height, jpeg.orientation, jpeg.takenAt);
    }

    private void read() throws NotAPhoto {
        for (int marker = marker(); marker != EOI; marker = marker()) {
            int begin = at;
            at += length();
            if (at > bytes.length) {
                throw NotAPhoto.cut();
            }
            segment(marker, begin);
            if (marker == SOS) {
                scan();
            }
        }
        if (!scanned) {
            throw NotAPhoto.unreadable();
        }
    }

    private int marker() throws NotAPhoto {
        if (at < bytes.length && (bytes[at] & 0xFF) != 0xFF) {
            throw NotAPhoto.unreadable();
        }
        while (at < bytes.length && (bytes[at] & 0xFF) == 0xFF) {
            at++;
        }
        if (at >= bytes.length) {
            throw NotAPhoto.cut();
        }
        return bytes[at++] & 0xFF;
    }

    /** A segment counts the two bytes of its length too. */
    private int length() throws NotAPhoto {
        if (at + 2 > bytes.length) {
            throw NotAPhoto.cut();
        }
        int length = two(at);
        if (length < 2) {
            throw NotAPhoto.unreadable();
        }
        return length;
    }

    private int two(int where) {
        return (bytes[where] & 0xFF) << 8 | bytes[where + 1] & 0xFF;
    }

    /** What is not named here is left out: further APPn, comments, and what no camera writes. */
    private void segment(int marker, int begin) throws NotAPhoto {
        switch (marker) {
            case 0xC0, 0xC1, 0xC2 -> frame(begin);
            case 0xC3, 0xC5, 0xC6, 0xC7, 0xC9, 0xCA, 0xCB, 0xCD, 0xCE, 0xCF -> throw NotAPhoto.unreadable();
            case APP1 -> exif(begin + 2);
            default -> {}
        }
        switch (marker) {
            case 0xC0, 0xC1, 0xC2, 0xC4, 0xDB, 0xDD, SOS -> copy(marker, begin);
            case APP2 -> copyIf("ICC_PROFILE", marker, begin);
            case APP14 -> copyIf("Adobe", marker, begin);
            case APP0 -> jfif(begin);
            case COMMENT -> {}
            default -> {}
        }
    }

    private void frame(int begin) throws NotAPhoto {
        if (width != 0 || at - begin < 8) {
            throw NotAPhoto.unreadable();
        }
        height = two(begin + 3);
        width = two(begin + 5);
        if (width == 0 || height == 0) {
            throw NotAPhoto.unreadable();
        }
    }

    private void exif(int begin) {
        if (CleanPhoto.startsWith(bytes, begin, "Exif\0\0")) {
            Exif exif = Exif.read(bytes, begin + 6, at);
            orientation = exif.orientation();
            takenAt = exif.takenAt();
        }
    }

    /** The head as JFIF 1.02 writes it, but 0 by 0 pixels of a little picture. */
    private void jfif(int begin) {
        if (head.size() == 0 && at - begin >= JFIF_HEAD && CleanPhoto.startsWith(bytes, begin + 2, "JFIF\0")) {
            head.write(0xFF);
            head.write(APP0);
            head.write(0);
            head.write(JFIF_HEAD);
            head.write(bytes, begin + 2, JFIF_HEAD - 4);
            head.write(0);
            head.write(0);
        }
    }

    private void copyIf(String name, int marker, int begin) {
        if (CleanPhoto.startsWith(bytes, begin + 2, name)) {
            copy(marker, begin);
        }
    }

    private void copy(int marker, int begin) {
        rest.write(0xFF);
        rest.write(marker);
        rest.write(bytes, begin, at - begin);
    }

    /** The coded picture goes on until a marker that is neither a stuffed FF nor a restart. */
    private void scan() throws NotAPhoto {
        if (width == 0) {
            throw NotAPhoto.unreadable();
        }
        int begin = at;
        while (at + 1 < bytes.length) {
            int next = bytes[at + 1] & 0xFF;
            if ((bytes[at] & 0xFF) == 0xFF && next != 0 && next != 0xFF && (next < 0xD0 || next > 0xD7)) {
                rest.write(bytes, begin, at - begin);
                scanned = true;
                return;
            }
            at++;
        }
        throw NotAPhoto.cut();
    }

    private byte[] written() {
        ByteArrayOutputStream whole = new ByteArrayOutputStream(head.size() + rest.size() + 64);
        whole.write(0xFF);
        whole.write(SOI);
        whole.writeBytes(head.toByteArray());
        if (orientation != 1) {
            whole.writeBytes(Exif.onlyTheTurn(orientation));
        }
        whole.writeBytes(rest.toByteArray());
        whole.write(0xFF);
        whole.write(EOI);
        return whole.toByteArray();
    }
}
