package org.pailbook.lactation.accumulation;

import java.util.Arrays;

/** What is done about tests that have milk but no fat or protein. */
enum CompositionRule {
    /** The component is summed over the tests that have it, over their own intervals. */
    OWN_INTERVALS {
        @Override
        Series kgSeries(double[] days, double[] milkKg, double[] pct) {
            double[] ownDays = new double[days.length];
            double[] kg = new double[days.length];
            int n = 0;
            for (int i = 0; i < days.length; i++) {
                if (!Double.isNaN(pct[i])) {
                    ownDays[n] = days[i];
                    kg[n++] = milkKg[i] * pct[i] / 100;
                }
            }
            return new Series(Arrays.copyOf(ownDays, n), Arrays.copyOf(kg, n));
        }
    },
    /** The percentage is drawn straight over time between the tests that have it, flat at the ends, and multiplied by the milk. */
    INTERPOLATED_PERCENT {
        @Override
        Series kgSeries(double[] days, double[] milkKg, double[] pct) {
            double[] kg = new double[days.length];
            for (int i = 0; i < days.length; i++) {
                kg[i] = milkKg[i] * pctAt(i, days, pct) / 100;
            }
            return new Series(days, kg);
        }
    };

    /**
     * The component in kg per day at the tests it is summed over.
     *
     * @param pct percent at each test, NaN where it was not measured; at least one is there
     */
    abstract Series kgSeries(double[] days, double[] milkKg, double[] pct);

    private static double pctAt(int index, double[] days, double[] pct) {
        int before = index;
        while (before >= 0 && Double.isNaN(pct[before])) {
            before--;
        }
        int after = index;
        while (after < pct.length && Double.isNaN(pct[after])) {
            after++;
        }
        if (before < 0) {
            return pct[after];
        }
        if (after == pct.length || after == before) {
            return pct[before];
        }
        double share = (days[index] - days[before]) / (days[after] - days[before]);
        return pct[before] + (pct[after] - pct[before]) * share;
    }

    /** Days in milk, rising, and kg per day on them. */
    record Series(double[] days, double[] kgPerDay) {
        int size() {
            return days.length;
        }
    }
}
