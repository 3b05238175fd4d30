package org.pailbook.lactation.persistency;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.pailbook.lactation.accumulation.AccumulatedYield;
import org.pailbook.lactation.accumulation.YieldAccumulation;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.finding.Severity;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.sentence.Rounding;
import org.pailbook.lactation.testday.Lactation;

/**
 * What a cow gave in her life up to a day: the sum of her lactations, and the same for each day since her birth and since her first
 * calving, dry days counted. Days run to the last day whose milk is in the sum, both for a cow in milk and for one that is gone.
 *
 * <p>A lactation without a value is left out of the sum and named. With none there is no value. Common practice, no source.
 */
public final class LifetimeYield implements PublishedMethod {
    private final YieldAccumulation accumulation;

    private LifetimeYield(YieldAccumulation accumulation) {
        this.accumulation = Objects.requireNonNull(accumulation, "accumulation");
    }

    /** @param accumulation how each lactation is added up; one for whole lactations, not for 305 days */
    public static LifetimeYield by(YieldAccumulation accumulation) {
        return new LifetimeYield(accumulation);
    }

    /** Kg of all lactations that had begun by that day. */
    public Figure totalKg(List<Lactation> lactations, LocalDate asOf) {
        return figure("kg", sum(lactations, asOf), 1, "", asOf);
    }

    /** Kg for each day of her life, from the day after birth to the last day with milk counted. */
    public Figure kgPerDayOfLife(LocalDate birthDate, List<Lactation> lactations, LocalDate asOf) {
        return perDay(birthDate, lactations, asOf);
    }

    /** Kg for each day from the day after her first calving on record to the last day with milk counted. */
    public Figure kgPerDaySinceFirstCalving(List<Lactation> lactations, LocalDate asOf) {
        LocalDate first = lactations.stream()
                .map(Lactation::calvingDate)
                .min(Comparator.naturalOrder())
                .orElse(asOf);
        return perDay(first, lactations, asOf);
    }

    private Figure perDay(LocalDate from, List<Lactation> lactations, LocalDate asOf) {
        Sum sum = sum(lactations, asOf);
        int days = DaysInMilk.on(from, sum.lastDay);
        if (!sum.parts.isEmpty() && days < 1) {
            return Figure.of(this, "kg/d", asOf)
                    .noInterval("no value")
                    .finding(Finding.on(from, FindingCode.DATES_OUT_OF_ORDER)
                            .withSeen("milk to " + sum.lastDay)
                            .withExpected("milk after " + from))
                    .build();
        }
        return figure("kg/d", sum, days, " / " + days + " d", asOf);
    }

    private Figure figure(String unit, Sum sum, int divisor, String words, LocalDate asOf) {
        Figure.Builder figure = Figure.of(this, unit, asOf)
                .noInterval("the sum carries no error of its own")
                .findings(sum.findings);
        if (sum.parts.isEmpty()) {
            return figure.finding(Finding.of(FindingCode.NO_TEST_DAYS)).build();
        }
        Explanation explanation = new Explanation(sum.parts.stream()
                .map(part -> new Explanation.Part(part.what() + words, part.amount() / divisor))
                .toList());
        return figure.value(explanation.total()).explanation(explanation).build();
    }

    private record Sum(List<Explanation.Part> parts, List<Finding> findings, LocalDate lastDay) {}

    private Sum sum(List<Lactation> lactations, LocalDate asOf) {
        List<Explanation.Part> parts = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        LocalDate lastDay = LocalDate.MIN;
        List<Lactation> begun = lactations.stream()
                .filter(lactation -> lactation.calvingDate().isBefore(asOf))
                .sorted(Comparator.comparing(Lactation::calvingDate))
                .toList();
        for (Lactation lactation : begun) {
            AccumulatedYield yield = accumulation.accumulate(lactation, asOf);
            if (yield.milk().value().isEmpty()) {
                findings.add(Finding.on(lactation.calvingDate(), FindingCode.INCOMPLETE_SUM)
                        .withSeen("lactation " + lactation.parity() + " has no value"));
                continue;
            }
            // what only notes something of one lactation stays with that lactation's own figure
            yield.milk().findings().stream()
                    .filter(finding -> finding.severity() == Severity.WEAKENS)
                    .forEach(findings::add);
            parts.add(new Explanation.Part(
                    "lactation " + lactation.parity() + ", " + yield.daysCovered() + " d: "
                            + Rounding.halfUp(yield.milk().orThrow(), 1) + " kg",
                    yield.milk().orThrow()));
            lastDay = DaysInMilk.dateOf(lactation.calvingDate(), yield.toDaysInMilk());
        }
        return new Sum(parts, findings, parts.isEmpty() ? asOf : lastDay);
    }

    @Override
    public String id() {
        return "lifetime-yield-" + accumulation.id();
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "Common practice",
                2026,
                "sum of all lactations; each added up by "
                        + accumulation.citation().text(),
                HowKnown.COMMON_PRACTICE);
    }
}
