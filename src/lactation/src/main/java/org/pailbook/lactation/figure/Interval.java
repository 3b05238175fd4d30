package org.pailbook.lactation.figure;

/**
 * A prediction interval: the share of cases in which the truth is expected between the two ends.
 *
 * @param coverageShare 0.80 for an 80 % interval
 * @param low lower end, unit of the figure
 * @param high upper end, unit of the figure
 */
public record Interval(double coverageShare, double low, double high) {

    public Interval {
        if (!(coverageShare > 0 && coverageShare < 1)) {
            throw new IllegalArgumentException("coverageShare (" + coverageShare + ") must lie between 0 and 1");
        }
        if (!(low <= high)) {
            throw new IllegalArgumentException("low (" + low + ") must not be above high (" + high + ")");
        }
    }
}
