package org.pailbook.lactation.internal;

import org.apache.commons.math3.special.Erf;

/** The normal distribution. */
public final class NormalCurve {
    private NormalCurve() {}

    /** Share below {@code z} standard deviations. */
    public static double below(double z) {
        return 0.5 * Erf.erfc(-z / Math.sqrt(2));
    }
}
