package org.pailbook.lactation.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * A natural cubic spline: cubic between its knots, with continuous slope and bend, straight before the first and after the last.
 *
 * <p>{@code y} in kg per day at days in milk. Its parameters are the yields at the knots, in which it is linear.
 *
 * @see "Reinsch, C. H. (1967). Smoothing by spline functions. Numer. Math. 10:177-183 (from memory)"
 */
public final class NaturalSplineCurve implements LactationCurve {
    private final double[] days;
    private final double[] milkKg;
    /** Bend at knot {@code i} for each kg at knot {@code k}: {@code bends[i][k]}. Zero at both ends. */
    private final double[][] bends;

    /** Bend at each knot, kg per day cubed. */
    private final double[] bend;

    /**
     * @param knotDaysInMilk three or more days, each after the one before
     * @param knotMilkKg yield at each knot, kg per day; same length
     */
    public NaturalSplineCurve(double[] knotDaysInMilk, double[] knotMilkKg) {
        int knots = knotDaysInMilk.length;
        if (knots < 3 || knotMilkKg.length != knots) {
            throw new IllegalArgumentException("knotDaysInMilk (" + knots
                    + ") must be three or more, and as many as knotMilkKg (" + knotMilkKg.length + ")");
        }
        for (int i = 1; i < knots; i++) {
            if (!(knotDaysInMilk[i] > knotDaysInMilk[i - 1])) {
                throw new IllegalArgumentException(
                        "knotDaysInMilk (" + knotDaysInMilk[i] + ") must be after the knot before");
            }
        }
        this.days = knotDaysInMilk.clone();
        this.milkKg = knotMilkKg.clone();
        this.bends = bendsPerKg(days);
        this.bend = new double[knots];
        for (int i = 0; i < knots; i++) {
            for (int k = 0; k < knots; k++) {
                bend[i] += bends[i][k] * milkKg[k];
            }
        }
    }

    /** Solves the tridiagonal equations {@code R bend = Q' milk} for one kg at each knot in turn. */
    private static double[][] bendsPerKg(double[] days) {
        int knots = days.length;
        double[][] bends = new double[knots][knots];
        double[] pivot = new double[knots];
        for (int i = 1; i < knots - 1; i++) {
            double gap = days[i] - days[i - 1];
            double nextGap = days[i + 1] - days[i];
            pivot[i] = (gap + nextGap) / 3;
            bends[i][i - 1] = 1 / gap;
            bends[i][i] = -1 / gap - 1 / nextGap;
            bends[i][i + 1] = 1 / nextGap;
            if (i > 1) {
                double factor = gap / 6 / pivot[i - 1];
                pivot[i] -= factor * gap / 6;
                for (int k = 0; k < knots; k++) {
                    bends[i][k] -= factor * bends[i - 1][k];
                }
            }
        }
        for (int i = knots - 2; i > 0; i--) {
            double nextGap = days[i + 1] - days[i];
            for (int k = 0; k < knots; k++) {
                // the bend at the last knot is zero, so the first step back subtracts nothing
                bends[i][k] = (bends[i][k] - nextGap / 6 * bends[i + 1][k]) / pivot[i];
            }
        }
        return bends;
    }

    @Override
    public double milkKgPerDay(double daysInMilk) {
        int last = days.length - 1;
        if (daysInMilk < days[0]) {
            return milkKg[0] + slopeKgPerDayPerDay(days[0]) * (daysInMilk - days[0]);
        }
        if (daysInMilk > days[last]) {
            return milkKg[last] + slopeKgPerDayPerDay(days[last]) * (daysInMilk - days[last]);
        }
        int i = piece(daysInMilk);
        double gap = days[i + 1] - days[i];
        double right = (daysInMilk - days[i]) / gap;
        double left = 1 - right;
        return left * milkKg[i]
                + right * milkKg[i + 1]
                + gap * gap / 6 * (left * (left * left - 1) * bend[i] + right * (right * right - 1) * bend[i + 1]);
    }

    @Override
    public double slopeKgPerDayPerDay(double daysInMilk) {
        double inside = Math.min(Math.max(daysInMilk, days[0]), days[days.length - 1]);
        int i = piece(inside);
        double gap = days[i + 1] - days[i];
        double right = (inside - days[i]) / gap;
        double left = 1 - right;
        return (milkKg[i + 1] - milkKg[i]) / gap
                + gap / 6 * ((1 - 3 * left * left) * bend[i] + (3 * right * right - 1) * bend[i + 1]);
    }

    /** Index of the knot at or before a day that lies within the knots; the last piece for the last knot. */
    private int piece(double daysInMilk) {
        int found = Arrays.binarySearch(days, daysInMilk);
        int i = found >= 0 ? found : -found - 2;
        return Math.min(i, days.length - 2);
    }

    @Override
    public OptionalDouble peakDaysInMilk() {
        return NumericPeak.of(this);
    }

    @Override
    public CurveShape shape() {
        return NumericPeak.shape(this);
    }

    /** Integral of the curve, kg: exact, as Simpson's rule is for cubics. Not the sum of the days; see {@link #totalKg}. */
    public double integralKg(double fromDaysInMilk, double toDaysInMilk) {
        double sum = 0;
        double from = fromDaysInMilk;
        for (double knot : days) {
            if (knot > from && knot < toDaysInMilk) {
                sum += simpson(from, knot);
                from = knot;
            }
        }
        return sum + simpson(from, toDaysInMilk);
    }

    private double simpson(double from, double to) {
        return (to - from) / 6 * (milkKgPerDay(from) + 4 * milkKgPerDay((from + to) / 2) + milkKgPerDay(to));
    }

    /** The yield at each knot, named by its day. */
    @Override
    public List<CurveParameter> parameters() {
        List<CurveParameter> parameters = new ArrayList<>();
        for (int i = 0; i < days.length; i++) {
            parameters.add(CurveParameter.given(String.format(Locale.ROOT, "y(%.4g)", days[i]), milkKg[i], "kg/d"));
        }
        return List.copyOf(parameters);
    }

    @Override
    public double[] gradient(double daysInMilk) {
        double inside = Math.min(Math.max(daysInMilk, days[0]), days[days.length - 1]);
        double outside = daysInMilk - inside;
        int i = piece(inside);
        double gap = days[i + 1] - days[i];
        double right = (inside - days[i]) / gap;
        double left = 1 - right;
        double ofBend = gap * gap / 6 * left * (left * left - 1) + outside * gap / 6 * (1 - 3 * left * left);
        double ofNextBend = gap * gap / 6 * right * (right * right - 1) + outside * gap / 6 * (3 * right * right - 1);
        double[] row = new double[days.length];
        for (int k = 0; k < row.length; k++) {
            row[k] = ofBend * bends[i][k] + ofNextBend * bends[i + 1][k];
        }
        row[i] += left - outside / gap;
        row[i + 1] += right + outside / gap;
        return row;
    }

    /** Bend at knot {@code knot} for one kg at knot {@code of}, per day cubed. */
    double bendPerKg(int knot, int of) {
        return bends[knot][of];
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof NaturalSplineCurve curve
                && Arrays.equals(days, curve.days)
                && Arrays.equals(milkKg, curve.milkKg);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(days) + Arrays.hashCode(milkKg);
    }

    @Override
    public String toString() {
        return "NaturalSplineCurve[days " + Arrays.toString(days) + ", kg " + Arrays.toString(milkKg) + "]";
    }
}
