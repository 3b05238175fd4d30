package org.pailbook.lactation.internal;

import org.apache.commons.math3.special.Gamma;

/** The lower incomplete gamma function. */
public final class IncompleteGamma {
    private static final double ACCURACY = 1e-15;
    private static final int MOST_TERMS = 100_000;

    private IncompleteGamma() {}

    /** {@code Integral from 0 to x of s^(shape - 1) exp(-s) ds}, for {@code shape > 0} and {@code x >= 0}. */
    public static double lower(double shape, double x) {
        return Gamma.regularizedGammaP(shape, x, ACCURACY, MOST_TERMS) * Math.exp(Gamma.logGamma(shape));
    }
}
