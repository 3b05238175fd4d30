package org.pailbook.lactation.udderhealth;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.testday.AssembledLactation;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/**
 * One cow's cell counts over her lactations: states between two tests in a row, and what became of them over her dry periods.
 *
 * <p>A test counts from day {@value DaysInMilk#FIRST_DAY_AFTER_COLOSTRUM} on and with a count above zero; two tests are in a row with 15 to 70 days
 * between them (ours). Over a dry period the last test up to 60 days before dry-off is held against the first on days 5 to 35 (ours).
 *
 * @param animal tells her from the others
 * @param hasLeft whether she left the herd
 * @param lactations hers, in order
 */
public record CowCellCounts(String animal, boolean hasLeft, List<AssembledLactation> lactations) {
    private static final int SHORTEST_GAP_DAYS = 15;
    private static final int LONGEST_GAP_DAYS = 70;
    private static final int LAST_BEFORE_DRY_OFF_DAYS = 60;
    private static final int FIRST_TEST_BY_DAY = 35;

    public CowCellCounts {
        Objects.requireNonNull(animal, "animal");
        lactations = List.copyOf(lactations);
    }

    /**
     * Two tests in a row.
     *
     * @param before the earlier
     * @param now the later
     * @param state what they say
     */
    public record Pair(TestDay before, TestDay now, CellCountState state) {}

    /**
     * The tests around a dry period.
     *
     * @param last before dry-off
     * @param first after calving
     * @param state what they say: new is new in the dry period
     */
    public record DryPeriod(TestDay last, TestDay first, CellCountState state) {}

    /** Tests of a lactation whose counts can be judged, in order, one a day: of two the later entry. */
    static List<TestDay> counted(Lactation lactation, LocalDate asOf) {
        List<TestDay> counted = new ArrayList<>();
        for (TestDay test : lactation.testDays()) {
            if (test.sccThousandPerMl().orElse(0) > 0
                    && !test.date().isAfter(asOf)
                    && lactation.daysInMilk(test.date()) >= DaysInMilk.FIRST_DAY_AFTER_COLOSTRUM) {
                int last = counted.size() - 1;
                if (last >= 0 && counted.get(last).date().equals(test.date())) {
                    counted.set(last, test);
                } else {
                    counted.add(test);
                }
            }
        }
        return counted;
    }

    /** The last counted test of the last lactation. */
    public Optional<TestDay> lastCounted(LocalDate asOf) {
        List<TestDay> tests = lactations.isEmpty()
                ? List.of()
                : counted(lactations.get(lactations.size() - 1).lactation(), asOf);
        return tests.isEmpty() ? Optional.empty() : Optional.of(tests.get(tests.size() - 1));
    }

    /** Number of her last calving. @throws java.util.NoSuchElementException if she never calved */
    public int lastParity() {
        return lactations.stream()
                .reduce((earlier, later) -> later)
                .orElseThrow()
                .lactation()
                .parity();
    }

    /** All pairs of tests in a row, over all lactations. */
    public List<Pair> pairs(CellCountCut cut, LocalDate asOf) {
        List<Pair> pairs = new ArrayList<>();
        for (AssembledLactation assembled : lactations) {
            List<TestDay> tests = counted(assembled.lactation(), asOf);
            for (int i = 1; i < tests.size(); i++) {
                TestDay before = tests.get(i - 1);
                TestDay now = tests.get(i);
                long gap = ChronoUnit.DAYS.between(before.date(), now.date());
                if (gap >= SHORTEST_GAP_DAYS && gap <= LONGEST_GAP_DAYS) {
                    pairs.add(new Pair(before, now, CellCountState.of(cut.isHigh(before), cut.isHigh(now))));
                }
            }
        }
        return pairs;
    }

    /** The pair that ends on her last counted test; empty if the test before it is missing, too near or too far. */
    public Optional<Pair> lastPair(CellCountCut cut, LocalDate asOf) {
        return lastCounted(asOf)
                .flatMap(last -> pairs(cut, asOf).stream()
                        .filter(pair -> pair.now().date().equals(last.date()))
                        .findFirst());
    }

    /** Dry periods with a test on both sides. */
    public List<DryPeriod> dryPeriods(CellCountCut cut, LocalDate asOf) {
        List<DryPeriod> dryPeriods = new ArrayList<>();
        for (int i = 1; i < lactations.size(); i++) {
            AssembledLactation ended = lactations.get(i - 1);
            Optional<TestDay> last = ended.end() == AssembledLactation.End.DRIED_OFF
                    ? lastBefore(ended.lactation(), asOf)
                    : Optional.empty();
            Optional<TestDay> first = firstOf(lactations.get(i).lactation(), asOf);
            if (last.isPresent() && first.isPresent()) {
                dryPeriods.add(new DryPeriod(
                        last.get(), first.get(), CellCountState.of(cut.isHigh(last.get()), cut.isHigh(first.get()))));
            }
        }
        return dryPeriods;
    }

    private static Optional<TestDay> lastBefore(Lactation ended, LocalDate asOf) {
        LocalDate dryOff = ended.endDate().orElseThrow();
        return counted(ended, asOf).stream()
                .filter(test -> !test.date().isAfter(dryOff)
                        && !test.date().isBefore(dryOff.minusDays(LAST_BEFORE_DRY_OFF_DAYS)))
                .reduce((earlier, later) -> later);
    }

    private static Optional<TestDay> firstOf(Lactation lactation, LocalDate asOf) {
        return counted(lactation, asOf).stream()
                .findFirst()
                .filter(test -> lactation.daysInMilk(test.date()) <= FIRST_TEST_BY_DAY);
    }

    /** The first test of a first lactation, on days 5 to 35. */
    public Optional<TestDay> firstTestAsHeifer(LocalDate asOf) {
        return lactations.stream()
                .map(AssembledLactation::lactation)
                .filter(lactation -> lactation.parity() == 1)
                .findFirst()
                .flatMap(lactation -> firstOf(lactation, asOf));
    }
}
