package org.pailbook.lactation.curve;

import org.pailbook.lactation.method.Citation;

/** What the models of a fixed number of parameters share: who they are, how many tests they need, and the checks before a fit. */
abstract class LeastSquaresModel implements CurveModel {
    /** From so many parameters on the curve would still run through nearly every test with one test more than parameters. Ours. */
    private static final int MANY_PARAMETERS = 5;

    private final String id;
    private final Citation citation;
    private final int parameters;

    LeastSquaresModel(String id, Citation citation, int parameters) {
        this.id = id;
        this.citation = citation;
        this.parameters = parameters;
    }

    /** Fits checked points, as many as parameters or more. */
    abstract CurveEstimate solve(double[] daysInMilk, double[] milkKg);

    @Override
    public final CurveEstimate estimate(double[] daysInMilk, double[] milkKg) {
        Points.require(daysInMilk, milkKg);
        return daysInMilk.length < parameters
                ? CurveEstimate.tooFew(this, daysInMilk.length)
                : solve(daysInMilk, milkKg);
    }

    @Override
    public final String id() {
        return id;
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public final Citation citation() {
        return citation;
    }

    @Override
    public final int parameterCount() {
        return parameters;
    }

    /** One test more than parameters, two more for a curve of many. */
    @Override
    public int leastTests() {
        return parameters >= MANY_PARAMETERS ? parameters + 2 : parameters + 1;
    }
}
