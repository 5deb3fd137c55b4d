package freshet.tags;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CheckCharacterTests {

    private static final String ALPHABET = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";

    // The example of the Global Release Identifier standard 2.1 (A1-2425G-ABC1234002-M), and two examples of
    // audiovisual numbers
    // (ISO 15706), which carry the same check character; the latter from memory. All three were recomputed apart from
    // this code.
    @ParameterizedTest
    @CsvSource({"A1-2425G-ABC1234002,M", "0000-0000-D07A-0090,Q", "0000-0000-3A8D-0000,Z"})
    void agreesWithPublishedIdentifiers(String without, char check) {
        assertThat(CheckCharacter.of(without)).isEqualTo(check);
    }

    @Test
    void countsNeitherHyphensNorTheSizeOfLetters() {
        assertThat(CheckCharacter.of("bf-07"))
                .isEqualTo(CheckCharacter.of("BF07"))
                .isEqualTo('F');
    }

    /** Every wrong character is noticed; of the swaps of neighbours that differ the standard promises nearly all: 35 in 36 at least. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void noticesAWrongCharacterAlwaysAndASwapNearlyAlways(long seed) {
        SplittableRandom chance = new SplittableRandom(seed);
        int swaps = 0;
        int unnoticed = 0;
        for (int round = 0; round < 400; round++) {
            StringBuilder tag = new StringBuilder();
            for (int length = chance.nextInt(2, 17); tag.length() < length; ) {
                tag.append(ALPHABET.charAt(chance.nextInt(36)));
            }
            char check = CheckCharacter.of(tag.toString());
            for (int at = 0; at < tag.length(); at++) {
                char right = tag.charAt(at);
                for (char other : ALPHABET.toCharArray()) {
                    if (other != right) {
                        tag.setCharAt(at, other);
                        assertThat(CheckCharacter.of(tag.toString())).isNotEqualTo(check);
                    }
                }
                tag.setCharAt(at, right);
                if (at > 0 && tag.charAt(at - 1) != right) {
                    String swapped = tag.substring(0, at - 1) + right + tag.charAt(at - 1) + tag.substring(at + 1);
                    swaps++;
                    unnoticed += CheckCharacter.of(swapped) == check ? 1 : 0;
                }
            }
        }
        assertThat(swaps).isGreaterThan(1000);
        assertThat(unnoticed * 36).isLessThan(swaps);
    }
}
