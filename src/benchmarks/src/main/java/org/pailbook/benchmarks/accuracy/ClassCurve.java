package org.pailbook.benchmarks.accuracy;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;
import org.pailbook.lactation.projection.ReferenceStandards;
import org.pailbook.lactation.reference.DailySpread;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.testday.TestDay;

/** Wilmink's curve, {@code a + b exp(-.05 t) + c t}, by ordinary least squares through all tests of a class: breed and first or later parity. */
record ClassCurve(double a, double b, double c, double residualSd) {

    static ClassCurve of(List<KnownLactation> lactations, String breed, boolean first, LactationTrait trait) {
        List<double[]> days = new ArrayList<>();
        List<Double> values = new ArrayList<>();
        for (KnownLactation one : lactations) {
            if (one.breed().equals(breed) && (one.lactation().parity() == 1) == first) {
                for (TestDay test : one.lactation().testDays()) {
                    OptionalDouble value = value(test, trait);
                    if (value.isPresent()) {
                        int day = one.lactation().daysInMilk(test.date());
                        days.add(new double[] {Math.exp(-0.05 * day), day});
                        values.add(value.getAsDouble());
                    }
                }
            }
        }
        OLSMultipleLinearRegression fit = new OLSMultipleLinearRegression();
        fit.newSampleData(values.stream().mapToDouble(Double::doubleValue).toArray(), days.toArray(double[][]::new));
        double[] p = fit.estimateRegressionParameters();
        return new ClassCurve(p[0], p[1], p[2], fit.estimateRegressionStandardError());
    }

    /** Reference standards made from these lactations alone, for a herd's learning to start from. */
    static ReferenceStandards reference(List<KnownLactation> lactations) {
        return (breed, parity, trait) -> {
            ClassCurve curve = of(lactations, breed, parity == 1, trait);
            return LactationStandard.of(
                    breed + (parity == 1 ? ", parity 1" : ", parity 2 or more"),
                    org.pailbook.lactation.reference.LactationStandards.SOURCE,
                    curve::on,
                    DailySpread.constant(curve.residualSd(), 0.998, 0.2));
        };
    }

    private static OptionalDouble value(TestDay test, LactationTrait trait) {
        OptionalDouble pct = trait == LactationTrait.FAT ? test.fatPct() : test.proteinPct();
        return switch (trait) {
            case MILK -> test.milkKg();
            case FAT, PROTEIN ->
                pct.isPresent() && test.milkKg().isPresent()
                        ? OptionalDouble.of(test.milkKg().getAsDouble() * pct.getAsDouble() / 100)
                        : OptionalDouble.empty();
            case CELLS ->
                test.sccThousandPerMl().orElse(0) > 0
                        ? OptionalDouble.of(3 + Math.log(test.sccThousandPerMl().getAsDouble() / 100) / Math.log(2))
                        : OptionalDouble.empty();
        };
    }

    double on(int day) {
        return a + b * Math.exp(-0.05 * day) + c * day;
    }

    double total(int fromDay, int toDay) {
        double sum = 0;
        for (int day = fromDay; day <= toDay; day++) {
            sum += on(day);
        }
        return sum;
    }
}
