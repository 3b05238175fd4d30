package org.pailbook.lactation.udderhealth;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.event.ForemilkCheck;
import org.pailbook.lactation.event.ForemilkCheck.Milk;
import org.pailbook.lactation.event.ForemilkCheck.Udder;
import org.pailbook.lactation.event.Quarter;
import org.pailbook.lactation.event.Treatment;
import org.pailbook.lactation.event.WithholdingEnd;
import org.pailbook.lactation.figure.Measured;
import org.pailbook.lactation.figure.Proportion;

/** The thresholds are ours; each is walked over from both sides. */
class VeterinaryTriggerPublishedTest {
    private static final LocalDate CALVED = LocalDate.of(2026, 1, 1);

    private static ForemilkCheck check(int day, Quarter quarter, Milk milk) {
        return ForemilkCheck.of(CALVED.plusDays(day).atTime(6, 0), quarter, milk);
    }

    private static List<VeterinaryTrigger> on(int day, ForemilkCheck... checks) {
        return VeterinaryTrigger.ofCow(List.of(checks), Optional.of(CALVED), CALVED.plusDays(day));
    }

    @Test
    void aSoreQuarterOrAnIllCowIsForToday() {
        ForemilkCheck clots = check(100, Quarter.LEFT_FRONT, Milk.CLOTS);
        assertThat(on(100, clots)).isEmpty();
        assertThat(on(
                        100,
                        new ForemilkCheck(
                                clots.at(),
                                clots.quarter(),
                                Milk.CLOTS,
                                Udder.HOT,
                                false,
                                ForemilkCheck.Said.NOTHING,
                                "")))
                .containsExactly(VeterinaryTrigger.TODAY);
        ForemilkCheck ill = new ForemilkCheck(
                clots.at(), clots.quarter(), Milk.CLOTS, Udder.NORMAL, true, ForemilkCheck.Said.NOTHING, "");
        assertThat(on(100, ill)).containsExactly(VeterinaryTrigger.TODAY);
        assertThat(on(103, ill)).isEmpty();
        assertThat(on(99, ill)).isEmpty();
    }

    @Test
    void bloodInAFreshCowIsForTheVeterinarian() {
        assertThat(on(21, check(21, Quarter.LEFT_FRONT, Milk.BLOOD))).containsExactly(VeterinaryTrigger.FRESH_COW);
        assertThat(on(22, check(22, Quarter.LEFT_FRONT, Milk.BLOOD))).isEmpty();
        assertThat(on(10, check(10, Quarter.LEFT_FRONT, Milk.CLOTS))).isEmpty();
    }

    @Test
    void aCowNotBetterAfterTheTimeEnteredForHerTreatmentIsForTheVeterinarian() {
        List<ForemilkCheck> clots = List.of(check(100, Quarter.LEFT_FRONT, Milk.CLOTS));
        assertThat(treated(clots, 99)).contains(VeterinaryTrigger.NOT_BETTER);
        assertThat(treated(clots, 86)).contains(VeterinaryTrigger.NOT_BETTER);
        assertThat(treated(clots, 85)).isEmpty();
        assertThat(treated(clots, 100)).as("still withheld").isEmpty();
        assertThat(treated(List.of(check(100, Quarter.LEFT_FRONT, Milk.NORMAL)), 99))
                .isEmpty();
        Treatment noEnd = new Treatment(CALVED.plusDays(90), "a product", Optional.empty(), "");
        assertThat(VeterinaryTrigger.ofTreatedCow(clots, List.of(noEnd), CALVED.plusDays(100)))
                .isEmpty();
    }

    private static Optional<VeterinaryTrigger> treated(List<ForemilkCheck> checks, int withheldThroughDay) {
        Treatment treatment = new Treatment(
                CALVED.plusDays(80),
                "a product",
                Optional.of(WithholdingEnd.through(CALVED.plusDays(withheldThroughDay))),
                "");
        return VeterinaryTrigger.ofTreatedCow(checks, List.of(treatment), CALVED.plusDays(100));
    }

    @Test
    void findingsOfOneQuarterWithin14DaysAreOneCase() {
        List<ForemilkCheck> checks = new ArrayList<>(List.of(
                check(30, Quarter.LEFT_FRONT, Milk.CLOTS),
                check(44, Quarter.LEFT_FRONT, Milk.CLOTS),
                check(59, Quarter.LEFT_FRONT, Milk.CLOTS),
                check(60, Quarter.RIGHT_REAR, Milk.NORMAL)));
        assertThat(UdderCases.of(checks, CALVED, CALVED.plusDays(100))).hasSize(2);
        assertThat(VeterinaryTrigger.ofCow(checks, Optional.of(CALVED), CALVED.plusDays(100)))
                .isEmpty();
        checks.add(check(61, Quarter.RIGHT_REAR, Milk.WATERY));
        checks.addAll(List.copyOf(checks));
        assertThat(UdderCases.of(checks, CALVED, CALVED.plusDays(100))).hasSize(3);
        assertThat(VeterinaryTrigger.ofCow(checks, Optional.of(CALVED), CALVED.plusDays(100)))
                .containsExactly(VeterinaryTrigger.THIRD_CASE);
        assertThat(UdderCases.of(checks, CALVED.plusDays(50), CALVED.plusDays(100)))
                .hasSize(2);
    }

    private static Measured share(int count, int outOf) {
        return Measured.share(UdderHealthMeasures.NEW_INFECTION_RISK, new Proportion(count, outOf), CALVED, List.of());
    }

    @Test
    void aHerdIsForTheVeterinarianAboveItsThresholds() {
        Measured few = share(0, 8);
        assertThat(VeterinaryTrigger.ofHerd(List.of(share(5, 30), share(5, 30)), few, Optional.empty()))
                .containsExactly(VeterinaryTrigger.NEW_INFECTIONS);
        assertThat(VeterinaryTrigger.ofHerd(List.of(share(5, 30), share(4, 30)), few, Optional.empty()))
                .isEmpty();
        assertThat(VeterinaryTrigger.ofHerd(List.of(share(5, 29), share(5, 29)), few, Optional.empty()))
                .isEmpty();
        assertThat(VeterinaryTrigger.ofHerd(List.of(share(5, 30)), few, Optional.empty()))
                .isEmpty();
        assertThat(VeterinaryTrigger.ofHerd(List.of(), share(3, 8), Optional.empty()))
                .containsExactly(VeterinaryTrigger.FRESH_HEIFERS);
        assertThat(VeterinaryTrigger.ofHerd(List.of(), share(2, 8), Optional.empty()))
                .isEmpty();
        assertThat(VeterinaryTrigger.ofHerd(List.of(), share(7, 7), Optional.empty()))
                .isEmpty();
        TankStanding above = TankStanding.of(
                TankLimits.byId("finland-raw-at-farm").orElseThrow(), List.of(new TankSample(CALVED, 251)), CALVED);
        assertThat(VeterinaryTrigger.ofHerd(List.of(), few, Optional.of(above)))
                .containsExactly(VeterinaryTrigger.TANK_ABOVE_LIMIT);
    }
}
