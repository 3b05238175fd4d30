package org.pailbook.lactation.projection;

import java.util.List;
import org.pailbook.lactation.internal.Cholesky;
import org.pailbook.lactation.reference.DailySpread;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.MeanUncertainty;

/**
 * The mixed model equations of a herd's mean: coefficients common to the herd first, its season among them, then those of the wanted breed and parity;
 * those of the other groups are eliminated, each with its own prior variance ({@link EliminatedGroup}). What is wanted is the sum of the common ones and
 * those of the wanted group, and the covariance of that sum.
 */
final class HerdMean {
    private static final int SHAPES = MeanUncertainty.SHAPES;
    private static final int COLUMNS = LactationFingerprint.COLUMNS;

    private final LactationFingerprint wanted;
    private final List<EliminatedGroup> others;
    private final HerdStandards.Rules rules;
    private final double[] coefficients = new double[COLUMNS];
    private final double[][] covariance = new double[COLUMNS][COLUMNS];
    private final double spreadFactor;

    /**
     * @param wanted fingerprint of the wanted breed and parity, possibly empty
     * @param others the herd's other groups
     * @param hasSeason whether the herd's calvings can tell of a season
     */
    HerdMean(LactationFingerprint wanted, List<EliminatedGroup> others, HerdStandards.Rules rules, boolean hasSeason) {
        this.wanted = wanted;
        this.others = others;
        this.rules = rules;
        if (hasSeason) {
            solve(COLUMNS, CalvingSeason.WIDEST_SD);
            solve(COLUMNS, CalvingSeason.sd(seasonEstimate(), seasonCovariance()));
        } else {
            solve(SHAPES, 0);
        }
        this.spreadFactor = spreadFactor();
    }

    private double[] seasonEstimate() {
        return new double[] {coefficients[SHAPES], coefficients[SHAPES + 1]};
    }

    private double[][] seasonCovariance() {
        return new double[][] {
            {covariance[SHAPES][SHAPES], covariance[SHAPES][SHAPES + 1]},
            {covariance[SHAPES + 1][SHAPES], covariance[SHAPES + 1][SHAPES + 1]}
        };
    }

    /** @param common coefficients common to the herd: the shapes alone, or the season's waves too */
    private void solve(int common, double seasonSd) {
        double[] herdSd = rules.herdSd();
        double[] groupSd = rules.groupSd();
        int size = common + SHAPES;
        double[] lower = new double[size * (size + 1) / 2];
        double[] right = new double[size];
        for (EliminatedGroup other : others) {
            other.addTo(lower, right, common);
        }
        for (int i = 0; i < size; i++) {
            int column = i < common ? i : i - common;
            right[i] += wanted.deviation[column];
            for (int j = 0; j <= i; j++) {
                lower[Cholesky.at(i, j)] += wanted.shapes[column][j < common ? j : j - common];
            }
            double sd = i < SHAPES ? herdSd[i] : i < common ? seasonSd : groupSd[column];
            lower[Cholesky.at(i, i)] += 1 / (sd * sd);
        }
        Cholesky equations = Cholesky.factorInPlace(lower, size);
        for (int k = 0; k < common; k++) {
            double[] sum = new double[size];
            sum[k] = 1;
            if (k < SHAPES) {
                sum[common + k] = 1;
            }
            equations.solveInPlace(sum);
            for (int l = 0; l < common; l++) {
                covariance[k][l] = sum[l] + (l < SHAPES ? sum[common + l] : 0);
            }
            coefficients[k] = 0;
            for (int i = 0; i < size; i++) {
                coefficients[k] += sum[i] * right[i];
            }
        }
    }

    /**
     * The reference moved to the herd; its spread keeps the reference's pattern over the days.
     *
     * @param pattern the reference's standard deviations with the rhythm learning goes by
     * @param season wave of the calving
     */
    LactationStandard standard(LactationStandard reference, DailySpread pattern, String name, double[] season) {
        double unit = unit(reference);
        double[] shift = new double[SHAPES];
        double[][] scaled = new double[SHAPES][SHAPES];
        for (int k = 0; k < SHAPES; k++) {
            shift[k] = (coefficients[k] + (k == 0 ? seasonLevel(season) : 0)) * unit;
            for (int l = 0; l < SHAPES; l++) {
                scaled[k][l] = (covariance[k][l] + seasonPart(k, l, season)) * unit * unit;
            }
        }
        return reference.learned(name, shift, pattern.times(spreadFactor), MeanUncertainty.of(scaled));
    }

    /** The calving season's part of the level, unit of the reference a day. */
    double seasonShift(LactationStandard reference, double[] season) {
        return seasonLevel(season) * unit(reference);
    }

    private static double unit(LactationStandard reference) {
        return reference.spread().sdPerDay(LactationFingerprint.MIDDLE_DAY);
    }

    private double seasonLevel(double[] season) {
        return season[0] * coefficients[SHAPES] + season[1] * coefficients[SHAPES + 1];
    }

    /** What the season's own error adds: it moves the level, shape 0. */
    private double seasonPart(int k, int l, double[] season) {
        double part = 0;
        for (int wave = 0; wave < CalvingSeason.WAVES; wave++) {
            part += l == 0 ? season[wave] * covariance[k][SHAPES + wave] : 0;
            part += k == 0 ? season[wave] * covariance[SHAPES + wave][l] : 0;
            for (int other = 0; k == 0 && l == 0 && other < CalvingSeason.WAVES; other++) {
                part += season[wave] * season[other] * covariance[SHAPES + wave][SHAPES + other];
            }
        }
        return part;
    }

    /** Departure of a lactation from the learned mean of its group: {@code 1'R^-1 (d - X b)} over the learned spread. */
    double levelDeviation(LactationFingerprint lactation) {
        double deviation = lactation.deviation[0];
        for (int k = 0; k < COLUMNS; k++) {
            deviation -= coefficients[k] * lactation.shapes[0][k];
        }
        return deviation / spreadFactor;
    }

    /** Root of the expected square of deviations from the learned mean over their number, shrunk to 1. */
    private double spreadFactor() {
        double square = wanted.square;
        for (int k = 0; k < COLUMNS; k++) {
            square -= 2 * coefficients[k] * wanted.deviation[k];
            for (int l = 0; l < COLUMNS; l++) {
                square += wanted.shapes[k][l] * (coefficients[k] * coefficients[l] + covariance[k][l]);
            }
        }
        return Math.sqrt((rules.spreadTests() + Math.max(0, square)) / (rules.spreadTests() + wanted.tests));
    }
}
