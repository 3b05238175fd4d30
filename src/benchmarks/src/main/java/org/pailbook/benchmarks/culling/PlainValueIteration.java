package org.pailbook.benchmarks.culling;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.pailbook.lactation.culling.CowStage;
import org.pailbook.lactation.culling.CowValueTable;
import org.pailbook.lactation.culling.CullingPrices;
import org.pailbook.lactation.culling.HerdParameters;

/** The same decision process written from its definition and solved the plain way: sweep over all stages until nothing moves. */
final class PlainValueIteration {
    private static final double LAST_CHANGE_CU = 1e-10;
    private static final int LAST_MONTH = 21;

    private final Map<CowStage, Integer> places = new HashMap<>();
    private final CullingPrices prices;
    private final HerdParameters herd;
    private final double beta;
    private final double[] earned;
    private final int[][] next;
    private final double[][] weight;
    private final double[] sale;
    private final boolean[] mustGo;

    PlainValueIteration(CullingPrices prices, HerdParameters herd) {
        this.prices = prices;
        this.herd = herd;
        this.beta = Math.pow(1 + prices.interestPctPerYear() / 100, -1 / 12.0);
        List<CowStage> stages = CowValueTable.stages();
        int n = stages.size();
        for (int i = 0; i < n; i++) {
            places.put(stages.get(i), i);
        }
        earned = new double[n];
        next = new int[n][];
        weight = new double[n][];
        sale = new double[n];
        mustGo = new boolean[n];
        CowValueTable table = CowValueTable.solve(prices, herd);
        for (int i = 0; i < n; i++) {
            CowStage stage = stages.get(i);
            sale[i] = prices.saleCuPerKgLive() * herd.group(stage.parity()).bodyWeightKg();
            mustGo[i] = stage.monthInMilk() == LAST_MONTH && stage.monthsPregnant() == 0;
            if (!mustGo[i]) {
                fill(i, stage, table.netCuPerMonth(stage));
            }
        }
    }

    int place(CowStage stage) {
        return places.get(stage);
    }

    private void fill(int i, CowStage stage, double net) {
        int pregnant = stage.monthsPregnant();
        double exit = herd.group(stage.parity()).unplannedExitSharePerMonth()
                * (stage.monthInMilk() <= 2 ? herd.freshExitFactor() : 1);
        List<Integer> to = new ArrayList<>();
        List<Double> chance = new ArrayList<>();
        earned[i] = net + beta * exit * (prices.unplannedSaleShare() * sale[i] - prices.heiferCu());
        List<Double> change = herd.classChangePerMonth().get(stage.milkClass() - 1);
        if (pregnant == 9) {
            earned[i] += beta * (1 - exit) * prices.calfCu();
            change = herd.classChangeAtCalving().get(stage.milkClass() - 1);
            add(to, chance, Math.min(5, stage.parity() + 1), 1, 0, 1 - exit, change);
        } else {
            boolean breeds = pregnant == 0 && stage.monthInMilk() >= 3 && stage.monthInMilk() <= 12;
            double pregnantNext = pregnant > 0
                    ? 1 - herd.pregnancyLossShares().get(pregnant - 1)
                    : breeds ? herd.group(stage.parity()).conceptionSharePerMonth() : 0;
            int month = stage.monthInMilk() + 1;
            if (pregnantNext > 0) {
                add(to, chance, stage.parity(), month, pregnant + 1, (1 - exit) * pregnantNext, change);
            }
            if (pregnantNext < 1) {
                add(to, chance, stage.parity(), month, 0, (1 - exit) * (1 - pregnantNext), change);
            }
        }
        add(to, chance, 1, 1, 0, exit, herd.heiferClassShares());
        next[i] = to.stream().mapToInt(Integer::intValue).toArray();
        weight[i] = chance.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private void add(
            List<Integer> to,
            List<Double> chance,
            int parity,
            int month,
            int pregnant,
            double share,
            List<Double> classes) {
        for (int k = 1; k <= classes.size(); k++) {
            if (classes.get(k - 1) > 0) {
                to.add(places.get(new CowStage(parity, month, pregnant, k)));
                chance.add(beta * share * classes.get(k - 1));
            }
        }
    }

    double[] solve() {
        double[] values = new double[earned.length];
        double[] before = new double[earned.length];
        double change = Double.POSITIVE_INFINITY;
        while (change >= LAST_CHANGE_CU) {
            double[] swapped = before;
            before = values;
            values = swapped;
            change = sweep(before, values);
        }
        return values;
    }

    private double sweep(double[] before, double[] values) {
        double heifer = 0;
        for (int k = 1; k <= herd.heiferClassShares().size(); k++) {
            heifer += herd.heiferClassShares().get(k - 1) * before[k - 1];
        }
        double change = 0;
        for (int i = 0; i < values.length; i++) {
            double value = sale[i] - prices.heiferCu() + heifer;
            if (!mustGo[i]) {
                double keep = earned[i];
                for (int e = 0; e < next[i].length; e++) {
                    keep += weight[i][e] * before[next[i][e]];
                }
                value = Math.max(value, keep);
            }
            change = Math.max(change, Math.abs(value - before[i]));
            values[i] = value;
        }
        return change;
    }
}
