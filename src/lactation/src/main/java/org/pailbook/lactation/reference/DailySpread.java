package org.pailbook.lactation.reference;

/**
 * How the days of one lactation depart together from the mean curve of its group: {@code Cov(t, s) = sd(t) sd(s) ((1 - e) r^|g(t) -
 * g(s)| + e [t = s])}.
 *
 * <p>Lasting departures (a good cow, a hurt cow) fade with the days between; the share {@code e} of the variance belongs to a single
 * day alone. Plainly {@code g(t) = t}, the published form. Cows change more in their first weeks: {@link #withEarlyPace} lets that time run faster,
 * {@code g(t) = t + K (1 - exp(-t / tau))}, a form of ours. Sums over days need no matrix: running sums are made once, so each covariance
 * with a total is one step. Days are days in milk, 1 to {@link #lastDay()}; the unit is that of the yield, kg per day for milk. Immutable.
 *
 * @see "VanRaden, P. M. (1997). J. Dairy Sci. 80:3015-3022 (abstract read); autoregressive plus identity form: Cole, Null and
 *     VanRaden (2009). J. Dairy Sci. 92:1796-1810 (abstract read)"
 */
public final class DailySpread {
    /** Lactations are followed to this day; the published means and spreads of long lactations end here too (Cole et al. 2009). */
    public static final int LAST_DAY = 999;

    /** Least correlation of neighbouring days taken; lower ones would fade to nothing within a test interval. */
    private static final double LEAST_CORRELATION = 0.9;

    private final double correlation;
    private final double dailyErrorShare;
    private final double earlyExtraDays;
    private final double earlyOverDays;
    private final double scale;
    // index is the day; 0 is not used
    private final double[] sd;
    /** r^g(t): the correlation of the lasting parts of two days is the later day's over the earlier day's */
    private final double[] faded;
    /** sum over s up to t of r^(g(t) - g(s)) sd(s) */
    private final double[] before;
    /** sum over s after t, to the last day, of r^(g(s) - g(t)) sd(s) */
    private final double[] after;

    private final double[] totalVariance;

    private DailySpread(
            double[] sd,
            double[] faded,
            double correlation,
            double dailyErrorShare,
            double earlyExtraDays,
            double earlyOverDays) {
        this.sd = sd;
        this.faded = faded;
        this.correlation = correlation;
        this.dailyErrorShare = dailyErrorShare;
        this.earlyExtraDays = earlyExtraDays;
        this.earlyOverDays = earlyOverDays;
        this.scale = 1;
        int size = sd.length;
        before = new double[size];
        after = new double[size];
        totalVariance = new double[size];
        for (int t = 1; t < size; t++) {
            double fromDayBefore = t == 1 ? 0 : faded[t] / faded[t - 1];
            before[t] = fromDayBefore * before[t - 1] + sd[t];
            totalVariance[t] =
                    totalVariance[t - 1] + sd[t] * (sd[t] + 2 * (1 - dailyErrorShare) * fromDayBefore * before[t - 1]);
        }
        for (int t = size - 2; t >= 1; t--) {
            after[t] = faded[t + 1] / faded[t] * (sd[t + 1] + after[t + 1]);
        }
    }

    private DailySpread(DailySpread pattern, double scale) {
        this.sd = pattern.sd;
        this.faded = pattern.faded;
        this.before = pattern.before;
        this.after = pattern.after;
        this.totalVariance = pattern.totalVariance;
        this.correlation = pattern.correlation;
        this.dailyErrorShare = pattern.dailyErrorShare;
        this.earlyExtraDays = pattern.earlyExtraDays;
        this.earlyOverDays = pattern.earlyOverDays;
        this.scale = scale;
    }

    private static double[] faded(double correlation, double earlyExtraDays, double earlyOverDays) {
        double[] faded = new double[LAST_DAY + 1];
        for (int t = 1; t <= LAST_DAY; t++) {
            faded[t] = Math.pow(correlation, t + earlyExtraDays * -Math.expm1(-t / earlyOverDays));
        }
        return faded;
    }

    /**
     * The same spread on every day.
     *
     * @param sdPerDay standard deviation of one day's yield between lactations of the group, above 0
     * @param correlation r, of the lasting part on neighbouring days, .9 to 1
     * @param dailyErrorShare e, 0 to 1
     */
    public static DailySpread constant(double sdPerDay, double correlation, double dailyErrorShare) {
        return ofDays(new double[] {sdPerDay}, correlation, dailyErrorShare);
    }

    /**
     * A spread of its own for each day.
     *
     * @param sdPerDay index 0 is day 1; the last value holds for all later days
     */
    public static DailySpread ofDays(double[] sdPerDay, double correlation, double dailyErrorShare) {
        require(
                correlation >= LEAST_CORRELATION && correlation <= 1,
                "correlation",
                correlation,
                "must be " + LEAST_CORRELATION + " to 1");
        require(dailyErrorShare >= 0 && dailyErrorShare <= 1, "dailyErrorShare", dailyErrorShare, "must be 0 to 1");
        return new DailySpread(checked(sdPerDay), faded(correlation, 0, 1), correlation, dailyErrorShare, 0, 1);
    }

    /**
     * The same with a faster pace of change in the first weeks.
     *
     * @param extraDays K, how many days' worth of change the beginning adds in all, 0 to 1,000
     * @param overDays tau, in how many days about two thirds of it have passed, above 0
     */
    public DailySpread withEarlyPace(double extraDays, double overDays) {
        require(extraDays >= 0 && extraDays <= 1000, "extraDays", extraDays, "must be 0 to 1000");
        require(overDays > 0 && overDays < Double.POSITIVE_INFINITY, "overDays", overDays, "must be above 0");
        double[] faster = faded(correlation, extraDays, overDays);
        double[] own = withScale();
        return new DailySpread(own, faster, correlation, dailyErrorShare, extraDays, overDays);
    }

    /** The same rhythm with other standard deviations; index 0 is day 1, the last value holds for all later days. */
    public DailySpread withSdPerDay(double[] sdPerDay) {
        // what fades over time is shared: a standard made for each cow costs no powers
        return new DailySpread(checked(sdPerDay), faded, correlation, dailyErrorShare, earlyExtraDays, earlyOverDays);
    }

    /** The same pattern, every day's standard deviation multiplied with a factor above 0. Costs nothing: the sums are shared. */
    public DailySpread times(double factor) {
        require(factor > 0 && factor < Double.POSITIVE_INFINITY, "factor", factor, "must be above 0 and finite");
        return new DailySpread(this, scale * factor);
    }

    private static double[] checked(double[] sdPerDay) {
        require(sdPerDay.length > 0, "sdPerDay.length", sdPerDay.length, "must be at least 1");
        double[] sd = new double[LAST_DAY + 1];
        for (int t = 1; t <= LAST_DAY; t++) {
            sd[t] = sdPerDay[Math.min(t, sdPerDay.length) - 1];
            require(sd[t] > 0 && sd[t] < Double.POSITIVE_INFINITY, "sdPerDay", sd[t], "must be above 0 and finite");
        }
        return sd;
    }

    private double[] withScale() {
        double[] own = sd.clone();
        for (int t = 0; t < own.length; t++) {
            own[t] *= scale;
        }
        return own;
    }

    public int lastDay() {
        return sd.length - 1;
    }

    /** r: correlation of the lasting part of the departure on neighbouring days, late in lactation. */
    public double correlation() {
        return correlation;
    }

    /** e: share of a day's variance that belongs to that day alone. */
    public double dailyErrorShare() {
        return dailyErrorShare;
    }

    /** Standard deviation of that day's yield. */
    public double sdPerDay(int day) {
        return scale * sd[day];
    }

    /** Correlation of the lasting parts of two days: {@code r^|g(t) - g(s)|}. */
    public double lastingCorrelation(int day, int otherDay) {
        return day > otherDay ? faded[day] / faded[otherDay] : faded[otherDay] / faded[day];
    }

    /** Covariance of the yields of two days. */
    public double covariance(int day, int otherDay) {
        double lasting = (1 - dailyErrorShare) * lastingCorrelation(day, otherDay);
        return scale * scale * sd[day] * sd[otherDay] * (day == otherDay ? lasting + dailyErrorShare : lasting);
    }

    /** Sum over days s from 1 to {@code toDay} of {@code lastingCorrelation(day, s) sdPerDay(s)}. */
    public double lastingSum(int day, int toDay) {
        if (day > toDay) {
            return toDay == 0 ? 0 : scale * faded[day] / faded[toDay] * before[toDay];
        }
        return scale * (before[day] + after[day] - faded[toDay] / faded[day] * after[toDay]);
    }

    /** Covariance of one day's yield with the sum of days 1 to {@code toDay}. */
    public double covarianceWithTotal(int day, int toDay) {
        double own = day <= toDay ? dailyErrorShare * sdPerDay(day) : 0;
        return sdPerDay(day) * ((1 - dailyErrorShare) * lastingSum(day, toDay) + own);
    }

    /** Variance of the sum of days 1 to {@code toDay}; 0 for day 0. */
    public double varianceOfTotal(int toDay) {
        return scale * scale * totalVariance[toDay];
    }

    private static void require(boolean holds, String name, double value, String rule) {
        if (!holds) {
            throw new IllegalArgumentException(name + " (" + value + ") " + rule);
        }
    }
}
