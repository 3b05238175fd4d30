package org.pailbook.lactation.breeding;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.breeding.BreedingRecord.State;

/**
 * How many animals found pregnant are expected to calve, and how many cows to dry off, in a month. Only what is known is counted: cows
 * served and not checked are not in it, so far months fill up later.
 *
 * @param month of the calendar
 * @param cows expected to calve
 * @param heifers expected to calve for the first time
 * @param toDryOff cows in milk whose day to dry off lies in it
 */
public record DueByMonth(YearMonth month, int cows, int heifers, int toDryOff) {
    /** The month of the day and those after it; longer than any pregnancy. */
    public static final int MONTHS = 10;

    /**
     * {@value #MONTHS} months in order; days that are past count to the first.
     *
     * @param animals of the herd as they were on the day
     */
    public static List<DueByMonth> of(List<BreedingRecord> animals, BreedingSettings settings, LocalDate asOf) {
        int[][] counts = new int[MONTHS][3];
        YearMonth first = YearMonth.from(asOf);
        for (BreedingRecord animal : animals) {
            Optional<ExpectedCalving> expected = animal.expectedCalving();
            if (animal.state() == State.PREGNANT && expected.isPresent()) {
                boolean isHeifer = animal.now().parity() == 0;
                count(counts, first, expected.get().due(), isHeifer ? 1 : 0);
                if (!isHeifer && !animal.isDry()) {
                    count(counts, first, expected.get().dryOff(settings.dryDays()), 2);
                }
            }
        }
        List<DueByMonth> months = new ArrayList<>();
        for (int i = 0; i < MONTHS; i++) {
            months.add(new DueByMonth(first.plusMonths(i), counts[i][0], counts[i][1], counts[i][2]));
        }
        return months;
    }

    private static void count(int[][] counts, YearMonth first, LocalDate day, int what) {
        YearMonth month = YearMonth.from(day);
        int index = (month.getYear() - first.getYear()) * 12 + month.getMonthValue() - first.getMonthValue();
        if (index < MONTHS) {
            counts[Math.max(0, index)][what]++;
        }
    }
}
