package org.pailbook.lactation.culling;

import java.time.LocalDate;
import java.util.List;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.sentence.Rounding;

/**
 * What a day's milk brings over the feed that made it. It says nothing of what comes: a fresh cow and one soon to be dry can have the same.
 */
public final class IncomeOverFeedCost implements PublishedMethod {
    public static final IncomeOverFeedCost PER_DAY = new IncomeOverFeedCost();

    private IncomeOverFeedCost() {}

    /**
     * @param milkKg of 24 hours, 0 or more
     * @param milkCuPerKg paid
     * @param feedCu of the day
     */
    public Figure of(double milkKg, double milkCuPerKg, double feedCu, LocalDate asOf) {
        Figure.Builder figure = Figure.of(this, "cu/d", asOf).noInterval("arithmetic of prices");
        if (!(milkKg >= 0 && milkCuPerKg >= 0 && feedCu >= 0)) {
            return figure.finding(Finding.of(FindingCode.VALUE_IMPOSSIBLE)
                            .withSeen("milk " + milkKg + " kg at " + milkCuPerKg + ", feed " + feedCu)
                            .withExpected("0 or more"))
                    .build();
        }
        Explanation parts = new Explanation(List.of(
                new Explanation.Part(
                        Rounding.halfUp(milkKg, 1) + " kg milk x " + milkCuPerKg + " cu", milkKg * milkCuPerKg),
                new Explanation.Part("feed", -feedCu)));
        return figure.value(parts.total()).explanation(parts).build();
    }

    @Override
    public String id() {
        return "income-over-feed-cost";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "Pennsylvania State University extension",
                2003,
                "UA458, income over feed cost (year of the worked example in the Virginia dairy extension)",
                HowKnown.READ);
    }
}
