package freshet.photos;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * A photo freed of everything but its picture: no place, no camera, no comment, nothing behind its end. {@code width} and
 * {@code height} are in pixels as stored; {@code orientation} is 1 to 8 as EXIF counts the turns to make before it is seen.
 */
record CleanPhoto(
        String mediaType,
        byte[] bytes,
        int width,
        int height,
        int orientation,
        @Nullable Instant takenAt) {

    /** Above this a picture could be made to fill the memory: a camera of today makes 12 to 50 million. */
    static final long MOST_PIXELS = 50_000_000;

    static final int LONGEST_EDGE = 16_000;

    /** Tells by the bytes alone what it is; the name and type that a browser sends are never asked. */
    static CleanPhoto of(byte[] bytes) throws NotAPhoto {
        if (startsWith(bytes, 0, 0xFF, 0xD8, 0xFF)) {
            return Jpeg.clean(bytes);
        }
        if (startsWith(bytes, 0, 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n')) {
            return Png.clean(bytes);
        }
        if (startsWith(bytes, 0, 'R', 'I', 'F', 'F') && startsWith(bytes, 8, 'W', 'E', 'B', 'P')) {
            return Webp.clean(bytes);
        }
        // ISO/IEC 14496-12: the box that names the brand; phones keep HEIC in it
        throw new NotAPhoto(startsWith(bytes, 4, 'f', 't', 'y', 'p') ? "photos.heic" : "photos.noPhoto");
    }

    static CleanPhoto of(
            String mediaType, byte[] bytes, int width, int height, int orientation, @Nullable Instant takenAt)
            throws NotAPhoto {
        if (width < 1 || height < 1) {
            throw NotAPhoto.unreadable();
        }
        if ((long) width * height > MOST_PIXELS || Math.max(width, height) > LONGEST_EDGE) {
            throw new NotAPhoto("photos.tooManyPixels", width, height, MOST_PIXELS / 1_000_000);
        }
        return new CleanPhoto(mediaType, bytes, width, height, orientation, takenAt);
    }

    /** Whether it is seen on its side: what was stored as its width is seen as its height. */
    boolean turned() {
        return orientation > 4;
    }

    static boolean startsWith(byte[] bytes, int at, int... begin) {
        if (bytes.length < at + begin.length) {
            return false;
        }
        for (int i = 0; i < begin.length; i++) {
            if ((bytes[at + i] & 0xFF) != begin[i]) {
                return false;
            }
        }
        return true;
    }

    static boolean startsWith(byte[] bytes, int at, String begin) {
        byte[] ascii = begin.getBytes(StandardCharsets.US_ASCII);
        return bytes.length >= at + ascii.length && Arrays.equals(bytes, at, at + ascii.length, ascii, 0, ascii.length);
    }
}
