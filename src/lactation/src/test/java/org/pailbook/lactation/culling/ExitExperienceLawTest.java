package org.pailbook.lactation.culling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.culling.ExitExperience.Stretch;

/** Exits over cow-months: by hand, and what must hold for any herd. */
class ExitExperienceLawTest {
    private static final long SEED = 20261125;
    private static final LocalDate TO = LocalDate.of(2026, 3, 1);
    private static final LocalDate FROM = TO.minusDays(364);

    private static List<Stretch> herd(int cows) {
        Random random = new Random(SEED);
        List<Stretch> stretches = new ArrayList<>();
        for (int i = 0; i < cows; i++) {
            LocalDate calving = TO.minusDays(random.nextInt(900));
            LocalDate end = calving.plusDays(random.nextInt(500));
            boolean ended = !end.isAfter(TO);
            stretches.add(new Stretch(
                    1 + random.nextInt(7), calving, ended ? end : TO.plusDays(1), ended && random.nextInt(3) == 0));
        }
        return stretches;
    }

    @Test
    void aCowThatDiedOnDay100HadTwoFreshMonthsAndTheRest() {
        // 61 fresh days (2 x 30.4375, rounded) and 39 later: 100 / 30.4375 cow-months, one exit
        LocalDate calving = TO.minusDays(200);
        ExitExperience one = ExitExperience.of(List.of(new Stretch(7, calving, calving.plusDays(100), true)), FROM, TO);
        HerdExperience fifth =
                one.with(Collections.nCopies(5, HerdExperience.NONE)).get(4);
        assertThat(fifth.exits()).isEqualTo(1);
        assertThat(fifth.freshCowMonths()).isCloseTo(61 / 30.4375, within(1e-12));
        assertThat(fifth.laterCowMonths()).isCloseTo(39 / 30.4375, within(1e-12));
        assertThat(one.cowMonths(5)).isCloseTo(100 / 30.4375, within(1e-12));
        assertThat(one.exits(1)).isZero();
        // believed 3.285 / 63.285 against the reference
        assertThat(fifth.exitWeight()).isCloseTo(100 / 30.4375 / (100 / 30.4375 + 60), within(1e-12));
    }

    @Test
    void cowMonthsOfTwoTimesAddUpToThoseOfBoth() {
        List<Stretch> herd = herd(300);
        LocalDate middle = FROM.plusDays(120);
        ExitExperience whole = ExitExperience.of(herd, FROM, TO);
        ExitExperience first = ExitExperience.of(herd, FROM, middle);
        ExitExperience second = ExitExperience.of(herd, middle.plusDays(1), TO);
        for (int parity = 1; parity <= 5; parity++) {
            assertThat(first.cowMonths(parity) + second.cowMonths(parity))
                    .as("seed " + SEED)
                    .isCloseTo(whole.cowMonths(parity), within(1e-9));
            assertThat(first.exits(parity) + second.exits(parity)).isEqualTo(whole.exits(parity));
        }
        assertThat(whole.exits(1)).isPositive();
    }

    @Test
    void moreExitsNeverLowerTheRiskAndItStaysAShare() {
        for (int exits = 0; exits < 50; exits++) {
            HerdParameters reference = HerdParameters.REFERENCE;
            double fewer = new HerdExperience(exits, 20, 100, 0, 0, Optional.empty(), 0)
                    .appliedTo(reference.group(2), reference.freshExitFactor())
                    .unplannedExitSharePerMonth();
            double more = new HerdExperience(exits + 1, 20, 100, 0, 0, Optional.empty(), 0)
                    .appliedTo(reference.group(2), reference.freshExitFactor())
                    .unplannedExitSharePerMonth();
            assertThat(more).isGreaterThan(fewer).isBetween(0.0, 1.0);
        }
    }
}
