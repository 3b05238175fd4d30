package org.pailbook.lactation.withheld;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.event.ForemilkCheck;
import org.pailbook.lactation.event.ForemilkCheck.Milk;
import org.pailbook.lactation.event.Quarter;
import org.pailbook.lactation.event.Treatment;
import org.pailbook.lactation.event.WithholdingEnd;
import org.pailbook.lactation.withheld.WithheldReason.Kind;

class WithheldMilkLawTest {
    private static final LocalDate DAY = LocalDate.of(2026, 5, 4);
    private static final LocalDateTime MORNING = DAY.atTime(6, 0);

    private static MilkedCow treated(Treatment... treatments) {
        return new MilkedCow("A", Optional.empty(), List.of(treatments), List.of());
    }

    private static MilkedCow checked(ForemilkCheck... checks) {
        return new MilkedCow("A", Optional.empty(), List.of(), List.of(checks));
    }

    private static Optional<WithheldCow> at(LocalDateTime moment, MilkedCow cow) {
        return WithheldMilk.USUAL.of(cow, moment);
    }

    @Test
    void aTreatmentWithholdsThroughTheDayEntered() {
        MilkedCow cow =
                treated(new Treatment(DAY, "product", Optional.of(WithholdingEnd.through(DAY.plusDays(3))), "vet"));
        assertThat(at(DAY.minusDays(1).atTime(23, 59), cow)).isEmpty();
        WithheldCow withheld = at(DAY.plusDays(3).atTime(23, 59), cow).orElseThrow();
        assertThat(withheld.until().orElseThrow().text()).isEqualTo("2026-05-07");
        assertThat(withheld.reasons().get(0).saidBy()).isEqualTo("vet");
        assertThat(withheld.reasons().get(0).kind()).isEqualTo(Kind.TREATMENT);
        assertThat(at(DAY.plusDays(4).atStartOfDay(), cow)).isEmpty();
    }

    @Test
    void aTimeEnteredEndsItOnTheMinute() {
        MilkedCow cow = treated(new Treatment(
                DAY, "product", Optional.of(WithholdingEnd.at(DAY.plusDays(3).atTime(17, 30))), ""));
        assertThat(at(DAY.plusDays(3).atTime(17, 29), cow)).isPresent();
        assertThat(at(DAY.plusDays(3).atTime(17, 30), cow)).isEmpty();
    }

    @Test
    void aTreatmentWithoutAnEndIsWithheldUntilOneIsEntered() {
        MilkedCow cow = treated(new Treatment(DAY, "product", Optional.empty(), ""));
        for (int days : new int[] {0, 10, 400}) {
            WithheldCow withheld = at(MORNING.plusDays(days), cow).orElseThrow();
            assertThat(withheld.until()).isEmpty();
            assertThat(withheld.reasons())
                    .extracting(WithheldReason::kind)
                    .containsExactly(Kind.TREATMENT_END_NOT_ENTERED);
            assertThat(withheld.reasons().get(0).words()).contains("no end of withholding was entered");
        }
    }

    @Test
    void ofTwoEndsTheLaterRulesAndOneMissingLeavesItOpen() {
        Treatment three = new Treatment(DAY, "one", Optional.of(WithholdingEnd.through(DAY.plusDays(3))), "");
        Treatment five = new Treatment(DAY, "other", Optional.of(WithholdingEnd.through(DAY.plusDays(5))), "");
        assertThat(at(MORNING, treated(five, three)).orElseThrow().until())
                .hasValue(WithholdingEnd.through(DAY.plusDays(5)));
        assertThat(at(MORNING, treated(five, new Treatment(DAY, "third", Optional.empty(), "")))
                        .orElseThrow()
                        .until())
                .isEmpty();
    }

    @Test
    void abnormalForemilkWithholdsUntilThatQuarterIsCleared() {
        ForemilkCheck clots = ForemilkCheck.of(MORNING, Quarter.LEFT_REAR, Milk.CLOTS);
        ForemilkCheck normal = ForemilkCheck.of(MORNING.plusDays(2), Quarter.LEFT_REAR, Milk.NORMAL);
        ForemilkCheck other = ForemilkCheck.of(MORNING.plusDays(2), Quarter.LEFT_FRONT, Milk.NORMAL)
                .clearing();
        assertThat(at(MORNING.minusMinutes(1), checked(clots))).isEmpty();
        assertThat(at(MORNING.plusDays(100), checked(clots))).isPresent();
        // normal to look at is not a word of a person that it may go in
        assertThat(at(MORNING.plusDays(3), checked(clots, normal, other))).isPresent();
        assertThat(at(MORNING.plusDays(3), checked(clots, normal.clearing()))).isEmpty();
        ForemilkCheck unnamed = new ForemilkCheck(
                MORNING,
                Optional.empty(),
                Milk.WATERY,
                ForemilkCheck.Udder.NORMAL,
                false,
                ForemilkCheck.Said.NOTHING,
                "");
        assertThat(at(MORNING.plusDays(3), checked(unnamed, normal.clearing()))).isPresent();
        ForemilkCheck kept = new ForemilkCheck(
                MORNING,
                Optional.of(Quarter.LEFT_REAR),
                Milk.NORMAL,
                ForemilkCheck.Udder.HARD,
                false,
                ForemilkCheck.Said.WITHHELD,
                "");
        assertThat(at(MORNING, checked(kept))).isPresent();
        // abnormal again after the clearing
        ForemilkCheck again = ForemilkCheck.of(MORNING.plusDays(4), Quarter.LEFT_REAR, Milk.WATERY);
        WithheldCow withheld = at(MORNING.plusDays(5), checked(clots, normal.clearing(), again))
                .orElseThrow();
        assertThat(withheld.reasons().get(0).since()).isEqualTo(again.at());
        assertThatIllegalArgumentException().isThrownBy(clots::clearing);
    }

    @Test
    void colostrumStaysOutForTheDaysOfTheSetting() {
        MilkedCow cow = new MilkedCow("A", Optional.of(DAY), List.of(), List.of());
        assertThat(at(DAY.plusDays(4).atTime(23, 59), cow)).isPresent();
        assertThat(at(DAY.plusDays(5).atStartOfDay(), cow)).isEmpty();
        assertThat(WithheldMilk.withColostrumDays(8).of(cow, DAY.plusDays(8).atTime(12, 0)))
                .isPresent();
        assertThat(WithheldMilk.withColostrumDays(0).of(cow, MORNING)).isEmpty();
        assertThatIllegalArgumentException().isThrownBy(() -> WithheldMilk.withColostrumDays(-1));
        assertThatIllegalArgumentException().isThrownBy(() -> WithheldMilk.withColostrumDays(31));
    }

    @Test
    void aDryCowsTreatmentGoesOnAfterCalvingIfItsEndLiesThere() {
        Treatment atDryOff = new Treatment(
                DAY.minusDays(30), "dry cow product", Optional.of(WithholdingEnd.through(DAY.plusDays(10))), "vet");
        MilkedCow calvedEarly = new MilkedCow("A", Optional.of(DAY), List.of(atDryOff), List.of());
        assertThat(at(DAY.plusDays(10).atTime(6, 0), calvedEarly)).isPresent();
        assertThat(at(DAY.plusDays(11).atTime(6, 0), calvedEarly)).isEmpty();
    }

    @Test
    void anotherRecordNeverFreesMilkUnlessItClears() {
        Random random = new Random(36);
        for (int i = 0; i < 500; i++) {
            List<Treatment> treatments = new ArrayList<>();
            List<ForemilkCheck> checks = new ArrayList<>();
            for (int j = random.nextInt(4); j > 0; j--) {
                LocalDate start = DAY.minusDays(random.nextInt(20));
                treatments.add(new Treatment(
                        start,
                        "p" + random.nextInt(3),
                        random.nextInt(4) == 0
                                ? Optional.empty()
                                : Optional.of(WithholdingEnd.through(start.plusDays(random.nextInt(20)))),
                        ""));
            }
            for (int j = random.nextInt(5); j > 0; j--) {
                ForemilkCheck check = ForemilkCheck.of(
                        MORNING.minusDays(random.nextInt(10)),
                        Quarter.values()[random.nextInt(4)],
                        random.nextInt(3) == 0 ? Milk.CLOTS : Milk.NORMAL);
                checks.add(!check.isAbnormal() && random.nextBoolean() ? check.clearing() : check);
            }
            MilkedCow cow = new MilkedCow("A", Optional.empty(), treatments, checks);
            Optional<WithheldCow> before = at(MORNING, cow);
            // sent twice, in another order
            List<Treatment> twice = new ArrayList<>(treatments);
            twice.addAll(treatments);
            List<ForemilkCheck> checksTwice = new ArrayList<>(checks);
            checksTwice.addAll(checks);
            Collections.reverse(checksTwice);
            Optional<WithheldCow> again = at(MORNING, new MilkedCow("A", Optional.empty(), twice, checksTwice));
            assertThat(again.isPresent()).as("seed 36").isEqualTo(before.isPresent());
            assertThat(again.flatMap(WithheldCow::until)).isEqualTo(before.flatMap(WithheldCow::until));
            // one more that clears nothing
            twice.add(new Treatment(DAY.minusDays(1), "more", Optional.of(WithholdingEnd.through(DAY)), ""));
            assertThat(at(MORNING, new MilkedCow("A", Optional.empty(), twice, checks)))
                    .isPresent();
        }
    }

    @Test
    void nothingRecordedIsNothingLookedAt() {
        assertThat(WithheldMilk.lookedAt(checked(), MORNING.minusDays(1), MORNING))
                .isEmpty();
        assertThat(WithheldMilk.lookedAt(
                        checked(ForemilkCheck.of(MORNING, Quarter.RIGHT_REAR, Milk.NORMAL)),
                        MORNING.minusDays(1),
                        MORNING))
                .containsExactly(Quarter.RIGHT_REAR);
    }
}
