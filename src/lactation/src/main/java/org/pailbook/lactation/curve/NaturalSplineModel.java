package org.pailbook.lactation.curve;

import java.util.Arrays;
import org.pailbook.lactation.internal.LinearLeastSquares;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;

/**
 * A smoothing spline: the natural cubic spline with a knot at every test that minimises
 * {@code sum (y - s(t))^2 + smoothing * integral of s''^2}.
 *
 * <p>It has no biology and no fixed number of parameters; {@link #parameterCount()} is the least, and an estimate counts the
 * effective number, the sum of leverages. Standard errors are those of the spline taken as a prior for the curve (Wahba 1983,
 * from memory).
 *
 * @see NaturalSplineCurve
 */
public final class NaturalSplineModel extends LeastSquaresModel {
    private static final Citation CITATION =
            new Citation("Reinsch, C. H.", 1967, "Numerische Mathematik 10:177-183", HowKnown.FROM_MEMORY);
    /** A spline with fewer knots is a straight line. */
    private static final int LEAST_KNOTS = 3;

    /** Ours: with fewer tests the smoothing decides more than the cow. */
    private static final int LEAST_TESTS = 5;

    private final double smoothingDays3;

    /** @param smoothingDays3 weight of the squared bend against the squared residuals, days cubed; 0 runs through every test */
    public NaturalSplineModel(double smoothingDays3) {
        super("smoothing-spline-1967", CITATION, LEAST_KNOTS);
        if (!(smoothingDays3 >= 0) || Double.isInfinite(smoothingDays3)) {
            throw new IllegalArgumentException("smoothingDays3 (" + smoothingDays3 + ") must be 0 or more");
        }
        this.smoothingDays3 = smoothingDays3;
    }

    /** Weight of the squared bend against the squared residuals, days cubed. */
    public double smoothingDays3() {
        return smoothingDays3;
    }

    @Override
    public int leastTests() {
        return LEAST_TESTS;
    }

    @Override
    CurveEstimate solve(double[] daysInMilk, double[] milkKg) {
        double[] knots = Arrays.stream(daysInMilk).sorted().distinct().toArray();
        if (knots.length < LEAST_KNOTS) {
            return CurveEstimate.notEstimable(this, knots.length + " different days");
        }
        NaturalSplineCurve basis = new NaturalSplineCurve(knots, new double[knots.length]);
        int tests = daysInMilk.length;
        int rows = tests + knots.length - 2;
        double[] design = new double[rows * knots.length];
        for (int i = 0; i < tests; i++) {
            double[] row = basis.gradient(daysInMilk[i]);
            for (int k = 0; k < knots.length; k++) {
                design[k * rows + i] = row[k];
            }
        }
        addSmoothing(design, rows, tests, knots, basis);
        LinearLeastSquares solution = LinearLeastSquares.solve(design, knots.length, Arrays.copyOf(milkKg, rows));
        return solution.isSingular()
                ? CurveEstimate.notEstimable(this, "singular normal equations")
                : CurveEstimate.ofSmoothing(
                        this, new NaturalSplineCurve(knots, solution.coefficients()), daysInMilk, milkKg, solution);
    }

    /**
     * One row more for each inner knot, so that their squares add up to the smoothing term. The bend runs straight from knot to
     * knot, so the integral of its square is {@code bend' R bend} with a tridiagonal {@code R}; the rows are the bends times a
     * Cholesky factor of it.
     */
    private void addSmoothing(double[] design, int rows, int tests, double[] knots, NaturalSplineCurve basis) {
        double weight = Math.sqrt(smoothingDays3);
        double factor = 0;
        double pivot = 0;
        for (int i = 1; i < knots.length - 1; i++) {
            double gap = knots[i] - knots[i - 1];
            double nextGap = knots[i + 1] - knots[i];
            pivot = Math.sqrt((gap + nextGap) / 3 - factor * factor);
            factor = nextGap / 6 / pivot;
            for (int k = 0; k < knots.length; k++) {
                design[k * rows + tests + i - 1] =
                        weight * (pivot * basis.bendPerKg(i, k) + factor * basis.bendPerKg(i + 1, k));
            }
        }
    }
}
