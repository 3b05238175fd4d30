package org.pailbook.lactation.projection;

/**
 * One past projection beside what the lactation came to.
 *
 * @param tests test days it was made from
 * @param projectedKg 305-day milk as projected
 * @param standardErrorKg of the difference, as the model gave it before any calibration, above 0
 * @param trueKg what it came to
 */
public record ProjectionError(int tests, double projectedKg, double standardErrorKg, double trueKg) {
    public ProjectionError {
        if (tests < 0 || !(standardErrorKg > 0) || !Double.isFinite(projectedKg) || !Double.isFinite(trueKg)) {
            throw new IllegalArgumentException("tests (" + tests + ") must be 0 or more, standardErrorKg ("
                    + standardErrorKg + ") above 0, kg finite: " + projectedKg + ", " + trueKg);
        }
    }

    /** Truth less projection in standard errors. */
    public double standardised() {
        return (trueKg - projectedKg) / standardErrorKg;
    }
}
