package freshet.tags;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class NearTagsTests {

    @Test
    void knowsEachSlipOfTheFinger() {
        assertThat(NearTags.of("bf-07"))
                .contains("BF-08", "BF-O7", "BF-7", "BF07", "BF-070", "XBF-07", "FB-07", "BF-70", "B-F07")
                .doesNotContain("BF-07", "BF-99")
                .hasSizeLessThan(1_300);
    }

    @Test
    void knowsNoneOfWhatIsNoTag() {
        assertThat(NearTags.of("Dyer Court")).isEmpty();
        assertThat(NearTags.of("")).isEmpty();
        assertThat(NearTags.of("a".repeat(5_000))).isEmpty();
    }

    @Test
    void staysWithinTheLengthOfATag() {
        assertThat(NearTags.of("ABCDEFGH12345678"))
                .allSatisfy(tag -> assertThat(tag).hasSizeLessThanOrEqualTo(16));
        assertThat(NearTags.of("ABCDEFGH12345678X")).contains("ABCDEFGH12345678");
    }
}
