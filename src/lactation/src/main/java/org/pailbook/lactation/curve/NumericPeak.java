package org.pailbook.lactation.curve;

import java.util.OptionalDouble;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.internal.RootSearch;

/** The peak of a curve without a closed form for it: the highest of days 1 to 305, then the root of the slope beside it. */
final class NumericPeak {
    private static final int FIRST_DAY = 1;
    private static final int LAST_DAY = DaysInMilk.STANDARD_LACTATION_DAYS;

    private NumericPeak() {}

    /** Empty when the curve is highest on day 1 or day 305. */
    static OptionalDouble of(LactationCurve curve) {
        int best = FIRST_DAY;
        double most = curve.milkKgPerDay(FIRST_DAY);
        for (int day = FIRST_DAY + 1; day <= LAST_DAY; day++) {
            double milk = curve.milkKgPerDay(day);
            if (milk > most) {
                most = milk;
                best = day;
            }
        }
        double before = Math.max(FIRST_DAY, best - 1);
        double after = Math.min(LAST_DAY, best + 1);
        return curve.slopeKgPerDayPerDay(before) > 0 && curve.slopeKgPerDayPerDay(after) < 0
                ? RootSearch.between(before, after, curve::slopeKgPerDayPerDay)
                : OptionalDouble.empty();
    }

    /** Standard with an inner peak, whatever the ends do; else by the slopes after the colostrum days and on day 305. */
    static CurveShape shape(LactationCurve curve) {
        return curve.peakDaysInMilk().isPresent()
                ? CurveShape.STANDARD
                : CurveShape.of(
                        curve.slopeKgPerDayPerDay(DaysInMilk.FIRST_DAY_AFTER_COLOSTRUM) > 0,
                        curve.slopeKgPerDayPerDay(LAST_DAY) > 0);
    }
}
