package org.pailbook.lactation.internal;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * The best action in every state of a {@link DecisionProcess}, and what each state is then worth; exact to rounding.
 *
 * <p>Values of a policy come from one pass over the states from last to first: every value is written as a sum over the few
 * states that are reached from behind (a cow's next calving, the slot's next heifer), and a small dense system gives those. States
 * numbered in the order in which they follow each other keep them few; any order is right. The plain form is one dense system over all states,
 * which the tests compare with. Two actions within {@value #TIE} of each other are equal, and the one with the lower number is taken.
 *
 * @see "Howard, R. A. (1960). Dynamic programming and Markov processes (from memory)"
 */
public final class PolicyIteration {
    /** Actions nearer than this are equal; in the unit of the rewards. */
    public static final double TIE = 1e-9;

    private static final int MOST_ROUNDS = 200;

    /** Values are exact to about this part of the largest. */
    private static final double ROUNDING = 1e-13;

    private final DecisionProcess process;
    /** place of a state among those reached from behind; -1 for the others */
    private final int[] feedbackOf;

    private final int[] feedback;
    private final int width;
    private final double[] sums;

    private PolicyIteration(DecisionProcess process) {
        this.process = process;
        boolean[] marks = new boolean[process.states()];
        for (int action = 0; action < process.actions(); action++) {
            process.leads(action).markReachedFromBehind(marks);
        }
        this.feedbackOf = new int[process.states()];
        int[] found = new int[process.states()];
        int count = 0;
        for (int state = 0; state < marks.length; state++) {
            feedbackOf[state] = marks[state] ? count : -1;
            if (marks[state]) {
                found[count++] = state;
            }
        }
        this.feedback = Arrays.copyOf(found, count);
        this.width = count + 1;
        this.sums = new double[process.states() * width];
    }

    /**
     * What the best policy gives.
     *
     * @param rounds policies looked at
     */
    public record Solution(DecisionProcess process, double[] values, int[] actions, int rounds) {
        /** What an action is worth now if the best follows; empty where it is not allowed. */
        public OptionalDouble worth(int state, int action) {
            return process.isAllowed(state, action)
                    ? OptionalDouble.of(process.worth(state, action, values))
                    : OptionalDouble.empty();
        }
    }

    /** @throws IllegalArgumentException if a policy gains without end, so that no value exists */
    public static Solution solve(DecisionProcess process) {
        PolicyIteration iteration = new PolicyIteration(process);
        int[] actions = new int[process.states()];
        for (int state = 0; state < actions.length; state++) {
            while (!process.isAllowed(state, actions[state])) {
                actions[state]++;
            }
        }
        double[] before = null;
        for (int round = 1; round <= MOST_ROUNDS; round++) {
            double[] values = iteration.values(actions);
            int[] current = actions.clone();
            // large values may be tied only to rounding, and then policies would take turns for ever
            if (!improve(process, values, actions) || (before != null && !isGain(before, values))) {
                return new Solution(process, values, current, round);
            }
            before = values;
        }
        throw new IllegalArgumentException("no best policy within " + MOST_ROUNDS + " rounds");
    }

    private static boolean isGain(double[] before, double[] after) {
        double largest = 0;
        double gain = 0;
        for (int state = 0; state < after.length; state++) {
            largest = Math.max(largest, Math.abs(after[state]));
            gain = Math.max(gain, after[state] - before[state]);
        }
        return gain > ROUNDING * largest;
    }

    /** What every state is worth if these actions are taken for ever. */
    public static double[] values(DecisionProcess process, int[] actions) {
        return new PolicyIteration(process).values(actions);
    }

    private static boolean improve(DecisionProcess process, double[] values, int[] actions) {
        boolean isChanged = false;
        for (int state = 0; state < actions.length; state++) {
            int best = -1;
            double bestWorth = 0;
            for (int action = 0; action < process.actions(); action++) {
                if (process.isAllowed(state, action)) {
                    double worth = process.worth(state, action, values);
                    if (best < 0 || worth > bestWorth + TIE) {
                        best = action;
                        bestWorth = worth;
                    }
                }
            }
            isChanged |= best != actions[state];
            actions[state] = best;
        }
        return isChanged;
    }

    private double[] values(int[] actions) {
        for (int state = actions.length - 1; state >= 0; state--) {
            writeAsSum(state, actions[state]);
        }
        double[] known = feedbackValues();
        double[] values = new double[actions.length];
        for (int state = 0; state < values.length; state++) {
            double value = sums[state * width];
            for (int j = 0; j < known.length; j++) {
                value += sums[state * width + 1 + j] * known[j];
            }
            values[state] = value;
        }
        return values;
    }

    /** Value of a state = first element + sum of the others times the values of the feedback states. */
    private void writeAsSum(int state, int action) {
        SparseRows rows = process.leads(action);
        int at = state * width;
        Arrays.fill(sums, at, at + width, 0);
        sums[at] = process.reward(state, action);
        for (int e = rows.start[state]; e < rows.end[state]; e++) {
            int next = rows.target[e];
            double weight = rows.weight[e];
            if (feedbackOf[next] >= 0) {
                sums[at + 1 + feedbackOf[next]] += weight;
            } else {
                int from = next * width;
                for (int j = 0; j < width; j++) {
                    sums[at + j] += weight * sums[from + j];
                }
            }
        }
    }

    private double[] feedbackValues() {
        double[][] a = new double[feedback.length][feedback.length];
        double[] b = new double[feedback.length];
        for (int i = 0; i < feedback.length; i++) {
            int at = feedback[i] * width;
            b[i] = sums[at];
            for (int j = 0; j < feedback.length; j++) {
                a[i][j] = (i == j ? 1 : 0) - sums[at + 1 + j];
            }
        }
        return SmallLinearSystem.solveInPlace(a, b);
    }
}
