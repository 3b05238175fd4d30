package org.pailbook.lactation.projection;

import java.time.LocalDate;
import java.time.Month;
import org.pailbook.lactation.internal.Cholesky;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.sentence.Amount;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;

/**
 * How far the calvings of a time of the year lie above or below the year's mean: one wave a year, {@code b_1 cos + b_2 sin} of the calving month's middle, in
 * standard deviations of a day's yield, the same for all cows of the herd.
 *
 * <p>A herd may have no season at all: the variance of the two coefficients is learned from the herd first, by moments, and is 0 while
 * they differ from 0 no more than by chance. With {@code b} their estimates and {@code D} their information, {@code b'Db} is 2 by chance and grows by the
 * variance times the trace of D. Looked for in herds with calvings in {@value #LEAST_MONTHS} calendar months and {@value #LEAST_LACTATIONS}
 * lactations or more; rules of ours.
 */
final class CalvingSeason {
    /** Shapes of the season, beside those of the mean. */
    static final int WAVES = 2;

    static final int LEAST_MONTHS = 8;
    static final int LEAST_LACTATIONS = 50;

    /** Standard deviation while looking; also the largest believed. */
    static final double WIDEST_SD = 0.3;

    /** Stands for none: so small that nothing is learned. */
    private static final double NONE_SD = 1e-6;

    private static final double[] OUTSIDE = {0, 0};

    private CalvingSeason() {}

    /** The wave at the middle of a calendar month, 1 to 12; month 0 stands for no season. */
    static double[] ofMonth(int month) {
        double angle = 2 * Math.PI * (month - 0.5) / 12;
        return month == 0 ? OUTSIDE : new double[] {Math.cos(angle), Math.sin(angle)};
    }

    static double[] of(LocalDate calvingDate) {
        return ofMonth(calvingDate.getMonthValue());
    }

    /**
     * Standard deviation of the coefficients as a herd shows it.
     *
     * @param estimate of the two, made with {@link #WIDEST_SD}
     * @param covariance of their errors
     */
    static double sd(double[] estimate, double[][] covariance) {
        double[] precision = {covariance[0][0], covariance[1][0], covariance[1][1]};
        Cholesky known = Cholesky.factorInPlace(precision, WAVES);
        double[][] inverse = {{1, 0}, {0, 1}};
        for (double[] column : inverse) {
            known.solveInPlace(column);
        }
        double[] told = {
            inverse[0][0] * estimate[0] + inverse[1][0] * estimate[1],
            inverse[0][1] * estimate[0] + inverse[1][1] * estimate[1]
        };
        double prior = 1 / (WIDEST_SD * WIDEST_SD);
        double[] information = {inverse[0][0] - prior, inverse[0][1], inverse[1][1] - prior};
        double determinant = information[0] * information[2] - information[1] * information[1];
        if (!(information[0] > 0 && determinant > 1e-9 * prior * prior)) {
            return NONE_SD;
        }
        // told' D^-1 told is b'Db for the b that the data alone tell
        double square = (information[2] * told[0] * told[0]
                        - 2 * information[1] * told[0] * told[1]
                        + information[0] * told[1] * told[1])
                / determinant;
        double variance = (square - WAVES) / (information[0] + information[2]);
        return Math.min(WIDEST_SD, Math.sqrt(Math.max(NONE_SD * NONE_SD, variance)));
    }

    /** {@code +0.42 kg a day for calvings in March}. */
    static Sentence words(double level, LactationTrait trait, int month) {
        int decimals = trait == LactationTrait.FAT || trait == LactationTrait.PROTEIN ? 3 : 2;
        return Sentence.of(
                trait == LactationTrait.CELLS ? SentenceCode.IN_MONTH : SentenceCode.A_DAY_IN_MONTH,
                Amount.measured(level, decimals, trait.unit()).signed(),
                Sentence.of(trait.said()),
                Month.of(month));
    }
}
