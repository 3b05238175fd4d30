package org.pailbook.lactation.projection;

import org.pailbook.lactation.internal.Cholesky;
import org.pailbook.lactation.reference.DailySpread;
import org.pailbook.lactation.reference.LactationStandard;

/**
 * The arithmetic of best prediction for one lactation: how much each test day says of a day or of a total.
 *
 * <p>With {@code Vm} the variances of the tests, {@code c} their covariances with what is wanted and {@code V} its variance: weights {@code w
 * = Vm^-1 c}, prediction = mean + w' (tests - their means), prediction error variance {@code V - w' c}, reliability {@code w' c / V}. An unsure
 * herd level h with variance v_h moves a sum of k days by k h and its correction by -w'1 h, so {@code (k - w'1)^2 v_h} is added
 * to the error variance.
 *
 * @see "VanRaden, P. M. (1997). J. Dairy Sci. 80:3015-3022 (abstract read)"
 */
final class TestDayWeights {
    private final LactationStandard standard;
    private final DailySpread spread;
    private final int[] days;
    private final double[] deviationKg;
    private final Cholesky tests;

    /**
     * @param days in milk of the tests, all different, 1 to the last day of the standard
     * @param milkKg same order
     * @param extraVarianceShare of each test's day variance, for tests told from a part of the day; same order
     */
    TestDayWeights(LactationStandard standard, int[] days, double[] milkKg, double[] extraVarianceShare) {
        this.standard = standard;
        this.spread = standard.spread();
        this.days = days;
        int n = days.length;
        deviationKg = new double[n];
        double[] variances = new double[n * (n + 1) / 2];
        for (int i = 0, place = 0; i < n; i++) {
            deviationKg[i] = milkKg[i] - standard.meanKg(days[i]);
            for (int j = 0; j <= i; j++) {
                variances[place++] = spread.covariance(days[i], days[j]);
            }
            double sd = spread.sdPerDay(days[i]);
            variances[place - 1] += extraVarianceShare[i] * sd * sd;
        }
        tests = Cholesky.factorInPlace(variances, n);
    }

    int count() {
        return days.length;
    }

    double deviationKg(int test) {
        return deviationKg[test];
    }

    /** Sum of days 1 to {@code toDay}. */
    Predicted total(int toDay) {
        double[] covariance = new double[days.length];
        for (int i = 0; i < covariance.length; i++) {
            covariance[i] = spread.covarianceWithTotal(days[i], toDay);
        }
        return predict(covariance, standard.meanTotalKg(toDay), spread.varianceOfTotal(toDay), toDay);
    }

    /** One day's milk, as it would be measured. */
    Predicted day(int day) {
        double[] covariance = new double[days.length];
        for (int i = 0; i < covariance.length; i++) {
            covariance[i] = spread.covariance(days[i], day);
        }
        return predict(covariance, standard.meanKg(day), spread.covariance(day, day), 1);
    }

    private Predicted predict(double[] covariance, double meanKg, double variance, int daysSummed) {
        double[] weights = covariance.clone();
        tests.solveInPlace(weights);
        double kg = meanKg;
        double explained = 0;
        double herdLeft = daysSummed;
        for (int i = 0; i < weights.length; i++) {
            kg += weights[i] * deviationKg[i];
            explained += weights[i] * covariance[i];
            herdLeft -= weights[i];
        }
        // rounding may leave a hair below zero when every day was measured
        double ownError = Math.max(0, variance - explained);
        double herdError = herdLeft * standard.herdLevelSdKgPerDay();
        double reliability = variance > 0 ? Math.min(1, explained / variance) : 0;
        return new Predicted(kg, meanKg, weights, ownError + herdError * herdError, Math.abs(herdError), reliability);
    }

    /**
     * What the tests say of a day or a total.
     *
     * @param weights of the deviation of each test, in order; not copied, for use inside the package only
     * @param variance of the error, herd level included, kg squared
     * @param herdErrorSdKg the part of the error all cows of the herd share, kg
     */
    record Predicted(
            double kg, double meanKg, double[] weights, double variance, double herdErrorSdKg, double reliability) {
        double standardErrorKg() {
            return Math.sqrt(variance);
        }
    }
}
