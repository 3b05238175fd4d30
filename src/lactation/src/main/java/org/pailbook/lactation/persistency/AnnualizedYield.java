package org.pailbook.lactation.persistency;

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
 * What a lactation gives for each year it takes: {@code 365 x lactation yield / calving interval}, kg per year. A long lactation is so
 * compared with a short one, dry days counted.
 *
 * <p>For a lactation that goes on the interval is the expected one, and the figure says so.
 */
public final class AnnualizedYield implements PublishedMethod {
    public static final AnnualizedYield BY_CALVING_INTERVAL = new AnnualizedYield();

    private static final double YEAR_DAYS = 365;

    private AnnualizedYield() {}

    /** @return kg per year. @throws IllegalArgumentException if the interval is not above 0 */
    public static double kgPerYear(double lactationKg, int calvingIntervalDays) {
        if (calvingIntervalDays <= 0) {
            throw new IllegalArgumentException("calvingIntervalDays (" + calvingIntervalDays + ") must be above 0");
        }
        return lactationKg * YEAR_DAYS / calvingIntervalDays;
    }

    /**
     * @param lactationKg yield of the whole lactation, by any method; without a value there is none here
     * @param calvingIntervalDays days from its calving to the next
     * @param isExpected the next calving is expected, not yet seen
     */
    public Figure of(Figure lactationKg, int calvingIntervalDays, boolean isExpected, LocalDate asOf) {
        Figure.Builder figure = Figure.of(this, "kg/year", asOf)
                .noInterval("the error is that of the yield it is made from")
                .inputs(lactationKg.inputs())
                .findings(lactationKg.findings());
        if (isExpected) {
            figure.finding(Finding.of(FindingCode.INTERVAL_EXPECTED).withSeen(calvingIntervalDays + " d"));
        }
        if (lactationKg.value().isEmpty()) {
            return figure.build();
        }
        double value = kgPerYear(lactationKg.orThrow(), calvingIntervalDays);
        String words = "365 x " + Rounding.halfUp(lactationKg.orThrow(), 1) + " kg / " + calvingIntervalDays + " d";
        return figure.value(value)
                .explanation(new Explanation(List.of(new Explanation.Part(words, value))))
                .build();
    }

    @Override
    public String id() {
        return "annualized-yield";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation("Pailbook", 2026, "365 x lactation yield / calving interval", HowKnown.OURS);
    }
}
