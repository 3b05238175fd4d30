package org.pailbook.lactation.summary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ProjectionsTogetherPublishedTest {
    private static ProjectionsTogether fiftyCows(double ownKg, double sharedKg) {
        ProjectionsTogether together = ProjectionsTogether.none();
        for (int cow = 0; cow < 50; cow++) {
            together = together.with(Math.hypot(ownKg, sharedKg), sharedKg);
        }
        return together;
    }

    // derived by hand: sqrt(50) x 600 = 4242.64
    @Test
    void errorsOfTheCowsAloneGrowWithTheRootOfTheirNumber() {
        assertThat(fiftyCows(600, 0).standardErrorOfSumKg()).isCloseTo(4242.64, within(0.005));
    }

    // derived by hand: sqrt(50 x 600^2 + (50 x 150)^2) = 8616.84
    @Test
    void anErrorInTheLevelOfTheHerdDoesNotAverageOut() {
        assertThat(fiftyCows(600, 150).standardErrorOfSumKg()).isCloseTo(8616.84, within(0.005));
    }
}
