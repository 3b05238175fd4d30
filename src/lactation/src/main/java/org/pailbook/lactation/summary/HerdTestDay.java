package org.pailbook.lactation.summary;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.sentence.Amount;
import org.pailbook.lactation.sentence.SentenceCode;
import org.pailbook.lactation.testday.AbnormalTestDays;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/**
 * A herd's test day held, cow by cow, against what the test before it leads to expect: lb for kg, a whole day off, two cows swapped. Nothing is
 * changed or left out; the findings go with the figures of that day.
 *
 * <p>Expected of a cow is her test before, of the same lactation and at most {@value #FURTHEST_APART_DAYS} days back, carried along the curve of her
 * group in the herd. Far off is below 60 % or above 150 % of that, as in {@link AbnormalTestDays}. Ours: the carrying, the shares and the numbers
 * of cows; that pounds for kilograms show as a ratio of 2.20 or .45 is arithmetic.
 */
public final class HerdTestDay {
    /** Fewer cows with a test before say nothing of a day as a whole. Ours. */
    private static final int FEWEST_COWS = 5;

    private static final long FURTHEST_APART_DAYS = 75;
    private static final double WHOLE_DAY_SHARE = 0.30;
    private static final double NEAR_THE_OTHER = 0.10;
    private static final double PERCENT = 100;

    private final LocalDate date;
    private final List<Told> told;
    private final List<Finding> findings;
    private final List<Pair> swapped;

    /**
     * A cow's test of the day.
     *
     * @param before her test before
     * @param expectedKg what that leads to expect on the day
     */
    record Told(String animal, TestDay test, double kg, double beforeKg, double expectedKg) {
        boolean isFarOff() {
            return !AbnormalTestDays.isWithinLimits(kg, expectedKg);
        }

        boolean isNear(double otherExpectedKg) {
            return Math.abs(kg - otherExpectedKg) <= NEAR_THE_OTHER * otherExpectedKg;
        }
    }

    /** Two cows that may have been taken for each other, and the same said of each. */
    public record Pair(String animal, String other, Finding finding, Finding ofOther) {}

    private HerdTestDay(LocalDate date, List<Told> told) {
        this.date = date;
        this.told = told;
        this.findings = aboutTheDay();
        this.swapped = findings.isEmpty() ? pairs() : List.of();
    }

    /** @param cows of the herd, taught what is known of it; those without a test on that day and one before take no part */
    public static HerdTestDay of(List<CowOnDay> cows, LocalDate date) {
        List<Told> told = new ArrayList<>();
        for (CowOnDay cow : cows) {
            cow.lactations().lactations().stream()
                    .map(assembled -> assembled.lactation())
                    .filter(lactation -> !lactation.calvingDate().isAfter(date))
                    .reduce((earlier, later) -> later)
                    .flatMap(lactation -> told(cow, lactation, date))
                    .ifPresent(told::add);
        }
        return new HerdTestDay(date, told);
    }

    private static Optional<Told> told(CowOnDay cow, Lactation lactation, LocalDate date) {
        TestDay test = null;
        TestDay before = null;
        for (TestDay one : lactation.testDays()) {
            if (one.milkKg().orElse(0) > 0) {
                if (one.date().equals(date)) {
                    test = one;
                } else if (one.date().isBefore(date)
                        && (before == null || one.date().isAfter(before.date()))) {
                    before = one;
                }
            }
        }
        if (test == null || before == null || date.toEpochDay() - before.date().toEpochDay() > FURTHEST_APART_DAYS) {
            return Optional.empty();
        }
        LactationStandard curve =
                cow.herd().milkStandard(cow.animal(), cow.breed(), lactation.parity(), lactation.calvingDate());
        double wasKg = before.milkKg().getAsDouble();
        double along = curve.meanKg(day(curve, lactation, date)) / curve.meanKg(day(curve, lactation, before.date()));
        return Optional.of(new Told(cow.animal(), test, test.milkKg().getAsDouble(), wasKg, wasKg * along));
    }

    private static int day(LactationStandard curve, Lactation lactation, LocalDate date) {
        return Math.min(curve.lastDay(), Math.max(1, lactation.daysInMilk(date)));
    }

    /** Whether a herd's mean over that of the test before is what pounds for kilograms, or kilograms for pounds, would make it. */
    public static boolean pointsAtPounds(double ratio) {
        return (ratio >= 2.1 && ratio <= 2.3) || (ratio >= 0.43 && ratio <= 0.48);
    }

    /** About the day as a whole: nothing with fewer than {@value #FEWEST_COWS} cows to judge it by. */
    public List<Finding> findings() {
        return findings;
    }

    /** Cows that fit each other's place and not their own; none where the day as a whole is off. Each cow is in one pair at most. */
    public List<Pair> swapped() {
        return swapped;
    }

    /** What is to be said of one cow; empty where nothing is. */
    public Optional<Finding> ofCow(String animal) {
        return swapped.stream()
                .filter(pair -> pair.animal().equals(animal) || pair.other().equals(animal))
                .map(pair -> pair.animal().equals(animal) ? pair.finding() : pair.ofOther())
                .findFirst();
    }

    private List<Finding> aboutTheDay() {
        if (told.size() < FEWEST_COWS) {
            return List.of();
        }
        double ratio = told.stream().mapToDouble(Told::kg).sum()
                / told.stream().mapToDouble(Told::beforeKg).sum();
        if (pointsAtPounds(ratio)) {
            return List.of(Finding.on(date, FindingCode.UNIT_DOUBTFUL)
                    .withField("milkKg")
                    .withSeen(SentenceCode.TIMES_TEST_BEFORE, Amount.number(ratio, 2), told.size())
                    .withExpected(SentenceCode.ABOUT_AS_BEFORE));
        }
        long below = told.stream()
                .filter(one -> one.isFarOff() && one.kg() < one.expectedKg())
                .count();
        long above = told.stream().filter(Told::isFarOff).count() - below;
        long most = Math.max(below, above);
        if (most > WHOLE_DAY_SHARE * told.size()) {
            return List.of(Finding.on(date, FindingCode.WHOLE_TEST_DAY_OFF)
                    .withField("milkKg")
                    .withSeen(
                            below > above ? SentenceCode.COWS_FAR_BELOW : SentenceCode.COWS_FAR_ABOVE,
                            most,
                            told.size())
                    .withExpected(SentenceCode.MOST_COWS_OUTSIDE, Math.round(PERCENT * WHOLE_DAY_SHARE)));
        }
        return List.of();
    }

    private List<Pair> pairs() {
        List<Told> farOff = new ArrayList<>(told.stream().filter(Told::isFarOff).toList());
        List<Pair> pairs = new ArrayList<>();
        while (!farOff.isEmpty()) {
            Told one = farOff.remove(0);
            farOff.stream()
                    .filter(other -> one.isNear(other.expectedKg()) && other.isNear(one.expectedKg()))
                    .findFirst()
                    .ifPresent(other -> {
                        farOff.remove(other);
                        pairs.add(new Pair(one.animal(), other.animal(), finding(one, other), finding(other, one)));
                    });
        }
        return pairs;
    }

    private Finding finding(Told one, Told other) {
        return Finding.on(date, FindingCode.COWS_SWAPPED)
                .withField("milkKg")
                .withSeen(SentenceCode.AND_OTHER_COW, kg(one.kg()), kg(other.kg()))
                .withExpected(SentenceCode.ABOUT_AND_OTHER_COW, kg(one.expectedKg()), kg(other.expectedKg()));
    }

    private static Amount kg(double kg) {
        return Amount.measured(kg, 1, "kg");
    }
}
