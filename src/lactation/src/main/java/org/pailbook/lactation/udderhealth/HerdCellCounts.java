package org.pailbook.lactation.udderhealth;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.figure.Measured;
import org.pailbook.lactation.figure.Proportion;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.Measure;
import org.pailbook.lactation.sentence.SentenceCode;
import org.pailbook.lactation.testday.TestDay;

/**
 * A herd's cell counts: at the last test, and over the 365 days to a day. The last test is the last day on which cells were counted and the six
 * days before it, since a herd may be tested over several days (ours).
 */
public final class HerdCellCounts {
    /** Later than this without a test, figures of the last one say so. Ours. */
    public static final int TESTS_OLD_AFTER_DAYS = 90;

    private static final int TEST_DAYS_TOGETHER = 7;
    private static final int YEAR_DAYS = 365;

    private final List<CowCellCounts> cows;
    private final CellCountCut cut;
    private final LocalDate asOf;
    private final Optional<LocalDate> lastTest;

    private HerdCellCounts(List<CowCellCounts> cows, CellCountCut cut, LocalDate asOf) {
        this.cows = List.copyOf(cows);
        this.cut = cut;
        this.asOf = asOf;
        this.lastTest = cows.stream()
                .flatMap(cow -> cow.lactations().stream())
                .flatMap(one -> CowCellCounts.counted(one.lactation(), asOf).stream())
                .map(TestDay::date)
                .max(Comparator.naturalOrder());
    }

    /** @param cows also those that left, who were tested while there */
    public static HerdCellCounts of(List<CowCellCounts> cows, CellCountCut cut, LocalDate asOf) {
        return new HerdCellCounts(cows, cut, asOf);
    }

    public Optional<LocalDate> lastTestDate() {
        return lastTest;
    }

    /** What the herd's tests lack. */
    public List<Finding> findings() {
        if (lastTest.isEmpty()) {
            return List.of(Finding.of(FindingCode.SCC_NEEDED));
        }
        List<Finding> findings = new ArrayList<>();
        long days = ChronoUnit.DAYS.between(lastTest.get(), asOf);
        if (days > TESTS_OLD_AFTER_DAYS) {
            findings.add(Finding.on(lastTest.get(), FindingCode.NO_RECENT_TEST).withSeen(SentenceCode.DAYS_AGO, days));
        }
        findings.add(Finding.of(FindingCode.LOW_COUNT_IS_NO_PROOF));
        return findings;
    }

    /** Whether that day belongs to the last test. */
    public boolean isOfLastTest(LocalDate date) {
        return lastTest.isPresent() && date.isAfter(lastTest.get().minusDays(TEST_DAYS_TOGETHER));
    }

    /** A cow that is there, with her count at the last test. */
    public record Counted(CowCellCounts cow, TestDay test) {
        public double sccThousandPerMl() {
            return test.sccThousandPerMl().orElseThrow();
        }
    }

    /** Cows counted at the last test, highest count first; those that left since are not among them. */
    public List<Counted> ofLastTest() {
        return cows.stream()
                .filter(cow -> !cow.hasLeft())
                .flatMap(cow -> cow.lastCounted(asOf).stream()
                        .filter(test -> isOfLastTest(test.date()))
                        .map(test -> new Counted(cow, test)))
                .sorted(Comparator.comparingDouble(Counted::sccThousandPerMl).reversed())
                .toList();
    }

    private boolean isOfYear(LocalDate date) {
        return date.isAfter(asOf.minusDays(YEAR_DAYS)) && !date.isAfter(asOf);
    }

    /** Of the last test. */
    public Measured prevalence() {
        List<TestDay> tests = cows.stream()
                .flatMap(cow -> cow.lastCounted(asOf).stream())
                .filter(test -> isOfLastTest(test.date()))
                .toList();
        int high = (int) tests.stream().filter(cut::isHigh).count();
        return share(UdderHealthMeasures.PREVALENCE, high, tests.size());
    }

    private List<CellCountState> statesOfLastTest() {
        return cows.stream()
                .flatMap(cow -> cow.lastPair(cut, asOf).stream())
                .filter(pair -> isOfLastTest(pair.now().date()))
                .map(CowCellCounts.Pair::state)
                .toList();
    }

    private List<CellCountState> statesOfYear() {
        return cows.stream()
                .flatMap(cow -> cow.pairs(cut, asOf).stream())
                .filter(pair -> isOfYear(pair.now().date()))
                .map(CowCellCounts.Pair::state)
                .toList();
    }

    private List<CellCountState> dryPeriodsOfYear() {
        return cows.stream()
                .flatMap(cow -> cow.dryPeriods(cut, asOf).stream())
                .filter(dry -> isOfYear(dry.first().date()))
                .map(CowCellCounts.DryPeriod::state)
                .toList();
    }

    /** New, cured and chronic at the last test. */
    public List<Measured> ratesOfLastTest() {
        return rates(statesOfLastTest());
    }

    /** New infection risk at the test before the last and at the last; fewer if there were fewer. */
    public List<Measured> newInfectionRisksOfLastTwoTests() {
        if (lastTest.isEmpty()) {
            return List.of();
        }
        HerdCellCounts before = of(cows, cut, lastTest.get().minusDays(TEST_DAYS_TOGETHER));
        return before.lastTest.isEmpty()
                ? List.of(ratesOfLastTest().get(0))
                : List.of(before.ratesOfLastTest().get(0), ratesOfLastTest().get(0));
    }

    /** The same over all pairs of tests whose later one lies in the year. */
    public List<Measured> ratesOfYear() {
        return rates(statesOfYear());
    }

    private List<Measured> rates(List<CellCountState> states) {
        int wasLow = count(states, CellCountState.CLEAN) + count(states, CellCountState.NEW);
        int wasHigh = count(states, CellCountState.CURED) + count(states, CellCountState.CHRONIC);
        return List.of(
                share(UdderHealthMeasures.NEW_INFECTION_RISK, count(states, CellCountState.NEW), wasLow),
                share(UdderHealthMeasures.CURE_RISK, count(states, CellCountState.CURED), wasHigh),
                share(UdderHealthMeasures.CHRONIC_SHARE, count(states, CellCountState.CHRONIC), states.size()));
    }

    /** Over the dry periods whose first test after calving lies in the year. */
    public List<Measured> ratesOverDryPeriod() {
        List<CellCountState> states = dryPeriodsOfYear();
        int wasLow = count(states, CellCountState.CLEAN) + count(states, CellCountState.NEW);
        return List.of(
                share(UdderHealthMeasures.HEALTHY_OVER_DRY, count(states, CellCountState.CLEAN), states.size()),
                share(UdderHealthMeasures.CHRONIC_OVER_DRY, count(states, CellCountState.CHRONIC), states.size()),
                share(UdderHealthMeasures.NEW_IN_DRY, count(states, CellCountState.NEW), wasLow),
                share(UdderHealthMeasures.CURED_IN_DRY, count(states, CellCountState.CURED), states.size() - wasLow));
    }

    /** Of the year. */
    public Measured freshHeifersHigh() {
        List<TestDay> first = cows.stream()
                .flatMap(cow -> cow.firstTestAsHeifer(asOf).stream())
                .filter(test -> isOfYear(test.date()))
                .toList();
        return share(
                UdderHealthMeasures.FRESH_HEIFERS_HIGH,
                (int) first.stream().filter(cut::isHigh).count(),
                first.size());
    }

    private static int count(List<CellCountState> states, CellCountState state) {
        return (int) states.stream().filter(one -> one == state).count();
    }

    private Measured share(Measure measure, int count, int outOf) {
        return Measured.share(measure, new Proportion(count, outOf), asOf, List.of());
    }
}
