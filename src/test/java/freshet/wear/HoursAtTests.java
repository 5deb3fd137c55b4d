package freshet.wear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import freshet.readings.MeterLog;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class HoursAtTests {

    private static final MeterLog LOG =
            Logs.log("2026-03-01T12:00:00Z", 100, "2026-03-05T12:00:00Z", 180, "2026-03-06T12:00:00Z", 181);

    private static HoursAt at(String moment) {
        return HoursAt.of(LOG, Instant.parse(moment));
    }

    @Test
    void takesAReadingOfTheVeryMoment() {
        assertThat(at("2026-03-05T12:00:00Z")).isEqualTo(new HoursAt(180, 180, 180));
        assertThat(at("2026-03-05T12:00:00Z").loose()).isFalse();
    }

    @Test
    void liesOnAStraightLineBetweenTwoReadingsAndSaysHowLooseThatIs() {
        HoursAt hours = at("2026-03-02T12:00:00Z");
        assertThat(hours.hours()).isCloseTo(120, within(1e-9));
        assertThat(hours.least()).isEqualTo(100);
        assertThat(hours.most()).isEqualTo(180);
        assertThat(hours.loose()).isTrue();
        assertThat(at("2026-03-06T06:00:00Z").loose()).isFalse();
    }

    @Test
    void takesTheNearestReadingWithinADayOutsideThem() {
        assertThat(at("2026-03-06T18:00:00Z")).isEqualTo(new HoursAt(181, 181, 187));
        assertThat(at("2026-03-01T02:00:00Z")).isEqualTo(new HoursAt(100, 90, 100));
        assertThat(at("2026-03-07T12:00:00Z")).isNotNull();
    }

    @Test
    void knowsNothingFartherOutside() {
        assertThat(at("2026-03-07T12:00:01Z")).isNull();
        assertThat(at("2026-02-28T11:59:59Z")).isNull();
        assertThat(HoursAt.of(null, Instant.EPOCH)).isNull();
        assertThat(HoursAt.of(Logs.log(), Instant.EPOCH)).isNull();
    }

    @Test
    void neverGoesBelowNoHours() {
        assertThat(HoursAt.of(Logs.log("2026-03-01T12:00:00Z", 2), Instant.parse("2026-02-28T18:00:00Z")))
                .isEqualTo(new HoursAt(2, 0, 2));
    }
}
