package org.pailbook.lactation.udderhealth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.UsedInput;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.testday.TestDay;

class TankCellCountLawTest {
    private static final long SEED = 400;
    private static final LocalDate DAY = LocalDate.of(2024, 3, 8);
    private static final TankCellCount TANK = TankCellCount.WEIGHTED_BY_MILK;

    private static TestDay cow(double milkKg, double scc) {
        return TestDay.ofMilk(DAY, milkKg).withSccThousandPerMl(scc);
    }

    @Test
    void countsAreWeightedByMilk() {
        // by hand: (30 x 100 + 10 x 500) / 40
        Figure tank = TANK.of(List.of(cow(30, 100), cow(10, 500)), DAY);
        assertThat(tank.orThrow()).isCloseTo(200, within(1e-9));
        assertThat(tank.explanation().total()).isEqualTo(tank.orThrow());
        assertThat(tank.explanation().parts().get(1).what()).isEqualTo("10.0 kg x 500 / 40.0 kg");
        assertThat(tank.findings()).isEmpty();
        assertThat(tank.unit()).isEqualTo("1000/mL");
        assertThat(TANK.id()).isEqualTo("tank-cell-count");
        assertThat(TANK.version()).isEqualTo(1);
        assertThat(TANK.citation().text()).contains("weighted by milk");
    }

    @Test
    void mixingTwoHerdsMixesTheirCountsByTheirMilk() {
        Random random = new Random(SEED);
        List<TestDay> one = new ArrayList<>();
        List<TestDay> other = new ArrayList<>();
        double oneKg = 0;
        double otherKg = 0;
        for (int i = 0; i < 50; i++) {
            double kg = 5 + 40 * random.nextDouble();
            double scc = Math.exp(3 + 4 * random.nextDouble());
            if (i % 3 == 0) {
                one.add(cow(kg, scc));
                oneKg += kg;
            } else {
                other.add(cow(kg, scc));
                otherKg += kg;
            }
        }
        List<TestDay> all = new ArrayList<>(one);
        all.addAll(other);
        double mixed = (oneKg * TANK.of(one, DAY).orThrow()
                        + otherKg * TANK.of(other, DAY).orThrow())
                / (oneKg + otherKg);
        assertThat(TANK.of(all, DAY).orThrow()).as("seed " + SEED).isCloseTo(mixed, within(1e-9));
        // a mean of scores is never above it: a geometric mean is not above an arithmetic one, given equal milk
        List<TestDay> equalMilk = all.stream()
                .map(test -> cow(20, test.sccThousandPerMl().orElseThrow()))
                .toList();
        double geometric = SomaticCellScore.sccThousandPerMl(
                SomaticCellScore.SCS.meanOf(equalMilk, DAY).orThrow());
        assertThat(geometric).isLessThan(TANK.of(equalMilk, DAY).orThrow());
    }

    @Test
    void cowsWithoutWeightOrCountAreNamed() {
        OptionalDouble none = OptionalDouble.empty();
        List<TestDay> tests = List.of(
                cow(30, 100),
                cow(20, 0),
                TestDay.ofMilk(DAY, 25),
                new TestDay(DAY, none, none, none, none, OptionalDouble.of(300)),
                cow(0, 300),
                cow(20, -1));
        Figure tank = TANK.of(tests, DAY);
        assertThat(tank.orThrow()).isCloseTo(60, within(1e-9));
        assertThat(tank.findings()).extracting(Finding::code).containsExactly(FindingCode.INCOMPLETE_SUM);
        assertThat(tank.findings().get(0).seen()).hasValue("2 of 6 cows with weight and count");
        assertThat(tank.inputs())
                .extracting(UsedInput::whyLeftOut)
                .extracting(why -> why.orElse("used"))
                .containsExactly("used", "used", "scc-needed", "milk-needed", "milk-needed", "value-impossible");
        assertThat(TANK.of(tests.subList(2, 6), DAY).findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.SCC_NEEDED);
        assertThat(TANK.of(List.of(), DAY).value()).isEmpty();
    }
}
