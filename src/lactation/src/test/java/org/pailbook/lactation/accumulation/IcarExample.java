package org.pailbook.lactation.accumulation;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/**
 * The worked example of the test interval method in ICAR's Guidelines, Section 2. Rows from memory; all four published totals (284 d,
 * 4973.2 kg, 190.2 kg, 3.82 %) come out of them.
 */
public final class IcarExample {
    static final LocalDate CALVING = LocalDate.of(2001, 3, 25);
    public static final LocalDate END = LocalDate.of(2002, 1, 3);

    private static final LocalDate[] DATES = {
        LocalDate.of(2001, 4, 8),
        LocalDate.of(2001, 5, 6),
        LocalDate.of(2001, 6, 5),
        LocalDate.of(2001, 7, 7),
        LocalDate.of(2001, 8, 2),
        LocalDate.of(2001, 8, 30),
        LocalDate.of(2001, 9, 25),
        LocalDate.of(2001, 10, 27),
        LocalDate.of(2001, 11, 22),
        LocalDate.of(2001, 12, 20)
    };
    static final double[] MILK_KG = {28.2, 24.8, 26.6, 23.2, 20.2, 17.8, 13.2, 9.6, 5.8, 4.4};
    private static final double[] FAT_PCT = {3.65, 3.45, 3.40, 3.55, 3.85, 4.05, 4.45, 4.65, 4.95, 5.25};

    private IcarExample() {}

    static List<TestDay> tests() {
        List<TestDay> tests = new ArrayList<>();
        for (int i = 0; i < DATES.length; i++) {
            tests.add(TestDay.ofMilk(DATES[i], MILK_KG[i]).withFatPct(FAT_PCT[i]));
        }
        return tests;
    }

    public static Lactation lactation() {
        return new Lactation(3, CALVING, Optional.of(END), tests());
    }
}
