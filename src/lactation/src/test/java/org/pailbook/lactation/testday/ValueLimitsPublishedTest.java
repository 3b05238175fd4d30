package org.pailbook.lactation.testday;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.testday.ValueLimit.Layer;

class ValueLimitsPublishedTest {
    private static final LocalDate DAY = LocalDate.of(2024, 3, 8);

    // ICAR Section 2 (from memory): milk 3.0 to 99.9 kg; fat 1.5 to 9.0, high-fat 2.0 to 12.0 %; protein 1.0 to 7.0,
    // high-fat 9.0 %
    @ParameterizedTest
    @CsvSource({
        "milkKg, DAIRY, 3.0, 99.9, OUT_OF_RANGE",
        "milkKg, HIGH_FAT, 3.0, 99.9, OUT_OF_RANGE",
        "fatPct, DAIRY, 1.5, 9.0, OUT_OF_RANGE",
        "fatPct, HIGH_FAT, 2.0, 12.0, OUT_OF_RANGE",
        "fatPct, UNKNOWN, 1.5, 12.0, OUT_OF_RANGE",
        "proteinPct, DAIRY, 1.0, 7.0, OUT_OF_RANGE",
        "proteinPct, HIGH_FAT, 1.0, 9.0, OUT_OF_RANGE",
        "proteinPct, UNKNOWN, 1.0, 9.0, OUT_OF_RANGE",
        // ours
        "lactosePct, DAIRY, 3.5, 5.5, IMPLAUSIBLE",
        "sccThousandPerMl, DAIRY, 5, 9999, IMPLAUSIBLE",
        "calvingIntervalDays, DAIRY, 270, 1000, IMPLAUSIBLE",
        // common practice, no source
        "ageAtFirstCalvingMonths, HIGH_FAT, 18, 48, IMPLAUSIBLE",
        "fatProteinRatio, UNKNOWN, 0.7, 2.2, IMPLAUSIBLE"
    })
    void bothEndsAreInsideAndBeyondThemIsFlagged(
            String field, BreedGroup breeds, double least, double most, FindingCode outside) {
        ValueLimits limits = ValueLimits.PUBLISHED;
        assertThat(limits.check(field, least - 0.01, breeds)).map(Finding::code).hasValue(outside);
        assertThat(limits.check(field, most + 0.01, breeds)).map(Finding::code).hasValue(outside);
        assertThat(limits.check(field, least, breeds)).map(Finding::code).isNotEqualTo(Optional.of(outside));
        assertThat(limits.check(field, most, breeds)).map(Finding::code).isNotEqualTo(Optional.of(outside));
    }

    @Test
    void aWeightAboveSeventyKilogramsIsUsedAndQuestioned() {
        // ours: few cows give more in 24 hours
        assertThat(ValueLimits.PUBLISHED.check("milkKg", 70.0, BreedGroup.UNKNOWN))
                .isEmpty();
        assertThat(ValueLimits.PUBLISHED.check("milkKg", 70.1, BreedGroup.UNKNOWN))
                .map(Finding::code)
                .hasValue(FindingCode.IMPLAUSIBLE);
    }

    @Test
    void acceptedButUnusualFatIsUsedAndQuestioned() {
        // ours: 2.0 to 7.0 % is usual
        assertThat(ValueLimits.PUBLISHED.check("fatPct", 7.5, BreedGroup.DAIRY))
                .map(Finding::code)
                .hasValue(FindingCode.IMPLAUSIBLE);
        assertThat(ValueLimits.PUBLISHED.check("fatPct", 7.0, BreedGroup.DAIRY)).isEmpty();
        assertThat(ValueLimits.PUBLISHED.check("proteinPct", 2.2, BreedGroup.DAIRY))
                .isEmpty();
        assertThat(ValueLimits.PUBLISHED.check("proteinPct", 2.1, BreedGroup.DAIRY))
                .isPresent();
    }

    @Test
    void daysInMilkHaveNoLowerLimitHereAndAreQuestionedBeyond1000() {
        assertThat(ValueLimits.PUBLISHED.check("daysInMilk", -5, BreedGroup.DAIRY))
                .isEmpty();
        assertThat(ValueLimits.PUBLISHED.check("daysInMilk", 1000, BreedGroup.DAIRY))
                .isEmpty();
        Finding finding = ValueLimits.PUBLISHED
                .check("daysInMilk", 1001, BreedGroup.DAIRY)
                .orElseThrow();
        assertThat(finding.seen()).hasValue("1001.0 d");
        assertThat(finding.expected()).hasValue("at most 1000.0 d");
    }

    @Test
    void everyValueOfATestDayIsCheckedAndNamed() {
        TestDay test = TestDay.ofMilk(DAY, 2.5)
                .withFatPct(38)
                .withProteinPct(2.0)
                .withLactosePct(6)
                .withSccThousandPerMl(20000);
        assertThat(ValueLimits.PUBLISHED.check(test, BreedGroup.DAIRY))
                .extracting(finding -> finding.field().orElseThrow() + " "
                        + finding.code().code() + " "
                        + finding.date().orElseThrow())
                .containsExactly(
                        "milkKg out-of-range 2024-03-08",
                        "fatPct out-of-range 2024-03-08",
                        "proteinPct implausible 2024-03-08",
                        "lactosePct implausible 2024-03-08",
                        "sccThousandPerMl implausible 2024-03-08",
                        "fatProteinRatio implausible 2024-03-08");
        Finding fat = ValueLimits.PUBLISHED.check(test, BreedGroup.DAIRY).get(1);
        assertThat(fat.seen()).hasValue("38.0 %");
        assertThat(fat.expected()).hasValue("1.5 to 9.0 %");
        Finding ratio = ValueLimits.PUBLISHED.check(test, BreedGroup.DAIRY).get(5);
        assertThat(ratio.seen()).hasValue("19.0");
        assertThat(ratio.expected()).hasValue("0.7 to 2.2");
    }

    @Test
    void anOrdinaryTestDayHasNoFindingAndNorHasOneWithoutValues() {
        TestDay ordinary = TestDay.ofMilk(DAY, 30)
                .withFatPct(4)
                .withProteinPct(3.4)
                .withLactosePct(4.8)
                .withSccThousandPerMl(100);
        OptionalDouble none = OptionalDouble.empty();
        assertThat(ValueLimits.PUBLISHED.check(ordinary, BreedGroup.DAIRY)).isEmpty();
        assertThat(ValueLimits.PUBLISHED.check(new TestDay(DAY, none, none, none, none, none), BreedGroup.DAIRY))
                .isEmpty();
        // a protein of zero gives no ratio, only its own finding
        assertThat(ValueLimits.PUBLISHED.check(ordinary.withProteinPct(0), BreedGroup.DAIRY))
                .hasSize(1);
    }

    @Test
    void aFarmsOwnLimitReplacesThePublishedOneOfItsFieldLayerAndBreedsOnly() {
        ValueLimit own = new ValueLimit(
                "fatPct",
                "%",
                Layer.ACCEPTED,
                BreedGroup.DAIRY,
                OptionalDouble.of(2),
                OptionalDouble.empty(),
                HowKnown.OURS,
                "the farm");
        ValueLimits limits = ValueLimits.PUBLISHED.with(own);
        assertThat(limits.limits()).hasSameSizeAs(ValueLimits.PUBLISHED.limits());
        assertThat(limits.of("fatPct", Layer.ACCEPTED, BreedGroup.DAIRY)).contains(own);
        assertThat(limits.of("fatPct", Layer.ACCEPTED, BreedGroup.HIGH_FAT)
                        .orElseThrow()
                        .most())
                .hasValue(12);
        assertThat(limits.of("fatPct", Layer.ACCEPTED, BreedGroup.UNKNOWN)
                        .orElseThrow()
                        .most())
                .isEmpty();
        assertThat(own.words()).isEqualTo("at least 2.0 %");
        assertThat(limits.of("beltLength", Layer.USUAL, BreedGroup.DAIRY)).isEmpty();
    }

    @Test
    void aFarmMayBeAskedLessOftenButNoLimitOfWhatIsAcceptedOrPossibleMoves() {
        OptionalDouble none = OptionalDouble.empty();
        ValueLimits limits = ValueLimits.PUBLISHED.withWiderUsual(
                "fatPct", none, OptionalDouble.of(8), "set by the herd from 2026-02-01");
        assertThat(limits.check("fatPct", 7.5, BreedGroup.DAIRY)).isEmpty();
        assertThat(limits.check("fatPct", 8.5, BreedGroup.DAIRY).orElseThrow().expected())
                .hasValue("2.0 to 8.0 %, set by the herd from 2026-02-01");
        // ICAR Section 2 (from memory): fat 1.5 to 9.0 %; ours: 15 % at most
        assertThat(limits.check("fatPct", 9.5, BreedGroup.DAIRY).orElseThrow())
                .satisfies(finding -> assertThat(finding.code()).isEqualTo(FindingCode.OUT_OF_RANGE))
                .satisfies(finding -> assertThat(finding.expected()).hasValue("1.5 to 9.0 %"));
        assertThat(limits.impossible("fatPct", 16)).isPresent();
        assertThat(ValueLimits.PUBLISHED.check("fatPct", 7.5, BreedGroup.DAIRY)).isPresent();
    }

    @ParameterizedTest
    @CsvSource({
        "fatPct, 2.5, , false", // narrower
        "fatPct, , 6, false",
        "fatPct, 2, 7, true", // as it is
        "fatPct, 1.5, 12, true", // to the end of what is accepted of any breed
        "fatPct, 1.4, , false",
        "fatPct, , 12.5, false",
        "sccThousandPerMl, 0, 20000, true", // nothing accepted: to the end of what is possible
        "sccThousandPerMl, , 20001, false",
        "milkChangePct, -90, 200, true",
        "daysInMilk, 0, , false" // there is no lower end to move
    })
    void theUsualRangeIsOnlyMovedOutwardsAndNotBeyondWhatIsAccepted(
            String field, Double least, Double most, boolean may) {
        OptionalDouble low = least == null ? OptionalDouble.empty() : OptionalDouble.of(least);
        OptionalDouble high = most == null ? OptionalDouble.empty() : OptionalDouble.of(most);
        assertThat(ValueLimits.PUBLISHED.mayBeWidened(field, low, high)).isEqualTo(may);
        if (!may) {
            assertThatThrownBy(() -> ValueLimits.PUBLISHED.withWiderUsual(field, low, high, "the farm"))
                    .isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Test
    void aSetOfLimitsHoldsFromItsDayUntilTheNext() {
        ValueLimits wider = ValueLimits.PUBLISHED.withWiderUsual(
                "milkChangePct", OptionalDouble.empty(), OptionalDouble.of(100), "the farm");
        DatedLimits limits = DatedLimits.of(Map.of(DAY, wider, DAY.plusDays(10), ValueLimits.PUBLISHED));
        assertThat(limits.on(DAY.minusDays(1))).isSameAs(ValueLimits.PUBLISHED);
        assertThat(limits.on(DAY)).isSameAs(wider);
        assertThat(limits.on(DAY.plusDays(9))).isSameAs(wider);
        assertThat(limits.on(DAY.plusDays(10))).isSameAs(ValueLimits.PUBLISHED);
    }

    @Test
    void everyLimitHasASource() {
        assertThat(ValueLimits.PUBLISHED.limits())
                .hasSize(46)
                .allSatisfy(limit -> assertThat(limit.source()).isNotBlank());
    }

    @Test
    void theWidestLimitNamesEverySourceItIsFrom() {
        assertThat(ValueLimits.PUBLISHED.of("fatPct", Layer.ACCEPTED, BreedGroup.UNKNOWN))
                .hasValueSatisfying(
                        limit -> assertThat(limit.source()).contains("dairy breeds", "; ", "high-fat breeds"));
        assertThat(ValueLimits.PUBLISHED.of("milkKg", Layer.ACCEPTED, BreedGroup.DAIRY))
                .hasValueSatisfying(limit -> assertThat(limit.source()).doesNotContain(";"));
        assertThat(BreedGroup.HIGH_FAT.code()).isEqualTo("high-fat");
    }

    @Test
    void aLimitUpsideDownIsRefused() {
        assertThatThrownBy(() -> new ValueLimit(
                        "fatPct",
                        "%",
                        Layer.USUAL,
                        BreedGroup.DAIRY,
                        OptionalDouble.of(3),
                        OptionalDouble.of(2),
                        HowKnown.OURS,
                        "x"))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void milkLimitsAreThoseOfUsableTests() {
        ValueLimit milk = ValueLimits.PUBLISHED
                .of("milkKg", Layer.ACCEPTED, BreedGroup.UNKNOWN)
                .orElseThrow();
        assertThat(milk.least()).hasValue(UsableTests.LEAST_MILK_KG);
        assertThat(milk.most()).hasValue(UsableTests.MOST_MILK_KG);
    }
}
