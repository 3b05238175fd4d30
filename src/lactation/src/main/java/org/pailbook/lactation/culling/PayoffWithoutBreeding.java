package org.pailbook.lactation.culling;

import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;

/** Keeping an open cow without breeding her again, as long as that pays, over replacing her now; the same stages as {@link RetentionPayoff}. */
public final class PayoffWithoutBreeding implements PublishedMethod {
    public static final PayoffWithoutBreeding BY_DYNAMIC_PROGRAMMING = new PayoffWithoutBreeding();

    private PayoffWithoutBreeding() {}

    @Override
    public String id() {
        return "retention-payoff-without-breeding";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "This library",
                2026,
                "the retention pay-off with insemination left out and its cost saved",
                HowKnown.OURS);
    }
}
