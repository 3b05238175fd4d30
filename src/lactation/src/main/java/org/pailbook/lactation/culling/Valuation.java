package org.pailbook.lactation.culling;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.sentence.Amount;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;

/**
 * The retention pay-off of a cow under one set of prices, at any milk level. Between the milk classes it is interpolated, so that no cow jumps at the
 * border of a class; beyond the lowest and highest it is held (ours).
 */
final class Valuation {
    private static final int PERCENT = 100;

    private final CowValueTable table;
    private final WithoutBreeding withoutBreeding;

    Valuation(CowValueTable table) {
        this.table = table;
        this.withoutBreeding = new WithoutBreeding(table);
    }

    CowValueTable table() {
        return table;
    }

    /** The same prices for a cow with a burden. */
    Valuation withBurden(HealthBurden burden) {
        return burden.equals(HealthBurden.NONE) ? this : new Valuation(CowValueTable.withBurden(table, burden));
    }

    double payoffCu(CowPlace place, double level) {
        return partsCu(place, level).stream()
                .mapToDouble(Explanation.Part::amount)
                .sum();
    }

    /** The pay-off in parts that add up to it: by chance of being pregnant and by milk class. */
    List<Explanation.Part> partsCu(CowPlace place, double level) {
        List<Explanation.Part> parts = new ArrayList<>();
        if (place.pregnantShare() > 0) {
            addPregnant(place, level, parts);
        }
        if (place.pregnantShare() < 1) {
            addOpen(place, level, parts);
        }
        return parts;
    }

    private void addPregnant(CowPlace place, double level, List<Explanation.Part> parts) {
        Sentence stage = Sentence.of(SentenceCode.STAGE_PREGNANT, place.pregnantMonth(), place.monthsPregnant());
        addClasses(
                place,
                level,
                place.pregnantShare(),
                stage,
                k -> stagePayoff(place.parity(), place.pregnantMonth(), place.monthsPregnant(), k),
                parts);
    }

    private void addOpen(CowPlace place, double level, List<Explanation.Part> parts) {
        double share = 1 - place.pregnantShare();
        int parity = place.parity();
        int month = place.month();
        if (CowPlace.isPastTable(month, place.isBred())) {
            double advantage = MarginalNetRevenue.advantageCu(table, parity, month, level);
            parts.add(new Explanation.Part(
                    withChance(share, Sentence.of(SentenceCode.PAYOFF_PAST_TABLE, parity, month)), share * advantage));
        } else if (place.isBred()) {
            addClasses(
                    place,
                    level,
                    share,
                    Sentence.of(SentenceCode.STAGE_OPEN, month),
                    k -> stagePayoff(parity, month, 0, k),
                    parts);
        } else {
            addClasses(
                    place,
                    level,
                    share,
                    Sentence.of(SentenceCode.STAGE_NOT_BRED_AGAIN, month),
                    k -> withoutBreeding.payoffCu(parity, month, k),
                    parts);
        }
    }

    private double stagePayoff(int parity, int month, int pregnant, int k) {
        return table.retentionPayoffCu(new CowStage(parity, month, pregnant, k)).orElseThrow();
    }

    private void addClasses(
            CowPlace place,
            double level,
            double share,
            Sentence stage,
            IntToDoubleFunction ofClass,
            List<Explanation.Part> parts) {
        double[] weights = classWeights(level);
        for (int k = 1; k <= StageGrid.CLASSES; k++) {
            if (weights[k - 1] > 0) {
                double payoff = ofClass.applyAsDouble(k);
                parts.add(new Explanation.Part(
                        withChance(
                                share,
                                Sentence.of(
                                        SentenceCode.PAYOFF_OF_CLASS,
                                        place.parity(),
                                        stage,
                                        Amount.number(
                                                table.account()
                                                        .herd()
                                                        .classFactors()
                                                        .get(k - 1),
                                                Amount.ALL),
                                        Amount.number(weights[k - 1] * PERCENT, 1),
                                        Amount.number(payoff, 2))),
                        share * weights[k - 1] * payoff));
            }
        }
    }

    private static Sentence withChance(double share, Sentence said) {
        return share == 1 ? said : Sentence.of(SentenceCode.WITH_CHANCE, said, Amount.number(share * PERCENT, 1));
    }

    private double[] classWeights(double level) {
        List<Double> factors = table.account().herd().classFactors();
        double[] weights = new double[factors.size()];
        int last = factors.size() - 1;
        if (level <= factors.get(0)) {
            weights[0] = 1;
        } else if (level >= factors.get(last)) {
            weights[last] = 1;
        } else {
            int above = 1;
            while (factors.get(above) < level) {
                above++;
            }
            double share = (level - factors.get(above - 1)) / (factors.get(above) - factors.get(above - 1));
            weights[above] = share;
            weights[above - 1] = 1 - share;
        }
        return weights;
    }

    private double ofClasses(double level, IntToDoubleFunction ofClass) {
        double[] weights = classWeights(level);
        double sum = 0;
        for (int k = 1; k <= StageGrid.CLASSES; k++) {
            sum += weights[k - 1] > 0 ? weights[k - 1] * ofClass.applyAsDouble(k) : 0;
        }
        return sum;
    }

    /** What a pregnancy of that stage is worth over being open in the same month. */
    double pregnancyCu(int parity, int month, int pregnant, double level) {
        return ofClasses(
                level,
                k -> table.pregnancyValueCu(new CowStage(parity, month, pregnant, k))
                        .orElseThrow());
    }

    double withoutBreedingCu(int parity, int month, double level) {
        return ofClasses(level, k -> withoutBreeding.payoffCu(parity, month, k));
    }

    /** The month at whose start a cow that is not bred goes, for the class nearest to her level. */
    int lastMonthWithoutBreeding(int parity, int month, double level) {
        double[] weights = classWeights(level);
        int nearest = 0;
        for (int k = 1; k < weights.length; k++) {
            nearest = weights[k] > weights[nearest] ? k : nearest;
        }
        return withoutBreeding.lastMonth(parity, month, nearest + 1);
    }
}
