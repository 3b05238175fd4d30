package org.pailbook.lactation.projection;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.testday.UsableTests;

/**
 * Dates on which a herd's weights look odd together, found at little cost so that {@link HerdTestDays} need only be asked about these.
 *
 * <p>Of each weight that part is taken which the mean of the cow's group and her test before did not let expect. Were a date like any other, the parts would
 * average to nothing over the cows. An odd date makes the next one look odd as well; which of them was it the equations of {@link HerdTestDays} tell.
 */
final class OddHerdDates {
    /** Standard errors from none; ours. */
    private static final double STRIKING = 3;

    private final Map<LocalDate, Sums> byDate = new HashMap<>();

    /** Of the unexpected parts of one date's weights, in standard deviations of a day. */
    private static final class Sums {
        private int count;
        private double sum;
        private double squares;

        void add(double unexpected) {
            count++;
            sum += unexpected;
            squares += unexpected * unexpected;
        }

        boolean isOdd() {
            if (count < HerdTestDays.LEAST_COWS) {
                return false;
            }
            double mean = sum / count;
            double variance = Math.max(0, squares - count * mean * mean) / (count - 1);
            return Math.abs(mean) >= TestDayEffects.LEAST_STRIKING_SD / 2
                    && mean * mean * count > STRIKING * STRIKING * variance;
        }
    }

    private OddHerdDates() {}

    static Set<LocalDate> of(List<HerdLactation> history, HerdStandards standards, LocalDate asOf) {
        OddHerdDates dates = new OddHerdDates();
        for (HerdLactation one : history) {
            UsableTests usable = UsableTests.of(one.lactation(), asOf);
            if (usable.count() <= HerdTestDays.MOST_TESTS) {
                dates.add(usable, standards.ofGroup(one));
            }
        }
        Set<LocalDate> odd = new HashSet<>();
        dates.byDate.forEach((date, sums) -> {
            if (sums.isOdd()) {
                odd.add(date);
            }
        });
        return odd;
    }

    private void add(UsableTests usable, LactationStandard standard) {
        double lasting = 1 - standard.spread().dailyErrorShare();
        double before = 0;
        int dayBefore = 0;
        for (int i = 0; i < usable.count(); i++) {
            int day = usable.daysInMilk(i);
            if (day > standard.lastDay()) {
                return;
            }
            double deviation = (usable.milkKg(i) - standard.meanKg(day))
                    / standard.spread().sdPerDay(day);
            double expected = i == 0 ? 0 : lasting * standard.spread().lastingCorrelation(dayBefore, day) * before;
            byDate.computeIfAbsent(usable.tests().get(i).date(), unused -> new Sums())
                    .add(deviation - expected);
            before = deviation;
            dayBefore = day;
        }
    }
}
