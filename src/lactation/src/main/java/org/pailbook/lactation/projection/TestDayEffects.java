package org.pailbook.lactation.projection;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.sentence.Amount;
import org.pailbook.lactation.sentence.SentenceCode;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.lactation.testday.UsableTests;

/** Effects of a herd's test days, ready to be taken out of one cow's weights; made by {@link HerdTestDays}. */
public final class TestDayEffects {
    /** No day had one. */
    public static final TestDayEffects NONE = new TestDayEffects(Map.of());

    static final double LEAST_STRIKING_SD = 0.4;

    private final Map<LocalDate, Effect> byDate;

    /**
     * The common part of a test day.
     *
     * @param date of the test
     * @param cows whose weights it was estimated from
     * @param shareOfSd effect in standard deviations of a day's milk, shrunk
     * @param standardErrorOfSd what stays unsure of it, same unit
     */
    public record Effect(LocalDate date, int cows, double shareOfSd, double standardErrorOfSd) {
        /**
         * More than three standard errors from none, and {@value #LEAST_STRIKING_SD} standard deviations, about two kilograms, or more: of thousands of
         * cows each day shows some small effect, and seasons and feed move slowly. Limits of ours.
         */
        public boolean isStriking() {
            return Math.abs(shareOfSd) > 3 * standardErrorOfSd && Math.abs(shareOfSd) >= LEAST_STRIKING_SD;
        }
    }

    TestDayEffects(Map<LocalDate, Effect> byDate) {
        this.byDate = Map.copyOf(byDate);
    }

    /** Empty for a day with too few cows. */
    public Optional<Effect> of(LocalDate date) {
        return Optional.ofNullable(byDate.get(date));
    }

    /**
     * A cow's lactation with the effects taken out of the milk weights; percentages stay.
     *
     * @param standard of the cow; tells how much milk one standard deviation is
     */
    public Lactation takenOutOf(Lactation lactation, LactationStandard standard) {
        List<TestDay> tests = new ArrayList<>();
        for (TestDay test : lactation.testDays()) {
            OptionalDouble effectKg = effectKg(lactation, test, standard);
            tests.add(effectKg.isEmpty() ? test : test.withMilkKg(corrected(test, effectKg.getAsDouble())));
        }
        return new Lactation(
                lactation.parity(), lactation.calvingDate(), lactation.endDate(), lactation.isEndEstimated(), tests);
    }

    /** The striking days only: what is taken out of a cow's weights is always said. */
    public TestDayEffects striking() {
        Map<LocalDate, Effect> striking = new HashMap<>(byDate);
        striking.values().removeIf(effect -> !effect.isStriking());
        return new TestDayEffects(striking);
    }

    public boolean isEmpty() {
        return byDate.isEmpty();
    }

    /** Whether a cow was weighed on a day that has an effect. */
    public boolean concerns(Lactation lactation) {
        return lactation.testDays().stream().anyMatch(test -> byDate.containsKey(test.date()));
    }

    /** What is to be said of a figure made from such a lactation: one finding for each striking day. */
    public List<Finding> findings(Lactation lactation, LactationStandard standard) {
        List<Finding> findings = new ArrayList<>();
        for (TestDay test : lactation.testDays()) {
            OptionalDouble effectKg = effectKg(lactation, test, standard);
            if (effectKg.isPresent() && byDate.get(test.date()).isStriking()) {
                findings.add(Finding.on(test.date(), FindingCode.HERD_TEST_DAY_EFFECT)
                        .withField("milkKg")
                        .withSeen(
                                SentenceCode.OVER_COWS,
                                Amount.measured(effectKg.getAsDouble(), 1, "kg").signed(),
                                byDate.get(test.date()).cows()));
            }
        }
        return findings;
    }

    private OptionalDouble effectKg(Lactation lactation, TestDay test, LactationStandard standard) {
        Effect effect = byDate.get(test.date());
        int day = lactation.daysInMilk(test.date());
        return effect == null || test.milkKg().isEmpty() || day < 1 || day > standard.lastDay()
                ? OptionalDouble.empty()
                : OptionalDouble.of(effect.shareOfSd() * standard.spread().sdPerDay(day));
    }

    /** A weight that may be used stays one that may be used. */
    private static double corrected(TestDay test, double effectKg) {
        double kg = test.milkKg().orElseThrow();
        boolean isUsable = kg >= UsableTests.LEAST_MILK_KG && kg <= UsableTests.MOST_MILK_KG;
        return isUsable ? Math.min(UsableTests.MOST_MILK_KG, Math.max(UsableTests.LEAST_MILK_KG, kg - effectKg)) : kg;
    }
}
