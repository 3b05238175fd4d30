package org.pailbook.lactation.udderhealth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.testday.TestDay;

class TankSharesPublishedTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 8);

    private static Map<String, TestDay> fourCows() {
        double[][] milkAndCount = {{30, 80}, {25, 150}, {20, 1200}, {28, 60}};
        Map<String, TestDay> cows = new LinkedHashMap<>();
        for (int i = 0; i < 4; i++) {
            cows.put(
                    Integer.toString(i + 1),
                    TestDay.ofMilk(DAY, milkAndCount[i][0]).withSccThousandPerMl(milkAndCount[i][1]));
        }
        return cows;
    }

    private static TankShares.CowShare cow(TankShares shares, String name) {
        return shares.cows().stream()
                .filter(one -> one.animal().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void oneCowOfFourHasThreeQuartersOfTheCells() {
        // check V24 (ours, derived): 31,830 / 103; without cow 3 7,830 / 83
        TankShares tank = TankShares.of(fourCows(), Set.of(), DAY);
        assertThat(tank.estimate().orThrow()).isCloseTo(309.029126, within(1e-3));
        double[] shares = {7.540, 11.781, 75.401, 5.278};
        for (int i = 0; i < 4; i++) {
            assertThat(cow(tank, Integer.toString(i + 1)).sharePct()).isCloseTo(shares[i], within(1e-3));
        }
        assertThat(cow(tank, "3").tankWithoutHer().orElseThrow()).isCloseTo(94.337349, within(1e-3));
        assertThat(tank.cows().get(0).animal()).isEqualTo("3");
    }

    @Test
    void withheldCowsNeverCountInTheTank() {
        Random random = new Random(24);
        for (int i = 0; i < 100; i++) {
            Map<String, TestDay> cows = fourCows();
            cows.put(
                    "withheld",
                    TestDay.ofMilk(DAY, 60 * random.nextDouble()).withSccThousandPerMl(9000 * random.nextDouble()));
            TankShares tank = TankShares.of(cows, Set.of("withheld"), DAY);
            assertThat(tank.estimate().orThrow()).as("seed 24").isCloseTo(309.029126, within(1e-3));
            assertThat(tank.cows()).extracting(TankShares.CowShare::animal).doesNotContain("withheld");
            assertThat(tank.withheld()).containsExactly("withheld");
        }
        // taking out cow 3 gives what was told of the tank without her
        assertThat(TankShares.of(fourCows(), Set.of("3"), DAY).estimate().orThrow())
                .isCloseTo(94.337349, within(1e-3));
    }

    @Test
    void sharesAddUpToAllTheCells() {
        Random random = new Random(25);
        Map<String, TestDay> cows = new LinkedHashMap<>();
        for (int i = 0; i < 60; i++) {
            cows.put(
                    "cow " + i,
                    TestDay.ofMilk(DAY, 5 + 30 * random.nextDouble())
                            .withSccThousandPerMl(Math.exp(3 + 4 * random.nextDouble())));
        }
        assertThat(TankShares.of(cows, Set.of(), DAY).cows().stream()
                        .mapToDouble(TankShares.CowShare::sharePct)
                        .sum())
                .isCloseTo(100, within(1e-9));
    }

    @Test
    void aCowWithoutWeightOrCountIsNamedAndOneAloneHasNoTankWithoutHer() {
        Map<String, TestDay> cows = new LinkedHashMap<>();
        cows.put("A", TestDay.ofMilk(DAY, 20).withSccThousandPerMl(100));
        cows.put("B", TestDay.ofMilk(DAY, 20));
        TankShares tank = TankShares.of(cows, Set.of(), DAY);
        assertThat(tank.withoutCount()).containsExactly("B");
        assertThat(cow(tank, "A").tankWithoutHer()).isEmpty();
        assertThat(TankShares.of(Map.of(), Set.of(), DAY).estimate().value()).isEmpty();
    }
}
