package freshet.notices;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;

/** The secrets that stand in addresses: 256 bits, said once, kept as a digest only. */
final class Secrets {

    private static final SecureRandom RANDOM = new SecureRandom();

    private Secrets() {}

    static String fresh() {
        byte[] bytes = new byte[32];
        RANDOM.nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    static String digest(String text) {
        return digest(text.getBytes(StandardCharsets.UTF_8));
    }

    static String digest(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException every) {
            throw new IllegalStateException("every Java has SHA-256", every);
        }
    }
}
