package org.pailbook.lactation.culling;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * A herd in the order of what keeping each cow is worth, lowest first. {@link #caution()} goes with it wherever it is shown.
 *
 * @param cows those with a pay-off
 * @param notRanked those without, each with why
 */
public record CullingRanking(List<Ranked> cows, List<CowOutlook> notRanked) {
    public CullingRanking {
        cows = List.copyOf(cows);
        notRanked = List.copyOf(notRanked);
    }

    /**
     * One cow in her place.
     *
     * @param rank 1 is the lowest pay-off
     * @param lowestRank the least she comes to under any change of her {@link PayoffRange}
     * @param highestRank the most
     */
    public record Ranked(int rank, int lowestRank, int highestRank, CowOutlook outlook) {
        double payoffCu() {
            return outlook.retentionPayoff().orThrow();
        }
    }

    /** To be shown with it. */
    public String caution() {
        return CullingCaution.TEXT;
    }

    public static CullingRanking of(List<CullingCow> cows, KeepOrReplace keepOrReplace, LocalDate asOf) {
        List<CowOutlook> ranked = new ArrayList<>();
        List<CowOutlook> notRanked = new ArrayList<>();
        for (CullingCow cow : cows) {
            CowOutlook outlook = keepOrReplace.of(cow, asOf);
            (outlook.range().isPresent() ? ranked : notRanked).add(outlook);
        }
        ranked.sort(Comparator.comparingDouble(
                        (CowOutlook outlook) -> outlook.retentionPayoff().orThrow())
                .thenComparing(CowOutlook::cow));
        return new CullingRanking(withRanks(ranked), notRanked);
    }

    private static List<Ranked> withRanks(List<CowOutlook> sorted) {
        double[] base = sorted.stream()
                .mapToDouble(outlook -> outlook.retentionPayoff().orThrow())
                .toArray();
        Map<PayoffRange.Change, double[]> sortedUnder = new EnumMap<>(PayoffRange.Change.class);
        for (PayoffRange.Change change : PayoffRange.Change.values()) {
            if (change.isOfPrice()) {
                double[] under = sorted.stream()
                        .flatMap(outlook -> outlook.range().orElseThrow().shifts().stream())
                        .filter(shift -> shift.change() == change)
                        .mapToDouble(PayoffRange.Shift::payoffCu)
                        .toArray();
                Arrays.sort(under);
                sortedUnder.put(change, under);
            }
        }
        List<Ranked> ranked = new ArrayList<>(sorted.size());
        for (int i = 0; i < base.length; i++) {
            int lowest = i + 1;
            int highest = i + 1;
            for (PayoffRange.Shift shift : sorted.get(i).range().orElseThrow().shifts()) {
                int rank = shift.change().isOfPrice()
                        ? 1 + below(sortedUnder.get(shift.change()), shift.payoffCu())
                        // her level alone moves: the others stay where they are
                        : 1 + below(base, shift.payoffCu()) - (base[i] < shift.payoffCu() ? 1 : 0);
                lowest = Math.min(lowest, rank);
                highest = Math.max(highest, rank);
            }
            ranked.add(new Ranked(i + 1, lowest, highest, sorted.get(i)));
        }
        return ranked;
    }

    /** How many entries of a sorted array are less. */
    private static int below(double[] sorted, double value) {
        int low = 0;
        int high = sorted.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (sorted[middle] < value) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
