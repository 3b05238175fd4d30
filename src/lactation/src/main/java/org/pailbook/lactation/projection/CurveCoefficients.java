package org.pailbook.lactation.projection;

import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.internal.Cholesky;
import org.pailbook.lactation.reference.DailySpread;
import org.pailbook.lactation.reference.TraitStandards;

/**
 * (Co)variances of the three coefficients of {@code A + B t + C exp(-0.05 t)} within a group of cows, worked out from how their days depart from the
 * mean: the curve that fits the lasting departures of days 1 to 305 best takes its part of the variance (G), what it cannot follow
 * stays with the single days, with the daily error (R).
 *
 * <p>With P the least squares fit of the curve to 305 days and A the covariance of the lasting departures of two traits: {@code G = P A P'}, and
 * the misfit of a day is its diagonal element of {@code (I - X P) A (I - X P)'}. Derived, ours: the method's own estimates from
 * national data were not read.
 */
final class CurveCoefficients {
    static final int COEFFICIENTS = 3;
    private static final int DAYS = DaysInMilk.STANDARD_LACTATION_DAYS;
    private static final double DECAY_PER_DAY = 0.05;

    private final int traits;
    /** trait by trait, coefficients within trait */
    private final double[][] covariance;
    /** by trait, trait and day */
    private final double[][][] residual;

    CurveCoefficients(TraitStandards standards) {
        traits = standards.traits().size();
        covariance = new double[traits * COEFFICIENTS][traits * COEFFICIENTS];
        residual = new double[traits][traits][DAYS + 1];
        double[][] fit = leastSquaresFit();
        double[][][][] fitted = new double[traits][traits][][];
        for (int i = 0; i < traits; i++) {
            for (int j = 0; j < traits; j++) {
                fitted[i][j] = fitted(standards, fit, i, j);
            }
        }
        for (int i = 0; i < traits; i++) {
            for (int j = 0; j < traits; j++) {
                addCovariance(fitted[i][j], fit, i, j);
                addResidual(standards, fitted, i, j);
            }
        }
    }

    /** Value of coefficient {@code k} (0 for A, 1 for B, 2 for C) on a day. */
    static double regressor(int k, int day) {
        return k == 0 ? 1 : k == 1 ? day : Math.exp(-DECAY_PER_DAY * day);
    }

    int traits() {
        return traits;
    }

    /** G; row and column are trait times 3 plus coefficient. */
    double covariance(int row, int column) {
        return covariance[row][column];
    }

    /** R of two traits on a day. */
    double residual(int trait, int otherTrait, int day) {
        return residual[trait][otherTrait][day];
    }

    /** P A: 3 rows, index of the column is the day of trait j. */
    private static double[][] fitted(TraitStandards standards, double[][] fit, int i, int j) {
        DailySpread spreadI = standards.standard(i).spread();
        DailySpread spreadJ = standards.standard(j).spread();
        DailySpread fading = standards.first().spread();
        double[][] fitted = new double[COEFFICIENTS][DAYS + 1];
        for (int s = 1; s <= DAYS; s++) {
            for (int t = 1; t <= DAYS; t++) {
                double lasting = standards.lasting(i, j)
                        * spreadI.sdPerDay(t)
                        * spreadJ.sdPerDay(s)
                        * fading.lastingCorrelation(t, s);
                for (int k = 0; k < COEFFICIENTS; k++) {
                    fitted[k][s] += fit[k][t] * lasting;
                }
            }
        }
        return fitted;
    }

    private void addCovariance(double[][] fitted, double[][] fit, int i, int j) {
        for (int k = 0; k < COEFFICIENTS; k++) {
            for (int l = 0; l < COEFFICIENTS; l++) {
                double sum = 0;
                for (int s = 1; s <= DAYS; s++) {
                    sum += fitted[k][s] * fit[l][s];
                }
                covariance[i * COEFFICIENTS + k][j * COEFFICIENTS + l] = sum;
            }
        }
    }

    /** Daily error and the diagonal of {@code A - X P A - A P' X' + X P A P' X'}. */
    private void addResidual(TraitStandards standards, double[][][][] fitted, int i, int j) {
        for (int t = 1; t <= DAYS; t++) {
            double scale = standards.standard(i).spread().sdPerDay(t)
                    * standards.standard(j).spread().sdPerDay(t);
            double misfit = standards.lasting(i, j) * scale;
            for (int k = 0; k < COEFFICIENTS; k++) {
                misfit -= regressor(k, t) * (fitted[i][j][k][t] + fitted[j][i][k][t]);
                for (int l = 0; l < COEFFICIENTS; l++) {
                    misfit +=
                            regressor(k, t) * covariance[i * COEFFICIENTS + k][j * COEFFICIENTS + l] * regressor(l, t);
                }
            }
            residual[i][j][t] = standards.daily(i, j) * scale + misfit;
        }
    }

    /** {@code (X'X)^-1 X'}: 3 rows, index of the column is the day. */
    private static double[][] leastSquaresFit() {
        double[] normal = new double[COEFFICIENTS * (COEFFICIENTS + 1) / 2];
        for (int t = 1; t <= DAYS; t++) {
            for (int k = 0; k < COEFFICIENTS; k++) {
                for (int l = 0; l <= k; l++) {
                    normal[Cholesky.at(k, l)] += regressor(k, t) * regressor(l, t);
                }
            }
        }
        Cholesky factor = Cholesky.factorInPlace(normal, COEFFICIENTS);
        double[][] fit = new double[COEFFICIENTS][DAYS + 1];
        double[] column = new double[COEFFICIENTS];
        for (int t = 1; t <= DAYS; t++) {
            for (int k = 0; k < COEFFICIENTS; k++) {
                column[k] = regressor(k, t);
            }
            factor.solveInPlace(column);
            for (int k = 0; k < COEFFICIENTS; k++) {
                fit[k][t] = column[k];
            }
        }
        return fit;
    }
}
