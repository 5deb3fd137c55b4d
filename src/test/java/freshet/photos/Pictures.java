package freshet.photos;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Base64;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;

/** Pictures drawn for tests: one corner red, the rest of a color that tells them apart. */
public final class Pictures {

    /** One pixel of lossless WebP. */
    public static final byte[] WEBP = Base64.getDecoder().decode("UklGRhoAAABXRUJQVlA4TA0AAAAvAAAAEAcQERGIiP4HAA==");

    /** What a camera knows of the place, and must not be kept. */
    public static final String PLACE = "47.123456N 91.654321W";

    private Pictures() {}

    public static byte[] jpeg(int width, int height) {
        return drawn("jpeg", width, height, Color.BLUE);
    }

    public static byte[] jpeg(int width, int height, Color color) {
        return drawn("jpeg", width, height, color);
    }

    public static byte[] png(int width, int height) {
        return drawn("png", width, height, Color.BLUE);
    }

    private static byte[] drawn(String format, int width, int height, Color color) {
        BufferedImage picture = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D pen = picture.createGraphics();
        pen.setColor(color);
        pen.fillRect(0, 0, width, height);
        pen.setColor(Color.RED);
        pen.fillRect(0, 0, width / 2, height / 2);
        pen.dispose();
        ByteArrayOutputStream written = new ByteArrayOutputStream();
        try {
            ImageIO.write(picture, format, written);
        } catch (IOException never) {
            throw new UncheckedIOException(never);
        }
        return written.toByteArray();
    }

    public static BufferedImage read(byte[] bytes) {
        try {
            return ImageIO.read(new ByteArrayInputStream(bytes));
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }

    /** The JPEG with what a camera writes: EXIF with a turn, a time and a place, XMP, IPTC and a comment. */
    static byte[] fromACamera(byte[] jpeg, int orientation) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(jpeg, 0, 2);
        segment(out, 0xE1, exif(orientation));
        segment(out, 0xE1, ascii("http://ns.adobe.com/xap/1.0/\0<x>" + PLACE + "</x>"));
        segment(out, 0xED, ascii("Photoshop 3.0\0" + PLACE));
        segment(out, 0xFE, ascii("<script>alert('" + PLACE + "')</script>"));
        out.write(jpeg, 2, jpeg.length - 2);
        out.writeBytes(ascii("<html>" + PLACE + "</html>"));
        return out.toByteArray();
    }

    private static byte[] exif(int orientation) {
        ByteBuffer exif = ByteBuffer.allocate(200);
        exif.put(ascii("Exif\0\0MM")).putShort((short) 42).putInt(8);
        exif.putShort((short) 2);
        entry(exif, 0x0112, 3, 1, orientation << 16);
        entry(exif, 0x8769, 4, 1, 38);
        exif.putInt(0);
        exif.putShort((short) 2);
        entry(exif, 0x9003, 2, 20, 70);
        entry(exif, 0x9011, 2, 7, 90);
        exif.putInt(0).putShort((short) 0);
        exif.put(ascii("2027:03-14 09:05:00\0".replace("-", ":")))
                .put(ascii("-05:00\0"))
                .put(ascii(PLACE));
        return Arrays.copyOf(exif.array(), exif.position());
    }

    private static void entry(ByteBuffer exif, int tag, int type, int count, int value) {
        exif.putShort((short) tag).putShort((short) type).putInt(count).putInt(value);
    }

    private static void segment(ByteArrayOutputStream out, int marker, byte[] content) {
        out.write(0xFF);
        out.write(marker);
        out.write(content.length + 2 >> 8);
        out.write(content.length + 2);
        out.writeBytes(content);
    }

    /** The PNG with one more chunk after its head. */
    static byte[] withChunk(byte[] png, String type, byte[] content) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(png, 0, 33);
        out.writeBytes(chunk(type, content));
        out.write(png, 33, png.length - 33);
        return out.toByteArray();
    }

    private static byte[] chunk(String type, byte[] content) {
        CRC32 sum = new CRC32();
        sum.update(ascii(type));
        sum.update(content);
        return ByteBuffer.allocate(12 + content.length)
                .putInt(content.length)
                .put(ascii(type))
                .put(content)
                .putInt((int) sum.getValue())
                .array();
    }

    /** A PNG whose head says that it is so large, and whose picture is next to nothing. */
    public static byte[] bomb(int width, int height) {
        byte[] small = png(2, 2);
        byte[] head = Arrays.copyOfRange(small, 16, 29);
        ByteBuffer.wrap(head).putInt(width).putInt(height);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(small, 0, 8);
        out.writeBytes(chunk("IHDR", head));
        out.write(small, 33, small.length - 33);
        return out.toByteArray();
    }

    /** The lossless WebP inside the extended form, with EXIF beside it. */
    static byte[] webpWithExif() {
        ByteBuffer out = ByteBuffer.allocate(12 + 18 + (WEBP.length - 12) + 8 + 22);
        out.order(java.nio.ByteOrder.LITTLE_ENDIAN);
        out.put(ascii("RIFF")).putInt(out.capacity() - 8).put(ascii("WEBPVP8X")).putInt(10);
        out.put((byte) 0x08).put(new byte[9]);
        out.put(WEBP, 12, WEBP.length - 12);
        out.put(ascii("EXIF")).putInt(21).put(ascii(PLACE));
        return out.array();
    }

    static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.ISO_8859_1);
    }
}
