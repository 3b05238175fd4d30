package org.pailbook.lactation.summary;

import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;

/** Counts, sums and means over the cows of a herd; the denominator of each stands in its explanation. */
public final class HerdMean implements PublishedMethod {
    /** Sums and means over cows, composition weighted by milk. */
    public static final HerdMean OVER_COWS = new HerdMean(
            "herd-mean",
            new Citation(
                    "Pailbook",
                    2026,
                    "sum or mean over the cows named, composition weighted by milk; common practice, no source",
                    HowKnown.COMMON_PRACTICE));

    /** Mean of projections: independent errors add in squares, the shared error of the herd's level adds linearly. */
    public static final HerdMean OF_PROJECTIONS = new HerdMean(
            "herd-mean-of-projections",
            new Citation(
                    "Pailbook",
                    2026,
                    "mean of best predictions; variance of the sum = sum of squared errors + squared sum of shared errors (derived)",
                    HowKnown.OURS));

    private final String id;
    private final Citation citation;

    private HerdMean(String id, Citation citation) {
        this.id = id;
        this.citation = citation;
    }

    @Override
    public String id() {
        return id;
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return citation;
    }
}
