package org.pailbook.lactation.persistency;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;

/**
 * Learns parity factors from completed lactations: {@code yield = group + parity + cow + rest}, group (such as herd-year-season) and parity
 * fixed, cow random. The factor of a parity is the highest parity level over its own, both at the mean group.
 *
 * <p>Plain means by parity mislead, since the cows that reach a later parity are the better ones; the cow effect takes that out as far as
 * they were chosen by the yields given here; what was chosen by things not on record stays in. Parities
 * from {@code pooledFromParity} on are one class. A class with fewer than {@value #LEAST_LACTATIONS} lactations gets no factor (ours), nor
 * does one that shares no group with the others, directly or over further classes: nothing would compare them.
 *
 * @see "Model: ours; kin to the mixed models behind published age factors, whose tables were not read"
 */
public final class ParityFactorLearning implements PublishedMethod {
    public static final ParityFactorLearning MIXED_MODEL = new ParityFactorLearning();

    /** Lactations of a class below which its level is not believed. Ours. */
    static final int LEAST_LACTATIONS = 30;

    /** Rounds of Gauss-Seidel at most; it stops when nothing moves any more. */
    private static final int MOST_ROUNDS = 5000;

    private static final double STILL_KG = 1e-8;

    private ParityFactorLearning() {}

    /**
     * One completed lactation.
     *
     * @param cow her identity
     * @param parity 1 or more
     * @param group what its yield has in common with others besides the cow, such as herd, year and season of calving
     * @param yieldKg of 305 days, or whatever is to be adjusted
     */
    public record CompletedLactation(String cow, int parity, String group, double yieldKg) {}

    /**
     * @param repeatability share of the variance within groups and parities that stays with the cow, between 0 and 1; it decides how far a
     *     cow's own records are believed
     * @param pooledFromParity this parity and those above are one class, 2 or more
     * @throws IllegalArgumentException if a parameter is outside
     */
    public ParityFactors learn(List<CompletedLactation> lactations, double repeatability, int pooledFromParity) {
        if (!(repeatability > 0 && repeatability < 1) || pooledFromParity < 2) {
            throw new IllegalArgumentException("repeatability (" + repeatability
                    + ") must lie between 0 and 1 and pooledFromParity (" + pooledFromParity + ") be at least 2");
        }
        Solution solution = new Solution(lactations, (1 - repeatability) / repeatability, pooledFromParity);
        Map<Integer, Double> levels = solution.levelsKg();
        double mature =
                levels.values().stream().mapToDouble(Double::doubleValue).max().orElse(0);
        TreeMap<Integer, Double> factors = new TreeMap<>();
        levels.forEach((parity, level) -> factors.put(parity, mature / level));
        return new ParityFactors(
                factors,
                pooledFromParity,
                "learned from " + lactations.size() + " lactations of this herd",
                HowKnown.OURS);
    }

    /** The mixed model equations, solved by Gauss-Seidel: one pass adjusts every effect to the others. */
    private static final class Solution {
        private final int records;
        private final int[] cow;
        private final int[] parity;
        private final int[] group;
        private final double[] yieldKg;
        private final double[] cowKg;
        private final double[] parityKg;
        private final double[] groupKg;
        private final int[] groupSize;
        private final int[] paritySize;

        Solution(List<CompletedLactation> lactations, double varianceRatio, int pooledFromParity) {
            records = lactations.size();
            cow = new int[records];
            parity = new int[records];
            group = new int[records];
            yieldKg = new double[records];
            Map<String, Integer> cows = new HashMap<>();
            Map<String, Integer> groups = new HashMap<>();
            for (int i = 0; i < records; i++) {
                CompletedLactation lactation = lactations.get(i);
                cow[i] = cows.computeIfAbsent(lactation.cow(), name -> cows.size());
                group[i] = groups.computeIfAbsent(lactation.group(), name -> groups.size());
                parity[i] = Math.min(lactation.parity(), pooledFromParity);
                yieldKg[i] = lactation.yieldKg();
            }
            cowKg = new double[cows.size()];
            groupKg = new double[groups.size()];
            parityKg = new double[pooledFromParity + 1];
            groupSize = sizes(group, groupKg.length);
            paritySize = sizes(parity, parityKg.length);
            int[] cowSize = sizes(cow, cowKg.length);
            double moved = Double.POSITIVE_INFINITY;
            for (int round = 0; round < MOST_ROUNDS && moved > STILL_KG; round++) {
                moved = adjust(groupKg, group, groupSize, 0);
                moved = Math.max(moved, adjust(parityKg, parity, paritySize, 0));
                moved = Math.max(moved, adjust(cowKg, cow, cowSize, varianceRatio));
            }
        }

        private static int[] sizes(int[] levels, int count) {
            int[] sizes = new int[count];
            for (int level : levels) {
                sizes[level]++;
            }
            return sizes;
        }

        /** Sets each level of one effect to the (shrunk) mean of what the other effects leave; returns the greatest change. */
        private double adjust(double[] effectKg, int[] level, int[] sizes, double varianceRatio) {
            double[] sum = new double[effectKg.length];
            for (int i = 0; i < records; i++) {
                double left = yieldKg[i] - cowKg[cow[i]] - parityKg[parity[i]] - groupKg[group[i]];
                sum[level[i]] += left + effectKg[level[i]];
            }
            double moved = 0;
            for (int k = 0; k < effectKg.length; k++) {
                double next = sizes[k] == 0 ? 0 : sum[k] / (sizes[k] + varianceRatio);
                moved = Math.max(moved, Math.abs(next - effectKg[k]));
                effectKg[k] = next;
            }
            return moved;
        }

        /**
         * The classes that can be compared with the largest one. Two are in one component if they have a group in common, directly or over
         * others.
         */
        private boolean[] comparable() {
            int largest = 0;
            for (int k = 1; k < paritySize.length; k++) {
                largest = paritySize[k] > paritySize[largest] ? k : largest;
            }
            boolean[] classes = new boolean[paritySize.length];
            boolean[] groups = new boolean[groupSize.length];
            classes[largest] = true;
            boolean grew = true;
            while (grew) {
                grew = false;
                for (int i = 0; i < records; i++) {
                    if (classes[parity[i]] != groups[group[i]]) {
                        classes[parity[i]] = true;
                        groups[group[i]] = true;
                        grew = true;
                    }
                }
            }
            return classes;
        }

        /** Parity levels at the mean group, of classes with enough lactations that can be compared. */
        Map<Integer, Double> levelsKg() {
            boolean[] comparable = comparable();
            double mean = 0;
            for (int k = 0; k < groupKg.length; k++) {
                mean += groupKg[k] * groupSize[k] / records;
            }
            Map<Integer, Double> levels = new TreeMap<>();
            for (int k = 1; k < parityKg.length; k++) {
                if (paritySize[k] >= LEAST_LACTATIONS && comparable[k]) {
                    levels.put(k, mean + parityKg[k]);
                }
            }
            return levels;
        }
    }

    @Override
    public String id() {
        return "parity-factors-mixed-model";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "Pailbook",
                2026,
                "mixed model: group and parity fixed, cow random; factor = highest level / own",
                HowKnown.OURS);
    }
}
