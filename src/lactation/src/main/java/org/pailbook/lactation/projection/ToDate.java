package org.pailbook.lactation.projection;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.accumulation.AccumulatedYield;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.reference.TraitStandards;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.lactation.testday.UsableTests;

/** What the accumulation methods on standard curves share: which days are summed, from which tests, and how the five figures are put together. */
final class ToDate {
    private final PublishedMethod method;
    private final LocalDate asOf;
    final Lactation lactation;
    final UsableTests usable;
    final TestRecords records;
    final int toDay;

    /** @param lastTestDay later tests are not used */
    ToDate(PublishedMethod method, Lactation recorded, LocalDate asOf, TraitStandards standards, int lastTestDay) {
        this.method = method;
        this.asOf = asOf;
        this.lactation = recorded.asOf(asOf);
        this.usable = UsableTests.of(recorded, asOf);
        this.records = TestRecords.of(usable, standards.traits(), lastTestDay, (TestDay test) -> 0);
        int lastTest = usable.isEmpty() ? 0 : usable.daysInMilk(usable.count() - 1);
        int end = usable.isEmpty()
                ? 0
                : lactation.endDate().map(lactation::daysInMilk).orElse(lastTest);
        this.toDay = Math.min(end, DaysInMilk.STANDARD_LACTATION_DAYS);
    }

    /** There is something to sum: a usable test, and a day to sum to. */
    boolean hasTests() {
        return toDay > 0 && records.count() > 0;
    }

    /** Puts milk, fat and protein together; without a usable test all are blocked. */
    AccumulatedYield yield(List<LactationTrait> traits, TraitFigure figureOf) {
        Figure milk = figureOf.of(0);
        Figure fat = component(traits, LactationTrait.FAT, figureOf, FindingCode.FAT_NEEDED, "fatPct");
        Figure protein = component(traits, LactationTrait.PROTEIN, figureOf, FindingCode.PROTEIN_NEEDED, "proteinPct");
        return new AccumulatedYield(
                milk,
                fat,
                protein,
                percent(fat, milk),
                percent(protein, milk),
                1,
                milk.value().isPresent() ? toDay : 0,
                records.countOf(0),
                countOf(traits, LactationTrait.FAT),
                countOf(traits, LactationTrait.PROTEIN));
    }

    @FunctionalInterface
    interface TraitFigure {
        Figure of(int trait);
    }

    private int countOf(List<LactationTrait> traits, LactationTrait trait) {
        int index = traits.indexOf(trait);
        return index < 0 ? 0 : records.countOf(index);
    }

    private Figure component(
            List<LactationTrait> traits, LactationTrait trait, TraitFigure figureOf, FindingCode needed, String field) {
        int index = traits.indexOf(trait);
        return index < 0
                ? blocked(Finding.of(needed)
                        .withField(field)
                        .withExpected(SentenceCode.STANDARD_FOR, Sentence.of(trait.said())))
                : figureOf.of(index);
    }

    /** A figure without a value. */
    Figure blocked(Finding why) {
        return Figure.of(method, "kg", asOf)
                .inputs(usable.inputs())
                .findings(usable.findings())
                .finding(why)
                .build();
    }

    /** A figure without an interval. */
    Figure figure(double kg, Explanation explanation, List<Finding> findings, String whyNoInterval) {
        Figure.Builder figure = Figure.of(method, "kg", asOf)
                .value(kg)
                .noInterval(whyNoInterval)
                .explanation(explanation)
                .inputs(usable.inputs())
                .findings(usable.findings())
                .findings(records.findings())
                .findings(findings);
        estimatedEnd().ifPresent(figure::finding);
        AccumulatedYield.daysNotCounted(lactation, asOf, toDay, DaysInMilk.STANDARD_LACTATION_DAYS)
                .ifPresent(figure::finding);
        return figure.build();
    }

    /** A trait missing on some of the tests. */
    void addMissing(List<Finding> to, LactationTrait trait, int index) {
        if (trait == LactationTrait.FAT) {
            records.addMissing(to, index, records.countOf(0), FindingCode.FAT_MISSING, "fatPct");
        } else if (trait == LactationTrait.PROTEIN) {
            records.addMissing(to, index, records.countOf(0), FindingCode.PROTEIN_MISSING, "proteinPct");
        }
    }

    private Optional<Finding> estimatedEnd() {
        return lactation.isEndEstimated()
                ? Optional.of(Finding.on(lactation.endDate().orElseThrow(), FindingCode.ESTIMATED_END))
                : Optional.empty();
    }

    private Figure percent(Figure kg, Figure milk) {
        Figure.Builder figure = Figure.of(method, "%", asOf)
                .noInterval(SentenceCode.RATIO_OF_PREDICTIONS)
                .inputs(kg.inputs())
                .findings(kg.findings());
        if (kg.value().isPresent() && milk.value().isPresent()) {
            double pct = 100 * kg.orThrow() / milk.orThrow();
            figure.value(pct)
                    .explanation(new Explanation(List.of(new Explanation.Part(
                            Sentence.of(SentenceCode.PERCENT_UNROUNDED, Sentence.WEIGHT_UNIT), pct))));
        }
        return figure.build();
    }
}
