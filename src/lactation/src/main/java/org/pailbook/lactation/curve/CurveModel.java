package org.pailbook.lactation.curve;

import java.time.LocalDate;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.UsableTests;

/**
 * A published lactation curve together with one way of fitting it. Implementations are listed in {@link LactationCurves}.
 *
 * <p>No curve of a cow's own few points is ever used to project; see the package.
 */
public interface CurveModel extends PublishedMethod {
    /** Number of parameters that are fitted. */
    int parameterCount();

    /**
     * Fewest usable tests from which one cow's curve is shown; one or two more than parameters, so that some spread is left to
     * see. Ours.
     */
    int leastTests();

    /**
     * The bare arithmetic: least squares through any points, refused only where there is no solution.
     *
     * <p>Nothing is checked against what cows do. Days and kg may be weeks and another yield; the result is then in those units.
     *
     * @param daysInMilk day of each test, above 0, in any order
     * @param milkKg milk of 24 hours at each test, kg; same order and length
     * @throws IllegalArgumentException if the lengths differ, a number is not finite or a day is not above 0
     */
    CurveEstimate estimate(double[] daysInMilk, double[] milkKg);

    /**
     * The curve of one lactation as it stood on a day.
     *
     * @param asOf later tests, and an end after it, take no part
     */
    default CurveFit fit(Lactation lactation, LocalDate asOf) {
        return CurveFit.of(this, UsableTests.of(lactation, asOf), asOf);
    }
}
