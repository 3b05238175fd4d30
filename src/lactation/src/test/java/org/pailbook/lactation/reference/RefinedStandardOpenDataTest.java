package org.pailbook.lactation.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pailbook.lactation.OpenTestDays;
import org.pailbook.lactation.SharedData;
import org.pailbook.lactation.testday.TestDay;

/** The refined standards, made again from the open test days with dense matrices of Commons Math: generalised least squares. */
class RefinedStandardOpenDataTest {

    @ParameterizedTest
    @CsvSource({"Holstein, 1", "Holstein, 2", "RDM, 1", "RDM, 2", "Jersey, 1", "Jersey, 2", "any, 1", "any, 2"})
    void shippedFiguresComeOutOfTheData(String breed, int parity) {
        List<OpenTestDays> group = OpenTestDays.read(SharedData.orSkip()).stream()
                .filter(one -> one.isOfClass(breed.equals("any") ? one.breed() : breed, parity == 1))
                .toList();
        for (LactationTrait trait : LactationTrait.values()) {
            LactationStandard shipped = LactationStandards.refinedForCow(breed, parity, trait);
            DailySpread unit = shipped.spread().withSdPerDay(new double[] {1});
            RealMatrix left = new Array2DRowRealMatrix(4, 4);
            RealVector right = new ArrayRealVector(4);
            double squares = 0;
            int tests = 0;
            for (OpenTestDays one : group) {
                List<TestDay> measured = one.lactation().testDays().stream()
                        .filter(test -> !Double.isNaN(WilminkClassFit.value(test, trait)))
                        .toList();
                int n = measured.size();
                RealMatrix x = new Array2DRowRealMatrix(n, 4);
                RealMatrix v = new Array2DRowRealMatrix(n, n);
                RealVector y = new ArrayRealVector(n);
                for (int i = 0; i < n; i++) {
                    int day = one.lactation().daysInMilk(measured.get(i).date());
                    y.setEntry(i, WilminkClassFit.value(measured.get(i), trait));
                    double u = (day - 153) / 152.0;
                    x.setRow(i, new double[] {1, Math.exp(-0.05 * day), u, u * u});
                    for (int j = 0; j < n; j++) {
                        int other = one.lactation().daysInMilk(measured.get(j).date());
                        v.setEntry(i, j, unit.covariance(day, other));
                    }
                }
                RealMatrix inverse = new LUDecomposition(v).getSolver().getInverse();
                left = left.add(x.transpose().multiply(inverse).multiply(x));
                right = right.add(x.transpose().operate(inverse.operate(y)));
                squares += y.dotProduct(inverse.operate(y));
                tests += n;
            }
            RealVector b = new LUDecomposition(left).getSolver().solve(right);
            for (int day : new int[] {1, 60, 305}) {
                double u = (day - 153) / 152.0;
                double kg = b.getEntry(0)
                        + b.getEntry(1) * Math.exp(-0.05 * day)
                        + b.getEntry(2) * u
                        + b.getEntry(3) * u * u;
                assertThat(shipped.meanKg(day)).as("%s", trait).isCloseTo(kg, within(3e-6));
            }
            double spread = breed.equals("any")
                    ? LactationStandards.forCow(breed, parity, trait).spread().sdPerDay(1)
                    : Math.sqrt((squares - b.dotProduct(right)) / (tests - 4));
            assertThat(shipped.spread().sdPerDay(1)).as("%s", trait).isCloseTo(spread, within(1e-6));
        }
    }
}
