package org.pailbook.lactation.projection;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.reference.DailySpread;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/** The lactations and the standard the projection tests are worked on. */
final class WorkedCow {
    static final LocalDate CALVING = LocalDate.of(2024, 1, 1);
    static final Citation MADE_UP = new Citation("nobody", 2024, "made up for a test", HowKnown.OURS);

    private WorkedCow() {}

    /** Mean 30 - 10 exp(-.05 t) - .04 t kg, spread 5 kg on every day, e .20, herd level known. */
    static LactationStandard standard(double r) {
        return standard(r, 0.20);
    }

    static LactationStandard standard(double r, double e) {
        return LactationStandard.of(
                "worked example",
                MADE_UP,
                day -> 30 - 10 * Math.exp(-0.05 * day) - 0.04 * day,
                DailySpread.constant(5, r, e));
    }

    /** Test days as pairs of days in milk and kg. */
    static Lactation withTests(double... daysAndKg) {
        List<TestDay> tests = new ArrayList<>();
        for (int i = 0; i < daysAndKg.length; i += 2) {
            tests.add(TestDay.ofMilk(CALVING.plusDays((long) daysAndKg[i]), daysAndKg[i + 1]));
        }
        return Lactation.inMilk(2, CALVING, tests);
    }

    static Projection305 project(LactationStandard standard, double... daysAndKg) {
        Lactation lactation = withTests(daysAndKg);
        return new BestPrediction().project(lactation, standard, lastDate(lactation));
    }

    static LocalDate lastDate(Lactation lactation) {
        List<TestDay> tests = lactation.testDays();
        return tests.isEmpty() ? CALVING : tests.get(tests.size() - 1).date();
    }
}
