package org.pailbook.lactation.internal;

/**
 * How a fitted value {@code f} hangs on the linear part {@code eta} of a model. Derivatives are given by {@code f}, which the
 * caller has at hand, so that one exponential per point is enough.
 */
public enum Link {
    /** {@code f = exp(eta)}. */
    EXPONENTIAL {
        @Override
        double value(double eta) {
            return Math.exp(eta);
        }

        @Override
        double slope(double f) {
            return f;
        }

        @Override
        double bend(double f) {
            return f;
        }

        @Override
        double etaOf(double f) {
            return Math.log(f);
        }
    },
    /** {@code f = 1 / eta}, for {@code eta > 0} only: past the pole the sign turns and nothing there is a fit. */
    RECIPROCAL {
        @Override
        double value(double eta) {
            return eta > 0 ? 1 / eta : Double.NaN;
        }

        @Override
        double slope(double f) {
            return -f * f;
        }

        @Override
        double bend(double f) {
            return 2 * f * f * f;
        }

        @Override
        double etaOf(double f) {
            return 1 / f;
        }
    };

    /** Fitted value of a linear part; NaN where the link is not defined. */
    abstract double value(double eta);

    /** First derivative by {@code eta}, where the value is {@code f}. */
    abstract double slope(double f);

    /** Second derivative by {@code eta}, where the value is {@code f}. */
    abstract double bend(double f);

    /** The linear part that gives {@code f}, for {@code f > 0}. */
    abstract double etaOf(double f);
}
