package org.pailbook.lactation.accumulation;

/**
 * Straight lines between tests and flat ends, summed as ICAR writes it: {@code I0 M1 + I1 (M1 + M2) / 2 + ... + In Mn}.
 *
 * <p>One loop serves both the plain number and the explained figure; it allocates nothing of its own.
 */
final class TestIntervals {
    /** Told of every piece, in order of days. */
    @FunctionalInterface
    interface Pieces {
        /**
         * @param fromDay day in milk after which the piece begins
         * @param toDay last day of the piece
         * @param fromKg yield on {@code fromDay}, kg per day
         * @param toKg yield on {@code toDay}, kg per day
         * @param kg yield of the piece
         */
        void piece(double fromDay, double toDay, double fromKg, double toKg, double kg);
    }

    private TestIntervals() {}

    /**
     * Yield of days 1 to {@code endDay}, kg.
     *
     * @param days days in milk of the tests, rising; index 0 is the first test
     * @param kg yield of 24 hours at each
     * @param tests how many of them count, at least 1
     * @param endDay last day to count; a test after it is used to draw the line up to it
     * @param pieces told of every piece, or null
     */
    static double sum(double[] days, double[] kg, int tests, double endDay, Pieces pieces) {
        double sum = 0;
        double fromDay = 0;
        double fromKg = kg[0];
        for (int i = 0; i < tests && fromDay < endDay; i++) {
            double toDay = days[i];
            double toKg = kg[i];
            if (toDay > endDay) {
                toKg = fromKg + (toKg - fromKg) * (endDay - fromDay) / (toDay - fromDay);
                toDay = endDay;
            }
            sum += add(fromDay, toDay, fromKg, toKg, pieces);
            fromDay = toDay;
            fromKg = toKg;
        }
        if (fromDay < endDay) {
            sum += add(fromDay, endDay, fromKg, fromKg, pieces);
        }
        return sum;
    }

    private static double add(double fromDay, double toDay, double fromKg, double toKg, Pieces pieces) {
        double kg = (toDay - fromDay) * (fromKg + toKg) / 2;
        if (pieces != null) {
            pieces.piece(fromDay, toDay, fromKg, toKg, kg);
        }
        return kg;
    }
}
