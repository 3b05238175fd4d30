package org.pailbook.lactation.reference;

import java.util.Arrays;

/**
 * How departures of several traits from their means go together: their lasting parts, and those of single days.
 *
 * <p>Index is the trait, in the order of the standards they are used with. With one common fading over time, two positive definite matrices make
 * the whole positive definite (Schur's product theorem), so that is all that is asked of them.
 */
public final class TraitCorrelations {
    private final double[][] lasting;
    private final double[][] daily;

    private TraitCorrelations(double[][] lasting, double[][] daily) {
        this.lasting = lasting;
        this.daily = daily;
    }

    /**
     * @param lasting correlations of the lasting parts, ones on the diagonal, symmetric, positive definite
     * @param daily correlations of the single days' parts, likewise and of the same size
     */
    public static TraitCorrelations of(double[][] lasting, double[][] daily) {
        if (daily.length != lasting.length) {
            throw new IllegalArgumentException(
                    "daily (" + daily.length + " traits) must have as many traits as lasting (" + lasting.length + ")");
        }
        return new TraitCorrelations(checked("lasting", lasting), checked("daily", daily));
    }

    /** One trait on its own. */
    static TraitCorrelations single() {
        return new TraitCorrelations(new double[][] {{1}}, new double[][] {{1}});
    }

    public int traits() {
        return lasting.length;
    }

    public double lasting(int trait, int otherTrait) {
        return lasting[trait][otherTrait];
    }

    public double daily(int trait, int otherTrait) {
        return daily[trait][otherTrait];
    }

    private static double[][] checked(String name, double[][] given) {
        int n = given.length;
        double[][] copy = Arrays.stream(given).map(double[]::clone).toArray(double[][]::new);
        double[][] rest = Arrays.stream(given).map(double[]::clone).toArray(double[][]::new);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                if (copy[i].length != n || copy[i][j] != copy[j][i] || copy[i][i] != 1) {
                    throw new IllegalArgumentException(name
                            + " must be square and symmetric with ones on its diagonal: " + Arrays.deepToString(copy));
                }
            }
        }
        // elimination: all pivots above zero means positive definite
        for (int p = 0; p < n; p++) {
            if (!(rest[p][p] > 0)) {
                throw new IllegalArgumentException(name + " must be positive definite: " + Arrays.deepToString(copy));
            }
            for (int i = p + 1; i < n; i++) {
                double factor = rest[i][p] / rest[p][p];
                for (int j = p; j < n; j++) {
                    rest[i][j] -= factor * rest[p][j];
                }
            }
        }
        return copy;
    }
}
