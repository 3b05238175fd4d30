package org.pailbook.lactation.culling;

import java.util.List;
import org.pailbook.lactation.curve.WoodCurve;

/**
 * How cows of a herd milk, conceive, lose pregnancies, change in level and leave.
 *
 * @param groups by parity, five entries; the last stands for the fifth and later
 * @param classFactors milk of the classes low, mean, high over that of a mean cow; rising
 * @param heiferClassShares how heifers fall into the classes
 * @param classChangePerMonth row by row, from class to class within a lactation
 * @param classChangeAtCalving the same from one lactation to the next
 * @param pregnantMilkFactors milk in month 1 to 9 of the pregnancy over that of an open cow; dry months are not read
 * @param pregnancyLossShares chance to lose the pregnancy in its month 1 to 9
 * @param freshExitFactor unplanned exits in months 1 and 2 over those later
 * @param dryIntakeShareOfWeight dry matter a dry cow eats a day, over her live weight
 */
public record HerdParameters(
        List<ParityGroup> groups,
        List<Double> classFactors,
        List<Double> heiferClassShares,
        List<List<Double>> classChangePerMonth,
        List<List<Double>> classChangeAtCalving,
        List<Double> pregnantMilkFactors,
        List<Double> pregnancyLossShares,
        double freshExitFactor,
        double dryIntakeShareOfWeight) {

    /** Invented, of realistic size (ours): for checking arithmetic, and to stand in, marked, for what a herd's records do not tell. */
    public static final HerdParameters REFERENCE = new HerdParameters(
            List.of(
                    group(15.0, 0.18, 0.0025, 560, 0.008, 0.22),
                    group(21.0, 0.17, 0.0034, 620, 0.011, 0.20),
                    group(23.0, 0.17, 0.0037, 660, 0.015, 0.19),
                    group(23.5, 0.17, 0.0038, 680, 0.019, 0.18),
                    group(23.0, 0.17, 0.0038, 680, 0.024, 0.17)),
            List.of(0.85, 1.00, 1.15),
            List.of(0.25, 0.50, 0.25),
            List.of(List.of(0.90, 0.10, 0.0), List.of(0.05, 0.90, 0.05), List.of(0.0, 0.10, 0.90)),
            List.of(List.of(0.60, 0.30, 0.10), List.of(0.20, 0.60, 0.20), List.of(0.10, 0.30, 0.60)),
            List.of(1.0, 1.0, 1.0, 1.0, 0.97, 0.94, 0.88, 1.0, 1.0),
            List.of(0.10, 0.04, 0.02, 0.01, 0.01, 0.01, 0.01, 0.01, 0.0),
            2.0,
            0.019);

    public HerdParameters {
        groups = List.copyOf(groups);
        classFactors = List.copyOf(classFactors);
        heiferClassShares = List.copyOf(heiferClassShares);
        classChangePerMonth = classChangePerMonth.stream().map(List::copyOf).toList();
        classChangeAtCalving = classChangeAtCalving.stream().map(List::copyOf).toList();
        pregnantMilkFactors = List.copyOf(pregnantMilkFactors);
        pregnancyLossShares = List.copyOf(pregnancyLossShares);
        requireCount("groups", groups, StageGrid.PARITIES);
        requireCount("classFactors", classFactors, StageGrid.CLASSES);
        for (int k = 0; k < classFactors.size(); k++) {
            double below = k == 0 ? 0 : classFactors.get(k - 1);
            if (!(classFactors.get(k) > below && classFactors.get(k) < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("classFactors (" + classFactors + ") must rise and be above 0");
            }
        }
        Shares.requireAddUp("heiferClassShares", heiferClassShares, StageGrid.CLASSES);
        requireCount("classChangePerMonth", classChangePerMonth, StageGrid.CLASSES);
        requireCount("classChangeAtCalving", classChangeAtCalving, StageGrid.CLASSES);
        classChangePerMonth.forEach(row -> Shares.requireAddUp("classChangePerMonth", row, StageGrid.CLASSES));
        classChangeAtCalving.forEach(row -> Shares.requireAddUp("classChangeAtCalving", row, StageGrid.CLASSES));
        requireCount("pregnantMilkFactors", pregnantMilkFactors, StageGrid.LONGEST_PREGNANCY);
        pregnantMilkFactors.forEach(factor -> requireNotNegative("pregnantMilkFactors", factor));
        requireCount("pregnancyLossShares", pregnancyLossShares, StageGrid.LONGEST_PREGNANCY);
        pregnancyLossShares.forEach(share -> Shares.require("pregnancyLossShares", share));
        requireNotNegative("freshExitFactor", freshExitFactor);
        requireNotNegative("dryIntakeShareOfWeight", dryIntakeShareOfWeight);
    }

    private static ParityGroup group(
            double woodA, double woodB, double woodC, double bodyWeightKg, double exitShare, double pregnancyRate) {
        return new ParityGroup(
                MilkByMonth.ofCurve(new WoodCurve(woodA, woodB, woodC)::milkKgPerDay),
                bodyWeightKg,
                exitShare,
                pregnancyRate);
    }

    private static void requireCount(String name, List<?> list, int count) {
        if (list.size() != count) {
            throw new IllegalArgumentException(name + " (" + list + ") must have " + count + " entries");
        }
    }

    private static void requireNotNegative(String name, double number) {
        if (!(number >= 0 && number < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(name + " (" + number + ") must be 0 or more");
        }
    }

    /** What is known of cows of that parity; parities after the fifth are as the fifth. */
    public ParityGroup group(int parity) {
        return groups.get(Math.min(parity, groups.size()) - 1);
    }

    public HerdParameters withGroups(List<ParityGroup> others) {
        return new HerdParameters(
                others,
                classFactors,
                heiferClassShares,
                classChangePerMonth,
                classChangeAtCalving,
                pregnantMilkFactors,
                pregnancyLossShares,
                freshExitFactor,
                dryIntakeShareOfWeight);
    }
}
