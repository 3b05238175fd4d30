package org.pailbook.lactation.testday;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.sentence.Amount;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;

/**
 * Finds test days whose milk does not fit the test before: below 60 % or above 150 % of what that one leads to expect. Both weights are
 * given, the recorded one and the one set to that floor or ceiling; which to use is for the reader, and nothing is changed here.
 *
 * <p>Expected is the preceding normal test plus the interval times a slope; the first test is judged by the next, or if
 * that one does not fit the one after it, by a later one (ours). Better left out than clipped:
 * weights over 59 kg above expected, and weights under 4.5 kg of a cow known to be sick or below half the mean of the tests beside. (The
 * abstract leaves open whether half the mean of the neighbours excludes larger weights too; here it does not.) In US data of 2002, 1.8 % of
 * milk weights were below and 0.1 % above; adjusting them gained little, so a farm is shown both.
 *
 * @see "Wiggans, G. R., VanRaden, P. M., Philpot, J. C. (2003). J. Dairy Sci. 86:2721-2724, abstract"
 */
public final class AbnormalTestDays implements PublishedMethod {
    private static final double FLOOR = 0.60;
    private static final double CEILING = 1.50;
    private static final double SICK_KG = 4.5;
    private static final double HALF_OF_NEIGHBOURS = 0.5;
    private static final double MOST_ABOVE_KG = 59;

    private final YieldSlope slope;

    private AbnormalTestDays(YieldSlope slope) {
        this.slope = slope;
    }

    public static AbnormalTestDays by(YieldSlope slope) {
        return new AbnormalTestDays(Objects.requireNonNull(slope, "slope"));
    }

    /** What a test is. */
    public enum Verdict {
        NORMAL,
        BELOW,
        ABOVE,
        /** So far off that leaving it out is better than clipping it. */
        NOT_CREDIBLE,
        /** There is no other test to judge it by. */
        NOT_JUDGED
    }

    /**
     * One test judged.
     *
     * @param test as recorded
     * @param expectedKg what the neighbouring test leads to expect, kg; empty if there is none
     * @param verdict what it is
     * @param clippedKg the floor or ceiling for a test below or above, kg; empty for others
     * @param finding for a test that is not normal
     */
    public record Judged(
            TestDay test,
            OptionalDouble expectedKg,
            Verdict verdict,
            OptionalDouble clippedKg,
            Optional<Finding> finding) {}

    /**
     * Judges the usable tests of a lactation, in order of date.
     *
     * @param sickDates days on which the cow was known to be sick
     * @param asOf later tests are not looked at
     */
    public List<Judged> judge(Lactation lactation, Set<LocalDate> sickDates, LocalDate asOf) {
        UsableTests tests = UsableTests.of(lactation, asOf);
        List<Judged> judged = new ArrayList<>();
        int lastNormal = -1;
        for (int i = 0; i < tests.count(); i++) {
            OptionalDouble expected = expectedKg(tests, i, lastNormal);
            Judged one = judge(tests, i, expected, sickDates);
            judged.add(one);
            if (one.verdict() == Verdict.NORMAL) {
                lastNormal = i;
            }
        }
        return List.copyOf(judged);
    }

    private OptionalDouble expectedKg(UsableTests tests, int index, int lastNormal) {
        if (lastNormal >= 0) {
            int intervalDays = tests.daysInMilk(index) - tests.daysInMilk(lastNormal);
            return OptionalDouble.of(
                    slope.nextKg(tests.daysInMilk(lastNormal), tests.milkKg(lastNormal), intervalDays));
        }
        int next = index + 1;
        if (next == tests.count()) {
            return OptionalDouble.empty();
        }
        if (!isWithinLimits(tests.milkKg(index), expectedFromLaterKg(tests, index, next))) {
            // one of the two is off: it is the later one if the test after that one says so too
            while (next + 1 < tests.count()
                    && !isWithinLimits(tests.milkKg(next), expectedFromLaterKg(tests, next, next + 1))) {
                next++;
            }
        }
        return OptionalDouble.of(expectedFromLaterKg(tests, index, next));
    }

    private double expectedFromLaterKg(UsableTests tests, int index, int later) {
        int intervalDays = tests.daysInMilk(later) - tests.daysInMilk(index);
        return slope.previousKg(tests.daysInMilk(index), tests.milkKg(later), intervalDays);
    }

    /** Whether a weight is from 60 % to 150 % of what was to be expected. */
    public static boolean isWithinLimits(double kg, double expectedKg) {
        return kg >= FLOOR * expectedKg && kg <= CEILING * expectedKg;
    }

    private static Judged judge(UsableTests tests, int index, OptionalDouble expected, Set<LocalDate> sickDates) {
        TestDay test = tests.tests().get(index);
        double kg = tests.milkKg(index);
        if (expected.isEmpty()) {
            return new Judged(test, expected, Verdict.NOT_JUDGED, OptionalDouble.empty(), Optional.empty());
        }
        double expectedKg = expected.getAsDouble();
        boolean tiny = kg < SICK_KG
                && (sickDates.contains(test.date()) || kg < HALF_OF_NEIGHBOURS * meanOfNeighbours(tests, index));
        if (tiny || kg > expectedKg + MOST_ABOVE_KG) {
            return flagged(test, expected, Verdict.NOT_CREDIBLE, OptionalDouble.empty(), FindingCode.TEST_NOT_CREDIBLE);
        }
        if (kg < FLOOR * expectedKg) {
            return flagged(
                    test,
                    expected,
                    Verdict.BELOW,
                    OptionalDouble.of(FLOOR * expectedKg),
                    FindingCode.TEST_BELOW_EXPECTED);
        }
        if (kg > CEILING * expectedKg) {
            return flagged(
                    test,
                    expected,
                    Verdict.ABOVE,
                    OptionalDouble.of(CEILING * expectedKg),
                    FindingCode.TEST_ABOVE_EXPECTED);
        }
        return new Judged(test, expected, Verdict.NORMAL, OptionalDouble.empty(), Optional.empty());
    }

    private static Judged flagged(
            TestDay test, OptionalDouble expected, Verdict verdict, OptionalDouble clipped, FindingCode code) {
        Finding finding = Finding.on(test.date(), code)
                .withField("milkKg")
                .withSeen(Sentence.verbatim(kg(test.milkKg().orElseThrow())))
                .withExpected(
                        clipped.isPresent()
                                ? Sentence.of(
                                        SentenceCode.ABOUT_AT_LIMIT,
                                        kg(expected.getAsDouble()),
                                        kg(clipped.getAsDouble()))
                                : Sentence.of(SentenceCode.ABOUT, kg(expected.getAsDouble())));
        return new Judged(test, expected, verdict, clipped, Optional.of(finding));
    }

    private static Amount kg(double kg) {
        return Amount.measured(kg, 1, "kg");
    }

    /** Mean of the tests directly before and after, kg; there is at least one. */
    private static double meanOfNeighbours(UsableTests tests, int index) {
        double sum = 0;
        int count = 0;
        if (index > 0) {
            sum += tests.milkKg(index - 1);
            count++;
        }
        if (index + 1 < tests.count()) {
            sum += tests.milkKg(index + 1);
            count++;
        }
        return sum / count;
    }

    @Override
    public String id() {
        return "abnormal-test-days-wiggans-2003";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "Wiggans, G. R., VanRaden, P. M., Philpot, J. C.",
                2003,
                "J. Dairy Sci. 86:2721-2724, abstract; slope coefficients fitted to the herd",
                HowKnown.READ);
    }
}
