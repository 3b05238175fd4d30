package org.pailbook.lactation.breeding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;

/** Gestation by Norman et al. 2009, abstract (read); dates worked from it (derived). */
class ExpectedCalvingPublishedTest {
    private static final GestationLength GESTATION = GestationLength.NORMAN_2009;
    private static final LocalDate SERVED = LocalDate.of(2026, 3, 15);

    @Test
    void aHolsteinCowServedOn15MarchIsDueOn19December() {
        // check V18: due 2026-12-19, dry 2026-10-20
        LocalDate due = GESTATION.due(SERVED, "HOL", "", false);
        assertThat(due).isEqualTo(LocalDate.of(2026, 12, 19));
        assertThat(due.minusDays(BreedingSettings.USUAL.dryDays())).isEqualTo(LocalDate.of(2026, 10, 20));
        assertThat(GESTATION.due(SERVED, "Brown Swiss", "", false)).isEqualTo(LocalDate.of(2026, 12, 28));
        // 277.8 days is 278 whole days, and 15 March and 278 days is 18 December
        assertThat(GESTATION.due(SERVED, "Holstein", "", true)).isEqualTo(LocalDate.of(2026, 12, 18));
    }

    @Test
    void meansAreThoseOfTheTable() {
        // check V19
        String[] breeds = {"HOL", "JER", "MSH", "AYR", "GUE", "BSW"};
        double[] heifer = {277.8, 278.4, 279.3, 281.6, 284.8, 287.2};
        double[] cow = {279.4, 280.0, 281.1, 281.7, 285.7, 287.5};
        for (int i = 0; i < breeds.length; i++) {
            assertThat(GESTATION.meanDays(breeds[i], true).orElseThrow()).isCloseTo(heifer[i], within(0.05));
            assertThat(GESTATION.meanDays(breeds[i], false).orElseThrow()).isCloseTo(cow[i], within(0.05));
        }
    }

    @Test
    void otherBreedsAre280DaysAndCrossesTheMean() {
        // ours
        assertThat(GESTATION.expectedDays("some breed", "", false)).isEqualTo(280);
        assertThat(GESTATION.expectedDays("HOL", "BSW", false)).isCloseTo((279.4 + 287.5) / 2, within(1e-12));
        assertThat(GESTATION.knows("some breed")).isFalse();
    }

    @Test
    void by6DaysAfterTheDayEightyEightOfHundredHaveCalved() {
        // check V20: normal, SD 5.5
        assertThat(GestationLength.shareCalvedBy(6)).isCloseTo(0.8813611, within(1e-6));
        double before = 0;
        for (int day = -40; day <= 40; day++) {
            double share = GestationLength.shareCalvedBy(day);
            assertThat(share).isBetween(before, 1.0);
            before = share;
        }
    }
}
