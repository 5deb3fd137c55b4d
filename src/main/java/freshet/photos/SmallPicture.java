package freshet.photos;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Iterator;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import org.jspecify.annotations.Nullable;

/** Makes the small picture of a photo, turned as it is to be seen. That it can be made shows that the photo can be read. */
final class SmallPicture {

    /** Sharp on a phone's screen at 160 px. */
    static final int LONG_EDGE = 480;

    private SmallPicture() {}

    /**
     * A JPEG; null for a format that Java does not read. One at a time, and rows that are not wanted are passed over, so that the memory
     * stays small however many photos come at once.
     */
    static synchronized byte @Nullable [] of(CleanPhoto photo) throws NotAPhoto {
        Iterator<ImageReader> readers = ImageIO.getImageReadersByMIMEType(photo.mediaType());
        if (!readers.hasNext()) {
            return null;
        }
        ImageReader reader = readers.next();
        try (ImageInputStream input = new MemoryCacheImageInputStream(new ByteArrayInputStream(photo.bytes()))) {
            reader.setInput(input, true, true);
            ImageReadParam every = reader.getDefaultReadParam();
            int step = Math.max(1, Math.max(photo.width(), photo.height()) / (2 * LONG_EDGE));
            every.setSourceSubsampling(step, step, 0, 0);
            return jpeg(turned(reader.read(0, every), photo));
        } catch (IOException | RuntimeException broken) {
            throw NotAPhoto.unreadable();
        } finally {
            reader.dispose();
        }
    }

    private static BufferedImage turned(BufferedImage read, CleanPhoto photo) {
        double scale = Math.min(1, (double) LONG_EDGE / Math.max(read.getWidth(), read.getHeight()));
        int width = (int) Math.max(1, Math.round(scale * read.getWidth()));
        int height = (int) Math.max(1, Math.round(scale * read.getHeight()));
        BufferedImage small = photo.turned()
                ? new BufferedImage(height, width, BufferedImage.TYPE_INT_RGB)
                : new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D pen = small.createGraphics();
        pen.setColor(Color.WHITE);
        pen.fillRect(0, 0, small.getWidth(), small.getHeight());
        pen.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        pen.transform(turn(photo.orientation(), width, height));
        pen.drawImage(read, 0, 0, width, height, null);
        pen.dispose();
        return small;
    }

    /** The turns and mirrors of EXIF's orientation (CIPA DC-008, tag 274) for a picture of this size. */
    private static AffineTransform turn(int orientation, int width, int height) {
        return switch (orientation) {
            case 2 -> new AffineTransform(-1, 0, 0, 1, width, 0);
            case 3 -> new AffineTransform(-1, 0, 0, -1, width, height);
            case 4 -> new AffineTransform(1, 0, 0, -1, 0, height);
            case 5 -> new AffineTransform(0, 1, 1, 0, 0, 0);
            case 6 -> new AffineTransform(0, 1, -1, 0, height, 0);
            case 7 -> new AffineTransform(0, -1, -1, 0, height, width);
            case 8 -> new AffineTransform(0, -1, 1, 0, 0, width);
            default -> new AffineTransform();
        };
    }

    private static byte[] jpeg(BufferedImage picture) throws IOException {
        ByteArrayOutputStream jpeg = new ByteArrayOutputStream();
        ImageIO.write(picture, "jpeg", jpeg);
        return jpeg.toByteArray();
    }
}
