package org.pailbook.lactation.culling;

import org.pailbook.lactation.internal.SparseRows;
import org.pailbook.lactation.internal.StationaryDistribution;

/**
 * How a herd looks in the long run if every slot follows the policy of a {@link CowValueTable}: means over slots at the start of a month, after
 * replacements. It is the herd of the model, not the herd on record.
 *
 * @param unplannedExitsPerSlotYear cows that died or had to leave
 * @param chosenExitsPerSlotYear cows replaced because that paid
 * @param milkKgPerSlotYear milk of a slot in 365.25 days
 * @param meanParity fifth and later counted as five
 * @param dryShare of slots
 * @param pregnantShare of slots
 * @param meanNewPregnancyCu what a conception is worth at the start of the next month, mean over conceptions
 * @param meanPregnancyLossCu what a loss costs, mean over losses
 * @param medianMonthsPregnant of pregnant cows
 */
public record SteadyState(
        double unplannedExitsPerSlotYear,
        double chosenExitsPerSlotYear,
        double milkKgPerSlotYear,
        double meanParity,
        double dryShare,
        double pregnantShare,
        double meanNewPregnancyCu,
        double meanPregnancyLossCu,
        int medianMonthsPregnant) {
    private static final double MONTHS_PER_YEAR = 12;
    private static final double DAYS_PER_YEAR = 365.25;

    static SteadyState of(CowValueTable table) {
        double discount = table.account().prices().monthlyDiscountFactor();
        double keptHeiferShare = 0;
        for (int k = 1; k <= StageGrid.CLASSES; k++) {
            if (table.isKept(new CowStage(1, 1, 0, k))) {
                keptHeiferShare += table.account().herd().heiferClassShares().get(k - 1);
            }
        }
        double[] share = StationaryDistribution.of(chain(table, discount, keptHeiferShare));
        return sums(table, share, discount, keptHeiferShare);
    }

    /** From kept stage to kept stage in a month, whatever is replaced in between. */
    private static SparseRows chain(CowValueTable table, double discount, double keptHeiferShare) {
        SparseRows month = table.process().leads(CowValueProcess.KEEP);
        int states = StageGrid.ALL.size();
        SparseRows chain = new SparseRows(states, 8 * states);
        for (int state = 0; state < states; state++) {
            if (table.isKept(StageGrid.ALL.get(state))) {
                chain.begin(state);
                double replaced = 0;
                for (int n = 0; n < month.count(state); n++) {
                    int next = month.column(state, n);
                    double probability = month.amount(state, n) / discount;
                    if (table.isKept(StageGrid.ALL.get(next))) {
                        chain.add(next, probability);
                    } else {
                        replaced += probability;
                    }
                }
                addHeifers(table, chain, replaced / keptHeiferShare);
            }
        }
        return chain;
    }

    private static void addHeifers(CowValueTable table, SparseRows chain, double probability) {
        for (int k = 1; k <= StageGrid.CLASSES; k++) {
            CowStage fresh = new CowStage(1, 1, 0, k);
            if (table.isKept(fresh)) {
                chain.add(
                        StageGrid.index(fresh),
                        probability * table.account().herd().heiferClassShares().get(k - 1));
            }
        }
    }

    private static SteadyState sums(CowValueTable table, double[] share, double discount, double keptHeiferShare) {
        MonthlyAccount account = table.account();
        SparseRows month = table.process().leads(CowValueProcess.KEEP);
        double unplanned = 0;
        double chosen = 0;
        double milk = 0;
        double parity = 0;
        double[] ofPregnancyMonth = new double[StageGrid.LONGEST_PREGNANCY + 1];
        Mean conceptions = new Mean();
        Mean losses = new Mean();
        for (int state = 0; state < share.length; state++) {
            if (share[state] > 0) {
                CowStage stage = StageGrid.ALL.get(state);
                unplanned += share[state] * account.unplannedExitShare(stage.parity(), stage.monthInMilk());
                milk += share[state] * table.milkKgPerDay(stage);
                parity += share[state] * stage.parity();
                ofPregnancyMonth[stage.monthsPregnant()] += share[state];
                for (int n = 0; n < month.count(state); n++) {
                    if (!table.isKept(StageGrid.ALL.get(month.column(state, n)))) {
                        chosen += share[state] * month.amount(state, n) / discount / keptHeiferShare;
                    }
                }
                addPregnancies(table, stage, share[state], conceptions, losses);
            }
        }
        return new SteadyState(
                MONTHS_PER_YEAR * unplanned,
                MONTHS_PER_YEAR * chosen,
                DAYS_PER_YEAR * milk,
                parity,
                sumFrom(ofPregnancyMonth, StageGrid.FIRST_DRY_MONTH),
                sumFrom(ofPregnancyMonth, 1),
                conceptions.value(),
                losses.value(),
                median(ofPregnancyMonth));
    }

    private static void addPregnancies(
            CowValueTable table, CowStage stage, double share, Mean conceptions, Mean losses) {
        int pregnant = stage.monthsPregnant();
        if (pregnant == StageGrid.LONGEST_PREGNANCY || !StageGrid.holds(stage.monthInMilk() + 1, pregnant + 1)) {
            return;
        }
        double difference = table.pregnancyValueCu(
                        new CowStage(stage.parity(), stage.monthInMilk() + 1, pregnant + 1, stage.milkClass()))
                .orElseThrow();
        if (pregnant == 0) {
            conceptions.add(share * table.account().conceptionShare(stage.parity(), stage.monthInMilk()), difference);
        } else {
            losses.add(share * table.account().herd().pregnancyLossShares().get(pregnant - 1), difference);
        }
    }

    private static double sumFrom(double[] shares, int first) {
        double sum = 0;
        for (int month = first; month < shares.length; month++) {
            sum += shares[month];
        }
        return sum;
    }

    private static int median(double[] ofPregnancyMonth) {
        double half = sumFrom(ofPregnancyMonth, 1) / 2;
        int month = 1;
        for (double sum = ofPregnancyMonth[1]; sum < half; sum += ofPregnancyMonth[month]) {
            month++;
        }
        return month;
    }

    private static final class Mean {
        private double weight;
        private double sum;

        void add(double ofWeight, double amount) {
            weight += ofWeight;
            sum += ofWeight * amount;
        }

        double value() {
            return weight > 0 ? sum / weight : 0;
        }
    }
}
