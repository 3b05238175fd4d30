package org.pailbook.lactation.summary;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.figure.UsedInput;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.projection.Coverage;
import org.pailbook.lactation.projection.Projection305;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.lactation.testday.UsableTests;
import org.pailbook.lactation.udderhealth.SomaticCellScore;

/**
 * A herd on one day: how many cows are in which state, what they gave on the herd's last test date, and what they are expected to give.
 *
 * <p>The last test date is the latest day up to the as-of date on which a cow of the herd was tested. Figures of that date are over the
 * cows with a milk weight accepted on it; a herd weighed over several days shows the last of them only, and says how many cows.
 */
public final class HerdOnDay {
    /** Tests further back say little of the herd as it is; as for cell counts. Ours. */
    private static final int TESTS_OLD_AFTER_DAYS = 90;

    private final List<CowOnDay> cows;
    private final LocalDate asOf;
    private final Optional<LocalDate> lastTestDate;
    private final List<TestDay> lastTests;
    // made when first asked for; made twice by two threads they are equal
    private volatile List<Projection305> milkProjections;
    private volatile Optional<HerdTestDay> lastTestDay;

    private HerdOnDay(List<CowOnDay> cows, LocalDate asOf) {
        this.cows = List.copyOf(cows);
        this.asOf = asOf;
        this.lastTestDate = cows.stream()
                .flatMap(cow -> cow.lactations().lactations().stream())
                .flatMap(lactation -> lactation.lactation().testDays().stream())
                .map(TestDay::date)
                .max(LocalDate::compareTo);
        this.lastTests = lastTestDate.map(this::acceptedTestsOn).orElse(List.of());
    }

    /** @param cows as they were on that day */
    public static HerdOnDay of(List<CowOnDay> cows, LocalDate asOf) {
        return new HerdOnDay(cows, asOf);
    }

    private List<TestDay> acceptedTestsOn(LocalDate date) {
        List<TestDay> found = new ArrayList<>();
        for (CowOnDay cow : cows) {
            for (var assembled : cow.lactations().lactations()) {
                UsableTests.of(assembled.lactation(), asOf).tests().stream()
                        .filter(test -> test.date().equals(date))
                        .forEach(found::add);
            }
        }
        return found;
    }

    /** Number of cows in that state. */
    public int count(CowState state) {
        return (int) cows.stream().filter(cow -> cow.state() == state).count();
    }

    /** The last day on which a cow of the herd was tested. */
    public Optional<LocalDate> lastTestDate() {
        return lastTestDate;
    }

    /** What the herd lacks for its figures to say much: cows, tests, or tests of the last {@value #TESTS_OLD_AFTER_DAYS} days. */
    public List<Finding> lacks() {
        List<Finding> lacks = new ArrayList<>();
        if (count(CowState.IN_MILK) == 0) {
            lacks.add(Finding.of(FindingCode.NO_COWS_IN_MILK));
        }
        if (lastTestDate.isEmpty()) {
            lacks.add(Finding.of(FindingCode.NO_TEST_DAYS));
        } else {
            long days = ChronoUnit.DAYS.between(lastTestDate.get(), asOf);
            if (days > TESTS_OLD_AFTER_DAYS) {
                lacks.add(Finding.on(lastTestDate.get(), FindingCode.NO_RECENT_TEST)
                        .withSeen(SentenceCode.DAYS_AGO, days));
            }
        }
        return lacks;
    }

    /** The last test date held against the tests before it; empty without a test. */
    public Optional<HerdTestDay> lastTestDay() {
        if (lastTestDay == null) {
            lastTestDay = lastTestDate.map(date -> HerdTestDay.of(cows, date));
        }
        return lastTestDay;
    }

    private List<Finding> aboutLastTestDay() {
        return lastTestDay().map(HerdTestDay::findings).orElse(List.of());
    }

    /** Mean days in milk of the cows in milk, on the as-of date. */
    public Figure meanDaysInMilk() {
        List<Explanation.Part> parts = new ArrayList<>();
        double sum = 0;
        int n = 0;
        for (CowOnDay cow : cows) {
            if (cow.daysInMilk().isPresent()) {
                sum += cow.daysInMilk().getAsInt();
                n++;
            }
        }
        Figure.Builder figure = Figure.of(HerdMean.OVER_COWS, "d", asOf).noInterval(SentenceCode.COUNT_OF_DAYS);
        if (n == 0) {
            return figure.finding(Finding.of(FindingCode.NO_COWS_IN_MILK)).build();
        }
        parts.add(new Explanation.Part(Sentence.of(SentenceCode.DAYS_IN_MILK_OF, cows(n), (long) sum, n), sum / n));
        return figure.value(sum / n).explanation(new Explanation(parts)).build();
    }

    /** Milk of all cows tested on the last test date, kg in 24 hours. */
    public Figure milkOfLastTestDate() {
        return ofLastTests("kg/d", tests -> {
            double sum = tests.stream()
                    .mapToDouble(test -> test.milkKg().orElseThrow())
                    .sum();
            return new Explanation.Part(Sentence.of(SentenceCode.MILK_OF, cows(tests.size())), sum);
        });
    }

    /** Mean milk of the cows tested on the last test date, kg in 24 hours. */
    public Figure meanMilkOfLastTestDate() {
        return ofLastTests("kg/d", tests -> {
            double sum = tests.stream()
                    .mapToDouble(test -> test.milkKg().orElseThrow())
                    .sum();
            return new Explanation.Part(
                    Sentence.of(SentenceCode.MILK_OF_DIVIDED, cows(tests.size()), tests.size()), sum / tests.size());
        });
    }

    /** Fat of all the milk of the last test date, percent by mass, over the cows sampled. */
    public Figure fatPctOfLastTestDate() {
        return weighted("%", "fatPct", FindingCode.FAT_MISSING, TestDay::fatPct);
    }

    /** Protein of all the milk of the last test date, percent by mass, over the cows sampled. */
    public Figure proteinPctOfLastTestDate() {
        return weighted("%", "proteinPct", FindingCode.PROTEIN_MISSING, TestDay::proteinPct);
    }

    /** Somatic cells of all the milk of the last test date, 1,000 per mL, weighted by milk as a tank would be. */
    public Figure sccOfLastTestDate() {
        return weighted("1000/mL", "sccThousandPerMl", FindingCode.SCC_MISSING, TestDay::sccThousandPerMl);
    }

    /** Plain mean of the cows' somatic cell scores on the last test date: says more of infection than the tank's count does. */
    public Figure meanSomaticCellScore() {
        List<Double> scores = lastTests.stream()
                .map(TestDay::sccThousandPerMl)
                .filter(scc -> scc.isPresent() && scc.getAsDouble() > 0)
                .map(scc -> SomaticCellScore.score(scc.getAsDouble()))
                .toList();
        Figure.Builder figure =
                Figure.of(SomaticCellScore.SCS, "score", asOf).noInterval(SentenceCode.MEAN_OF_COWS_TESTED);
        if (scores.isEmpty()) {
            return figure.finding(Finding.of(FindingCode.NO_TEST_DAYS)).build();
        }
        double mean = scores.stream().mapToDouble(Double::doubleValue).sum() / scores.size();
        return figure.value(mean)
                .explanation(new Explanation(List.of(new Explanation.Part(
                        Sentence.of(SentenceCode.SCORES_OF, cows(scores.size()), scores.size()), mean))))
                .build();
    }

    /** Projections of the milk of the cows in milk, in the order of the cows. */
    public List<Projection305> milkProjections() {
        List<Projection305> made = milkProjections;
        if (made == null) {
            // each cow by itself, so any processor may take her; the order stays
            made = cows.parallelStream()
                    .filter(cow -> cow.state() == CowState.IN_MILK)
                    .map(cow -> cow.milkProjection(cow.lactations().latest().orElseThrow()))
                    .toList();
            milkProjections = made;
        }
        return made;
    }

    /** Mean 305-day projection of the cows in milk; its error by {@link ProjectionsTogether}. */
    public Figure meanProjection305() {
        List<Projection305> projections = milkProjections();
        Figure.Builder figure = Figure.of(HerdMean.OF_PROJECTIONS, "kg", asOf);
        int n = projections.size();
        if (n == 0) {
            return figure.finding(Finding.of(FindingCode.NO_COWS_IN_MILK)).build();
        }
        ProjectionsTogether together = ProjectionsTogether.none();
        double sum = 0;
        int untested = 0;
        for (Projection305 projection : projections) {
            sum += projection.milk305Kg();
            together = together.with(projection.standardErrorKg(), projection.sharedHerdErrorKg());
            untested += projection.tests() == 0 ? 1 : 0;
        }
        double mean = sum / n;
        figure.value(mean)
                .explanation(new Explanation(
                        List.of(new Explanation.Part(Sentence.of(SentenceCode.PROJECTIONS_OF, cows(n), n), mean))))
                .finding(Finding.of(FindingCode.IF_MILKED_TO_305));
        if (untested > 0) {
            figure.finding(Finding.of(FindingCode.NO_TEST_YET).withSeen(SentenceCode.OF, untested, cows(n)));
        }
        for (Coverage coverage : Coverage.values()) {
            double half = coverage.normalMultiple() * together.standardErrorOfSumKg() / n;
            figure.interval(new Interval(coverage.share(), mean - half, mean + half));
        }
        return figure.build();
    }

    private Figure ofLastTests(String unit, Function<List<TestDay>, Explanation.Part> sum) {
        Figure.Builder figure = Figure.of(HerdMean.OVER_COWS, unit, asOf).noInterval(SentenceCode.MEASURED_ON_TESTED);
        if (lastTests.isEmpty()) {
            return figure.finding(Finding.of(FindingCode.NO_TEST_DAYS)).build();
        }
        Explanation.Part part = sum.apply(lastTests);
        return figure.findings(aboutLastTestDay())
                .value(part.amount())
                .input(UsedInput.used(UsableTests.TEST_DAY, lastTests.get(0).date()))
                .explanation(new Explanation(List.of(part)))
                .build();
    }

    private Figure weighted(
            String unit, String field, FindingCode missing, Function<TestDay, OptionalDouble> component) {
        Figure.Builder figure = Figure.of(HerdMean.OVER_COWS, unit, asOf).noInterval(SentenceCode.MEASURED_ON_SAMPLED);
        List<TestDay> sampled = lastTests.stream()
                .filter(test -> component.apply(test).isPresent())
                .toList();
        if (sampled.isEmpty()) {
            return figure.finding(Finding.of(FindingCode.NO_TEST_DAYS).withField(field))
                    .build();
        }
        if (sampled.size() < lastTests.size()) {
            figure.finding(Finding.of(missing)
                    .withField(field)
                    .withSeen(SentenceCode.OF, lastTests.size() - sampled.size(), cows(lastTests.size())));
        }
        double milk = 0;
        double product = 0;
        for (TestDay test : sampled) {
            milk += test.milkKg().orElseThrow();
            product += test.milkKg().orElseThrow() * component.apply(test).orElseThrow();
        }
        double mean = product / milk;
        return figure.findings(aboutLastTestDay())
                .value(mean)
                .input(UsedInput.used(UsableTests.TEST_DAY, sampled.get(0).date()))
                .explanation(new Explanation(List.of(
                        new Explanation.Part(Sentence.of(SentenceCode.SAMPLED_BY_MILK, cows(sampled.size())), mean))))
                .build();
    }

    private static Sentence cows(int n) {
        return n == 1 ? Sentence.of(SentenceCode.ONE_COW) : Sentence.of(SentenceCode.COWS, n);
    }
}
