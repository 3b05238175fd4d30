package org.pailbook.lactation.curve;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.pailbook.lactation.figure.UsedInput;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.testday.UsableTests;

/**
 * The curve of one lactation: what was fitted, what of it may be shown, and what was found on the way.
 *
 * <p>{@link #curve()} is empty when the fit is refused, and a finding that blocks says why: too few tests for the curve, tests
 * that do not determine it, a condition number above 1e10. With a curve, the peak is given only if the tests can show one.
 * Limits, all of them ours and choices:
 * <ul>
 * <li>the curve rises and falls; first and last test lie 60 days apart or more, the last on day 60 or later, the first on day 60
 * or earlier; <li>the peak lies on day 5 to 150, and not more than 30 days outside the tests; <li>a standard error of the peak
 * milk above 10 % of it is said; <li>a test with a studentized residual above 4 is named, and {@link #withoutFarTests()} is the
 * fit without it.
 * </ul>
 *
 * <p>The curve sums up the tests. No sum far beyond them is made from it (see {@link #totalKg}), and no projection.
 */
public final class CurveFit {
    private final CurveEstimate estimate;
    private final LocalDate asOf;
    private final UsableTests tests;
    private final List<Finding> findings;
    private final boolean isRefused;
    private final boolean hasPeak;
    private final boolean spansEnoughForShape;
    private final Optional<CurveFit> withoutFarTests;

    CurveFit(UsableTests tests, LocalDate asOf, CurveRules rules, Optional<CurveFit> withoutFarTests) {
        this.estimate = rules.estimate();
        this.asOf = Objects.requireNonNull(asOf, "asOf");
        this.tests = tests;
        this.findings = rules.findings();
        this.isRefused = rules.isRefused();
        this.hasPeak = rules.hasPeak();
        this.spansEnoughForShape = rules.spansEnoughForShape();
        this.withoutFarTests = withoutFarTests;
    }

    /** Fits usable tests and judges the result. */
    static CurveFit of(CurveModel model, UsableTests tests, LocalDate asOf) {
        CurveRules rules = CurveRules.apply(model, tests);
        Optional<CurveFit> without = rules.testsWithoutFar()
                .map(kept -> new CurveFit(kept, asOf, CurveRules.apply(model, kept), Optional.empty()));
        return new CurveFit(tests, asOf, rules, without);
    }

    public CurveModel model() {
        return estimate.model();
    }

    /** Later tests took no part. */
    public LocalDate asOf() {
        return asOf;
    }

    public boolean isRefused() {
        return isRefused;
    }

    /** The fitted curve; empty when refused. */
    public Optional<LactationCurve> curve() {
        return isRefused ? Optional.empty() : estimate.curve();
    }

    /** The bare arithmetic behind it, with spreads, criteria and residuals; empty when refused. */
    public Optional<CurveEstimate> estimate() {
        return isRefused ? Optional.empty() : Optional.of(estimate);
    }

    /** Parameters with standard errors, as in the paper; empty when refused. */
    public List<CurveParameter> parameters() {
        return isRefused ? List.of() : estimate.parameters();
    }

    /** Residual standard deviation, kg per day. */
    public OptionalDouble residualSdKg() {
        return isRefused ? OptionalDouble.empty() : estimate.residualSdKg();
    }

    /** Residual sum of squares, kg squared. */
    public OptionalDouble rssKg2() {
        return isRefused ? OptionalDouble.empty() : estimate.rssKg2();
    }

    /** See {@link CurveEstimate#aicc()}. */
    public OptionalDouble aicc() {
        return isRefused ? OptionalDouble.empty() : estimate.aicc();
    }

    /** See {@link CurveEstimate#bic()}. */
    public OptionalDouble bic() {
        return isRefused ? OptionalDouble.empty() : estimate.bic();
    }

    /** Tests the curve was fitted to. */
    public int testCount() {
        return tests.count();
    }

    /** Days in milk of the first usable test; empty when there is none. */
    public OptionalDouble firstTestDaysInMilk() {
        return tests.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(tests.daysInMilk(0));
    }

    /** Days in milk of the last usable test; empty when there is none. */
    public OptionalDouble lastTestDaysInMilk() {
        return tests.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(tests.daysInMilk(tests.count() - 1));
    }

    /** The day of the highest milk; empty when the tests cannot show one, and a finding says why. */
    public OptionalDouble peakDaysInMilk() {
        return hasPeak ? estimate.curve().orElseThrow().peakDaysInMilk() : OptionalDouble.empty();
    }

    /** Milk on the peak day, kg per day; empty together with {@link #peakDaysInMilk()}. */
    public OptionalDouble peakMilkKgPerDay() {
        return hasPeak ? estimate.curve().orElseThrow().peakMilkKgPerDay() : OptionalDouble.empty();
    }

    /** Standard error of the peak day, days. */
    public OptionalDouble peakDaysStandardError() {
        return hasPeak ? estimate.peakDaysStandardError() : OptionalDouble.empty();
    }

    /** Standard error of the milk on the peak day, kg per day. */
    public OptionalDouble peakMilkStandardErrorKgPerDay() {
        return hasPeak ? estimate.peakMilkStandardErrorKgPerDay() : OptionalDouble.empty();
    }

    /** Whether the tests cover enough of the lactation for a peak or a persistency to be read off the curve. */
    public boolean spansEnoughForShape() {
        return !isRefused && spansEnoughForShape;
    }

    /**
     * Milk the curve gives from one day to another, both included, kg. Empty when refused, and when the span ends more than
     * 30 days after the last test: a curve of a cow's own few points does not project.
     *
     * @throws IllegalArgumentException if the days are out of order or below 1
     */
    public OptionalDouble totalKg(int fromDaysInMilk, int toDaysInMilk) {
        DaySpan.require(fromDaysInMilk, toDaysInMilk);
        return isRefused || toDaysInMilk > lastTestDaysInMilk().orElseThrow() + CurveRules.MOST_DAYS_BEYOND_TESTS
                ? OptionalDouble.empty()
                : OptionalDouble.of(estimate.curve().orElseThrow().totalKg(fromDaysInMilk, toDaysInMilk));
    }

    /** The fit without tests that lie far off this curve; empty when there is none, or too few would be left. Show both. */
    public Optional<CurveFit> withoutFarTests() {
        return withoutFarTests;
    }

    /** What was found in the tests and in the fit. */
    public List<Finding> findings() {
        return findings;
    }

    /** Test days used, and those left out with the reason. */
    public List<UsedInput> inputs() {
        return tests.inputs();
    }
}
