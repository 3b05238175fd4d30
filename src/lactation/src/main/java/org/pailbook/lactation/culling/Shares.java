package org.pailbook.lactation.culling;

import java.util.List;

/** Checks of shares, which are programming errors when wrong. */
final class Shares {
    private static final double ROUNDING = 1e-9;

    private Shares() {}

    static void require(String name, double share) {
        if (!(share >= 0 && share <= 1)) {
            throw new IllegalArgumentException(name + " (" + share + ") must be 0 to 1");
        }
    }

    static void requireAddUp(String name, List<Double> shares, int count) {
        shares.forEach(share -> require(name, share));
        double sum = shares.stream().mapToDouble(Double::doubleValue).sum();
        if (shares.size() != count || Math.abs(sum - 1) > ROUNDING) {
            throw new IllegalArgumentException(
                    name + " (" + shares + ") must be " + count + " shares that add up to 1");
        }
    }
}
