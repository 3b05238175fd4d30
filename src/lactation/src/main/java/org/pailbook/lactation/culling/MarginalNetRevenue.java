package org.pailbook.lactation.culling;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;

/**
 * What one month more of a cow brings that will not calve again: {@code net revenue + beta ((1 - q) sale next month + q x share x sale) - sale
 * today}, q being her chance of an unplanned exit. She holds up the slot if it is less than {@link CowValueTable#slotCuPerMonth()}.
 *
 * <p>Where every next state is to replace her, the difference is her retention pay-off; else it looks one month ahead only and is
 * too low.
 */
public final class MarginalNetRevenue implements PublishedMethod {
    public static final MarginalNetRevenue ONE_MONTH = new MarginalNetRevenue();

    private MarginalNetRevenue() {}

    /**
     * @param parity 1 or more
     * @param monthInMilk 1 or more, also past the table
     * @param level her milk over the mean of her group
     */
    public Figure ofOpenCow(CowValueTable table, int parity, int monthInMilk, double level, LocalDate asOf) {
        Explanation parts = new Explanation(parts(table.account(), parity, monthInMilk, level));
        return Figure.of(this, "cu", asOf)
                .noInterval("arithmetic of prices and means")
                .value(parts.total())
                .explanation(parts)
                .build();
    }

    static double advantageCu(CowValueTable table, int parity, int month, double level) {
        return new Explanation(parts(table.account(), parity, month, level)).total() - table.slotCuPerMonth();
    }

    private static List<Explanation.Part> parts(MonthlyAccount account, int parity, int month, double level) {
        double discount = account.prices().monthlyDiscountFactor();
        double exit = account.unplannedExitShare(parity, month);
        double sale = account.saleCu(parity);
        return Stream.of(
                        new Explanation.Part("milk of the month", account.milkCuPerMonth(parity, month, 0, level)),
                        new Explanation.Part("feed", -account.feedCuPerMonth(parity, month, 0, level)),
                        new Explanation.Part("other costs", -account.otherCuPerMonth()),
                        new Explanation.Part("sale in a month, if she stays", discount * (1 - exit) * sale),
                        new Explanation.Part(
                                "sale if she leaves unplanned",
                                discount * exit * account.prices().unplannedSaleShare() * sale),
                        new Explanation.Part("sale today, given up", -sale))
                .toList();
    }

    @Override
    public String id() {
        return "marginal-net-revenue";
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
                "An economic spreadsheet model to determine optimal breeding and replacement decisions for dairy cattle,"
                        + " J Dairy Sci 87:2146-2157, introduction (title from memory)",
                HowKnown.READ);
    }
}
