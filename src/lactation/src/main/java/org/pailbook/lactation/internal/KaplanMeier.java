package org.pailbook.lactation.internal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The Kaplan-Meier estimate of the share without the event after a time, when some were not followed to it.
 *
 * <p>{@code S(t) = product over event times u <= t of (1 - d / n)}; one that was lost at a time counts as at risk at that time.
 *
 * @see "Kaplan and Meier 1958; Greenwood 1926 (both from memory)"
 */
public final class KaplanMeier {
    private static final double Z95 = 1.959964;

    private final List<Step> steps;
    private final int cases;

    /**
     * One time at which events happened.
     *
     * @param time of the event
     * @param atRisk followed up to it
     * @param events at it
     * @param share without the event after it
     * @param standardError Greenwood's
     * @param low lower end of the 95 % interval by log(-log S), which stays between 0 and 1
     * @param high upper end of it
     */
    public record Step(
            double time, int atRisk, int events, double share, double standardError, double low, double high) {}

    private KaplanMeier(List<Step> steps, int cases) {
        this.steps = List.copyOf(steps);
        this.cases = cases;
    }

    /**
     * @param times followed, one a case
     * @param happened whether the event ended it
     */
    public static KaplanMeier of(double[] times, boolean[] happened) {
        if (times.length != happened.length) {
            throw new IllegalArgumentException(
                    "happened (" + happened.length + ") must be as many as times (" + times.length + ")");
        }
        double[] eventTimes = new double[times.length];
        int found = 0;
        for (int i = 0; i < times.length; i++) {
            if (happened[i]) {
                eventTimes[found++] = times[i];
            }
        }
        List<Step> steps = new ArrayList<>();
        double share = 1;
        double greenwood = 0;
        for (double time :
                Arrays.stream(eventTimes, 0, found).sorted().distinct().toArray()) {
            int atRisk = 0;
            int events = 0;
            for (int i = 0; i < times.length; i++) {
                atRisk += times[i] >= time ? 1 : 0;
                events += happened[i] && times[i] == time ? 1 : 0;
            }
            share *= 1 - (double) events / atRisk;
            greenwood += (double) events / ((double) atRisk * (atRisk - events));
            steps.add(step(time, atRisk, events, share, greenwood));
        }
        return new KaplanMeier(steps, times.length);
    }

    /**
     * The same product where the numbers at risk are known and need not shrink from step to step, as in a life table by age.
     *
     * @param atRisk of step 1, 2 and so on, above 0
     * @param events at each
     */
    public static Step lastOfCounts(int[] atRisk, int[] events) {
        double share = 1;
        double greenwood = 0;
        for (int i = 0; i < atRisk.length; i++) {
            share *= 1 - (double) events[i] / atRisk[i];
            greenwood += (double) events[i] / ((double) atRisk[i] * (atRisk[i] - events[i]));
        }
        int last = atRisk.length - 1;
        return share == 1
                ? new Step(atRisk.length, atRisk[last], events[last], 1, 0, 1, 1)
                : step(atRisk.length, atRisk[last], events[last], share, greenwood);
    }

    private static Step step(double time, int atRisk, int events, double share, double greenwood) {
        if (share <= 0) {
            return new Step(time, atRisk, events, 0, 0, 0, 0);
        }
        double root = Math.sqrt(greenwood);
        double factor = Math.exp(Z95 * root / Math.log(share));
        return new Step(
                time, atRisk, events, share, share * root, Math.pow(share, 1 / factor), Math.pow(share, factor));
    }

    public int cases() {
        return cases;
    }

    public List<Step> steps() {
        return steps;
    }

    /** First time at which no more than half are without the event; empty if it never comes to that. */
    public OptionalDouble median() {
        return steps.stream()
                .filter(step -> step.share() <= 0.5)
                .mapToDouble(Step::time)
                .findFirst();
    }

    /** First time at which the lower end of the interval reaches half: the median is not expected before it. */
    public OptionalDouble medianLow() {
        return steps.stream()
                .filter(step -> step.low() <= 0.5)
                .mapToDouble(Step::time)
                .findFirst();
    }

    /** First time at which the upper end of the interval reaches half: the median is not expected after it. */
    public OptionalDouble medianHigh() {
        return steps.stream()
                .filter(step -> step.high() <= 0.5)
                .mapToDouble(Step::time)
                .findFirst();
    }

    /** Mean time without the event, of the times up to a limit. */
    public double meanTo(double limit) {
        double area = 0;
        double from = 0;
        double share = 1;
        for (Step step : steps) {
            if (step.time() >= limit) {
                break;
            }
            area += share * (step.time() - from);
            from = step.time();
            share = step.share();
        }
        return area + share * (limit - from);
    }
}
