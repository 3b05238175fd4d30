package org.pailbook.lactation.internal;

/**
 * A Markov decision process without end: in each state one of a few actions is taken, which earns something now and leads on.
 *
 * <p>Weights are discounted probabilities: chance of the next state times what one unit there is worth today. An action that
 * takes no time has weights that add up to one. Filled once, then only read.
 */
public final class DecisionProcess {
    private final double[][] reward;
    private final boolean[][] allowed;
    private final SparseRows[] rows;

    public DecisionProcess(int states, int actions) {
        this.reward = new double[actions][states];
        this.allowed = new boolean[actions][states];
        this.rows = new SparseRows[actions];
        for (int action = 0; action < actions; action++) {
            rows[action] = new SparseRows(states, 8 * states);
        }
    }

    /** Allows an action in a state; {@link #leadsTo} then adds where it leads. */
    public void allow(int state, int action, double rewardNow) {
        allowed[action][state] = true;
        reward[action][state] = rewardNow;
        rows[action].begin(state);
    }

    /** Adds a next state to the action allowed last. */
    public void leadsTo(int action, int next, double discountedProbability) {
        rows[action].add(next, discountedProbability);
    }

    public int states() {
        return reward[0].length;
    }

    public int actions() {
        return reward.length;
    }

    public boolean isAllowed(int state, int action) {
        return allowed[action][state];
    }

    public double reward(int state, int action) {
        return reward[action][state];
    }

    /** Where an action leads, from every state. */
    public SparseRows leads(int action) {
        return rows[action];
    }

    /** What an action is worth if the states that follow are worth this much. */
    public double worth(int state, int action, double[] values) {
        return reward[action][state] + rows[action].times(state, values);
    }
}
