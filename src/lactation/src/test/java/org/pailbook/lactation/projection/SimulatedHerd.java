package org.pailbook.lactation.projection;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.pailbook.lactation.reference.DailySpread;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/** Lactations drawn from the model itself: a mean curve, lasting departures that fade, daily errors. */
final class SimulatedHerd {
    static final LocalDate LATER = LocalDate.of(2030, 1, 1);

    private final Random random;
    private final DailySpread spread;
    private final double[] meanKg;

    /** @param meanKg index is the day */
    SimulatedHerd(long seed, DailySpread spread, double[] meanKg) {
        this.random = new Random(seed);
        this.spread = spread;
        this.meanKg = meanKg;
    }

    /** Daily milk of one new lactation, index is the day, 0 not used. */
    double[] dailyKg() {
        double[] kg = new double[306];
        double e = spread.dailyErrorShare();
        double lasting = random.nextGaussian();
        for (int day = 1; day <= 305; day++) {
            if (day > 1) {
                double r = spread.lastingCorrelation(day - 1, day);
                lasting = r * lasting + Math.sqrt(1 - r * r) * random.nextGaussian();
            }
            double departure = Math.sqrt(1 - e) * lasting + Math.sqrt(e) * random.nextGaussian();
            kg[day] = meanKg[day] + spread.sdPerDay(day) * departure;
        }
        return kg;
    }

    static double total(double[] dailyKg) {
        double sum = 0;
        for (double kg : dailyKg) {
            sum += kg;
        }
        return sum;
    }

    /** The first so many monthly tests of a lactation, from a day between 5 and 34 on. */
    static Lactation monthly(int parity, double[] dailyKg, int firstDay, int tests) {
        List<TestDay> days = new ArrayList<>();
        for (int i = 0; i < tests && firstDay + 30 * i <= 305; i++) {
            int day = firstDay + 30 * i;
            days.add(TestDay.ofMilk(WorkedCow.CALVING.plusDays(day), Math.max(3, dailyKg[day])));
        }
        return Lactation.inMilk(parity, WorkedCow.CALVING, days);
    }
}
