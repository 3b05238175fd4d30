package org.pailbook.lactation.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.pailbook.lactation.OpenTestDays;
import org.pailbook.lactation.SharedData;
import org.pailbook.lactation.testday.TestDay;

/** The refined standards, made again from the open test days with dense matrices of Commons Math: generalised least squares. */
class RefinedStandardOpenDataTest {
    private static final List<String> BREEDS = List.of("Holstein", "RDM", "Jersey", "any");
    private static final int SHAPES = 4;

    /** Sums of a class over its lactations, with the fifth shape; shares of the variance as shipped, the spread being 1. */
    private record Sums(String breed, int parity, RealMatrix left, RealVector right, double squares, int tests) {
        static Sums of(String breed, int parity, LactationTrait trait, List<OpenTestDays> all) {
            DailySpread unit = LactationStandards.refinedForCow(breed, parity, trait)
                    .spread()
                    .withSdPerDay(new double[] {1});
            RealMatrix left = new Array2DRowRealMatrix(SHAPES + 1, SHAPES + 1);
            RealVector right = new ArrayRealVector(SHAPES + 1);
            double squares = 0;
            int tests = 0;
            for (OpenTestDays one : all) {
                if (!one.isOfClass(breed.equals("any") ? one.breed() : breed, parity == 1)) {
                    continue;
                }
                List<TestDay> measured = one.lactation().testDays().stream()
                        .filter(test -> !Double.isNaN(WilminkClassFit.value(test, trait)))
                        .toList();
                int n = measured.size();
                RealMatrix x = new Array2DRowRealMatrix(n, SHAPES + 1);
                RealMatrix v = new Array2DRowRealMatrix(n, n);
                RealVector y = new ArrayRealVector(n);
                for (int i = 0; i < n; i++) {
                    int day = one.lactation().daysInMilk(measured.get(i).date());
                    y.setEntry(i, WilminkClassFit.value(measured.get(i), trait));
                    x.setRow(i, shapes(day));
                    for (int j = 0; j < n; j++) {
                        v.setEntry(
                                i,
                                j,
                                unit.covariance(
                                        day,
                                        one.lactation()
                                                .daysInMilk(measured.get(j).date())));
                    }
                }
                RealMatrix inverse = new LUDecomposition(v).getSolver().getInverse();
                left = left.add(x.transpose().multiply(inverse).multiply(x));
                right = right.add(x.transpose().operate(inverse.operate(y)));
                squares += y.dotProduct(inverse.operate(y));
                tests += n;
            }
            return new Sums(breed, parity, left, right, squares, tests);
        }

        /** Four shapes, the fifth held at that number. */
        RealVector four(double peak) {
            return new LUDecomposition(left.getSubMatrix(0, SHAPES - 1, 0, SHAPES - 1))
                    .getSolver()
                    .solve(rightOfFour(peak));
        }

        private RealVector rightOfFour(double peak) {
            return right.getSubVector(0, SHAPES)
                    .subtract(
                            left.getColumnVector(SHAPES).getSubVector(0, SHAPES).mapMultiply(peak));
        }

        double spread(double peak) {
            double rest = squares - 2 * peak * right.getEntry(SHAPES) + peak * peak * left.getEntry(SHAPES, SHAPES);
            return Math.sqrt((rest - four(peak).dotProduct(rightOfFour(peak))) / (tests - SHAPES));
        }

        /** The spread the fifth shape is told in: without it; of all breeds together the plain one. */
        double unit(LactationTrait trait) {
            return breed.equals("any")
                    ? LactationStandards.forCow(breed, parity, trait).spread().sdPerDay(1)
                    : spread(0);
        }
    }

    private static double[] shapes(int day) {
        double u = (day - 153) / 152.0;
        return new double[] {1, Math.exp(-0.05 * day), u, u * u, Math.exp(-0.02 * day)};
    }

    @ParameterizedTest
    @EnumSource(LactationTrait.class)
    void shippedFiguresComeOutOfTheData(LactationTrait trait) {
        List<OpenTestDays> all = OpenTestDays.read(SharedData.orSkip());
        List<Sums> classes = new ArrayList<>();
        for (String breed : BREEDS) {
            classes.add(Sums.of(breed, 1, trait, all));
            classes.add(Sums.of(breed, 2, trait, all));
        }
        double perSpread = peakPerSpread(classes, trait);
        for (Sums one : classes) {
            LactationStandard shipped = LactationStandards.refinedForCow(one.breed(), one.parity(), trait);
            double peak = perSpread * one.unit(trait);
            RealVector four = one.four(peak);
            for (int day : new int[] {1, 20, 60, 305}) {
                double kg = four.append(peak).dotProduct(new ArrayRealVector(shapes(day)));
                assertThat(shipped.meanKg(day))
                        .as("%s, parity %d", one.breed(), one.parity())
                        .isCloseTo(kg, within(5e-6));
            }
            double spread = one.breed().equals("any") ? one.unit(trait) : one.spread(peak);
            assertThat(shipped.spread().sdPerDay(1)).as("%s", one.breed()).isCloseTo(spread, within(1e-6));
        }
    }

    /** One number for the six classes of single breeds, which have four shapes each: all in one system, each class in its own spread. */
    private static double peakPerSpread(List<Sums> classes, LactationTrait trait) {
        int size = 6 * SHAPES + 1;
        RealMatrix left = new Array2DRowRealMatrix(size, size);
        RealVector right = new ArrayRealVector(size);
        for (int c = 0; c < 6; c++) {
            Sums one = classes.get(c);
            for (int i = 0; i <= SHAPES; i++) {
                int row = i < SHAPES ? c * SHAPES + i : size - 1;
                right.addToEntry(row, one.right().getEntry(i) / one.unit(trait));
                for (int j = 0; j <= SHAPES; j++) {
                    left.addToEntry(
                            row,
                            j < SHAPES ? c * SHAPES + j : size - 1,
                            one.left().getEntry(i, j));
                }
            }
        }
        return new LUDecomposition(left).getSolver().solve(right).getEntry(size - 1);
    }
}
