package org.pailbook.lactation.projection;

import java.util.List;
import org.pailbook.lactation.internal.Cholesky;
import org.pailbook.lactation.reference.DailySpread;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.MeanUncertainty;

/**
 * The mixed model equations of a herd's mean: coefficients common to the herd first, then those of each breed and parity, each with its own prior
 * variance. What is wanted is the sum of the common ones and those of the first group, and the covariance of that sum.
 */
final class HerdMean {
    private static final int SHAPES = MeanUncertainty.SHAPES;

    private final LactationFingerprint group;
    private final double[] coefficients = new double[SHAPES];
    private final double[][] covariance = new double[SHAPES][SHAPES];
    private final double spreadTests;

    /** @param groups fingerprints of the herd by breed and parity, the wanted group first, each possibly empty */
    HerdMean(List<LactationFingerprint> groups, HerdStandards.Rules rules) {
        this.group = groups.get(0);
        this.spreadTests = rules.spreadTests();
        double[] herdSd = rules.herdSd();
        double[] groupSd = rules.groupSd();
        int size = SHAPES * (groups.size() + 1);
        double[] lower = new double[size * (size + 1) / 2];
        double[] right = new double[size];
        for (int g = 0; g < groups.size(); g++) {
            LactationFingerprint print = groups.get(g);
            int at = SHAPES * (g + 1);
            for (int k = 0; k < SHAPES; k++) {
                right[k] += print.deviation[k];
                right[at + k] = print.deviation[k];
                for (int l = 0; l < SHAPES; l++) {
                    lower[Cholesky.at(at + k, l)] = print.shapes[k][l];
                    if (l <= k) {
                        lower[Cholesky.at(k, l)] += print.shapes[k][l];
                        lower[Cholesky.at(at + k, at + l)] = print.shapes[k][l];
                    }
                }
            }
        }
        for (int i = 0; i < size; i++) {
            double sd = i < SHAPES ? herdSd[i] : groupSd[i % SHAPES];
            lower[Cholesky.at(i, i)] += 1 / (sd * sd);
        }
        Cholesky equations = Cholesky.factorInPlace(lower, size);
        for (int k = 0; k < SHAPES; k++) {
            double[] sum = new double[size];
            sum[k] = 1;
            sum[SHAPES + k] = 1;
            equations.solveInPlace(sum);
            for (int l = 0; l < SHAPES; l++) {
                covariance[k][l] = sum[l] + sum[SHAPES + l];
            }
            for (int i = 0; i < size; i++) {
                coefficients[k] += sum[i] * right[i];
            }
        }
    }

    /**
     * The reference moved to the herd; its spread keeps the reference's pattern over the days.
     *
     * @param pattern the reference's standard deviations with the rhythm learning goes by
     */
    LactationStandard standard(LactationStandard reference, DailySpread pattern, String name) {
        double unit = reference.spread().sdPerDay(LactationFingerprint.MIDDLE_DAY);
        double[] shift = new double[SHAPES];
        double[][] scaled = new double[SHAPES][SHAPES];
        for (int k = 0; k < SHAPES; k++) {
            shift[k] = coefficients[k] * unit;
            for (int l = 0; l < SHAPES; l++) {
                scaled[k][l] = covariance[k][l] * unit * unit;
            }
        }
        return reference.learned(name, shift, pattern.times(spreadFactor()), MeanUncertainty.of(scaled));
    }

    /** Departure of a lactation from the learned mean of its group: {@code 1'R^-1 (d - X b)} over the learned spread. */
    double levelDeviation(LactationFingerprint lactation) {
        double deviation = lactation.deviation[0];
        for (int k = 0; k < SHAPES; k++) {
            deviation -= coefficients[k] * lactation.shapes[0][k];
        }
        return deviation / spreadFactor();
    }

    /** Root of the expected square of deviations from the learned mean over their number, shrunk to 1. */
    private double spreadFactor() {
        double square = group.square;
        for (int k = 0; k < SHAPES; k++) {
            square -= 2 * coefficients[k] * group.deviation[k];
            for (int l = 0; l < SHAPES; l++) {
                square += group.shapes[k][l] * (coefficients[k] * coefficients[l] + covariance[k][l]);
            }
        }
        return Math.sqrt((spreadTests + Math.max(0, square)) / (spreadTests + group.tests));
    }
}
