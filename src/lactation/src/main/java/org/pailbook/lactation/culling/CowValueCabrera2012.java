package org.pailbook.lactation.culling;

import java.time.LocalDate;
import java.util.List;
import java.util.function.Predicate;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;

/**
 * The value of a cow without any optimisation: what she is expected to bring under the farm's own replacement policy, less the same of her replacement,
 * net of the heifer's price and the sale.
 *
 * <p>The same chain as {@link CowValueTable}, followed under a given policy. Under the best policy it is the retention pay-off. Over herds
 * the two rank alike: Spearman 95 % over all cows (Kalantari, Cabrera and Solis 2014, read). The sign is ours: above zero, keep.
 */
public final class CowValueCabrera2012 implements PublishedMethod {
    private final CowValueTable table;

    private CowValueCabrera2012(CowValueTable table) {
        this.table = table;
    }

    /** @param isReplaced stages in which the farm replaces a cow */
    public static CowValueCabrera2012 under(CullingPrices prices, HerdParameters herd, Predicate<CowStage> isReplaced) {
        return new CowValueCabrera2012(CowValueTable.underPolicy(prices, herd, isReplaced));
    }

    /** No value for a stage in which a cow cannot be kept. */
    public Figure of(CowStage stage, LocalDate asOf) {
        Figure.Builder figure =
                Figure.of(this, "cu", asOf).noInterval("a mean over all that may come; single cows differ widely");
        if (table.keepValueCu(stage).isEmpty()) {
            return figure.finding(Finding.of(FindingCode.OUTSIDE_TABLE_NO_VALUE)
                            .withSeen("open in month in milk " + stage.monthInMilk()))
                    .build();
        }
        Explanation parts = new Explanation(List.of(
                new Explanation.Part(
                        "slot with her kept this month",
                        table.keepValueCu(stage).getAsDouble()),
                new Explanation.Part("slot with a fresh heifer", -table.heiferValueCu()),
                new Explanation.Part(
                        "price of the heifer", table.account().prices().heiferCu()),
                new Explanation.Part("sale of the cow", -table.account().saleCu(stage.parity()))));
        return figure.value(parts.total()).explanation(parts).build();
    }

    /** The herd under that policy in the long run. */
    public SteadyState steadyState() {
        return table.steadyState();
    }

    @Override
    public String id() {
        return "cow-value-cabrera-2012";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "Cabrera, V. E.",
                2012,
                "A simple formulation and solution to the replacement problem, J Dairy Sci 95:4683-4698 (abstract)",
                HowKnown.READ);
    }
}
