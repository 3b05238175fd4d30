package org.pailbook.lactation.culling;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;

/**
 * The best stay of a cow that will not calve again and keeps her level: the sum over months of marginal net revenue less what the slot is worth with a
 * replacement, each discounted and weighted with the chance that she is still there, for the number of months (1 or more) that makes it highest.
 *
 * <p>It equals the retention pay-off if her level is sure to stay and she is not bred; with changes of level it is an approximation.
 */
public final class BestRemainingStay implements PublishedMethod {
    public static final BestRemainingStay MONTHS_AHEAD = new BestRemainingStay();

    private BestRemainingStay() {}

    /**
     * @param parity 1 or more
     * @param monthInMilk 1 or more
     * @param mostMonths how far to look, 1 or more
     */
    public Figure ofOpenCow(
            CowValueTable table, int parity, int monthInMilk, double level, int mostMonths, LocalDate asOf) {
        if (mostMonths < 1) {
            throw new IllegalArgumentException("mostMonths (" + mostMonths + ") must be at least 1");
        }
        double discount = table.account().prices().monthlyDiscountFactor();
        List<Explanation.Part> parts = new ArrayList<>();
        int best = 0;
        double bestSum = Double.NEGATIVE_INFINITY;
        double sum = 0;
        double weight = 1;
        for (int ahead = 0; ahead < mostMonths; ahead++) {
            int month = monthInMilk + ahead;
            double advantage = weight * MarginalNetRevenue.advantageCu(table, parity, month, level);
            parts.add(new Explanation.Part("month in milk " + month, advantage));
            sum += advantage;
            if (sum > bestSum) {
                bestSum = sum;
                best = parts.size();
            }
            weight *= discount * (1 - table.account().unplannedExitShare(parity, month));
        }
        Explanation stay = new Explanation(parts.subList(0, best));
        return Figure.of(this, "cu", asOf)
                .noInterval("arithmetic of prices and means")
                .value(stay.total())
                .explanation(stay)
                .build();
    }

    @Override
    public String id() {
        return "best-remaining-stay";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "Groenendaal, H., Galligan, D. T. and Mulder, H. A.",
                2004,
                "J Dairy Sci 87:2146-2157, introduction; the sum over months is our derivation",
                HowKnown.READ);
    }
}
