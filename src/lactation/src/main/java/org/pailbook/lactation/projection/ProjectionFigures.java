package org.pailbook.lactation.projection;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.figure.UsedInput;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.projection.TestDayWeights.Predicted;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.reference.TraitStandards;
import org.pailbook.lactation.sentence.Amount;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.UsableTests;

/** Turns what the test days say of a total into a figure with interval, explanation, inputs and findings. */
final class ProjectionFigures {
    private static final int TOTAL_DAYS = DaysInMilk.STANDARD_LACTATION_DAYS;

    private final PublishedMethod method;
    private final IntervalCalibration calibration;
    private final Lactation lactation;
    private final LocalDate asOf;
    private final TraitStandards standards;
    private final UsableTests usable;
    private final TraitWeights weights;

    ProjectionFigures(
            PublishedMethod method,
            IntervalCalibration calibration,
            Lactation lactation,
            LocalDate asOf,
            TraitStandards standards,
            UsableTests usable,
            TraitWeights weights) {
        this.method = method;
        this.calibration = calibration;
        this.lactation = lactation;
        this.asOf = asOf;
        this.standards = standards;
        this.usable = usable;
        this.weights = weights;
    }

    /** Test days that took part: those the standard reaches to. */
    int tests() {
        TestRecords records = weights.of(0).records();
        return records.count() == 0 ? 0 : records.test(records.count() - 1) + 1;
    }

    /** Days in milk of the last test that took part; 0 without a test. */
    int lastTestDay() {
        TestRecords records = weights.of(0).records();
        return records.count() == 0 ? 0 : records.day(records.count() - 1);
    }

    double calibratedError(Predicted predicted) {
        return predicted.standardError() * calibration.factor(tests());
    }

    /** Sum of days 1 to {@code toDay}; of the cell score the mean of these days. */
    Figure total(int trait, int toDay, Predicted predicted) {
        LactationTrait what = standards.traits().get(trait);
        double unit = what == LactationTrait.CELLS ? 1.0 / toDay : 1;
        Figure.Builder figure = Figure.of(method, what.unit(), asOf)
                .value(predicted.value() * unit)
                .explanation(() -> explanation(trait, toDay, predicted, unit))
                .input(UsedInput.used("calving", lactation.calvingDate()))
                .inputs(inputs())
                .findings(findings(what, toDay));
        int through = Math.min(toDay, lastTestDay());
        Optional<Predicted> produced =
                through == 0 ? Optional.empty() : Optional.of(weights.of(trait).total(trait, through));
        for (Coverage coverage : Coverage.values()) {
            Interval interval = totalInterval(what, predicted, produced, coverage);
            figure.interval(new Interval(coverage.share(), interval.low() * unit, interval.high() * unit));
        }
        return figure.build();
    }

    private Interval totalInterval(
            LactationTrait what, Predicted predicted, Optional<Predicted> produced, Coverage coverage) {
        double low = end(predicted, calibration.low(tests(), coverage));
        if (what != LactationTrait.CELLS) {
            // what she has given to her last test at the least, as sure as the interval is meant to be
            double surelyProduced = produced.map(soFar -> end(soFar, calibration.low(tests(), coverage)))
                    .orElse(0.0);
            low = Math.max(low, Math.max(0, surelyProduced));
            // the tests may expect less than nothing for the rest; the figure stays inside its interval all the same
            low = Math.min(low, predicted.value());
        }
        double high = end(predicted, calibration.high(tests(), coverage));
        return new Interval(coverage.share(), Math.min(low, high), high);
    }

    private static double end(Predicted predicted, double standardErrors) {
        return predicted.value() + standardErrors * predicted.standardError();
    }

    /** Band of one day's value; no cow gives less than nothing. */
    Interval dayInterval(Predicted predicted, Coverage coverage) {
        double low = Math.max(end(predicted, calibration.low(tests(), coverage)), Math.min(0, predicted.value()));
        double high = end(predicted, calibration.high(tests(), coverage));
        return new Interval(coverage.share(), Math.min(low, high), high);
    }

    /** The mean of the group, then one part for each test day. */
    private Explanation explanation(int trait, int toDay, Predicted predicted, double unit) {
        List<Explanation.Part> parts = new ArrayList<>();
        Sentence group = standards.standard(trait).saidGroup();
        parts.add(new Explanation.Part(Sentence.of(SentenceCode.MEAN_OF_GROUP, group, toDay), predicted.mean() * unit));
        TestDayWeights used = weights.of(trait);
        TestRecords records = used.records();
        int record = 0;
        while (record < records.count()) {
            int test = records.test(record);
            int day = records.day(record);
            List<Sentence> against = new ArrayList<>();
            double amount = 0;
            for (; record < records.count() && records.test(record) == test; record++) {
                double weight = predicted.weights()[record] * unit;
                amount += weight * used.deviation(record);
                against.add(words(used, record, weight));
            }
            Sentence said =
                    Sentence.of(SentenceCode.TEST_ON, usable.tests().get(test).date(), day, List.copyOf(against));
            parts.add(new Explanation.Part(said, amount));
        }
        return new Explanation(parts);
    }

    /** {@code milk 28.2 kg against 25.1 expected, +3.12 x 62.5}. */
    private Sentence words(TestDayWeights used, int record, double weight) {
        TestRecords records = used.records();
        LactationTrait what = used.standards().traits().get(records.trait(record));
        int decimals = what == LactationTrait.FAT || what == LactationTrait.PROTEIN ? 3 : 1;
        double value = records.value(record);
        double deviation = used.deviation(record);
        return Sentence.of(
                SentenceCode.AGAINST_EXPECTED,
                Sentence.of(what.said()),
                amount(what, value, decimals),
                what == LactationTrait.CELLS ? Sentence.of(SentenceCode.SCORE) : Sentence.WEIGHT_UNIT,
                amount(what, value - deviation, decimals),
                amount(what, deviation, decimals + 1).signed(),
                Amount.number(weight, weightDecimals(weight)));
    }

    private static Amount amount(LactationTrait what, double value, int decimals) {
        return what == LactationTrait.CELLS ? Amount.number(value, decimals) : Amount.weight(value, decimals);
    }

    private static int weightDecimals(double weight) {
        return Math.abs(weight) < 1 ? 3 : 1;
    }

    private List<UsedInput> inputs() {
        int lastDay = standards.first().lastDay();
        LocalDate lastDate = DaysInMilk.dateOf(lactation.calvingDate(), lastDay);
        return usable.inputs().stream()
                .map(input -> input.isUsed() && input.date().isAfter(lastDate)
                        ? UsedInput.leftOut(input.kind(), input.date(), "after-day-" + lastDay)
                        : input)
                .toList();
    }

    private List<Finding> findings(LactationTrait what, int toDay) {
        List<Finding> findings = new ArrayList<>(usable.findings());
        findings.addAll(weights.of(standards.traits().indexOf(what)).records().findings());
        findings.addAll(standards.findings());
        calibration.finding().ifPresent(findings::add);
        int tests = tests();
        if (tests == 0) {
            findings.add(Finding.of(FindingCode.NO_TEST_YET).withSeen(SentenceCode.TEST_DAYS, 0));
        } else if (tests < Projection305.FEW_TESTS) {
            findings.add(
                    tests == 1
                            ? Finding.of(FindingCode.FEW_TEST_DAYS).withSeen(SentenceCode.ONE_TEST_DAY)
                            : Finding.of(FindingCode.FEW_TEST_DAYS).withSeen(SentenceCode.TEST_DAYS, tests));
        }
        int trait = standards.traits().indexOf(what);
        if (what == LactationTrait.FAT) {
            weights.of(trait).records().addMissing(findings, trait, tests, FindingCode.FAT_MISSING, "fatPct");
        } else if (what == LactationTrait.PROTEIN) {
            weights.of(trait).records().addMissing(findings, trait, tests, FindingCode.PROTEIN_MISSING, "proteinPct");
        }
        spacing(findings, tests);
        int asOfDay = lactation.daysInMilk(asOf);
        if (lactation.endDate().isPresent()) {
            LocalDate end = lactation.endDate().get();
            if (lactation.isEndEstimated()) {
                findings.add(Finding.on(end, FindingCode.ESTIMATED_END));
            }
            if (toDay > lactation.daysInMilk(end)) {
                findings.add(Finding.on(end, FindingCode.LACTATION_ENDED)
                        .withSeen(SentenceCode.DAY, lactation.daysInMilk(end)));
            }
        } else if (toDay == TOTAL_DAYS && asOfDay < TOTAL_DAYS) {
            findings.add(Finding.of(FindingCode.IF_MILKED_TO_305).withSeen(SentenceCode.DAY, asOfDay));
        }
        return findings;
    }

    private void spacing(List<Finding> findings, int tests) {
        if (tests > 0 && usable.daysInMilk(0) > Projection305.LATE_FIRST_TEST_DAYS_IN_MILK) {
            findings.add(Finding.on(usable.tests().get(0).date(), FindingCode.FIRST_TEST_LATE)
                    .withSeen(SentenceCode.DAY, usable.daysInMilk(0))
                    .withExpected(SentenceCode.DAY_OR_BEFORE, Projection305.LATE_FIRST_TEST_DAYS_IN_MILK));
        }
        for (int i = 1; i < tests; i++) {
            int gap = usable.daysInMilk(i) - usable.daysInMilk(i - 1);
            if (gap > Projection305.LONGEST_GAP_DAYS) {
                findings.add(Finding.on(usable.tests().get(i).date(), FindingCode.LONG_INTERVAL)
                        .withSeen(SentenceCode.DAYS_WITHOUT_TEST, gap)
                        .withExpected(SentenceCode.AT_MOST_DAYS, Projection305.LONGEST_GAP_DAYS));
            }
        }
    }
}
