package org.pailbook.lactation.testday;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.sentence.Amount;
import org.pailbook.lactation.sentence.Sentence;
import org.pailbook.lactation.sentence.SentenceCode;

/**
 * One cow's test days, those posted and those made from her single milkings together. The test day posted wins over milkings of the same day;
 * one without a weight, only sampled, takes theirs. Every such day says so.
 *
 * <p>A day with all its milkings is their sum. A day with a part of them is brought to 24 hours by what the herd's own paired days show, once
 * there are {@value #LEAST_PAIRED_COW_DAYS} of them (ours); before that it takes no part, for doubling is wrong unless the hours are 12 and 12.
 */
public final class DaysFromMilkings {
    /** With as many, the herd's own share weighs as much as the reference. Ours. */
    public static final int LEAST_PAIRED_COW_DAYS = MilkingShares.SHRINKAGE_COW_DAYS;

    private DaysFromMilkings() {}

    /**
     * Lays milkings beside posted test days.
     *
     * @param posted in any order
     * @param days milkings day by day, one entry a day
     * @param shares what the herd's paired days show
     * @return in no particular order
     */
    public static List<TestDay> beside(List<TestDay> posted, List<MilkedDay> days, MilkingShares shares) {
        if (days.isEmpty()) {
            return posted;
        }
        Map<LocalDate, TestDay> made = new HashMap<>();
        days.forEach(day -> made.put(day.date(), made(day, shares)));
        List<TestDay> all = new ArrayList<>();
        for (TestDay test : posted) {
            TestDay summed = made.remove(test.date());
            all.add(summed == null ? test : together(test, summed));
        }
        all.addAll(made.values());
        return all;
    }

    private static TestDay made(MilkedDay day, MilkingShares shares) {
        boolean isKnown = day.isWeighedWhole() || shares.pairedCowDays() >= LEAST_PAIRED_COW_DAYS;
        DailyYieldMethod method = isKnown ? shares : SumOfMilkings.ICAR;
        DailyYield yield = method.of(day);
        Sentence seen = Sentence.of(SentenceCode.MILKINGS_OF, day.milkings().size(), day.milkingsPerDay());
        TestDay test = yield.testDay().orElse(null);
        if (test == null) {
            OptionalDouble none = OptionalDouble.empty();
            return new TestDay(day.date(), none, none, none, none, none)
                    .withNotes(List.of(Finding.on(day.date(), FindingCode.MILKINGS_NOT_SUMMED)
                            .withSeen(seen)
                            .withExpected(SentenceCode.ALL_WEIGHED_OR_PAIRED, LEAST_PAIRED_COW_DAYS)));
        }
        List<Finding> notes = new ArrayList<>();
        notes.add(Finding.on(day.date(), FindingCode.SUMMED_FROM_MILKINGS).withSeen(seen));
        notes.addAll(yield.milk().findings());
        return test.withNotes(notes);
    }

    private static TestDay together(TestDay posted, TestDay summed) {
        if (posted.milkKg().isPresent()) {
            Sentence both = summed.milkKg().isPresent()
                    ? Sentence.of(SentenceCode.POSTED_AND_MILKINGS, kg(posted), kg(summed))
                    : Sentence.of(SentenceCode.POSTED_AND_PART, kg(posted));
            return posted.withNotes(List.of(Finding.on(posted.date(), FindingCode.POSTED_TEST_DAY_WINS)
                    .withField("milkKg")
                    .withSeen(both)));
        }
        if (summed.milkKg().isEmpty()) {
            return posted.withNotes(summed.notes());
        }
        return posted.withMilkKg(summed.milkKg().getAsDouble())
                .withAddedVarianceShare(summed.addedVarianceShare())
                .withNotes(summed.notes().stream()
                        .map(note -> note.code() == FindingCode.SUMMED_FROM_MILKINGS
                                ? Finding.on(posted.date(), FindingCode.MILK_FROM_MILKINGS)
                                        .withSeen(note.saidSeen().orElseThrow())
                                : note)
                        .toList());
    }

    private static Amount kg(TestDay test) {
        return Amount.measured(test.milkKg().orElseThrow(), 1, "kg");
    }
}
