package org.pailbook.lactation.accumulation;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.UsedInput;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.finding.Severity;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.sentence.Amount;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;
import org.pailbook.lactation.testday.BreedGroup;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.lactation.testday.UsableTests;
import org.pailbook.lactation.testday.ValueLimit;
import org.pailbook.lactation.testday.ValueLimits;

/** One pass of the test interval method over one lactation. */
final class TestIntervalYield {
    /** Longest interval a straight line bridges, and latest first test; days. ICAR, from memory. */
    static final int LONGEST_INTERVAL_DAYS = 75;

    /** Days in milk after which a first test is called late; a four-weekly plan starts by then. Ours. */
    static final int LATE_FIRST_TEST_DAYS_IN_MILK = 40;

    private static final SentenceCode NO_INTERVAL = SentenceCode.TEST_INTERVAL_NO_ERROR;

    private final PublishedMethod method;
    private final CompositionRule rule;
    private final LocalDate asOf;
    private final LocalDate calvingDate;
    private final List<UsedInput> inputs = new ArrayList<>();
    private final List<Finding> findings;
    private final double[] days;
    private final double[] milkKg;
    private final List<TestDay> tests;
    private final int endDay;
    private final Optional<Finding> notCounted;

    TestIntervalYield(
            PublishedMethod method, CompositionRule rule, int lastDayCounted, Lactation lactation, LocalDate asOf) {
        this.method = method;
        this.rule = rule;
        this.asOf = asOf;
        this.calvingDate = lactation.calvingDate();
        Lactation known = lactation.asOf(asOf);
        UsableTests usable = UsableTests.of(lactation, asOf);
        int used = 0;
        while (used < usable.count() && (used == 0 || usable.daysInMilk(used - 1) < lastDayCounted)) {
            used++;
        }
        this.tests = usable.tests().subList(0, used);
        this.findings = new ArrayList<>(usable.findings());
        for (UsedInput input : usable.inputs()) {
            boolean late = used > 0 && input.date().isAfter(tests.get(used - 1).date());
            inputs.add(
                    late && input.isUsed()
                            ? UsedInput.leftOut(input.kind(), input.date(), "after-day-" + lastDayCounted)
                            : input);
        }
        this.days = new double[used];
        this.milkKg = new double[used];
        for (int i = 0; i < used; i++) {
            days[i] = usable.daysInMilk(i);
            milkKg[i] = usable.milkKg(i);
        }
        int lastTestDay = used == 0 ? 0 : usable.daysInMilk(used - 1);
        this.endDay =
                Math.min(lastDayCounted, known.endDate().map(known::daysInMilk).orElse(lastTestDay));
        if (known.isEndEstimated() && lastTestDay < lastDayCounted) {
            findings.add(Finding.on(known.endDate().orElseThrow(), FindingCode.ESTIMATED_END));
        }
        this.notCounted = AccumulatedYield.daysNotCounted(known, asOf, endDay, lastDayCounted);
    }

    AccumulatedYield run() {
        List<Finding> milkFindings = new ArrayList<>(findings);
        if (tests.isEmpty()) {
            milkFindings.add(Finding.of(FindingCode.NO_TEST_DAYS));
        } else {
            milkFindings.addAll(spacing(days, FindingCode.FIRST_TEST_TOO_LATE, "milkKg"));
        }
        Figure milk = sum(new CompositionRule.Series(days, milkKg), milkFindings, 1);
        Component fat = component(milk, TestDay::fatPct, "fatPct", FindingCode.FAT_NEEDED, FindingCode.FAT_MISSING);
        Component protein = component(
                milk, TestDay::proteinPct, "proteinPct", FindingCode.PROTEIN_NEEDED, FindingCode.PROTEIN_MISSING);
        return new AccumulatedYield(
                milk,
                fat.kg,
                protein.kg,
                fat.pct,
                protein.pct,
                1,
                milk.value().isPresent() ? endDay : 0,
                tests.size(),
                fat.tests,
                protein.tests);
    }

    private Component component(
            Figure milk,
            Function<TestDay, OptionalDouble> measured,
            String field,
            FindingCode needed,
            FindingCode missing) {
        // the breed is not known here: the range reaches as far as that of any breed
        ValueLimit accepted = ValueLimits.PUBLISHED
                .of(field, ValueLimit.Layer.ACCEPTED, BreedGroup.UNKNOWN)
                .orElseThrow();
        List<Finding> own = new ArrayList<>(milk.findings());
        notCounted.ifPresent(own::remove);
        double[] pct = new double[tests.size()];
        int measuredTests = 0;
        double[] measuredDays = new double[tests.size()];
        for (int i = 0; i < pct.length; i++) {
            OptionalDouble value = measured.apply(tests.get(i));
            boolean isUsed = value.isPresent() && accepted.holds(value.getAsDouble());
            pct[i] = isUsed ? value.getAsDouble() : Double.NaN;
            if (isUsed) {
                measuredDays[measuredTests++] = days[i];
            } else if (value.isPresent()) {
                own.add(Finding.on(tests.get(i).date(), FindingCode.OUT_OF_RANGE)
                        .withField(field)
                        .withSeen(Sentence.verbatim(Amount.measured(value.getAsDouble(), Amount.ALL, "%")))
                        .withExpected(accepted.said()));
            }
        }
        boolean milkBlocked = milk.value().isEmpty();
        if (measuredTests == 0) {
            own.add(Finding.of(needed).withField(field));
        } else if (measuredTests < tests.size()) {
            own.add(Finding.of(missing).withField(field).withSeen(SentenceCode.OF_TESTS, measuredTests, tests.size()));
            // a percentage may be carried back further than a weight: it moves less
            FindingCode late = rule == CompositionRule.OWN_INTERVALS
                    ? FindingCode.FIRST_TEST_TOO_LATE
                    : FindingCode.FIRST_TEST_LATE;
            own.addAll(spacing(Arrays.copyOf(measuredDays, measuredTests), late, field));
        }
        CompositionRule.Series series = measuredTests == 0 || milkBlocked
                ? new CompositionRule.Series(new double[0], new double[0])
                : rule.kgSeries(days, milkKg, pct);
        Figure kg = sum(series, own, 4);
        return new Component(kg, percent(kg, milk), measuredTests);
    }

    private record Component(Figure kg, Figure pct, int tests) {}

    /** Late first tests and long intervals among the tests of one trait, up to the last day counted. */
    private List<Finding> spacing(double[] testDays, FindingCode tooLate, String field) {
        List<Finding> found = new ArrayList<>();
        int first = (int) testDays[0];
        if (first > LATE_FIRST_TEST_DAYS_IN_MILK) {
            boolean late = first > LONGEST_INTERVAL_DAYS;
            found.add(Finding.on(dateOf(first), late ? tooLate : FindingCode.FIRST_TEST_LATE)
                    .withField(field)
                    .withSeen(SentenceCode.DAY, first)
                    .withExpected(
                            SentenceCode.DAY_OR_BEFORE, late ? LONGEST_INTERVAL_DAYS : LATE_FIRST_TEST_DAYS_IN_MILK));
        }
        for (int i = 1; i <= testDays.length; i++) {
            int from = (int) testDays[i - 1];
            int to = i < testDays.length ? (int) testDays[i] : endDay;
            if (to - from > LONGEST_INTERVAL_DAYS) {
                found.add(Finding.on(dateOf(to), FindingCode.LONG_INTERVAL)
                        .withField(field)
                        .withSeen(SentenceCode.DAYS_WITHOUT_TEST, to - from)
                        .withExpected(SentenceCode.AT_MOST_DAYS, LONGEST_INTERVAL_DAYS));
            }
        }
        return found;
    }

    private LocalDate dateOf(int day) {
        return DaysInMilk.dateOf(calvingDate, day);
    }

    private Figure sum(CompositionRule.Series series, List<Finding> own, int decimals) {
        Figure.Builder figure = Figure.of(method, "kg", asOf)
                .noInterval(NO_INTERVAL)
                .inputs(inputs)
                .findings(own);
        if (own.stream().anyMatch(finding -> finding.severity() == Severity.BLOCKS)) {
            return figure.build();
        }
        notCounted.ifPresent(figure::finding);
        return figure.value(sum(series, null))
                .explanation(() -> {
                    List<Explanation.Part> parts = new ArrayList<>();
                    sum(
                            series,
                            (fromDay, toDay, fromKg, toKg, pieceKg) -> parts.add(
                                    new Explanation.Part(words(fromDay, toDay, fromKg, toKg, decimals), pieceKg)));
                    return new Explanation(parts);
                })
                .build();
    }

    private double sum(CompositionRule.Series series, TestIntervals.Pieces pieces) {
        return TestIntervals.sum(series.days(), series.kgPerDay(), series.size(), endDay, pieces);
    }

    /** {@code days 15 to 42: 28 d x (28.2 + 24.8) / 2 kg}. */
    private static Sentence words(double fromDay, double toDay, double fromKg, double toKg, int decimals) {
        int first = (int) fromDay + 1;
        int last = (int) toDay;
        int days = (int) (toDay - fromDay);
        Amount from = Amount.weight(fromKg, decimals);
        return fromKg == toKg
                ? Sentence.of(SentenceCode.DAYS_AT, first, last, days, from, Sentence.WEIGHT_UNIT)
                : Sentence.of(
                        SentenceCode.DAYS_AT_MEAN,
                        first,
                        last,
                        days,
                        from,
                        Amount.weight(toKg, decimals),
                        Sentence.WEIGHT_UNIT);
    }

    private Figure percent(Figure componentKg, Figure milk) {
        Figure.Builder figure = Figure.of(method, "%", asOf)
                .noInterval(NO_INTERVAL)
                .inputs(inputs)
                .findings(componentKg.findings());
        if (componentKg.value().isEmpty()) {
            return figure.build();
        }
        double pct = 100 * componentKg.orThrow() / milk.orThrow();
        return figure.value(pct)
                .explanation(() -> new Explanation(List.of(new Explanation.Part(
                        Sentence.of(
                                SentenceCode.PERCENT_OF_MILK,
                                Amount.weight(componentKg.orThrow(), 4),
                                Amount.weight(milk.orThrow(), 1),
                                Sentence.WEIGHT_UNIT),
                        pct))))
                .build();
    }
}
