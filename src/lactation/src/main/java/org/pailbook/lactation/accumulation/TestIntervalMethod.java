package org.pailbook.lactation.accumulation;

import java.time.LocalDate;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.testday.Lactation;

/**
 * The test interval method, ICAR's reference for the yield to date: straight lines between tests, the first test back to calving, the
 * last one on to the end. {@code MY = I0 M1 + I1 (M1 + M2) / 2 + ... + In Mn}, I in days, M in kg; day 0 is the calving day.
 *
 * <p>Fat and protein are summed over the tests that have them, over their own intervals; {@link TestIntervalPercentInterpolated} does it
 * the other way. The interval that spans the last day counted is cut there on its straight line. A first test after day 75 gives no value;
 * intervals over 75 days are bridged and flagged. Known bias: straight lines lie above the yield until the peak and after the last
 * test, below it between the others (Norman et al. 1999, abstract); with monthly tests it is not significant.
 *
 * @see "Sargent, F. D., Lytton, V. H., Wall, O. G. (1968). J. Dairy Sci. 51:170-179 (pages from memory)"
 * @see "ICAR Guidelines, Section 2, Procedure 2 (2020); formula and worked example from memory, its four totals reproduced exactly"
 */
public final class TestIntervalMethod implements YieldAccumulation {
    /** Days 1 to 305 at most: the standard lactation. */
    public static final TestIntervalMethod STANDARD_305 =
            new TestIntervalMethod("test-interval", DaysInMilk.STANDARD_LACTATION_DAYS);

    /** To the last test or the end, however late. */
    public static final TestIntervalMethod WHOLE_LACTATION =
            new TestIntervalMethod("test-interval-whole-lactation", Integer.MAX_VALUE);

    private final String id;
    private final int lastDayCounted;

    private TestIntervalMethod(String id, int lastDayCounted) {
        this.id = id;
        this.lastDayCounted = lastDayCounted;
    }

    @Override
    public AccumulatedYield accumulate(Lactation lactation, LocalDate asOf) {
        return new TestIntervalYield(this, CompositionRule.OWN_INTERVALS, lastDayCounted, lactation, asOf).run();
    }

    /**
     * The bare sum, for many lactations at once: no checks on the tests, no findings, no explanation, nothing allocated. It is the same
     * arithmetic as in {@link #accumulate}.
     *
     * @param daysInMilk of the tests, rising, each above 0; index 0 is the first test
     * @param kgPerDay milk, fat or protein of 24 hours at each test, kg
     * @param tests how many of them count, from index 0
     * @param endDaysInMilk last day to count; a test after it draws the line up to it
     * @return kg of days 1 to {@code endDaysInMilk}
     * @throws IllegalArgumentException if there is no test, or if an array is shorter than {@code tests}
     */
    public static double sumKg(double[] daysInMilk, double[] kgPerDay, int tests, double endDaysInMilk) {
        if (tests < 1 || tests > daysInMilk.length || tests > kgPerDay.length) {
            throw new IllegalArgumentException("tests (" + tests + ") must be at least 1 and at most the length of the"
                    + " arrays (" + daysInMilk.length + ", " + kgPerDay.length + ")");
        }
        return TestIntervals.sum(daysInMilk, kgPerDay, tests, endDaysInMilk, null);
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
                "ICAR",
                2020,
                "Guidelines Section 2, Procedure 2: Computing of accumulated lactation yield, test interval method of Sargent, Lytton and Wall 1968",
                HowKnown.FROM_MEMORY);
    }
}
