package org.pailbook.lactation.reference;

import java.util.Arrays;

/**
 * How the days of one lactation depart together from the mean curve of its group: {@code Cov(t, s) = sd(t) sd(s) ((1 - e) r^|t - s|
 * + e [t = s])}.
 *
 * <p>Lasting departures (a good cow, a hurt cow) fade with the days between; the share {@code e} of the variance belongs to a
 * single day alone. Sums over days need no matrix: running sums are made once, so each covariance with a total is one step.
 * Days are days in milk, 1 to {@link #lastDay()}; kg per day throughout. Immutable.
 *
 * @see "VanRaden, P. M. (1997). J. Dairy Sci. 80:3015-3022 (abstract read); autoregressive plus identity form: Cole, Null and
 *     VanRaden (2009). J. Dairy Sci. 92:1796-1810 (abstract read)"
 */
public final class DailySpread {
    /** Lactations are followed to this day; the published means and spreads of long lactations end here too (Cole et al. 2009). */
    public static final int LAST_DAY = 999;

    private final double correlation;
    private final double dailyErrorShare;
    // index is the day; 0 is not used
    private final double[] sd;
    /** sum over s up to t of r^(t-s) sd(s) */
    private final double[] fadingSum;
    /** sum over s up to t of r^s sd(s); for days after t it gives the mirror image of fadingSum */
    private final double[] risingSum;

    private final double[] power;
    private final double[] totalVariance;

    private DailySpread(double[] sd, double correlation, double dailyErrorShare) {
        this.sd = sd;
        this.correlation = correlation;
        this.dailyErrorShare = dailyErrorShare;
        fadingSum = new double[sd.length];
        risingSum = new double[sd.length];
        power = new double[sd.length];
        totalVariance = new double[sd.length];
        power[0] = 1;
        for (int t = 1; t < sd.length; t++) {
            power[t] = power[t - 1] * correlation;
            fadingSum[t] = correlation * fadingSum[t - 1] + sd[t];
            risingSum[t] = risingSum[t - 1] + power[t] * sd[t];
            totalVariance[t] =
                    totalVariance[t - 1] + sd[t] * (sd[t] + 2 * (1 - dailyErrorShare) * correlation * fadingSum[t - 1]);
        }
    }

    /**
     * The same spread on every day.
     *
     * @param sdKgPerDay standard deviation of one day's milk between lactations of the group, kg, above 0
     * @param correlation r, of the lasting part on neighbouring days, above 0, at most 1
     * @param dailyErrorShare e, 0 to 1
     */
    public static DailySpread constant(double sdKgPerDay, double correlation, double dailyErrorShare) {
        double[] sd = new double[LAST_DAY];
        Arrays.fill(sd, sdKgPerDay);
        return ofDays(sd, correlation, dailyErrorShare);
    }

    /**
     * A spread of its own for each day.
     *
     * @param sdKgPerDay index 0 is day 1; the last value holds for all later days
     */
    public static DailySpread ofDays(double[] sdKgPerDay, double correlation, double dailyErrorShare) {
        require(correlation > 0 && correlation <= 1, "correlation", correlation, "must be above 0 and at most 1");
        require(dailyErrorShare >= 0 && dailyErrorShare <= 1, "dailyErrorShare", dailyErrorShare, "must be 0 to 1");
        require(sdKgPerDay.length > 0, "sdKgPerDay.length", sdKgPerDay.length, "must be at least 1");
        double[] sd = new double[LAST_DAY + 1];
        for (int t = 1; t <= LAST_DAY; t++) {
            sd[t] = sdKgPerDay[Math.min(t, sdKgPerDay.length) - 1];
            require(sd[t] > 0 && sd[t] < Double.POSITIVE_INFINITY, "sdKgPerDay", sd[t], "must be above 0 and finite");
        }
        return new DailySpread(sd, correlation, dailyErrorShare);
    }

    public int lastDay() {
        return sd.length - 1;
    }

    /** r: correlation of the lasting part of the departure on neighbouring days. */
    public double correlation() {
        return correlation;
    }

    /** e: share of a day's variance that belongs to that day alone. */
    public double dailyErrorShare() {
        return dailyErrorShare;
    }

    /** Standard deviation of that day's milk, kg. */
    public double sdKgPerDay(int day) {
        return sd[day];
    }

    /** Covariance of the milk of two days, kg squared. */
    public double covariance(int day, int otherDay) {
        double lasting = (1 - dailyErrorShare) * power[Math.abs(day - otherDay)];
        return sd[day] * sd[otherDay] * (day == otherDay ? lasting + dailyErrorShare : lasting);
    }

    /** Covariance of one day's milk with the sum of days 1 to {@code toDay}, kg squared. */
    public double covarianceWithTotal(int day, int toDay) {
        double lasting;
        if (day > toDay) {
            lasting = power[day - toDay] * fadingSum[toDay];
            return sd[day] * (1 - dailyErrorShare) * lasting;
        }
        lasting = fadingSum[day] + (risingSum[toDay] - risingSum[day]) / power[day];
        return sd[day] * ((1 - dailyErrorShare) * lasting + dailyErrorShare * sd[day]);
    }

    /** Variance of the sum of days 1 to {@code toDay}, kg squared; 0 for day 0. */
    public double varianceOfTotal(int toDay) {
        return totalVariance[toDay];
    }

    private static void require(boolean holds, String name, double value, String rule) {
        if (!holds) {
            throw new IllegalArgumentException(name + " (" + value + ") " + rule);
        }
    }
}
