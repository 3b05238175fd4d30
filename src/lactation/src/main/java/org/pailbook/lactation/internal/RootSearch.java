package org.pailbook.lactation.internal;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/** The place where a function changes its sign, by Brent's method. */
public final class RootSearch {
    private static final int MOST_CALLS = 200;
    private static final double RELATIVE_ACCURACY = 1e-14;
    private static final double ABSOLUTE_ACCURACY = 1e-14;

    /** Only an exact zero ends the search early: the scale of the function is not known here. */
    private static final double FUNCTION_ACCURACY = 0;

    private RootSearch() {}

    /** @return a root between the two ends; empty if the function has no change of sign there */
    public static OptionalDouble between(double low, double high, DoubleUnaryOperator function) {
        double atLow = function.applyAsDouble(low);
        double atHigh = function.applyAsDouble(high);
        if (atLow == 0) {
            return OptionalDouble.of(low);
        }
        if (atHigh == 0) {
            return OptionalDouble.of(high);
        }
        if (!(atLow < 0 && atHigh > 0) && !(atLow > 0 && atHigh < 0)) {
            return OptionalDouble.empty();
        }
        BrentSolver brent = new BrentSolver(RELATIVE_ACCURACY, ABSOLUTE_ACCURACY, FUNCTION_ACCURACY);
        return OptionalDouble.of(brent.solve(MOST_CALLS, function::applyAsDouble, low, high));
    }
}
