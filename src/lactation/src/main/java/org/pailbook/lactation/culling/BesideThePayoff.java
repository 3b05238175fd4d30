package org.pailbook.lactation.culling;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;

/** What is told of a cow beside her pay-off: the other way of keeping her, what a pregnancy is worth, rules that look less far. */
final class BesideThePayoff {
    private BesideThePayoff() {}

    static Optional<Alternative> alternative(
            CowPlace place, Valuation own, double level, double payoffCu, LocalDate calvingDate, LocalDate asOf) {
        if (place.pregnantShare() > 0 || !place.isBred() || CowPlace.isPastTable(place.month(), true)) {
            return Optional.empty();
        }
        double cu = own.withoutBreedingCu(place.parity(), place.month(), level);
        int until = own.lastMonthWithoutBreeding(place.parity(), place.month(), level);
        Figure figure = Figure.of(PayoffWithoutBreeding.BY_DYNAMIC_PROGRAMMING, "cu", asOf)
                .noInterval("a mean over all that may come")
                .value(cu)
                .explanation(new Explanation(List.of(new Explanation.Part("kept and not bred, to month " + until, cu))))
                .build();
        LocalDate day = calvingDate.plusDays((long) Math.ceil((until - 1) * StageGrid.DAYS_PER_MONTH));
        return Optional.of(new Alternative(figure, until, day, cu > payoffCu));
    }

    static Optional<Figure> pregnancyValue(CowPlace place, Valuation own, double level, LocalDate asOf) {
        if (place.pregnantShare() > 0) {
            double cu = own.pregnancyCu(place.parity(), place.pregnantMonth(), place.monthsPregnant(), level);
            return Optional.of(PregnancyValue.PREGNANT_OVER_OPEN.figure(
                    (place.pregnantShare() < 1 ? "if she took, " : "") + place.monthsPregnant()
                            + " months pregnant over open in month in milk " + place.pregnantMonth(),
                    cu,
                    asOf));
        }
        if (place.isBred() && StageGrid.isBreedingMonth(place.month())) {
            double cu = own.pregnancyCu(place.parity(), place.month() + 1, 1, level);
            return Optional.of(PregnancyValue.PREGNANT_OVER_OPEN.figure(
                    "a conception in month in milk " + place.month() + ", at the start of the next", cu, asOf));
        }
        return Optional.empty();
    }

    static List<Figure> simplerRules(CowPlace place, Valuation own, double level, LocalDate asOf) {
        MonthlyAccount account = own.table().account();
        int pregnant = place.pregnantShare() == 1 ? place.monthsPregnant() : 0;
        double milkKg = account.milkKgPerDay(place.parity(), place.month(), pregnant, level);
        double feedCu =
                account.feedCuPerMonth(place.parity(), place.month(), pregnant, level) / StageGrid.DAYS_PER_MONTH;
        Figure daily = IncomeOverFeedCost.PER_DAY.of(milkKg, account.prices().milkCuPerKg(), feedCu, asOf);
        return place.pregnantShare() > 0
                ? List.of(daily)
                : List.of(
                        daily,
                        MarginalNetRevenue.ONE_MONTH.ofOpenCow(
                                own.table(), place.parity(), place.month(), level, asOf));
    }
}
