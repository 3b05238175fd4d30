package org.pailbook.lactation.culling;

import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;

/**
 * Keeping a cow to her best time of replacement over replacing her now, unplanned exits counted in: by dynamic programming over 1,665 stages ({@link
 * CowValueTable}), interpolated over her milk level.
 */
public final class RetentionPayoff implements PublishedMethod {
    public static final RetentionPayoff BY_DYNAMIC_PROGRAMMING = new RetentionPayoff();

    private RetentionPayoff() {}

    @Override
    public String id() {
        return "retention-payoff";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "van Arendonk, J. A. M.",
                1985,
                "definition from Livest Prod Sci 1985, J Dairy Sci 87:2947 and 89:3876; stages and arithmetic are ours",
                HowKnown.FROM_MEMORY);
    }
}
