package org.pailbook.lactation.culling;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * What an open cow of the herd's mean level gives in each month in milk, kg a day in the middle of the month.
 *
 * @param kgPerDay first entry is month 1; after the last entry it stays at that
 */
public record MilkByMonth(List<Double> kgPerDay) {
    /** Three years: cows open for longer are not followed further. */
    static final int MONTHS = 36;

    private static final int FALL_DAYS = 60;

    public MilkByMonth {
        kgPerDay = List.copyOf(kgPerDay);
        if (kgPerDay.isEmpty()) {
            throw new IllegalArgumentException("kgPerDay must have at least one month");
        }
        for (double kg : kgPerDay) {
            if (!(kg >= 0 && kg < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("kgPerDay (" + kg + ") must be 0 or more");
            }
        }
    }

    /** @param kgOnDay day in milk to kg; asked for the middle of each month, below zero counts as zero */
    public static MilkByMonth ofCurve(DoubleUnaryOperator kgOnDay) {
        return new MilkByMonth(IntStream.rangeClosed(1, MONTHS)
                .mapToObj(month -> Math.max(0, kgOnDay.applyAsDouble(middleDay(month))))
                .toList());
    }

    /**
     * From a mean that is trusted to a day only; after it the milk goes on to fall as it did over the last {@value #FALL_DAYS} days.
     *
     * @param kgOnDay day in milk to kg, above 0 on the last days
     * @param lastDay above {@value #FALL_DAYS}
     */
    public static MilkByMonth ofMeanTo(IntToDoubleFunction kgOnDay, int lastDay) {
        double last = kgOnDay.applyAsDouble(lastDay);
        double ratio = Math.min(1, last / kgOnDay.applyAsDouble(lastDay - FALL_DAYS));
        return ofCurve(day -> day <= lastDay
                ? kgOnDay.applyAsDouble((int) Math.round(day))
                : last * Math.pow(ratio, (day - lastDay) / FALL_DAYS));
    }

    /** Day in milk in the middle of a month. */
    static double middleDay(int month) {
        return (month - 0.5) * StageGrid.DAYS_PER_MONTH;
    }

    public double kgPerDay(int month) {
        return kgPerDay.get(Math.min(month, kgPerDay.size()) - 1);
    }

    /** Between this and another curve: 0 is this one, 1 the other. */
    public MilkByMonth movedTo(MilkByMonth other, double weightOfOther) {
        int months = Math.max(kgPerDay.size(), other.kgPerDay.size());
        return new MilkByMonth(IntStream.rangeClosed(1, months)
                .mapToObj(month -> (1 - weightOfOther) * kgPerDay(month) + weightOfOther * other.kgPerDay(month))
                .toList());
    }
}
