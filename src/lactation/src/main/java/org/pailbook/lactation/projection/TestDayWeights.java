package org.pailbook.lactation.projection;

import java.util.Optional;
import org.pailbook.lactation.internal.Cholesky;
import org.pailbook.lactation.reference.DailySpread;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.MeanUncertainty;
import org.pailbook.lactation.reference.TraitStandards;

/**
 * The arithmetic of best prediction for one lactation: how much each measurement says of a day or of a total.
 *
 * <p>With {@code Vm} the variances of the measurements, {@code c} their covariances with what is wanted and {@code V} its variance: weights {@code w
 * = Vm^-1 c}, prediction = mean + w' (measured - their means), prediction error variance {@code V - w' c}, reliability {@code w' c / V}. An unsure
 * herd level h with variance v_h moves a sum of k days by k h and its correction by -w'1 h, so {@code (k - w'1)^2 v_h} is added to the
 * error variance; with several traits the herd's levels go together. Where a standard knows how unsure its mean is, that error is part of
 * V instead, so that her tests tell of it too.
 *
 * @see "VanRaden, P. M. (1997). J. Dairy Sci. 80:3015-3022 (abstract read)"
 */
final class TestDayWeights {
    private final TraitStandards standards;
    private final TestRecords records;
    private final double[] deviation;
    private final Cholesky measured;
    /** covariances of what is known of the cow's own level, trait by trait; null where nothing is */
    private final double[][] known;
    /** shapes of the mean's error on the day of each measurement; null where the standard of the trait does not know it */
    private final double[][] shapes;

    TestDayWeights(TraitStandards standards, TestRecords records) {
        this.standards = standards;
        this.records = records;
        int n = records.count();
        deviation = new double[n];
        shapes = new double[n][];
        double[] variances = new double[n * (n + 1) / 2];
        DailySpread fading = standards.first().spread();
        known = knownLevels(standards);
        for (int i = 0, place = 0; i < n; i++) {
            int trait = records.trait(i);
            int day = records.day(i);
            deviation[i] = records.value(i) - standards.standard(trait).meanKg(day);
            double sd = standards.standard(trait).spread().sdPerDay(day);
            Optional<MeanUncertainty> unsure = standards.standard(trait).meanUncertainty();
            shapes[i] = unsure.isPresent() ? MeanUncertainty.ofDay(day) : null;
            double[] together = unsure.isPresent() ? unsure.get().times(shapes[i]) : null;
            for (int j = 0; j <= i; j++) {
                int otherTrait = records.trait(j);
                int otherDay = records.day(j);
                double lasting = standards.lasting(trait, otherTrait) * fading.lastingCorrelation(day, otherDay);
                double shares = day == otherDay ? lasting + standards.daily(trait, otherTrait) : lasting;
                variances[place] = sd * standards.standard(otherTrait).spread().sdPerDay(otherDay) * shares;
                variances[place] -= known == null ? 0 : known[trait][otherTrait];
                if (together != null && otherTrait == trait) {
                    variances[place] += sumOfProducts(together, shapes[j]);
                }
                place++;
            }
            variances[place - 1] += records.extraVarianceShare(i) * sd * sd;
        }
        measured = Cholesky.factorInPlace(variances, n);
    }

    /** Levels of a cow's traits go together as what lasts of them does. */
    private static double[][] knownLevels(TraitStandards standards) {
        int n = standards.traits().size();
        double[][] levels = new double[n][n];
        boolean isAny = false;
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                double variances = standards.standard(i).knownLevelVariance()
                        * standards.standard(j).knownLevelVariance();
                double shares = Math.sqrt(standards.lasting(i, i) * standards.lasting(j, j));
                levels[i][j] = variances == 0 ? 0 : Math.sqrt(variances) * standards.lasting(i, j) / shares;
                isAny |= variances != 0;
            }
        }
        return isAny ? levels : null;
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

    /** Turns b, one number a measurement, into {@code Vm^-1 b}. */
    void solveInPlace(double[] b) {
        measured.solveInPlace(b);
    }

    /** Deviations of all measurements from their means, a fresh array. */
    double[] deviations() {
        return deviation.clone();
    }

    /** Sum of days 1 to {@code toDay} of a trait. */
    Predicted total(int trait, int toDay) {
        LactationStandard standard = standards.standard(trait);
        DailySpread spread = standard.spread();
        double[] covariance = new double[records.count()];
        for (int i = 0; i < covariance.length; i++) {
            int day = records.day(i);
            int other = records.trait(i);
            double own = day <= toDay ? standards.daily(other, trait) * spread.sdPerDay(day) : 0;
            covariance[i] = standards.standard(other).spread().sdPerDay(day)
                    * (standards.lasting(other, trait) * spread.lastingSum(day, toDay) + own);
        }
        return predict(
                trait,
                covariance,
                standard.meanTotalKg(toDay),
                spread.varianceOfTotal(toDay),
                toDay,
                MeanUncertainty.ofTotal(toDay));
    }

    /** One day's value of a trait, as it would be measured. */
    Predicted day(int trait, int day) {
        LactationStandard standard = standards.standard(trait);
        DailySpread spread = standard.spread();
        double[] covariance = new double[records.count()];
        for (int i = 0; i < covariance.length; i++) {
            int other = records.trait(i);
            double lasting = standards.lasting(other, trait) * spread.lastingCorrelation(records.day(i), day);
            double shares = records.day(i) == day ? lasting + standards.daily(other, trait) : lasting;
            covariance[i] = standards.standard(other).spread().sdPerDay(records.day(i)) * spread.sdPerDay(day) * shares;
        }
        return predict(
                trait, covariance, standard.meanKg(day), spread.covariance(day, day), 1, MeanUncertainty.ofDay(day));
    }

    private Predicted predict(
            int trait, double[] covariance, double mean, double variance, int daysSummed, double[] shapesSummed) {
        Optional<MeanUncertainty> unsure = standards.standard(trait).meanUncertainty();
        double all = variance;
        if (known != null) {
            all -= daysSummed * daysSummed * known[trait][trait];
            for (int i = 0; i < covariance.length; i++) {
                covariance[i] -= daysSummed * known[records.trait(i)][trait];
            }
        }
        if (unsure.isPresent()) {
            double[] together = unsure.get().times(shapesSummed);
            all += sumOfProducts(together, shapesSummed);
            for (int i = 0; i < covariance.length; i++) {
                if (records.trait(i) == trait) {
                    covariance[i] += sumOfProducts(together, shapes[i]);
                }
            }
        }
        double[] weights = covariance.clone();
        measured.solveInPlace(weights);
        double value = mean;
        double explained = 0;
        for (int i = 0; i < weights.length; i++) {
            value += weights[i] * deviation[i];
            explained += weights[i] * covariance[i];
        }
        // rounding may leave a hair below zero when every day was measured
        double ownError = Math.max(0, all - explained);
        double reliability = all > 0 ? Math.min(1, explained / all) : 0;
        double herdVariance = herdVariance(trait, weights, daysSummed);
        double shared = herdVariance + learnedVariance(trait, weights, shapesSummed);
        return new Predicted(value, mean, weights, ownError + herdVariance, Math.sqrt(shared), reliability);
    }

    private static double sumOfProducts(double[] left, double[] right) {
        double sum = 0;
        for (int k = 0; k < left.length; k++) {
            sum += left[k] * right[k];
        }
        return sum;
    }

    /** Error by herd levels of which only a standard deviation is known. */
    private double herdVariance(int trait, double[] weights, int daysSummed) {
        int traits = standards.traits().size();
        double[] left = new double[traits];
        left[trait] = daysSummed;
        for (int i = 0; i < weights.length; i++) {
            left[records.trait(i)] -= weights[i];
        }
        double variance = 0;
        for (int i = 0; i < traits; i++) {
            for (int j = 0; j < traits; j++) {
                variance += left[i] * left[j] * standards.herdLevel(i, j);
            }
        }
        return variance;
    }

    /** The part of the error that comes from unsure means, trait by trait; it is within the own error already. */
    private double learnedVariance(int trait, double[] weights, double[] shapesSummed) {
        double variance = 0;
        for (int other = 0; other < standards.traits().size(); other++) {
            Optional<MeanUncertainty> unsure = standards.standard(other).meanUncertainty();
            if (unsure.isPresent()) {
                double[] left = other == trait ? shapesSummed.clone() : new double[MeanUncertainty.SHAPES];
                for (int i = 0; i < weights.length; i++) {
                    for (int k = 0; k < left.length && records.trait(i) == other; k++) {
                        left[k] -= weights[i] * shapes[i][k];
                    }
                }
                variance += unsure.get().between(left, left);
            }
        }
        return variance;
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
