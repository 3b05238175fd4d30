package org.pailbook.lactation.curve;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.internal.LinearLeastSquares;

/**
 * A curve fitted to points by least squares: the arithmetic before anybody asks whether it means something.
 *
 * <p>Standard errors come from the residual spread and the derivatives of the curve at the solution, to first order for curves
 * that are not linear in their parameters. They are empty when there are as many parameters as points.
 */
public final class CurveEstimate {
    /** Fewer degrees of freedom than this are none: an unsmoothed spline leaves only rounding. */
    private static final double LEAST_DEGREES = 1e-9;

    private final CurveModel model;
    private final Optional<LactationCurve> curve;
    private final Optional<Finding> refusal;
    private final double[] residualsKg;
    /** What was minimised: the residuals in kg, or those of logarithms. */
    private final double[] minimised;

    private final double[] leverages;
    private final double rssKg2;
    private final double parameterCount;
    private final double conditionNumber;
    /** Covariances of the fitted parameters, which come first on the curve; empty when no spread is left. */
    private final double[][] covariances;

    private CurveEstimate(CurveModel model, Finding refusal) {
        this.model = Objects.requireNonNull(model, "model");
        this.curve = Optional.empty();
        this.refusal = Optional.of(refusal);
        this.residualsKg = new double[0];
        this.minimised = new double[0];
        this.leverages = new double[0];
        this.rssKg2 = Double.NaN;
        this.parameterCount = model.parameterCount();
        this.conditionNumber = Double.POSITIVE_INFINITY;
        this.covariances = new double[0][];
    }

    private CurveEstimate(
            CurveModel model,
            LactationCurve curve,
            double[] residualsKg,
            double[] minimised,
            double parameterCount,
            double[][] covariances,
            LinearLeastSquares design) {
        this.model = Objects.requireNonNull(model, "model");
        this.curve = Optional.of(curve);
        this.refusal = Optional.empty();
        this.residualsKg = residualsKg;
        this.minimised = minimised;
        this.parameterCount = parameterCount;
        this.conditionNumber = design.conditionNumber();
        this.rssKg2 = sumOfSquares(residualsKg);
        this.covariances = covariances;
        this.leverages = new double[residualsKg.length];
        for (int i = 0; i < leverages.length; i++) {
            leverages[i] = design.leverage(i);
        }
    }

    /** No solution, with the reason. */
    static CurveEstimate refused(CurveModel model, Finding why) {
        return new CurveEstimate(model, why);
    }

    /** Fewer points than parameters. */
    static CurveEstimate tooFew(CurveModel model, int tests) {
        return tooFew(model, tests, model.parameterCount());
    }

    /** Fewer points than asked for. */
    static CurveEstimate tooFew(CurveModel model, int tests, int least) {
        return refused(
                model,
                Finding.of(FindingCode.TOO_FEW_TESTS)
                        .withSeen(tests == 1 ? "1 test" : tests + " tests")
                        .withExpected(least + " tests or more"));
    }

    /** The points do not determine the curve. */
    static CurveEstimate notEstimable(CurveModel model, String seen) {
        return refused(model, Finding.of(FindingCode.NOT_ESTIMABLE).withSeen(seen));
    }

    /** The curve that minimises the squared residuals in kg, with the spread read off its derivatives. */
    static CurveEstimate ofMinimum(CurveModel model, LactationCurve curve, double[] daysInMilk, double[] milkKg) {
        int tests = daysInMilk.length;
        int parameters = model.parameterCount();
        double[] design = new double[tests * parameters];
        for (int i = 0; i < tests; i++) {
            double[] row = curve.gradient(daysInMilk[i]);
            for (int k = 0; k < parameters; k++) {
                design[k * tests + i] = row[k];
            }
        }
        return ofDesign(model, curve, design, residuals(curve, daysInMilk, milkKg));
    }

    /** @param design derivatives at the tests, column after column */
    static CurveEstimate ofDesign(CurveModel model, LactationCurve curve, double[] design, double[] residuals) {
        // solved for its covariances and leverages only: at a minimum the residuals have nothing left to explain
        LinearLeastSquares spread = LinearLeastSquares.solve(design, model.parameterCount(), residuals);
        return spread.isSingular()
                ? notEstimable(model, "singular normal equations")
                : ofSolution(model, curve, residuals, spread);
    }

    /** The curve that solves a linear problem. */
    static CurveEstimate ofSolution(
            CurveModel model, LactationCurve curve, double[] daysInMilk, double[] milkKg, LinearLeastSquares solution) {
        return ofSolution(model, curve, residuals(curve, daysInMilk, milkKg), solution);
    }

    private static CurveEstimate ofSolution(
            CurveModel model, LactationCurve curve, double[] residuals, LinearLeastSquares solution) {
        int parameters = model.parameterCount();
        double[][] covariances =
                covariances(parameters, sumOfSquares(residuals), residuals.length - parameters, solution);
        return new CurveEstimate(model, curve, residuals, residuals, parameters, covariances, solution);
    }

    /**
     * A curve for which something else than kg was minimised.
     *
     * @param minimised the residuals of that
     * @param scales derivative of each parameter by the one that was solved for
     */
    static CurveEstimate ofTransformed(
            CurveModel model,
            LactationCurve curve,
            double[] daysInMilk,
            double[] milkKg,
            LinearLeastSquares solution,
            double[] minimised,
            double[] scales) {
        int parameters = model.parameterCount();
        double[][] covariances =
                covariances(parameters, sumOfSquares(minimised), minimised.length - parameters, solution);
        for (int k = 0; k < covariances.length; k++) {
            for (int m = 0; m < covariances.length; m++) {
                covariances[k][m] *= scales[k] * scales[m];
            }
        }
        double[] residuals = residuals(curve, daysInMilk, milkKg);
        return new CurveEstimate(model, curve, residuals, minimised, parameters, covariances, solution);
    }

    /** A curve held back by smoothing: its parameters count by the sum of the leverages. */
    static CurveEstimate ofSmoothing(
            CurveModel model, LactationCurve curve, double[] daysInMilk, double[] milkKg, LinearLeastSquares solution) {
        double[] residuals = residuals(curve, daysInMilk, milkKg);
        double effective = 0;
        for (int i = 0; i < residuals.length; i++) {
            effective += solution.leverage(i);
        }
        double[][] covariances =
                covariances(curve.parameters().size(), sumOfSquares(residuals), residuals.length - effective, solution);
        return new CurveEstimate(model, curve, residuals, residuals, effective, covariances, solution);
    }

    private static double[] residuals(LactationCurve curve, double[] daysInMilk, double[] milkKg) {
        double[] residuals = new double[milkKg.length];
        for (int i = 0; i < residuals.length; i++) {
            residuals[i] = milkKg[i] - curve.milkKgPerDay(daysInMilk[i]);
        }
        return residuals;
    }

    private static double sumOfSquares(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value * value;
        }
        return sum;
    }

    private static double[][] covariances(int size, double sumOfSquares, double degrees, LinearLeastSquares solution) {
        if (!(degrees > LEAST_DEGREES)) {
            return new double[0][];
        }
        double variance = sumOfSquares / degrees;
        double[][] result = new double[size][size];
        for (int k = 0; k < size; k++) {
            for (int m = 0; m < size; m++) {
                result[k][m] = variance * solution.inverseNormal(k, m);
            }
        }
        return result;
    }

    public CurveModel model() {
        return model;
    }

    /** The curve; empty when there is no solution. */
    public Optional<LactationCurve> curve() {
        return curve;
    }

    /** Why there is no curve; empty when there is one. */
    public Optional<Finding> refusal() {
        return refusal;
    }

    /** The parameters with their standard errors; empty when there is no curve. */
    public List<CurveParameter> parameters() {
        if (curve.isEmpty()) {
            return List.of();
        }
        List<CurveParameter> values = curve.get().parameters();
        if (covariances.length == 0) {
            return values;
        }
        List<CurveParameter> result = new ArrayList<>(values);
        for (int k = 0; k < covariances.length; k++) {
            result.set(k, values.get(k).withStandardError(Math.sqrt(covariances[k][k])));
        }
        return List.copyOf(result);
    }

    /** Points fitted. */
    public int testCount() {
        return residualsKg.length;
    }

    /**
     * Measured less fitted at each point, kg, in the order the points were given. A fresh array, empty when there is no curve.
     */
    public double[] residualsKg() {
        return residualsKg.clone();
    }

    /** Residual sum of squares, kg squared. */
    public OptionalDouble rssKg2() {
        return ifFitted(rssKg2);
    }

    /** Tests less parameters; for a smoothing spline less the effective number of parameters. 0 when there is no curve. */
    public double degreesOfFreedom() {
        return curve.isPresent() ? testCount() - parameterCount : 0;
    }

    /** Residual standard deviation {@code sqrt(rss / degrees of freedom)}, kg. */
    public OptionalDouble residualSdKg() {
        return degreesOfFreedom() > LEAST_DEGREES
                ? OptionalDouble.of(Math.sqrt(rssKg2 / degreesOfFreedom()))
                : OptionalDouble.empty();
    }

    /**
     * Condition number of the design with columns scaled to length one: how near the tests come to not telling the parameters
     * apart.
     */
    public OptionalDouble conditionNumber() {
        return ifFitted(conditionNumber);
    }

    /**
     * Akaike's criterion {@code n (ln(2 pi rss / n) + 1) + 2 k}, with {@code k} the parameters and the residual variance.
     * Comparable between curves fitted to the same points only. Empty when nothing is left over.
     */
    public OptionalDouble aic() {
        return criterion(2 * estimatedCount());
    }

    /**
     * Akaike's criterion with the correction {@code 2 k (k + 1) / (n - k - 1)} for few points; empty unless {@code n > k + 1}.
     */
    public OptionalDouble aicc() {
        double k = estimatedCount();
        double left = testCount() - k - 1;
        return left > 0 ? criterion(2 * k + 2 * k * (k + 1) / left) : OptionalDouble.empty();
    }

    /** Schwarz's criterion: {@code k ln n} in place of {@code 2 k}. */
    public OptionalDouble bic() {
        return criterion(estimatedCount() * Math.log(testCount()));
    }

    private double estimatedCount() {
        return parameterCount + 1;
    }

    private OptionalDouble criterion(double penalty) {
        if (residualSdKg().isEmpty() || rssKg2 == 0) {
            return OptionalDouble.empty();
        }
        int n = testCount();
        return OptionalDouble.of(n * (Math.log(2 * Math.PI * rssKg2 / n) + 1) + penalty);
    }

    /**
     * Residual of one point divided by the spread it would have if the curve were fitted without it (externally studentized).
     * Unlike the residual over the common spread, which cannot exceed {@code sqrt(tests - parameters)}, this one grows without
     * bound.
     *
     * @param index of the point, counted from 0
     * @return a pure number; empty when fewer than two degrees of freedom are left
     */
    public OptionalDouble studentizedResidual(int index) {
        double left = degreesOfFreedom() - 1;
        double free = 1 - leverages[index];
        if (!(left > 0) || !(free > 0)) {
            return OptionalDouble.empty();
        }
        double squared = minimised[index] * minimised[index] / free;
        double varianceWithout = (sumOfSquares(minimised) - squared) / left;
        return varianceWithout > 0
                ? OptionalDouble.of(minimised[index] / Math.sqrt(free * varianceWithout))
                : OptionalDouble.empty();
    }

    /** Standard error of the fitted curve on one day, kg per day: of the curve, not of a single test. */
    public OptionalDouble standardErrorKgPerDay(double daysInMilk) {
        return covariances.length == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(spreadOf(curve.orElseThrow().gradient(daysInMilk)));
    }

    /** Standard error of a quantity whose derivatives by the parameters are given, by the first-order rule. */
    private double spreadOf(double[] derivatives) {
        double variance = 0;
        for (int k = 0; k < covariances.length; k++) {
            for (int m = 0; m < covariances.length; m++) {
                variance += derivatives[k] * covariances[k][m] * derivatives[m];
            }
        }
        return Math.sqrt(Math.max(0, variance));
    }

    /**
     * Standard error of the curve's peak day, days. From {@code slope(peak) = 0} by implicit differentiation; the two second
     * derivatives in it are central differences over a fiftieth of a day.
     */
    public OptionalDouble peakDaysStandardError() {
        if (covariances.length == 0 || curve.orElseThrow().peakDaysInMilk().isEmpty()) {
            return OptionalDouble.empty();
        }
        LactationCurve fitted = curve.get();
        double peak = fitted.peakDaysInMilk().getAsDouble();
        double step = Math.min(0.01, peak / 100);
        double bend = (fitted.slopeKgPerDayPerDay(peak + step) - fitted.slopeKgPerDayPerDay(peak - step)) / (2 * step);
        double[] after = fitted.gradient(peak + step);
        double[] before = fitted.gradient(peak - step);
        double[] derivatives = new double[after.length];
        for (int k = 0; k < derivatives.length; k++) {
            derivatives[k] = -(after[k] - before[k]) / (2 * step) / bend;
        }
        double error = spreadOf(derivatives);
        return Double.isFinite(error) ? OptionalDouble.of(error) : OptionalDouble.empty();
    }

    /** Standard error of the milk on the curve's peak day, kg per day: at the peak the uncertainty of its day plays no part. */
    public OptionalDouble peakMilkStandardErrorKgPerDay() {
        OptionalDouble peak = curve.isPresent() ? curve.get().peakDaysInMilk() : OptionalDouble.empty();
        return peak.isPresent() ? standardErrorKgPerDay(peak.getAsDouble()) : peak;
    }

    private OptionalDouble ifFitted(double value) {
        return curve.isPresent() ? OptionalDouble.of(value) : OptionalDouble.empty();
    }
}
