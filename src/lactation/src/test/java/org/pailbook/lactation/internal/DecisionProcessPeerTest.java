package org.pailbook.lactation.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;

/** Values and shares found through the few states reached from behind, against one dense system over all states by Commons Math 3.6.1. */
class DecisionProcessPeerTest {
    private static final long SEED = 1960;
    private static final double DISCOUNT = 0.99;

    private static DecisionProcess random(int states, int actions, Random random) {
        DecisionProcess process = new DecisionProcess(states, actions);
        for (int state = 0; state < states; state++) {
            for (int action = 0; action < actions; action++) {
                process.allow(state, action, 100 * random.nextGaussian());
                double[] shares = random.doubles(1 + random.nextInt(6)).toArray();
                double sum = Arrays.stream(shares).sum();
                for (double share : shares) {
                    // mostly onwards, now and then back to one of the first
                    int next = random.nextInt(4) == 0
                            ? random.nextInt(Math.min(5, states))
                            : Math.min(states - 1, state + 1 + random.nextInt(7));
                    process.leadsTo(action, next, DISCOUNT * share / sum);
                }
            }
        }
        return process;
    }

    private static double[] byDenseLu(DecisionProcess process, int[] actions) {
        int n = actions.length;
        RealMatrix a = new Array2DRowRealMatrix(n, n);
        double[] b = new double[n];
        for (int state = 0; state < n; state++) {
            SparseRows rows = process.leads(actions[state]);
            for (int e = 0; e < rows.count(state); e++) {
                a.addToEntry(state, rows.column(state, e), -rows.amount(state, e));
            }
            a.addToEntry(state, state, 1);
            b[state] = process.reward(state, actions[state]);
        }
        return new LUDecomposition(a).getSolver().solve(new ArrayRealVector(b)).toArray();
    }

    @Test
    void valuesOfAPolicyAreThoseOfTheDenseSystem() {
        Random random = new Random(SEED);
        for (int states : new int[] {1, 2, 7, 60, 250}) {
            DecisionProcess process = random(states, 3, random);
            int[] actions = random.ints(states, 0, 3).toArray();
            double[] ours = PolicyIteration.values(process, actions);
            double[] peer = byDenseLu(process, actions);
            for (int state = 0; state < states; state++) {
                assertThat(ours[state])
                        .as("seed %d, %d states, state %d", SEED, states, state)
                        .isCloseTo(peer[state], within(1e-8));
            }
        }
    }

    @Test
    void noActionGainsOnTheBestPolicy() {
        Random random = new Random(SEED);
        DecisionProcess process = random(120, 4, random);
        PolicyIteration.Solution best = PolicyIteration.solve(process);
        double[] peer = byDenseLu(process, best.actions());
        for (int state = 0; state < 120; state++) {
            assertThat(best.values()[state]).isCloseTo(peer[state], within(1e-8));
            for (int action = 0; action < 4; action++) {
                assertThat(best.worth(state, action).orElseThrow())
                        .as("seed %d, state %d, action %d", SEED, state, action)
                        .isLessThanOrEqualTo(best.values()[state] + 1e-8);
            }
        }
    }

    @Test
    void sharesOfAChainAreWhatTheDenseSystemGives() {
        Random random = new Random(SEED);
        int n = 150;
        DecisionProcess process = random(n, 1, random);
        SparseRows chain = new SparseRows(n, 1);
        RealMatrix a = new Array2DRowRealMatrix(n, n);
        for (int state = 0; state < n; state++) {
            chain.begin(state);
            SparseRows rows = process.leads(0);
            for (int e = 0; e < rows.count(state); e++) {
                double probability = rows.amount(state, e) / DISCOUNT;
                chain.add(rows.column(state, e), probability);
                a.addToEntry(rows.column(state, e), state, probability);
            }
            a.addToEntry(state, state, -1);
        }
        for (int state = 0; state < n; state++) {
            a.setEntry(n - 1, state, 1);
        }
        double[] b = new double[n];
        b[n - 1] = 1;
        double[] peer =
                new LUDecomposition(a).getSolver().solve(new ArrayRealVector(b)).toArray();
        double[] ours = StationaryDistribution.of(chain);
        for (int state = 0; state < n; state++) {
            assertThat(ours[state]).as("seed %d, state %d", SEED, state).isCloseTo(peer[state], within(1e-12));
        }
        assertThat(Arrays.stream(ours).sum()).isCloseTo(1, within(1e-12));
    }
}
