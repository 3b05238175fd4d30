package org.pailbook.lactation.reference;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;

/**
 * What is known of a cow before her first test: the mean curve of her group, how lactations spread around it and how unsure the level of
 * her herd is.
 *
 * <p>kg of milk per day; day 1 is the day after calving. Immutable, and made once for many cows: totals are running sums.
 */
public final class LactationStandard {
    private static final Pattern PARITY_GROUP = Pattern.compile("(.*), parity ([0-9]+)( or more)?");

    private static final int MIDDLE_DAY = 153;

    private final String group;
    private final Citation source;
    private final double[] meanKg;
    private final double[] meanTotalKg;
    /** the mean is moved by these multiples of the shapes; a standard made for one cow shares the arrays of its reference */
    private final double[] shift;

    private final DailySpread spread;
    private final double herdLevelSdKgPerDay;
    private final Optional<MeanUncertainty> meanUncertainty;
    private final double knownLevelVariance;
    private final List<Finding> findings;

    private LactationStandard(
            LactationStandard base,
            String group,
            double[] shift,
            DailySpread spread,
            Optional<MeanUncertainty> meanUncertainty,
            double knownLevelVariance) {
        this.group = group;
        this.source = base.source;
        this.meanKg = base.meanKg;
        this.meanTotalKg = base.meanTotalKg;
        this.shift = shift;
        this.spread = spread;
        this.herdLevelSdKgPerDay = meanUncertainty.isPresent() ? 0 : base.herdLevelSdKgPerDay;
        this.meanUncertainty = meanUncertainty;
        this.knownLevelVariance = knownLevelVariance;
        this.findings = base.findings;
    }

    private LactationStandard(LactationStandard base, double herdLevelSdKgPerDay, List<Finding> findings) {
        this.group = base.group;
        this.source = base.source;
        this.meanKg = base.meanKg;
        this.meanTotalKg = base.meanTotalKg;
        this.shift = base.shift;
        this.spread = base.spread;
        this.herdLevelSdKgPerDay = herdLevelSdKgPerDay;
        this.meanUncertainty = base.meanUncertainty;
        this.knownLevelVariance = base.knownLevelVariance;
        this.findings = List.copyOf(findings);
    }

    private LactationStandard(String group, Citation source, double[] meanKg, DailySpread spread) {
        this.group = group;
        this.source = source;
        this.meanKg = meanKg;
        this.shift = new double[MeanUncertainty.SHAPES];
        this.spread = spread;
        this.herdLevelSdKgPerDay = 0;
        this.meanUncertainty = Optional.empty();
        this.knownLevelVariance = 0;
        this.findings = List.of();
        this.meanTotalKg = new double[meanKg.length];
        for (int day = 1; day < meanKg.length; day++) {
            meanTotalKg[day] = meanTotalKg[day - 1] + meanKg[day];
        }
    }

    /**
     * A standard from a curve.
     *
     * @param group the cows it is for, as shown to people: {@code Jersey, parity 1}
     * @param source where mean and spread come from
     * @param meanKgPerDay day in milk to kg; asked for days 1 to {@link DailySpread#LAST_DAY}
     * @param spread how single lactations depart from the mean
     */
    public static LactationStandard of(
            String group, Citation source, IntToDoubleFunction meanKgPerDay, DailySpread spread) {
        Objects.requireNonNull(group, "group");
        Objects.requireNonNull(source, "source");
        double[] mean = new double[spread.lastDay() + 1];
        for (int day = 1; day < mean.length; day++) {
            mean[day] = meanKgPerDay.applyAsDouble(day);
            if (!Double.isFinite(mean[day])) {
                throw new IllegalArgumentException("meanKgPerDay (" + mean[day] + ") must be finite on day " + day);
            }
        }
        return new LactationStandard(group, source, mean, spread);
    }

    /** The same with a herd level known only to within this standard deviation, kg per day; 0 if it is exactly known. */
    public LactationStandard withHerdLevelSdKgPerDay(double sdKgPerDay) {
        if (!(sdKgPerDay >= 0 && sdKgPerDay < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("sdKgPerDay (" + sdKgPerDay + ") must be 0 or more");
        }
        return new LactationStandard(this, sdKgPerDay, findings);
    }

    /** The same with one thing more to tell of every figure made from it. */
    public LactationStandard withFinding(Finding finding) {
        List<Finding> more = new ArrayList<>(findings);
        more.add(finding);
        return new LactationStandard(this, herdLevelSdKgPerDay, more);
    }

    /**
     * A standard with a learned mean, whose own error is part of the model: a cow's tests tell of the mean's error too, and the herd level's
     * standard deviation no longer counts.
     *
     * @param ofGroup the cows it is for
     * @param shapeShift what the mean is moved by, as multiples of the {@link MeanUncertainty#SHAPES} shapes, unit of a day's yield
     * @param newSpread of single lactations around it
     */
    public LactationStandard learned(
            String ofGroup, double[] shapeShift, DailySpread newSpread, MeanUncertainty uncertainty) {
        return new LactationStandard(this, ofGroup, moved(shapeShift), newSpread, Optional.of(uncertainty), 0);
    }

    /**
     * The standard of one cow of whose own level something is known already: her mean is moved, and that part no longer varies.
     *
     * @param shiftSd by how many standard deviations of a day, that of day 153, she is expected to differ from her group
     * @param knownShare share of a day's variance that is known so, 0 to below .8
     */
    public LactationStandard withKnownLevel(double shiftSd, double knownShare) {
        if (!(knownShare >= 0 && knownShare < 0.8) || !Double.isFinite(shiftSd)) {
            throw new IllegalArgumentException(
                    "knownShare (" + knownShare + ") must be 0 to below 0.8, shiftSd (" + shiftSd + ") finite");
        }
        double sd = spread.sdPerDay(MIDDLE_DAY);
        double[] level = new double[MeanUncertainty.SHAPES];
        level[0] = shiftSd * sd;
        return new LactationStandard(this, group, moved(level), spread, meanUncertainty, knownShare * sd * sd);
    }

    private double[] moved(double[] shapeShift) {
        double[] sum = shift.clone();
        for (int k = 0; k < sum.length; k++) {
            sum[k] += shapeShift[k];
        }
        return sum;
    }

    /** Variance of a lasting level that is known of the single cow, to be taken off the covariance of any two days; 0 for a group. */
    public double knownLevelVariance() {
        return knownLevelVariance;
    }

    /** How unsure the mean itself is, for standards that learned it; else the herd level's standard deviation stands for it. */
    public Optional<MeanUncertainty> meanUncertainty() {
        return meanUncertainty;
    }

    /** The cows it is for. */
    public String group() {
        return group;
    }

    /** The same as a sentence, so that its words can be said in another language. */
    public Sentence saidGroup() {
        Matcher parts = PARITY_GROUP.matcher(group);
        if (!parts.matches()) {
            return Sentence.verbatim(group);
        }
        return Sentence.of(
                parts.group(3) == null ? SentenceCode.GROUP_OF_PARITY : SentenceCode.GROUP_FROM_PARITY,
                parts.group(1),
                parts.group(2));
    }

    public Citation source() {
        return source;
    }

    /** Mean milk of that day in milk, kg. */
    public double meanKg(int day) {
        double sum = meanKg[day];
        for (int k = 0; k < shift.length; k++) {
            sum += shift[k] * MeanUncertainty.shape(k, day);
        }
        return sum;
    }

    /** Sum of the means of days 1 to {@code toDay}, kg. */
    public double meanTotalKg(int toDay) {
        double sum = meanTotalKg[toDay];
        for (int k = 0; k < shift.length; k++) {
            sum += shift[k] * MeanUncertainty.shapeTotal(k, toDay);
        }
        return sum;
    }

    public DailySpread spread() {
        return spread;
    }

    /** Standard deviation of what is not known of the herd's level, kg per day: v_h is its square. */
    public double herdLevelSdKgPerDay() {
        return herdLevelSdKgPerDay;
    }

    /** Last day in milk it reaches to; later tests cannot be used. */
    public int lastDay() {
        return meanKg.length - 1;
    }

    /** What has to be said of every figure made from it: that it is another breed's, for one. */
    public List<Finding> findings() {
        return findings;
    }

    @Override
    public String toString() {
        return group + " (" + source.text() + ")";
    }
}
