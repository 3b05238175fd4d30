package org.pailbook.lactation.correctedmilk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.OpenMilkings;
import org.pailbook.lactation.SharedData;

class EnergyCorrectedMilkOpenDataTest {
    private static final LocalDate DAY = LocalDate.of(2024, 1, 1);

    @Test
    void everyPublishedValueOfTheDataSetComesOut() {
        // data set milkman, R package doBy 4.7.2: its own column of energy-corrected milk, rounded to 6 decimals
        List<OpenMilkings> milkings = OpenMilkings.read(SharedData.orSkip()).stream()
                .filter(milking -> milking.publishedEcmKg().isPresent())
                .toList();
        assertThat(milkings).hasSizeGreaterThan(60_000);
        double largest = 0;
        double sumOther = 0;
        double sum = 0;
        for (OpenMilkings milking : milkings) {
            double milkKg = milking.milkKg().orElseThrow();
            OptionalDouble fatKg = OptionalDouble.of(milkKg * milking.fatPct().orElseThrow() / 100);
            OptionalDouble proteinKg =
                    OptionalDouble.of(milkKg * milking.proteinPct().orElseThrow() / 100);
            double ours = NordicEnergyCorrectedMilk.CONSTANT_0_7808
                    .ofYield(milkKg, fatKg, proteinKg, OptionalDouble.empty(), DAY)
                    .orThrow();
            largest = Math.max(largest, Math.abs(ours - milking.publishedEcmKg().getAsDouble()));
            sum += ours;
            sumOther += NordicEnergyCorrectedMilk.SJAUNJA
                    .ofYield(milkKg, fatKg, proteinKg, OptionalDouble.empty(), DAY)
                    .orThrow();
        }
        // half the last digit, and what adding doubles leaves
        assertThat(largest).isLessThan(5.01e-7);
        // the common form with 0.7832 is about 0.07 % above: it must not be taken for this one
        assertThat(100 * (sumOther / sum - 1)).isCloseTo(0.07, within(0.005));
    }
}
