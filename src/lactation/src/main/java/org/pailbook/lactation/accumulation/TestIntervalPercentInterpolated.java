package org.pailbook.lactation.accumulation;

import java.time.LocalDate;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.testday.Lactation;

/**
 * The test interval method with another rule for tests without a sample: the percentage is drawn straight over time between the tests
 * that have it, flat before the first and after the last, and multiplied by the milk of every test.
 *
 * <p>So the weights of days without a sample count for fat and protein too, and fat over milk stays consistent day by day. Milk is that of
 * {@link TestIntervalMethod}; with all samples there, so are fat and protein.
 */
public final class TestIntervalPercentInterpolated implements YieldAccumulation {
    /** Days 1 to 305 at most: the standard lactation. */
    public static final TestIntervalPercentInterpolated STANDARD_305 =
            new TestIntervalPercentInterpolated("test-interval-percent", DaysInMilk.STANDARD_LACTATION_DAYS);

    /** To the last test or the end, however late. */
    public static final TestIntervalPercentInterpolated WHOLE_LACTATION =
            new TestIntervalPercentInterpolated("test-interval-percent-whole-lactation", Integer.MAX_VALUE);

    private final String id;
    private final int lastDayCounted;

    private TestIntervalPercentInterpolated(String id, int lastDayCounted) {
        this.id = id;
        this.lastDayCounted = lastDayCounted;
    }

    @Override
    public AccumulatedYield accumulate(Lactation lactation, LocalDate asOf) {
        return new TestIntervalYield(this, CompositionRule.INTERPOLATED_PERCENT, lastDayCounted, lactation, asOf).run();
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
        return new Citation(
                "Pailbook",
                2026,
                "test interval method (ICAR Section 2, Procedure 2) on interpolated percentages",
                HowKnown.OURS);
    }
}
