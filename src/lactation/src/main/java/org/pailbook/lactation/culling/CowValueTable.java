package org.pailbook.lactation.culling;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import org.pailbook.lactation.internal.DecisionProcess;
import org.pailbook.lactation.internal.PolicyIteration;

/**
 * What the slot of a cow is worth in each of 1,665 stages if the best is done in it for ever, and what keeping her is worth over replacing her.
 *
 * <p>{@code V = max(keep, replace)}; {@code replace = sale - heifer + V of a fresh heifer}; {@code keep = net revenue of the month + beta x what
 * follows}, an unplanned exit being followed by a heifer too. Money in cu of today, over an unlimited horizon. The retention pay-off is {@code keep -
 * replace} (van Arendonk 1985; De Vries 2004, 2006; definitions from memory). Ties within 1e-9 cu keep the cow. Solved by policy iteration, exact to
 * rounding; held against a reference program in the tests to 1e-6. Immutable.
 */
public final class CowValueTable {
    private final MonthlyAccount account;
    private final DecisionProcess process;
    private final double[] values;
    private final double[] keepValues;
    private final boolean[] isKept;
    private final double heiferValueCu;

    private CowValueTable(
            MonthlyAccount account,
            DecisionProcess process,
            double[] values,
            int[] actions,
            OptionalDouble knownHeiferValueCu) {
        this.account = account;
        this.process = process;
        this.values = values;
        this.keepValues = new double[values.length];
        this.isKept = new boolean[values.length];
        for (int state = 0; state < values.length; state++) {
            isKept[state] = actions[state] == CowValueProcess.KEEP;
            keepValues[state] = process.isAllowed(state, CowValueProcess.KEEP)
                    ? process.worth(state, CowValueProcess.KEEP, values)
                    : Double.NaN;
        }
        this.heiferValueCu = knownHeiferValueCu.orElseGet(this::meanOfFreshHeifers);
    }

    /**
     * The best policy.
     *
     * @throws IllegalArgumentException if a heifer costs no more than she is sold for: see {@link #hasValue}
     */
    public static CowValueTable solve(CullingPrices prices, HerdParameters herd) {
        return solve(new MonthlyAccount(prices, herd, HealthBurden.NONE), OptionalDouble.empty());
    }

    /** The best for a cow with a burden whose replacement is worth what {@code healthy} says. */
    static CowValueTable withBurden(CowValueTable healthy, HealthBurden burden) {
        MonthlyAccount own = new MonthlyAccount(healthy.account.prices(), healthy.account.herd(), burden);
        return solve(own, OptionalDouble.of(healthy.heiferValueCu));
    }

    private static CowValueTable solve(MonthlyAccount account, OptionalDouble knownHeiferValueCu) {
        requireValue(account.prices(), account.herd());
        DecisionProcess process = CowValueProcess.of(account, knownHeiferValueCu);
        PolicyIteration.Solution best = PolicyIteration.solve(process);
        return new CowValueTable(account, process, best.values(), best.actions(), knownHeiferValueCu);
    }

    /**
     * The farm's own policy in place of the best.
     *
     * @param isReplaced the stages in which the farm replaces a cow; open cows at the end of the table always are
     */
    public static CowValueTable underPolicy(CullingPrices prices, HerdParameters herd, Predicate<CowStage> isReplaced) {
        requireValue(prices, herd);
        MonthlyAccount account = new MonthlyAccount(prices, herd, HealthBurden.NONE);
        DecisionProcess process = CowValueProcess.of(account, OptionalDouble.empty());
        int[] actions = StageGrid.ALL.stream()
                .mapToInt(stage ->
                        stage.mustGo() || isReplaced.test(stage) ? CowValueProcess.REPLACE : CowValueProcess.KEEP)
                .toArray();
        return new CowValueTable(
                account, process, PolicyIteration.values(process, actions), actions, OptionalDouble.empty());
    }

    /** Whether there is a value: not if heifers bought and sold on the same day gain without end. */
    public static boolean hasValue(CullingPrices prices, HerdParameters herd) {
        return prices.heiferCu() > prices.saleCuPerKgLive() * herd.group(1).bodyWeightKg();
    }

    private static void requireValue(CullingPrices prices, HerdParameters herd) {
        if (!hasValue(prices, herd)) {
            throw new IllegalArgumentException("heiferCu (" + prices.heiferCu()
                    + ") must be above what she is sold for the same day, "
                    + prices.saleCuPerKgLive() * herd.group(1).bodyWeightKg());
        }
    }

    private double meanOfFreshHeifers() {
        double sum = 0;
        for (int k = 1; k <= StageGrid.CLASSES; k++) {
            sum += account.herd().heiferClassShares().get(k - 1) * values[StageGrid.index(1, 1, 0, k)];
        }
        return sum;
    }

    /** Every stage there is, in a fixed order. */
    public static List<CowStage> stages() {
        return StageGrid.ALL;
    }

    public double valueCu(CowStage stage) {
        return values[StageGrid.index(stage)];
    }

    /** What keeping her for this month is worth, the policy following; empty where she cannot be kept. */
    public OptionalDouble keepValueCu(CowStage stage) {
        double value = keepValues[StageGrid.index(stage)];
        return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    public double replaceValueCu(CowStage stage) {
        return account.saleCu(stage.parity()) - account.prices().heiferCu() + heiferValueCu;
    }

    /** Keeping over replacing now; empty where she cannot be kept. */
    public OptionalDouble retentionPayoffCu(CowStage stage) {
        OptionalDouble keep = keepValueCu(stage);
        return keep.isPresent() ? OptionalDouble.of(keep.getAsDouble() - replaceValueCu(stage)) : keep;
    }

    public boolean isKept(CowStage stage) {
        return isKept[StageGrid.index(stage)];
    }

    /** What being pregnant is worth to the slot over the same cow being open; empty if she is open. */
    public OptionalDouble pregnancyValueCu(CowStage stage) {
        if (stage.monthsPregnant() == 0) {
            return OptionalDouble.empty();
        }
        CowStage open = new CowStage(stage.parity(), stage.monthInMilk(), 0, stage.milkClass());
        return OptionalDouble.of(valueCu(stage) - valueCu(open));
    }

    /** Milk of that stage, kg a day in the middle of the month. */
    public double milkKgPerDay(CowStage stage) {
        return account.milkKgPerDay(stage.parity(), stage.monthInMilk(), stage.monthsPregnant(), level(stage));
    }

    /** Feed of that stage, kg of dry matter a day. */
    public double dryMatterKgPerDay(CowStage stage) {
        return account.dryMatterKgPerDay(stage.parity(), stage.monthInMilk(), stage.monthsPregnant(), level(stage));
    }

    /** Net revenue of a month in that stage, without what comes after. */
    public double netCuPerMonth(CowStage stage) {
        return account.netCuPerMonth(stage.parity(), stage.monthInMilk(), stage.monthsPregnant(), level(stage), true);
    }

    private double level(CowStage stage) {
        return account.herd().classFactors().get(stage.milkClass() - 1);
    }

    /** What the slot is worth with a heifer that calves today. */
    public double heiferValueCu() {
        return heiferValueCu;
    }

    /** What a month of the slot is worth with replacements, their price paid: a cow that brings less holds it up. */
    public double slotCuPerMonth() {
        return (1 - account.prices().monthlyDiscountFactor())
                * (heiferValueCu - account.prices().heiferCu());
    }

    /** How a herd of such slots looks in the long run. */
    public SteadyState steadyState() {
        return SteadyState.of(this);
    }

    MonthlyAccount account() {
        return account;
    }

    DecisionProcess process() {
        return process;
    }
}
