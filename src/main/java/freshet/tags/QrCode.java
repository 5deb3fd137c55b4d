package freshet.tags;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import java.util.Map;

/** A square code (ISO/IEC 18004) as a drawing: so many modules wide with its quiet zone, and the path that fills the dark ones. */
public record QrCode(int modules, String path) {

    /** Level Q: read with a quarter of it scratched or dirty. Quiet zone: 4 modules, as the standard asks. */
    private static final Map<EncodeHintType, Object> HOW =
            Map.of(EncodeHintType.ERROR_CORRECTION, ErrorCorrectionLevel.Q, EncodeHintType.MARGIN, 4);

    static QrCode of(String text) {
        try {
            BitMatrix dark = new QRCodeWriter().encode(text, BarcodeFormat.QR_CODE, 0, 0, HOW);
            return new QrCode(dark.getWidth(), path(dark));
        } catch (WriterException tooLong) {
            throw new IllegalArgumentException("no code holds " + text.length() + " characters", tooLong);
        }
    }

    private static String path(BitMatrix dark) {
        StringBuilder path = new StringBuilder();
        for (int y = 0; y < dark.getHeight(); y++) {
            int x = 0;
            while (x < dark.getWidth()) {
                int from = x;
                while (x < dark.getWidth() && dark.get(x, y)) {
                    x++;
                }
                if (x > from) {
                    path.append('M')
                            .append(from)
                            .append(' ')
                            .append(y)
                            .append('h')
                            .append(x - from)
                            .append("v1h-")
                            .append(x - from)
                            .append('z');
                }
                x++;
            }
        }
        return path.toString();
    }
}
