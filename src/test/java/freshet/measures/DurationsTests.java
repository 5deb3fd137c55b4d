package freshet.measures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DurationsTests {

    @ParameterizedTest
    @CsvSource({"113.9,113.9", "1:53.9,113.9", "25 s,25", "1:02:03,3723", "0:09,9"})
    void readsAStopwatch(String typed, double seconds) {
        assertThat(Durations.parseSeconds(typed)).isEqualTo(seconds);
    }

    @ParameterizedTest
    @ValueSource(strings = {"1:5o", "1:75", "", "-3", "soon", "1:2:3:4"})
    void refusesWhatNoStopwatchShows(String typed) {
        assertThatThrownBy(() -> Durations.parseSeconds(typed)).isInstanceOf(NotAMeasure.class);
    }

    @ParameterizedTest
    @CsvSource({"2h 15,135", "2 h,120", "135,135", "135 min,135", "2:15,135", "1.5h,90"})
    void readsMinutesOfWork(String typed, double minutes) {
        assertThat(Durations.parseMinutes(typed)).isEqualTo(minutes);
    }
}
