package org.pailbook.lactation.projection;

import java.util.List;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.internal.Cholesky;
import org.pailbook.lactation.reference.DailySpread;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.reference.MeanUncertainty;
import org.pailbook.lactation.testday.UsableTests;

/**
 * All that one lactation tells of its group's mean and spread for one trait: with d the deviations from the reference in standard deviations, X the
 * shapes on their days and R their correlations, {@code X'R^-1 X}, {@code X'R^-1 d}, {@code d'R^-1 d} and their number. These add up over
 * lactations, older ones with less weight, and a cow's own can be taken off again. The shapes are those of the mean and then the waves of the
 * {@link CalvingSeason}.
 */
final class LactationFingerprint {
    static final int SHAPES = MeanUncertainty.SHAPES;
    static final int COLUMNS = SHAPES + CalvingSeason.WAVES;

    /** Shapes are in standard deviations of this day, the middle of the lactation. */
    static final int MIDDLE_DAY = 153;

    final double[][] shapes = new double[COLUMNS][COLUMNS];
    final double[] deviation = new double[COLUMNS];
    double square;
    double tests;

    /**
     * @param season wave of the calving
     * @param rhythm spread of standard deviation 1 whose correlations are used
     */
    static LactationFingerprint of(
            UsableTests usable,
            LactationTrait trait,
            double[] season,
            LactationStandard reference,
            DailySpread rhythm) {
        LactationFingerprint print = new LactationFingerprint();
        // tests after day 305 say nothing of the shapes, which end there
        TestRecords records = TestRecords.of(usable, List.of(trait), DaysInMilk.STANDARD_LACTATION_DAYS, test -> 0);
        int n = records.count();
        double[] lower = new double[n * (n + 1) / 2];
        double[][] columns = new double[COLUMNS + 1][n];
        double unit = reference.spread().sdPerDay(MIDDLE_DAY);
        for (int i = 0; i < n; i++) {
            int day = records.day(i);
            for (int j = 0; j <= i; j++) {
                lower[Cholesky.at(i, j)] = rhythm.covariance(day, records.day(j));
            }
            for (int k = 0; k < SHAPES; k++) {
                columns[k][i] = MeanUncertainty.shape(k, day);
            }
            for (int k = 0; k < season.length; k++) {
                columns[SHAPES + k][i] = season[k];
            }
            columns[COLUMNS][i] = (records.value(i) - reference.meanKg(day))
                    / reference.spread().sdPerDay(day);
        }
        Cholesky factor = Cholesky.factorInPlace(lower, n);
        for (double[] column : columns) {
            factor.forwardInPlace(column);
        }
        for (int i = 0; i < n; i++) {
            double own = columns[COLUMNS][i];
            print.square += own * own;
            for (int k = 0; k < COLUMNS; k++) {
                print.deviation[k] += columns[k][i] * own;
                for (int l = 0; l < COLUMNS; l++) {
                    print.shapes[k][l] += columns[k][i] * columns[l][i];
                }
            }
        }
        print.tests = n;
        return print;
    }

    /** Adds another with a weight; a weight below 0 takes it off. */
    void add(LactationFingerprint other, double weight) {
        square += weight * other.square;
        tests += weight * other.tests;
        for (int k = 0; k < COLUMNS; k++) {
            deviation[k] += weight * other.deviation[k];
            for (int l = 0; l < COLUMNS; l++) {
                shapes[k][l] += weight * other.shapes[k][l];
            }
        }
    }

    LactationFingerprint copy() {
        LactationFingerprint copy = new LactationFingerprint();
        copy.add(this, 1);
        return copy;
    }
}
