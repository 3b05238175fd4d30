package org.pailbook.lactation.accumulation;

import java.time.LocalDate;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.testday.Lactation;

/** How the yield of a lactation is added up from its test days. Implementations are listed in {@link YieldAccumulations}. */
public interface YieldAccumulation extends PublishedMethod {

    /**
     * Yield from the day after calving to the last test day of a cow in milk, or to the end of a lactation that has ended.
     *
     * @param lactation with its tests as recorded; those that may not take part are left out and named
     * @param asOf later tests and a later end are as if not recorded
     */
    AccumulatedYield accumulate(Lactation lactation, LocalDate asOf);
}
