package org.pailbook.lactation.testday;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How daily milk changes from one test to the next, learned from lactations: kg per day for each day between them, linear in days in milk,
 * its square, the earlier yield, and days in milk times yield, apart for tests before day 50 and from day 50 on.
 *
 * <p>The form is published, its coefficients are not known to us; so they are fitted by least squares to the lactations given. Which of two
 * tests the days in milk belong to is not said in the abstract: here it is the earlier (ours).
 *
 * @see "Wiggans, G. R., VanRaden, P. M., Philpot, J. C. (2003). J. Dairy Sci. 86:2721-2724, abstract"
 */
public final class YieldSlope {
    /** Pairs of tests a stage needs; ours. */
    static final int LEAST_PAIRS = 30;

    private static final int SECOND_STAGE_DAYS_IN_MILK = 50;
    private static final int TERMS = 5;
    /** Days in milk and kg are divided by these so that the terms are of one size. */
    private static final double HUNDRED_DAYS = 100;

    private static final double TEN_KG = 10;
    private static final double SINGULAR = 1e-10;

    private final double[] early;
    private final double[] late;

    private YieldSlope(double[] early, double[] late) {
        this.early = early;
        this.late = late;
    }

    /**
     * @param asOf later tests take no part
     * @return empty if a stage has too few pairs of tests, or pairs that do not tell the terms apart
     */
    public static Optional<YieldSlope> learn(List<Lactation> lactations, LocalDate asOf) {
        List<double[]> early = new ArrayList<>();
        List<double[]> late = new ArrayList<>();
        for (Lactation lactation : lactations) {
            UsableTests tests = UsableTests.of(lactation, asOf);
            for (int i = 1; i < tests.count(); i++) {
                int day = tests.daysInMilk(i - 1);
                double intervalDays = tests.daysInMilk(i) - day;
                double[] row = terms(day, tests.milkKg(i - 1), TERMS + 1);
                row[TERMS] = (tests.milkKg(i) - tests.milkKg(i - 1)) / intervalDays;
                (day < SECOND_STAGE_DAYS_IN_MILK ? early : late).add(row);
            }
        }
        Optional<double[]> first = fit(early);
        Optional<double[]> second = fit(late);
        return first.isPresent() && second.isPresent()
                ? Optional.of(new YieldSlope(first.get(), second.get()))
                : Optional.empty();
    }

    private static double[] terms(int daysInMilk, double milkKg, int length) {
        double t = daysInMilk / HUNDRED_DAYS;
        double y = milkKg / TEN_KG;
        double[] row = new double[length];
        row[0] = 1;
        row[1] = t;
        row[2] = t * t;
        row[3] = y;
        row[4] = t * y;
        return row;
    }

    /** Least squares by the normal equations; five well-scaled terms need no more. */
    private static Optional<double[]> fit(List<double[]> rows) {
        if (rows.size() < LEAST_PAIRS) {
            return Optional.empty();
        }
        double[][] a = new double[TERMS][TERMS + 1];
        for (double[] row : rows) {
            for (int i = 0; i < TERMS; i++) {
                for (int j = 0; j <= TERMS; j++) {
                    a[i][j] += row[i] * row[j] / rows.size();
                }
            }
        }
        return solve(a);
    }

    /** Gaussian elimination on the augmented matrix; symmetric and positive, so the diagonal serves as pivot. */
    private static Optional<double[]> solve(double[][] a) {
        for (int k = 0; k < TERMS; k++) {
            if (!(a[k][k] > SINGULAR)) {
                return Optional.empty();
            }
            for (int i = k + 1; i < TERMS; i++) {
                double factor = a[i][k] / a[k][k];
                for (int j = k; j <= TERMS; j++) {
                    a[i][j] -= factor * a[k][j];
                }
            }
        }
        double[] x = new double[TERMS];
        for (int i = TERMS - 1; i >= 0; i--) {
            double left = a[i][TERMS];
            for (int j = i + 1; j < TERMS; j++) {
                left -= a[i][j] * x[j];
            }
            x[i] = left / a[i][i];
        }
        return Optional.of(x);
    }

    /** Change of daily milk, kg per day for each day, after a test of that weight on that day in milk. */
    public double kgPerDayPerDay(int daysInMilk, double milkKg) {
        double[] b = stage(daysInMilk);
        double[] row = terms(daysInMilk, milkKg, TERMS);
        double sum = 0;
        for (int i = 0; i < TERMS; i++) {
            sum += b[i] * row[i];
        }
        return sum;
    }

    /** What a test leads to expect of the next: {@code milk + interval x slope}, kg. */
    public double nextKg(int daysInMilk, double milkKg, int intervalDays) {
        return milkKg + intervalDays * kgPerDayPerDay(daysInMilk, milkKg);
    }

    /** The test that would lead to expect this next one: the inverse of {@link #nextKg}, kg. Exact, as the slope is linear in the yield. */
    public double previousKg(int daysInMilk, double nextKg, int intervalDays) {
        double atZero = kgPerDayPerDay(daysInMilk, 0);
        double perKg = kgPerDayPerDay(daysInMilk, 1) - atZero;
        return (nextKg - intervalDays * atZero) / (1 + intervalDays * perKg);
    }

    private double[] stage(int daysInMilk) {
        return daysInMilk < SECOND_STAGE_DAYS_IN_MILK ? early : late;
    }
}
