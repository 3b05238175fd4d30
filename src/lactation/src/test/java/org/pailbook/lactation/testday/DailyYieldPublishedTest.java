package org.pailbook.lactation.testday;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.testday.Milking.Session;

class DailyYieldPublishedTest {
    private static final LocalDate DAY = LocalDate.of(2024, 3, 8);
    private static final OptionalInt NO_DAY = OptionalInt.empty();

    private static MilkedDay twice(Milking... milkings) {
        return new MilkedDay(DAY, 2, List.of(milkings), NO_DAY);
    }

    private static List<FindingCode> codes(DailyYield yield) {
        return yield.milk().findings().stream().map(Finding::code).toList();
    }

    @Test
    void fatOfTheDayIsWeightedByMilk() {
        // by hand: (18 x 3.6 + 12 x 5.0) / 30 = 4.16; the plain mean 4.30 is wrong
        DailyYield yield = SumOfMilkings.ICAR.of(twice(
                Milking.of(Session.AM, 18).withFatPct(3.6),
                Milking.of(Session.PM, 12).withFatPct(5.0)));
        assertThat(yield.fatPct().orElseThrow()).isCloseTo(4.16, within(1e-12));
        assertThat(yield.milk().orThrow()).isEqualTo(30);
        assertThat(yield.addedVarianceShare()).hasValue(0);
        assertThat(codes(yield)).containsExactly(FindingCode.MILKING_HOURS_UNKNOWN);
        TestDay test = yield.testDay().orElseThrow();
        assertThat(test.milkKg()).hasValue(30);
        assertThat(test.fatPct()).isEqualTo(yield.fatPct());
        assertThat(test.proteinPct()).isEmpty();
    }

    @Test
    void milkingsWhoseHoursDoNotAddUpTo24AreScaledByTime() {
        // ICAR (from memory): sum x 24 / hours; 30 kg in 13 + 10 h
        DailyYield yield = SumOfMilkings.ICAR.of(twice(
                Milking.of(Session.AM, 18).withHoursSincePrevious(13),
                Milking.of(Session.PM, 12).withHoursSincePrevious(10)));
        assertThat(yield.milk().orThrow()).isCloseTo(30 * 24 / 23.0, within(1e-12));
        assertThat(codes(yield)).isEmpty();
        assertThat(yield.milk().explanation().parts().get(0).what()).isEqualTo("AM: 18.0 kg x 24 / 23.00 h");
        DailyYield exact = SumOfMilkings.ICAR.of(twice(
                Milking.of(Session.AM, 18).withHoursSincePrevious(13.5),
                Milking.of(Session.PM, 12).withHoursSincePrevious(10.5)));
        assertThat(exact.milk().orThrow()).isEqualTo(30);
        assertThat(exact.milk().explanation().parts().get(1).what()).isEqualTo("PM: 12.0 kg");
        DailyYield oneUnknown = SumOfMilkings.ICAR.of(
                twice(Milking.of(Session.AM, 18).withHoursSincePrevious(13), Milking.of(Session.PM, 12)));
        assertThat(oneUnknown.milk().orThrow()).isEqualTo(30);
    }

    @Test
    void aPartOfTheDayHasNoSum() {
        DailyYield yield = SumOfMilkings.ICAR.of(twice(Milking.of(Session.AM, 18)));
        assertThat(yield.milk().value()).isEmpty();
        assertThat(yield.testDay()).isEmpty();
        assertThat(codes(yield)).containsExactly(FindingCode.MILKING_FACTOR_UNKNOWN);
        assertThat(yield.addedVarianceShare()).hasValue(0.30);
        DailyYield none = SumOfMilkings.ICAR.of(twice());
        assertThat(codes(none)).containsExactly(FindingCode.MILKING_NEEDED);
        assertThat(none.addedVarianceShare()).isEmpty();
    }

    @Test
    void amMilkingUnder9HoursOnDay90() {
        // Wiggans, USDA-ARS note, first row (read): 2.465 x 11 + (90 - 158) x 0.01566 = 26.05012
        MilkedDay day = new MilkedDay(
                DAY, 2, List.of(Milking.of(Session.AM, 11).withHoursSincePrevious(8.99)), OptionalInt.of(90));
        DailyYield yield = WiggansShortInterval.MORNING_UNDER_9_HOURS.of(day);
        assertThat(yield.milk().orThrow()).isCloseTo(26.05012, within(0.000005));
        assertThat(codes(yield)).containsExactly(FindingCode.PART_OF_DAY_WEIGHED);
        assertThat(yield.addedVarianceShare()).hasValue(0.30);
        assertThat(yield.milk().explanation().parts().get(1).what()).isEqualTo("(day 90 - 158) x 0.01566 kg");
    }

    @Test
    void rowsOfTheTableThatWereNotReadGiveNoValue() {
        OptionalInt day90 = OptionalInt.of(90);
        Milking am = Milking.of(Session.AM, 11).withHoursSincePrevious(8);
        List<MilkedDay> others = List.of(
                new MilkedDay(DAY, 2, List.of(Milking.of(Session.AM, 11).withHoursSincePrevious(9)), day90),
                new MilkedDay(DAY, 2, List.of(Milking.of(Session.AM, 11)), day90),
                new MilkedDay(DAY, 2, List.of(Milking.of(Session.PM, 11).withHoursSincePrevious(8)), day90),
                new MilkedDay(DAY, 3, List.of(am), day90),
                new MilkedDay(DAY, 2, List.of(am), NO_DAY));
        for (MilkedDay day : others) {
            assertThat(codes(WiggansShortInterval.MORNING_UNDER_9_HOURS.of(day)))
                    .as(day.toString())
                    .containsExactly(FindingCode.MILKING_FACTOR_UNKNOWN);
        }
        MilkedDay whole = twice(Milking.of(Session.AM, 18), Milking.of(Session.PM, 12));
        assertThat(WiggansShortInterval.MORNING_UNDER_9_HOURS.of(whole).milk().orThrow())
                .isEqualTo(30);
    }

    @Test
    void theLearnedShareIsDrawnTowardTheReferenceWithTheWeightOf20CowDays() {
        // ours, by hand: 60 cow-days at 0.6, reference 0.5: (60 x 0.6 + 20 x 0.5) / 80 = 0.575
        List<MilkedDay> paired = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            paired.add(twice(Milking.of(Session.AM, 18), Milking.of(Session.PM, 12)));
        }
        paired.add(twice(Milking.of(Session.AM, 99)));
        paired.add(new MilkedDay(DAY, 3, List.of(Milking.of(Session.AM, 99), Milking.of(Session.PM, 1)), NO_DAY));
        MilkingShares shares = MilkingShares.learn(paired, 0.5);
        assertThat(shares.amShare()).isCloseTo(0.575, within(1e-12));
        assertThat(shares.pairedCowDays()).isEqualTo(60);
        DailyYield am = shares.of(twice(Milking.of(Session.AM, 23)));
        assertThat(am.milk().orThrow()).isCloseTo(23 / 0.575, within(1e-12));
        assertThat(am.milk().explanation().parts().get(0).what()).isEqualTo("AM: 23.0 kg / 0.5750 of the day");
        DailyYield pm = shares.of(twice(Milking.of(Session.PM, 17).withFatPct(5)));
        assertThat(pm.milk().orThrow()).isCloseTo(40, within(1e-9));
        assertThat(codes(pm)).containsExactly(FindingCode.PART_OF_DAY_WEIGHED, FindingCode.PART_OF_DAY_SAMPLED);
        assertThat(pm.fatPct()).hasValue(5);
        assertThat(shares.of(twice(Milking.of(Session.AM, 18), Milking.of(Session.PM, 12)))
                        .milk()
                        .orThrow())
                .isEqualTo(30);
    }

    @Test
    void withoutPairedDaysTheShareIsTheReference() {
        assertThat(MilkingShares.learn(List.of(), 14 / 24.0).amShare()).isCloseTo(14 / 24.0, within(1e-15));
        List<MilkedDay> dry = List.of(twice(Milking.of(Session.AM, 0), Milking.of(Session.PM, 0)));
        assertThat(MilkingShares.learn(dry, 0.6).amShare()).isCloseTo(0.6, within(1e-15));
    }

    @Test
    void aSharedFactorIsForOneOfTwoMilkingsOnly() {
        MilkingShares shares = MilkingShares.learn(List.of(), 0.5);
        assertThat(codes(shares.of(new MilkedDay(DAY, 3, List.of(Milking.of(Session.AM, 10)), NO_DAY))))
                .containsExactly(FindingCode.MILKING_FACTOR_UNKNOWN);
        assertThat(codes(shares.of(twice(Milking.of(Session.MIDDAY, 10)))))
                .containsExactly(FindingCode.MILKING_FACTOR_UNKNOWN);
    }

    @Test
    void addedVarianceOfThePlansOfTheDataCollectionRating() {
        // derived from VanRaden's table 1 (read): 0.17, 0.30 and 0.56 of the variance
        assertThat(AddedTestVariance.share(2, 3)).hasValue(0.17);
        assertThat(AddedTestVariance.share(1, 2)).hasValue(0.30);
        assertThat(AddedTestVariance.share(1, 3)).hasValue(0.56);
        assertThat(AddedTestVariance.share(3, 3)).hasValue(0);
        assertThat(AddedTestVariance.share(1, 1)).hasValue(0);
        assertThat(AddedTestVariance.share(1, 4)).isEmpty();
        assertThatThrownBy(() -> AddedTestVariance.share(0, 2)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> AddedTestVariance.share(3, 2)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void compositionOfTheDayIsThatOfTheSampledMilkings() {
        OptionalDouble none = OptionalDouble.empty();
        DailyYield yield = SumOfMilkings.ICAR.of(twice(
                Milking.of(Session.AM, 20)
                        .withSample(none, OptionalDouble.of(3.4), OptionalDouble.of(4.8), OptionalDouble.of(100)),
                Milking.of(Session.PM, 10)
                        .withSample(OptionalDouble.of(5), OptionalDouble.of(3.7), none, OptionalDouble.of(400))));
        assertThat(yield.fatPct()).hasValue(5);
        assertThat(yield.proteinPct().orElseThrow()).isCloseTo(3.5, within(1e-12));
        assertThat(yield.lactosePct().orElseThrow()).isCloseTo(4.8, within(1e-12));
        assertThat(yield.sccThousandPerMl().orElseThrow()).isCloseTo(200, within(1e-12));
        assertThat(codes(yield)).contains(FindingCode.PART_OF_DAY_SAMPLED);
    }

    @Test
    void milkingsThatCannotBeAreRefused() {
        assertThatThrownBy(() -> Milking.of(Session.AM, -0.1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Milking.of(Session.AM, Double.POSITIVE_INFINITY))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Milking.of(Session.AM, 1).withHoursSincePrevious(0))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> twice(Milking.of(Session.AM, 1), Milking.of(Session.AM, 1)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() ->
                        new MilkedDay(DAY, 1, List.of(Milking.of(Session.AM, 1), Milking.of(Session.PM, 1)), NO_DAY))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> MilkingShares.learn(List.of(), 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> MilkingShares.learn(List.of(), 0)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void everyMethodHasItsOwnIdAndNamesItsSource() {
        List<DailyYieldMethod> methods = List.of(
                SumOfMilkings.ICAR, MilkingShares.learn(List.of(), 0.5), WiggansShortInterval.MORNING_UNDER_9_HOURS);
        assertThat(methods)
                .extracting(DailyYieldMethod::id)
                .containsExactly("daily-sum-icar", "daily-learned-share", "daily-wiggans-am-under-9h");
        assertThat(methods).allSatisfy(method -> {
            assertThat(method.version()).isEqualTo(1);
            assertThat(method.citation().place()).isNotBlank();
        });
    }

    @Test
    void aTestDayHoldsNoValueThatIsNoNumber() {
        OptionalDouble none = OptionalDouble.empty();
        OptionalDouble nan = OptionalDouble.of(Double.NaN);
        assertThatThrownBy(() -> new TestDay(DAY, nan, none, none, none, none)).hasMessageContaining("milkKg");
        assertThatThrownBy(() -> new TestDay(DAY, none, nan, none, none, none)).hasMessageContaining("fatPct");
        assertThatThrownBy(() -> new TestDay(DAY, none, none, nan, none, none)).hasMessageContaining("proteinPct");
        assertThatThrownBy(() -> new TestDay(DAY, none, none, none, nan, none)).hasMessageContaining("lactosePct");
        assertThatThrownBy(() -> new TestDay(DAY, none, none, none, none, nan))
                .hasMessageContaining("sccThousandPerMl");
    }
}
