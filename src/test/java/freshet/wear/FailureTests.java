package freshet.wear;

import static org.assertj.core.api.Assertions.assertThat;

import freshet.findings.Finding;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

class FailureTests {

    private static final Instant FROM = Instant.parse("2025-01-01T06:00:00Z");
    private static final Instant TO = Instant.parse("2026-01-01T06:00:00Z");

    private static List<Failure> failures(Finding... findings) {
        return Failure.of(List.of(findings), FROM, TO);
    }

    private static Failure failure(String down, String up) {
        return new Failure(Instant.parse(down), up == null ? null : Instant.parse(up));
    }

    @Test
    void countsFindingsThatStopUse() {
        assertThat(failures(
                        Logs.finding(2, "2025-02-01T12:00:00Z", "2025-02-02T12:00:00Z"),
                        Logs.finding(3, "2025-03-01T12:00:00Z", "2025-03-02T12:00:00Z"),
                        Logs.finding(4, "2025-04-01T12:00:00Z", null)))
                .containsExactly(
                        failure("2025-03-01T12:00:00Z", "2025-03-02T12:00:00Z"), failure("2025-04-01T12:00:00Z", null));
    }

    @Test
    void countsWhatIsFoundWhileTheUnitIsDownAsOneFailure() {
        assertThat(failures(
                        Logs.finding(3, "2025-03-01T12:00:00Z", "2025-03-05T12:00:00Z"),
                        Logs.finding(4, "2025-03-01T12:00:00Z", "2025-03-02T12:00:00Z"),
                        Logs.finding(3, "2025-03-04T12:00:00Z", "2025-03-09T12:00:00Z"),
                        Logs.finding(3, "2025-03-09T12:00:00Z", "2025-03-10T12:00:00Z")))
                .containsExactly(
                        failure("2025-03-01T12:00:00Z", "2025-03-09T12:00:00Z"),
                        failure("2025-03-09T12:00:00Z", "2025-03-10T12:00:00Z"));
        assertThat(failures(
                        Logs.finding(3, "2025-03-01T12:00:00Z", null),
                        Logs.finding(4, "2025-06-01T12:00:00Z", "2025-06-02T12:00:00Z")))
                .containsExactly(failure("2025-03-01T12:00:00Z", null));
    }

    @Test
    void leavesOutWhatLiesOutsideItsCareAndCountsAnOpenOneToItsEnd() {
        List<Failure> failures = failures(
                Logs.finding(3, "2024-12-31T12:00:00Z", "2025-03-05T12:00:00Z"),
                Logs.finding(3, "2025-12-30T06:00:00Z", "2026-02-01T00:00:00Z"),
                Logs.finding(3, "2026-01-02T12:00:00Z", null));
        assertThat(failures).containsExactly(failure("2025-12-30T06:00:00Z", "2026-02-01T00:00:00Z"));
        assertThat(failures.get(0).downHours(TO)).isEqualTo(48);
        assertThat(failure("2025-12-31T06:00:00Z", null).downHours(TO)).isEqualTo(24);
    }
}
