package org.pailbook.lactation.projection;

import org.pailbook.lactation.internal.Cholesky;
import org.pailbook.lactation.reference.DailySpread;
import org.pailbook.lactation.reference.TraitStandards;

/**
 * The arithmetic of best prediction for one lactation: how much each measurement says of a day or of a total.
 *
 * <p>With {@code Vm} the variances of the measurements, {@code c} their covariances with what is wanted and {@code V} its variance: weights {@code w
 * = Vm^-1 c}, prediction = mean + w' (measured - their means), prediction error variance {@code V - w' c}, reliability {@code w' c / V}. An unsure
 * herd level h with variance v_h moves a sum of k days by k h and its correction by -w'1 h, so {@code (k - w'1)^2 v_h} is added to the
 * error variance; with several traits the herd's levels go together.
 *
 * @see "VanRaden, P. M. (1997). J. Dairy Sci. 80:3015-3022 (abstract read)"
 */
final class TestDayWeights {
    private final TraitStandards standards;
    private final TestRecords records;
    private final double[] deviation;
    private final Cholesky measured;

    TestDayWeights(TraitStandards standards, TestRecords records) {
        this.standards = standards;
        this.records = records;
        int n = records.count();
        deviation = new double[n];
        double[] variances = new double[n * (n + 1) / 2];
        DailySpread fading = standards.first().spread();
        for (int i = 0, place = 0; i < n; i++) {
            int trait = records.trait(i);
            int day = records.day(i);
            deviation[i] = records.value(i) - standards.standard(trait).meanKg(day);
            double sd = standards.standard(trait).spread().sdPerDay(day);
            for (int j = 0; j <= i; j++) {
                int otherTrait = records.trait(j);
                int otherDay = records.day(j);
                double lasting = standards.lasting(trait, otherTrait) * fading.lastingCorrelation(day, otherDay);
                double shares = day == otherDay ? lasting + standards.daily(trait, otherTrait) : lasting;
                variances[place++] =
                        sd * standards.standard(otherTrait).spread().sdPerDay(otherDay) * shares;
            }
            variances[place - 1] += records.extraVarianceShare(i) * sd * sd;
        }
        measured = Cholesky.factorInPlace(variances, n);
    }

    TraitStandards standards() {
        return standards;
    }

    TestRecords records() {
        return records;
    }

    /** Measured less mean of the group, unit of the trait. */
    double deviation(int record) {
        return deviation[record];
    }

    /** Sum of days 1 to {@code toDay} of a trait. */
    Predicted total(int trait, int toDay) {
        DailySpread spread = standards.standard(trait).spread();
        double[] covariance = new double[records.count()];
        for (int i = 0; i < covariance.length; i++) {
            int day = records.day(i);
            int other = records.trait(i);
            double own = day <= toDay ? standards.daily(other, trait) * spread.sdPerDay(day) : 0;
            covariance[i] = standards.standard(other).spread().sdPerDay(day)
                    * (standards.lasting(other, trait) * spread.lastingSum(day, toDay) + own);
        }
        return predict(
                trait, covariance, standards.standard(trait).meanTotalKg(toDay), spread.varianceOfTotal(toDay), toDay);
    }

    /** One day's value of a trait, as it would be measured. */
    Predicted day(int trait, int day) {
        DailySpread spread = standards.standard(trait).spread();
        double[] covariance = new double[records.count()];
        for (int i = 0; i < covariance.length; i++) {
            int other = records.trait(i);
            double lasting = standards.lasting(other, trait) * spread.lastingCorrelation(records.day(i), day);
            double shares = records.day(i) == day ? lasting + standards.daily(other, trait) : lasting;
            covariance[i] = standards.standard(other).spread().sdPerDay(records.day(i)) * spread.sdPerDay(day) * shares;
        }
        return predict(trait, covariance, standards.standard(trait).meanKg(day), spread.covariance(day, day), 1);
    }

    private Predicted predict(int trait, double[] covariance, double mean, double variance, int daysSummed) {
        double[] weights = covariance.clone();
        measured.solveInPlace(weights);
        double value = mean;
        double explained = 0;
        double[] herdLeft = new double[standards.traits().size()];
        herdLeft[trait] = daysSummed;
        for (int i = 0; i < weights.length; i++) {
            value += weights[i] * deviation[i];
            explained += weights[i] * covariance[i];
            herdLeft[records.trait(i)] -= weights[i];
        }
        double herdVariance = 0;
        for (int i = 0; i < herdLeft.length; i++) {
            for (int j = 0; j < herdLeft.length; j++) {
                herdVariance += herdLeft[i] * herdLeft[j] * standards.herdLevel(i, j);
            }
        }
        // rounding may leave a hair below zero when every day was measured
        double ownError = Math.max(0, variance - explained);
        double reliability = variance > 0 ? Math.min(1, explained / variance) : 0;
        return new Predicted(value, mean, weights, ownError + herdVariance, Math.sqrt(herdVariance), reliability);
    }

    /**
     * What the measurements say of a day or a total, in the unit of the trait.
     *
     * @param weights of the deviation of each measurement, in order; not copied, for use inside the package only
     * @param variance of the error, herd level included
     * @param herdErrorSd the part of the error all cows of the herd share
     */
    record Predicted(
            double value, double mean, double[] weights, double variance, double herdErrorSd, double reliability) {
        double standardError() {
            return Math.sqrt(variance);
        }
    }
}
