package org.pailbook.lactation.projection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.testday.Lactation;

/**
 * One cow worked by hand from the published formula, with the inverse of the three by three matrix written out: VanRaden 1997, J. Dairy Sci.
 * 80:3015-3022 (abstract read), {@code w = Vm^-1 c}, {@code yhat = 1'mu + w'd}, {@code PEV = 1'V1 - w'c}; and the herd level's part {@code
 * (305 - w'1)^2 v_h} (derived).
 */
class BestPredictionByHandPublishedTest {
    // Holstein, second or later parity, as shipped: Wilmink a, b, c, spread, r, e, herd level
    private static final double A = 37.529783;
    private static final double B = -14.050465;
    private static final double C = -0.07112310;
    private static final double SD = 5.779801;
    private static final double R = 0.995;
    private static final double E = 0.20;
    private static final double HERD = 2.311920;

    @Test
    void projectionAndIntervalOfACowWithThreeTests() {
        // days 14, 42, 73 with 38.4, 41.2 and 36.9 kg
        int[] day = {14, 42, 73};
        double[] milkKg = {38.4, 41.2, 36.9};

        double meanTotal = 0;
        for (int t = 1; t <= 305; t++) {
            meanTotal += A + B * Math.exp(-0.05 * t) + C * t;
        }
        double[] d = new double[3];
        double[] c = new double[3];
        for (int i = 0; i < 3; i++) {
            d[i] = milkKg[i] - (A + B * Math.exp(-0.05 * day[i]) + C * day[i]);
            double row = (1 + R - Math.pow(R, day[i]) - Math.pow(R, 306 - day[i])) / (1 - R);
            c[i] = SD * SD * ((1 - E) * row + E);
        }
        double variance = SD * SD;
        double v12 = variance * (1 - E) * Math.pow(R, 28);
        double v13 = variance * (1 - E) * Math.pow(R, 59);
        double v23 = variance * (1 - E) * Math.pow(R, 31);

        // adjugate over determinant
        double determinant = variance * (variance * variance - v23 * v23)
                - v12 * (v12 * variance - v13 * v23)
                + v13 * (v12 * v23 - v13 * variance);
        double i11 = (variance * variance - v23 * v23) / determinant;
        double i12 = (v13 * v23 - v12 * variance) / determinant;
        double i13 = (v12 * v23 - v13 * variance) / determinant;
        double i22 = (variance * variance - v13 * v13) / determinant;
        double i23 = (v12 * v13 - v23 * variance) / determinant;
        double i33 = (variance * variance - v12 * v12) / determinant;

        double w1 = i11 * c[0] + i12 * c[1] + i13 * c[2];
        double w2 = i12 * c[0] + i22 * c[1] + i23 * c[2];
        double w3 = i13 * c[0] + i23 * c[1] + i33 * c[2];

        double all = (305 * (1 - R * R) - 2 * R * (1 - Math.pow(R, 305))) / ((1 - R) * (1 - R));
        double varianceOfTotal = variance * ((1 - E) * all + 305 * E);
        double explained = w1 * c[0] + w2 * c[1] + w3 * c[2];
        double expectedKg = meanTotal + w1 * d[0] + w2 * d[1] + w3 * d[2];
        double herd = (305 - w1 - w2 - w3) * HERD;
        double error = Math.sqrt(varianceOfTotal - explained + herd * herd);

        LactationStandard standard = LactationStandards.forCow("HOL", 3);
        Lactation lactation = WorkedCow.withTests(14, 38.4, 42, 41.2, 73, 36.9);
        Projection305 projection = new BestPrediction().project(lactation, standard, WorkedCow.CALVING.plusDays(75));
        Figure milk = projection.milk305();

        assertThat(milk.orThrow()).isCloseTo(expectedKg, within(1e-6));
        assertThat(projection.reliabilityShare()).isCloseTo(explained / varianceOfTotal, within(1e-9));
        assertThat(projection.standardErrorKg()).isCloseTo(error, within(1e-6));
        // normal distribution: 1.28155 and 1.95996 standard errors
        assertThat(milk.interval(0.80).orElseThrow().low()).isCloseTo(expectedKg - 1.281551566 * error, within(1e-4));
        assertThat(milk.interval(0.80).orElseThrow().high()).isCloseTo(expectedKg + 1.281551566 * error, within(1e-4));
        assertThat(milk.interval(0.95).orElseThrow().low()).isCloseTo(expectedKg - 1.959963985 * error, within(1e-4));
        assertThat(milk.interval(0.95).orElseThrow().high()).isCloseTo(expectedKg + 1.959963985 * error, within(1e-4));
        assertThat(milk.explanation().parts().get(2).amount()).isCloseTo(w2 * d[1], within(1e-6));
    }
}
