package freshet.reliability;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class TrendCoverageTests {

    private static final TrendCoverage FLEETS = TrendCoverage.of(250, 20260401);

    @Test
    void intervalsHoldTheTruthAsOftenAsTheySay() {
        assertThat(FLEETS.units()).isEqualTo(5000);
        assertThat(List.of(FLEETS.slope(), FLEETS.mean(), FLEETS.nextReading()))
                .allSatisfy(share -> assertThat(share).isBetween(0.935, 0.965));
    }

    @Test
    void hoursToThresholdHoldTheTruthAsOftenAsTheySay() {
        assertThat(List.of(FLEETS.hoursInterval(), FLEETS.hoursLower()))
                .allSatisfy(share -> assertThat(share).isBetween(0.935, 0.965));
    }

    @Test
    void medianSlopesAndPooledSlopesComeNear() {
        // both rest on approximations that a handful of readings strains: ranks by the normal law, standard errors
        // taken as known
        assertThat(FLEETS.robustSlope()).isBetween(0.9, 0.99);
        assertThat(FLEETS.pooledSlope()).isBetween(0.85, 0.965);
    }
}
