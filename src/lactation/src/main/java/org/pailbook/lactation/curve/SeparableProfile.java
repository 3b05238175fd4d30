package org.pailbook.lactation.curve;

import java.util.Arrays;
import org.pailbook.lactation.internal.LinearLeastSquares;
import org.pailbook.lactation.internal.ProfileSearch;

/** Sum of squares over one rate of a curve that is linear in all its other parameters. */
final class SeparableProfile implements ProfileSearch.Profile {
    /** Writes the design row of a day at a rate. */
    interface Row {
        void fill(double rate, double daysInMilk, double[] row);
    }

    /** Change of the milk of a day with the rate, the linear coefficients held. */
    interface RateDerivative {
        double at(double rate, double daysInMilk, double[] coefficients);
    }

    private final double[] daysInMilk;
    private final double[] milkKg;
    private final Row row;
    private final RateDerivative derivative;
    private final double[] design;
    private final double[] oneRow;

    SeparableProfile(double[] daysInMilk, double[] milkKg, int coefficients, Row row, RateDerivative derivative) {
        this.daysInMilk = daysInMilk;
        this.milkKg = milkKg;
        this.row = row;
        this.derivative = derivative;
        this.design = new double[coefficients * daysInMilk.length];
        this.oneRow = new double[coefficients];
    }

    @Override
    public double rss(double rate) {
        double[] coefficients = coefficientsAt(rate);
        double sum = 0;
        for (int i = 0; i < milkKg.length; i++) {
            double residual = residual(rate, i, coefficients);
            sum += residual * residual;
        }
        return sum;
    }

    @Override
    public double slope(double rate) {
        double[] coefficients = coefficientsAt(rate);
        double sum = 0;
        for (int i = 0; i < milkKg.length; i++) {
            sum -= 2 * residual(rate, i, coefficients) * derivative.at(rate, daysInMilk[i], coefficients);
        }
        return sum;
    }

    /** The best linear coefficients at that rate; NaN where there are none. */
    double[] coefficientsAt(double rate) {
        int tests = daysInMilk.length;
        for (int i = 0; i < tests; i++) {
            row.fill(rate, daysInMilk[i], oneRow);
            for (int k = 0; k < oneRow.length; k++) {
                design[k * tests + i] = oneRow[k];
            }
        }
        LinearLeastSquares solution = LinearLeastSquares.solve(design, oneRow.length, milkKg);
        double[] coefficients = solution.coefficients();
        if (solution.isSingular()) {
            Arrays.fill(coefficients, Double.NaN);
        }
        return coefficients;
    }

    private double residual(double rate, int i, double[] coefficients) {
        row.fill(rate, daysInMilk[i], oneRow);
        double fitted = 0;
        for (int k = 0; k < coefficients.length; k++) {
            fitted += coefficients[k] * oneRow[k];
        }
        return milkKg[i] - fitted;
    }
}
