package org.pailbook.lactation.reference;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/** Ordinary least squares of Wilmink's curve, k = .05, on all test days of some lactations: how the shipped standards were made. */
public record WilminkClassFit(double a, double b, double c, double residualSdKg, int tests) {

    /** Of the milk weights. */
    public static WilminkClassFit of(List<Lactation> lactations) {
        return of(lactations, LactationTrait.MILK);
    }

    public static WilminkClassFit of(List<Lactation> lactations, LactationTrait trait) {
        List<double[]> rows = new ArrayList<>();
        for (Lactation lactation : lactations) {
            for (TestDay test : lactation.testDays()) {
                double value = value(test, trait);
                if (!Double.isNaN(value)) {
                    int day = lactation.daysInMilk(test.date());
                    rows.add(new double[] {value, Math.exp(-0.05 * day), day});
                }
            }
        }
        OLSMultipleLinearRegression regression = new OLSMultipleLinearRegression();
        regression.newSampleData(
                rows.stream().mapToDouble(row -> row[0]).toArray(),
                rows.stream().map(row -> new double[] {row[1], row[2]}).toArray(double[][]::new));
        double[] parameters = regression.estimateRegressionParameters();
        return new WilminkClassFit(
                parameters[0], parameters[1], parameters[2], regression.estimateRegressionStandardError(), rows.size());
    }

    /** One day's value of a trait; NaN where it was not measured or a count of 0 has no score. */
    public static double value(TestDay test, LactationTrait trait) {
        double milkKg = test.milkKg().orElse(Double.NaN);
        return switch (trait) {
            case MILK -> milkKg;
            case FAT -> milkKg * test.fatPct().orElse(Double.NaN) / 100;
            case PROTEIN -> milkKg * test.proteinPct().orElse(Double.NaN) / 100;
            case CELLS ->
                test.sccThousandPerMl().orElse(0) > 0
                        ? 3 + Math.log(test.sccThousandPerMl().getAsDouble() / 100) / Math.log(2)
                        : Double.NaN;
        };
    }

    public double kg(int day) {
        return a + b * Math.exp(-0.05 * day) + c * day;
    }
}
