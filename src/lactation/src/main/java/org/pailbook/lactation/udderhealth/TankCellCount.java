package org.pailbook.lactation.udderhealth;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.UsedInput;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.sentence.Rounding;
import org.pailbook.lactation.testday.TestDay;

/**
 * The cell count the tank is expected to have from the cows' own tests: counts weighted by milk, {@code sum(milk x SCC) / sum(milk)},
 * 1,000 cells per mL. It is another figure than a mean of scores, by about a factor of two, and says nothing of how many cows are infected.
 *
 * <p>A cow without a weight or a count takes no part and is named; a count of zero is a count. Milk withheld from the tank is not known
 * here.
 */
public final class TankCellCount implements PublishedMethod {
    public static final TankCellCount WEIGHTED_BY_MILK = new TankCellCount();

    private TankCellCount() {}

    /** @param tests one a cow, of one test day */
    public Figure of(List<TestDay> tests, LocalDate asOf) {
        Figure.Builder figure =
                Figure.of(this, "1000/mL", asOf).noInterval("counts of single samples; their error is not known");
        double milkKg = 0;
        List<TestDay> used = new ArrayList<>();
        for (TestDay test : tests) {
            OptionalDouble scc = test.sccThousandPerMl();
            if (scc.orElse(-1) >= 0 && test.milkKg().orElse(0) > 0) {
                milkKg += test.milkKg().getAsDouble();
                used.add(test);
                figure.input(UsedInput.used("test-day", test.date()));
            } else {
                FindingCode why = scc.isEmpty()
                        ? FindingCode.SCC_NEEDED
                        : scc.getAsDouble() < 0 ? FindingCode.VALUE_IMPOSSIBLE : FindingCode.MILK_NEEDED;
                figure.input(UsedInput.leftOut("test-day", test.date(), why.code()));
            }
        }
        if (used.isEmpty()) {
            return figure.finding(Finding.of(FindingCode.SCC_NEEDED)).build();
        }
        List<Explanation.Part> parts = new ArrayList<>();
        for (TestDay test : used) {
            double kg = test.milkKg().getAsDouble();
            double scc = test.sccThousandPerMl().getAsDouble();
            String words = Rounding.halfUp(kg, 1) + " kg x " + Rounding.halfUp(scc, 0) + " / "
                    + Rounding.halfUp(milkKg, 1) + " kg";
            parts.add(new Explanation.Part(words, kg * scc / milkKg));
        }
        if (used.size() < tests.size()) {
            figure.finding(Finding.of(FindingCode.INCOMPLETE_SUM)
                    .withSeen(used.size() + " of " + tests.size() + " cows with weight and count"));
        }
        Explanation explanation = new Explanation(parts);
        return figure.value(explanation.total()).explanation(explanation).build();
    }

    @Override
    public String id() {
        return "tank-cell-count";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "Pailbook", 2026, "mean of counts weighted by milk: what mixing the milk gives", HowKnown.OURS);
    }
}
