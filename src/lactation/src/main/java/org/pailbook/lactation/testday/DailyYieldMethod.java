package org.pailbook.lactation.testday;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.UsedInput;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.finding.Severity;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.sentence.SentenceCode;

/**
 * How single milkings are brought to 24 hours. Composition is always weighted by milk and never a plain mean of percents.
 *
 * @see SumOfMilkings
 * @see MilkingShares
 * @see WiggansShortInterval
 */
public interface DailyYieldMethod extends PublishedMethod {
    /** {@link UsedInput#kind()} of a milking. */
    String MILKING = "milking";

    /** What the milk of 24 hours is, part by part, or why it cannot be told. */
    Outcome milkOf(MilkedDay day);

    /**
     * Milk of 24 hours with its parts in kg, or findings that block it.
     *
     * @param parts empty exactly if a finding blocks
     */
    record Outcome(List<Explanation.Part> parts, List<Finding> findings) {
        public Outcome {
            parts = List.copyOf(parts);
            findings = List.copyOf(findings);
            boolean blocked = findings.stream().anyMatch(finding -> finding.severity() == Severity.BLOCKS);
            if (parts.isEmpty() != blocked) {
                throw new IllegalArgumentException("parts must be there exactly when no finding blocks: " + findings);
            }
        }
    }

    /** Milk and composition of the day. */
    default DailyYield of(MilkedDay day) {
        Figure.Builder figure = Figure.of(this, "kg", day.date())
                .noInterval("the added error is given beside it as a share of the variance of daily milk")
                .inputs(day.milkings().stream()
                        .map(milking -> UsedInput.used(MILKING, day.date()))
                        .toList());
        Outcome outcome = day.milkings().isEmpty()
                ? new Outcome(List.of(), List.of(Finding.on(day.date(), FindingCode.MILKING_NEEDED)))
                : milkOf(day);
        figure.findings(outcome.findings());
        if (!outcome.parts().isEmpty()) {
            Explanation explanation = new Explanation(outcome.parts());
            figure.value(explanation.total()).explanation(explanation);
        }
        sampling(day).ifPresent(figure::finding);
        return new DailyYield(
                day.date(),
                figure.build(),
                weighted(day, Milking::fatPct),
                weighted(day, Milking::proteinPct),
                weighted(day, Milking::lactosePct),
                weighted(day, Milking::sccThousandPerMl),
                day.milkings().size(),
                day.milkingsPerDay(),
                day.milkings().isEmpty()
                        ? OptionalDouble.empty()
                        : AddedTestVariance.share(day.milkings().size(), day.milkingsPerDay()));
    }

    private static Optional<Finding> sampling(MilkedDay day) {
        long sampled = day.milkings().stream()
                .filter(milking -> milking.fatPct().isPresent())
                .count();
        return sampled == 0 || sampled == day.milkingsPerDay()
                ? Optional.empty()
                : Optional.of(Finding.on(day.date(), FindingCode.PART_OF_DAY_SAMPLED)
                        .withField("fatPct")
                        .withSeen(SentenceCode.MILKINGS_OF, sampled, day.milkingsPerDay()));
    }

    /** {@code sum(milk x value) / sum(milk)} over the milkings that have the value. */
    private static OptionalDouble weighted(MilkedDay day, Function<Milking, OptionalDouble> value) {
        double milkKg = 0;
        double sum = 0;
        for (Milking milking : day.milkings()) {
            OptionalDouble measured = value.apply(milking);
            if (measured.isPresent()) {
                milkKg += milking.milkKg();
                sum += milking.milkKg() * measured.getAsDouble();
            }
        }
        return milkKg > 0 ? OptionalDouble.of(sum / milkKg) : OptionalDouble.empty();
    }
}
