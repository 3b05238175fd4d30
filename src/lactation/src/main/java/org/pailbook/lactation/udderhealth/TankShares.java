package org.pailbook.lactation.udderhealth;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.testday.TestDay;

/**
 * Whose cells are in the tank: each cow's part of all the cells, and the count of the tank without her. Milk that is withheld takes no part.
 *
 * <p>Keeping a cow's milk out does not treat her, and feeding or selling it may be forbidden. Measured tanks were on average 49 thousand per mL
 * below this estimate (Lievaart et al. 2009, abstract read), milk withheld being one cause.
 *
 * @param estimate of the tank, {@link TankCellCount}
 * @param cows those in it with milk and count, the largest part first
 * @param withheld those whose milk must stay out, in the order given
 * @param withoutCount those in it without a weight or a count, in the order given
 */
public record TankShares(Figure estimate, List<CowShare> cows, List<String> withheld, List<String> withoutCount) {
    private static final double PERCENT = 100;

    /**
     * One cow's part of the cells.
     *
     * @param sharePct of all cells, percent
     * @param tankWithoutHer 1,000 per mL; empty if she is alone
     */
    public record CowShare(
            String animal, double milkKg, double sccThousandPerMl, double sharePct, OptionalDouble tankWithoutHer) {}

    public TankShares {
        Objects.requireNonNull(estimate, "estimate");
        cows = List.copyOf(cows);
        withheld = List.copyOf(withheld);
        withoutCount = List.copyOf(withoutCount);
    }

    /**
     * @param tests one a cow, by animal
     * @param withheldAnimals whose milk does not go in
     */
    public static TankShares of(Map<String, TestDay> tests, Set<String> withheldAnimals, LocalDate asOf) {
        Map<String, TestDay> in = new LinkedHashMap<>(tests);
        in.keySet().removeAll(withheldAnimals);
        double milk = 0;
        double cells = 0;
        List<String> without = new ArrayList<>();
        for (Map.Entry<String, TestDay> cow : in.entrySet()) {
            if (isCounted(cow.getValue())) {
                milk += cow.getValue().milkKg().getAsDouble();
                cells += cells(cow.getValue());
            } else {
                without.add(cow.getKey());
            }
        }
        List<CowShare> shares = new ArrayList<>();
        for (Map.Entry<String, TestDay> cow : in.entrySet()) {
            if (isCounted(cow.getValue())) {
                double kg = cow.getValue().milkKg().getAsDouble();
                double hers = cells(cow.getValue());
                shares.add(new CowShare(
                        cow.getKey(),
                        kg,
                        cow.getValue().sccThousandPerMl().getAsDouble(),
                        cells > 0 ? PERCENT * hers / cells : 0,
                        milk > kg
                                ? OptionalDouble.of(Math.max(0, cells - hers) / (milk - kg))
                                : OptionalDouble.empty()));
            }
        }
        shares.sort(Comparator.comparingDouble(CowShare::sharePct).reversed().thenComparing(CowShare::animal));
        return new TankShares(
                TankCellCount.WEIGHTED_BY_MILK.of(List.copyOf(in.values()), asOf),
                shares,
                tests.keySet().stream().filter(withheldAnimals::contains).toList(),
                without);
    }

    private static boolean isCounted(TestDay test) {
        return test.sccThousandPerMl().orElse(-1) >= 0 && test.milkKg().orElse(0) > 0;
    }

    private static double cells(TestDay test) {
        return test.milkKg().getAsDouble() * test.sccThousandPerMl().getAsDouble();
    }
}
