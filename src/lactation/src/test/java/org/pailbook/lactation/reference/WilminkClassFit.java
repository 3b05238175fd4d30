package org.pailbook.lactation.reference;

import java.util.List;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/** Ordinary least squares of Wilmink's curve, k = .05, on all test days of some lactations: how the shipped standards were made. */
public record WilminkClassFit(double a, double b, double c, double residualSdKg, int tests) {

    public static WilminkClassFit of(List<Lactation> lactations) {
        int tests = lactations.stream().mapToInt(one -> one.testDays().size()).sum();
        double[] milkKg = new double[tests];
        double[][] regressors = new double[tests][];
        int row = 0;
        for (Lactation lactation : lactations) {
            for (TestDay test : lactation.testDays()) {
                int day = lactation.daysInMilk(test.date());
                milkKg[row] = test.milkKg().orElseThrow();
                regressors[row++] = new double[] {Math.exp(-0.05 * day), day};
            }
        }
        OLSMultipleLinearRegression regression = new OLSMultipleLinearRegression();
        regression.newSampleData(milkKg, regressors);
        double[] parameters = regression.estimateRegressionParameters();
        return new WilminkClassFit(
                parameters[0], parameters[1], parameters[2], regression.estimateRegressionStandardError(), tests);
    }

    public double kg(int day) {
        return a + b * Math.exp(-0.05 * day) + c * day;
    }
}
