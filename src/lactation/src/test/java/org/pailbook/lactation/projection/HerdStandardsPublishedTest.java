package org.pailbook.lactation.projection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pailbook.lactation.reference.DailySpread;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationTrait;

class HerdStandardsPublishedTest {

    // Shrinkage n / (n + kappa), kappa = 4.5^2 / 1.8^2 = 6.25; worked out by hand for 0, 1, 5, 20 and 100 lactations.
    // Here each lactation has one test,
    // 3 kg above the reference, of standard deviation 4.5 kg, and only the level may differ.
    @ParameterizedTest
    @CsvSource({"0, 0", "1, 0.137931", "5, 0.444444", "20, 0.761905", "100, 0.941176"})
    void levelOfTheHerdIsShrunkByTheNumberOfLactations(int lactations, double share) {
        LactationStandard reference =
                LactationStandard.of("reference", WorkedCow.MADE_UP, day -> 30, DailySpread.constant(4.5, 0.998, 0.2));
        double never = 1e-6;
        HerdStandards.Rules levelOnly = new HerdStandards.Rules(
                new double[] {1.8 / 4.5, never, never, never}, new double[] {never, never, never, never}, 20);
        List<HerdLactation> history = new ArrayList<>();
        for (int i = 0; i < lactations; i++) {
            history.add(new HerdLactation("cow " + i, "HOL", WorkedCow.withTests(100, 33)));
        }
        LactationStandard learned = HerdStandards.learn(
                        history, SimulatedHerd.LATER, (breed, parity, trait) -> reference, levelOnly)
                .forCow("new", "HOL", 2, LactationTrait.MILK);
        assertThat((learned.meanKg(100) - 30) / 3).isCloseTo(share, within(1e-6));
        // what stays unsure of the level: sigma_h^2 kappa / (n + kappa)
        double[] day = {1, 0, 0, 0};
        assertThat(learned.meanUncertainty().orElseThrow().between(day, day))
                .isCloseTo(1.8 * 1.8 * 6.25 / (lactations + 6.25), within(1e-6));
    }
}
