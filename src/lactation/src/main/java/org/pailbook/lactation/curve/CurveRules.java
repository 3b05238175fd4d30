package org.pailbook.lactation.curve;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.pailbook.lactation.figure.UsedInput;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.lactation.testday.UsableTests;

/**
 * When a fitted curve is refused or downgraded. The limits are ours: choices, shown to the user as such, and no facts of nature.
 */
final class CurveRules {
    /** Least span from first to last test, and least day of the last test, for a peak or a persistency. Ours. */
    static final int LEAST_DAYS_FOR_SHAPE = 60;

    /** The first test may not be later than this for a peak to be claimed. Ours. */
    static final int LATEST_FIRST_TEST = 60;

    /** Days on which a peak is believed. Ours. */
    static final int EARLIEST_PEAK = 5;

    static final int LATEST_PEAK = 150;

    /** How far outside the tests a peak, and how far after the last test a sum, is still given. Ours. */
    static final int MOST_DAYS_BEYOND_TESTS = 30;

    /** Condition number of the scaled design from which on the parameters are not told apart. Ours. */
    static final double MOST_CONDITION_NUMBER = 1e10;

    /** Standard error of the peak milk, as a share of it, from which on it is called uncertain. Ours. */
    static final double MOST_PEAK_ERROR_SHARE = 0.10;

    /** Studentized residual from which on a test is far off. Ours. */
    static final double FAR_OFF = 4;

    /**
     * Degrees of freedom that must be left without the test in question: with 5, one test in a hundred is that far off by chance,
     * with 1 one in six (Student's t beyond 4). Ours.
     */
    static final int LEAST_DEGREES_FOR_FAR_OFF = 5;

    private final CurveEstimate estimate;
    private final UsableTests tests;
    private final List<Finding> findings = new ArrayList<>();
    private final List<TestDay> far = new ArrayList<>();
    private boolean hasPeak;
    private boolean isRefused;
    private boolean spansEnoughForShape;

    private CurveRules(CurveModel model, UsableTests tests) {
        this.tests = tests;
        this.findings.addAll(tests.findings());
        this.estimate = estimate(model);
        if (estimate.refusal().isPresent()) {
            refuse(estimate.refusal().get());
        } else if (!(estimate.conditionNumber().orElseThrow() <= MOST_CONDITION_NUMBER)) {
            refuse(Finding.of(FindingCode.NOT_ESTIMABLE)
                    .withSeen(String.format(
                            Locale.ROOT,
                            "condition number %.1e",
                            estimate.conditionNumber().orElseThrow()))
                    .withExpected(String.format(Locale.ROOT, "%.0e at most", MOST_CONDITION_NUMBER)));
        } else {
            judgePeak(estimate.curve().orElseThrow());
            markFarTests();
        }
    }

    static CurveRules apply(CurveModel model, UsableTests tests) {
        return new CurveRules(model, tests);
    }

    private CurveEstimate estimate(CurveModel model) {
        if (tests.isEmpty()) {
            return CurveEstimate.refused(model, Finding.of(FindingCode.NO_TEST_DAYS));
        }
        if (tests.count() < model.leastTests()) {
            return CurveEstimate.tooFew(model, tests.count(), model.leastTests());
        }
        return model.estimate(tests.daysInMilk(), tests.milkKg());
    }

    private void refuse(Finding why) {
        isRefused = true;
        findings.add(why);
    }

    private void judgePeak(LactationCurve curve) {
        int first = tests.daysInMilk(0);
        int last = tests.daysInMilk(tests.count() - 1);
        spansEnoughForShape = last - first >= LEAST_DAYS_FOR_SHAPE && last >= LEAST_DAYS_FOR_SHAPE;
        Optional<Finding> noPeak = whyNoPeak(curve, first, last);
        hasPeak = noPeak.isEmpty();
        noPeak.ifPresent(findings::add);
        if (hasPeak) {
            OptionalDouble error = estimate.peakMilkStandardErrorKgPerDay();
            double peakMilkKg = curve.peakMilkKgPerDay().orElseThrow();
            if (error.isEmpty() || error.getAsDouble() > MOST_PEAK_ERROR_SHARE * peakMilkKg) {
                findings.add(Finding.of(FindingCode.PEAK_UNCERTAIN)
                        .withSeen(
                                error.isEmpty()
                                        ? "no standard error"
                                        : String.format(
                                                Locale.ROOT,
                                                "%.1f kg with a standard error of %.1f kg",
                                                peakMilkKg,
                                                error.getAsDouble()))
                        .withExpected("a standard error of 10 % at most"));
            }
        }
    }

    private Optional<Finding> whyNoPeak(LactationCurve curve, int first, int last) {
        if (curve.shape() != CurveShape.STANDARD) {
            return Optional.of(Finding.of(FindingCode.ATYPICAL_CURVE)
                    .withSeen(curve.shape().name().toLowerCase(Locale.ROOT)));
        }
        if (!spansEnoughForShape) {
            return Optional.of(Finding.of(FindingCode.TESTS_TOO_CLOSE)
                    .withSeen("tests from day " + first + " to day " + last)
                    .withExpected(LEAST_DAYS_FOR_SHAPE + " days or more, the last on day " + LEAST_DAYS_FOR_SHAPE
                            + " or later"));
        }
        if (first > LATEST_FIRST_TEST) {
            return Optional.of(Finding.of(FindingCode.PEAK_BEFORE_FIRST_TEST)
                    .withSeen("first test on day " + first)
                    .withExpected("day " + LATEST_FIRST_TEST + " at the latest"));
        }
        OptionalDouble peak = curve.peakDaysInMilk();
        if (peak.isEmpty()) {
            return Optional.of(Finding.of(FindingCode.NO_INNER_PEAK));
        }
        double earliest = Math.max(EARLIEST_PEAK, first - MOST_DAYS_BEYOND_TESTS);
        double latest = Math.min(LATEST_PEAK, last + MOST_DAYS_BEYOND_TESTS);
        if (peak.getAsDouble() < earliest || peak.getAsDouble() > latest) {
            return Optional.of(Finding.of(FindingCode.PEAK_OUT_OF_REACH)
                    .withSeen(String.format(Locale.ROOT, "day %.1f", peak.getAsDouble()))
                    .withExpected(String.format(Locale.ROOT, "day %.0f to %.0f", earliest, latest)));
        }
        return Optional.empty();
    }

    private void markFarTests() {
        if (estimate.degreesOfFreedom() - 1 < LEAST_DEGREES_FOR_FAR_OFF) {
            return;
        }
        for (int i = 0; i < tests.count(); i++) {
            OptionalDouble residual = estimate.studentizedResidual(i);
            if (residual.isPresent() && Math.abs(residual.getAsDouble()) > FAR_OFF) {
                far.add(tests.tests().get(i));
                double expectedKg = tests.milkKg(i) - estimate.residualsKg()[i];
                findings.add(Finding.on(tests.tests().get(i).date(), FindingCode.TEST_FAR_OFF_CURVE)
                        .withField("milkKg")
                        .withSeen(String.format(Locale.ROOT, "%.1f kg", tests.milkKg(i)))
                        .withExpected(String.format(Locale.ROOT, "about %.1f kg by the curve", expectedKg)));
            }
        }
    }

    /** The tests without those far off, when there are such. */
    Optional<UsableTests> testsWithoutFar() {
        if (far.isEmpty()) {
            return Optional.empty();
        }
        List<TestDay> kept =
                tests.tests().stream().filter(test -> !far.contains(test)).toList();
        List<UsedInput> leftOut = Stream.concat(
                        tests.leftOut().stream(),
                        far.stream()
                                .map(test -> UsedInput.leftOut(
                                        UsableTests.TEST_DAY, test.date(), FindingCode.TEST_FAR_OFF_CURVE.code())))
                .sorted(Comparator.comparing(UsedInput::date))
                .toList();
        return Optional.of(new UsableTests(tests.calvingDate(), kept, leftOut, tests.findings()));
    }

    CurveEstimate estimate() {
        return estimate;
    }

    List<Finding> findings() {
        return List.copyOf(findings);
    }

    boolean isRefused() {
        return isRefused;
    }

    boolean hasPeak() {
        return hasPeak;
    }

    boolean spansEnoughForShape() {
        return spansEnoughForShape;
    }
}
