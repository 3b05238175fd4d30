package org.pailbook.lactation.projection;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.pailbook.lactation.accumulation.AccumulatedYield;
import org.pailbook.lactation.accumulation.YieldAccumulation;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.internal.Cholesky;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.reference.TraitStandards;
import org.pailbook.lactation.testday.Lactation;

/**
 * The multiple-trait procedure: each yield of a cow follows a curve {@code A + B t + C exp(-0.05 t)}; its coefficients start at those of her
 * group and are moved by all her tests of all traits at once.
 *
 * <p>{@code (sum X_k' R_k^-1 X_k + G^-1) d = sum X_k' R_k^-1 (y_k - mean)}, total = mean total + s'd. With no test it is the group's
 * curve, with many it follows the cow; it is best prediction with {@code V = X G X' + R}. G and R come from the group's spread, see {@link
 * CurveCoefficients}. One or three traits; the cell score goes with the yields too little here to take part. Tests after day 305 are not used.
 *
 * @see "Schaeffer, L. R., Jamrozik, J. (1996). J. Dairy Sci. 79:2044-2055 (from memory); ICAR Guidelines Section 2, Procedure 2"
 */
public final class MultipleTraitProcedure implements YieldAccumulation {
    private static final int COEFFICIENTS = CurveCoefficients.COEFFICIENTS;

    private final TraitStandards standards;
    private final CurveCoefficients coefficients;
    private final double[] inverseOfG;

    /**
     * Works out G and R of the group; some milliseconds, so keep it for all cows of the group.
     *
     * @param standards of the cow's breed and parity; milk alone gives no fat and protein
     */
    public MultipleTraitProcedure(TraitStandards standards) {
        this.standards = Objects.requireNonNull(standards, "standards");
        this.coefficients = new CurveCoefficients(standards);
        this.inverseOfG = inverseOfG(coefficients);
    }

    @Override
    public AccumulatedYield accumulate(Lactation lactation, LocalDate asOf) {
        ToDate toDate = new ToDate(this, lactation, asOf, standards, DaysInMilk.STANDARD_LACTATION_DAYS);
        if (!toDate.hasTests()) {
            return toDate.yield(standards.traits(), trait -> toDate.blocked(Finding.of(FindingCode.NO_TEST_DAYS)));
        }
        Fit fit = new Fit(toDate.records);
        return toDate.yield(standards.traits(), trait -> {
            List<Finding> findings = new ArrayList<>(standards.findings());
            toDate.addMissing(findings, standards.traits().get(trait), trait);
            Explanation explanation = fit.explanation(trait, toDate);
            return toDate.figure(
                    explanation.total(),
                    explanation,
                    findings,
                    "the method's own error is that of the curve and leaves out the single days");
        });
    }

    /** s: the sums of the regressors over days 1 to {@code toDay}, at the places of one trait among all coefficients. */
    private double[] sums(int trait, int toDay) {
        double[] s = new double[coefficients.traits() * COEFFICIENTS];
        for (int day = 1; day <= toDay; day++) {
            for (int k = 0; k < COEFFICIENTS; k++) {
                s[trait * COEFFICIENTS + k] += CurveCoefficients.regressor(k, day);
            }
        }
        return s;
    }

    private static double[] inverseOfG(CurveCoefficients coefficients) {
        int size = coefficients.traits() * COEFFICIENTS;
        double[] lower = new double[size * (size + 1) / 2];
        for (int i = 0; i < size; i++) {
            for (int j = 0; j <= i; j++) {
                lower[Cholesky.at(i, j)] = coefficients.covariance(i, j);
            }
        }
        Cholesky factor = Cholesky.factorInPlace(lower, size);
        double[] inverse = new double[lower.length];
        for (int j = 0; j < size; j++) {
            double[] column = new double[size];
            column[j] = 1;
            factor.solveInPlace(column);
            for (int i = j; i < size; i++) {
                inverse[Cholesky.at(i, j)] = column[i];
            }
        }
        return inverse;
    }

    /** The mixed model equations of one lactation. */
    private final class Fit {
        private final Cholesky left;
        /** {@code X_k' R_k^-1 (y_k - mean)}, one for each test day */
        private final List<double[]> right = new ArrayList<>();

        private final List<Integer> days = new ArrayList<>();

        Fit(TestRecords records) {
            double[] lower = inverseOfG.clone();
            int record = 0;
            while (record < records.count()) {
                int from = record;
                while (record < records.count() && records.test(record) == records.test(from)) {
                    record++;
                }
                addTest(records, from, record, lower);
            }
            left = Cholesky.factorInPlace(lower, coefficients.traits() * COEFFICIENTS);
        }

        /** Adds the traits measured on one day, records {@code from} to {@code to - 1}. */
        private void addTest(TestRecords records, int from, int to, double[] lower) {
            int n = to - from;
            int day = records.day(from);
            double[] residual = new double[n * (n + 1) / 2];
            double[] deviation = new double[n];
            for (int i = 0; i < n; i++) {
                int trait = records.trait(from + i);
                deviation[i] =
                        records.value(from + i) - standards.standard(trait).meanKg(day);
                for (int j = 0; j <= i; j++) {
                    residual[Cholesky.at(i, j)] = coefficients.residual(trait, records.trait(from + j), day);
                }
            }
            Cholesky factor = Cholesky.factorInPlace(residual, n);
            factor.solveInPlace(deviation);
            double[] sum = new double[coefficients.traits() * COEFFICIENTS];
            for (int j = 0; j < n; j++) {
                double[] inverse = new double[n];
                inverse[j] = 1;
                factor.solveInPlace(inverse);
                int traitJ = records.trait(from + j);
                for (int l = 0; l < COEFFICIENTS; l++) {
                    double regressor = CurveCoefficients.regressor(l, day);
                    sum[traitJ * COEFFICIENTS + l] += regressor * deviation[j];
                    for (int i = 0; i < n; i++) {
                        for (int k = 0; k < COEFFICIENTS; k++) {
                            int row = records.trait(from + i) * COEFFICIENTS + k;
                            int column = traitJ * COEFFICIENTS + l;
                            if (column <= row) {
                                lower[Cholesky.at(row, column)] +=
                                        CurveCoefficients.regressor(k, day) * inverse[i] * regressor;
                            }
                        }
                    }
                }
            }
            right.add(sum);
            days.add(day);
        }

        Explanation explanation(int trait, ToDate toDate) {
            double[] weights = sums(trait, toDate.toDay);
            left.solveInPlace(weights);
            List<Explanation.Part> parts = new ArrayList<>();
            parts.add(new Explanation.Part(
                    "mean of her group, " + standards.standard(trait).group() + ", days 1 to " + toDate.toDay,
                    standards.standard(trait).meanTotalKg(toDate.toDay)));
            for (int test = 0; test < right.size(); test++) {
                double amount = 0;
                for (int i = 0; i < weights.length; i++) {
                    amount += weights[i] * right.get(test)[i];
                }
                parts.add(new Explanation.Part("test of day " + days.get(test) + ", by all it measured", amount));
            }
            return new Explanation(parts);
        }
    }

    /** Prediction error variance of a trait's total by the curve alone, {@code s' (X' R^-1 X + G^-1)^-1 s}, kg squared. */
    double curveErrorVariance(TestRecords records, int trait, int toDay) {
        double[] s = sums(trait, toDay);
        double[] solved = Arrays.copyOf(s, s.length);
        new Fit(records).left.solveInPlace(solved);
        double variance = 0;
        for (int i = 0; i < s.length; i++) {
            variance += s[i] * solved[i];
        }
        return variance;
    }

    CurveCoefficients coefficients() {
        return coefficients;
    }

    @Override
    public String id() {
        return "multiple-trait-procedure";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "ICAR",
                2020,
                "Guidelines Section 2, Procedure 2: multiple-trait procedure of Schaeffer and Jamrozik 1996; (co)variances ours",
                HowKnown.FROM_MEMORY);
    }
}
