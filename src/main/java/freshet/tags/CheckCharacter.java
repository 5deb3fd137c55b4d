package freshet.tags;

import java.util.Locale;

/**
 * The check character of a tag: ISO/IEC 7064, MOD 37,36, over the tag's letters and digits; hyphens do not count, small letters count
 * as capitals. It gives away every single wrong character and nearly every swap of two neighbours. The scheme is written down from
 * memory of the standard; the test holds it against published identifiers that carry such a character.
 */
final class CheckCharacter {

    private static final String ALPHABET = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";
    private static final int M = ALPHABET.length();

    private CheckCharacter() {}

    /** The check character of a tag of letters, digits and hyphens; anything else in it does not count. */
    static char of(String tag) {
        int carried = M;
        for (char each : tag.toUpperCase(Locale.ROOT).toCharArray()) {
            int value = ALPHABET.indexOf(each);
            if (value >= 0) {
                int sum = (carried + value) % M;
                carried = (sum == 0 ? M : sum) * 2 % (M + 1);
            }
        }
        return ALPHABET.charAt(Math.floorMod(1 - carried, M));
    }
}
