package org.pailbook.lactation.internal;

/**
 * The share of time a Markov chain spends in each state in the long run.
 *
 * <p>Mass is sent forward once from each state that is reached from behind, until it comes to such a state again; a small dense
 * system then gives how much there is of each. The chain must have one closed class of states.
 */
public final class StationaryDistribution {
    private StationaryDistribution() {}

    /**
     * @param probabilities of the next state; the rows of the states that are ever reached add up to one
     * @return shares that add up to one
     * @throws IllegalArgumentException if there is no single such distribution
     */
    public static double[] of(SparseRows probabilities) {
        int states = probabilities.rows();
        boolean[] marks = new boolean[states];
        probabilities.markReachedFromBehind(marks);
        int[] feedbackOf = new int[states];
        int count = 0;
        for (int state = 0; state < states; state++) {
            feedbackOf[state] = marks[state] ? count++ : -1;
        }
        double[][] visits = new double[count][states];
        double[][] a = new double[count][count];
        for (int state = 0; state < states; state++) {
            if (marks[state]) {
                send(probabilities, state, feedbackOf, visits[feedbackOf[state]], a);
            }
        }
        double[] b = new double[count];
        for (int i = 0; i < count; i++) {
            a[i][i] -= 1;
        }
        // one balance follows from the others; in its place: what is found adds up
        java.util.Arrays.fill(a[count - 1], 1);
        b[count - 1] = 1;
        double[] mass = SmallLinearSystem.solveInPlace(a, b);
        return shares(visits, mass);
    }

    private static void send(SparseRows rows, int from, int[] feedbackOf, double[] visits, double[][] arrivals) {
        visits[from] = 1;
        for (int state = from; state < visits.length; state++) {
            if (visits[state] > 0) {
                for (int e = rows.start[state]; e < rows.end[state]; e++) {
                    double mass = visits[state] * rows.weight[e];
                    int next = rows.target[e];
                    if (feedbackOf[next] >= 0) {
                        arrivals[feedbackOf[next]][feedbackOf[from]] += mass;
                    } else {
                        visits[next] += mass;
                    }
                }
            }
        }
    }

    private static double[] shares(double[][] visits, double[] mass) {
        double[] shares = new double[visits[0].length];
        double total = 0;
        for (int i = 0; i < mass.length; i++) {
            for (int state = 0; state < shares.length; state++) {
                double part = mass[i] * visits[i][state];
                shares[state] += part;
                total += part;
            }
        }
        for (int state = 0; state < shares.length; state++) {
            shares[state] /= total;
        }
        return shares;
    }
}
