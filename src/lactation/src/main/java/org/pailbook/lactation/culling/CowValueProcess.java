package org.pailbook.lactation.culling;

import java.util.List;
import java.util.OptionalDouble;
import org.pailbook.lactation.internal.DecisionProcess;

/**
 * The slot in the herd as a decision process: each month the cow in it is kept, or replaced at once by a heifer that calves today.
 *
 * <p>Replacing takes no time: it brings the sale less the heifer and leads to her first stage undiscounted. For a cow whose health
 * is a burden the worth of the slot with a healthy replacement is known beforehand and given.
 */
final class CowValueProcess {
    static final int KEEP = 0;
    static final int REPLACE = 1;

    private final MonthlyAccount account;
    private final HerdParameters herd;
    private final double discount;
    private final OptionalDouble knownHeiferValueCu;
    private final DecisionProcess process = new DecisionProcess(StageGrid.ALL.size(), 2);

    private CowValueProcess(MonthlyAccount account, OptionalDouble knownHeiferValueCu) {
        this.account = account;
        this.herd = account.herd();
        this.discount = account.prices().monthlyDiscountFactor();
        this.knownHeiferValueCu = knownHeiferValueCu;
    }

    /** @param knownHeiferValueCu worth of the slot with a fresh heifer; empty if it is to be found */
    static DecisionProcess of(MonthlyAccount account, OptionalDouble knownHeiferValueCu) {
        CowValueProcess built = new CowValueProcess(account, knownHeiferValueCu);
        List<CowStage> stages = StageGrid.ALL;
        for (int state = 0; state < stages.size(); state++) {
            CowStage stage = stages.get(state);
            if (!stage.mustGo()) {
                built.addKeeping(state, stage);
            }
            built.process.allow(state, REPLACE, account.saleCu(stage.parity()) + built.heiferCu());
            built.addHeifer(REPLACE, 1);
        }
        return built.process;
    }

    /** Bought, so negative; with what the slot is worth then where that is known. */
    private double heiferCu() {
        return knownHeiferValueCu.orElse(0) - account.prices().heiferCu();
    }

    private void addHeifer(int action, double weight) {
        if (knownHeiferValueCu.isEmpty()) {
            for (int k = 1; k <= StageGrid.CLASSES; k++) {
                process.leadsTo(
                        action,
                        StageGrid.index(1, 1, 0, k),
                        weight * herd.heiferClassShares().get(k - 1));
            }
        }
    }

    private void addKeeping(int state, CowStage stage) {
        int parity = stage.parity();
        int month = stage.monthInMilk();
        int pregnant = stage.monthsPregnant();
        double level = herd.classFactors().get(stage.milkClass() - 1);
        double exit = account.unplannedExitShare(parity, month);
        double stays = discount * (1 - exit);
        boolean calves = pregnant == StageGrid.LONGEST_PREGNANCY;
        double earned = account.netCuPerMonth(parity, month, pregnant, level, true)
                + discount * exit * (account.prices().unplannedSaleShare() * account.saleCu(parity) + heiferCu())
                + (calves ? stays * account.prices().calfCu() : 0);
        process.allow(state, KEEP, earned);
        if (calves) {
            int next = Math.min(parity + 1, StageGrid.PARITIES);
            addStages(next, 1, 0, stays, herd.classChangeAtCalving().get(stage.milkClass() - 1));
        } else {
            List<Double> change = herd.classChangePerMonth().get(stage.milkClass() - 1);
            double turns = pregnant == 0
                    ? account.conceptionShare(parity, month)
                    : herd.pregnancyLossShares().get(pregnant - 1);
            double pregnantNext = pregnant == 0 ? turns : 1 - turns;
            addStages(parity, month + 1, 0, stays * (1 - pregnantNext), change);
            addStages(parity, month + 1, pregnant + 1, stays * pregnantNext, change);
        }
        addHeifer(KEEP, discount * exit);
    }

    private void addStages(int parity, int month, int pregnant, double weight, List<Double> classShares) {
        // nothing leads to stages outside the grid: there the weight is zero
        if (weight > 0) {
            for (int k = 1; k <= StageGrid.CLASSES; k++) {
                process.leadsTo(KEEP, StageGrid.index(parity, month, pregnant, k), weight * classShares.get(k - 1));
            }
        }
    }
}
