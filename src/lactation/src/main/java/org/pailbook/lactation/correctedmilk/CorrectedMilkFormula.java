package org.pailbook.lactation.correctedmilk;

import java.time.LocalDate;
import java.util.OptionalDouble;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.UsedInput;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.testday.TestDay;

/**
 * How milk is brought to a common composition. Implementations are listed in {@link CorrectedMilkFormulas}.
 *
 * <p>All results are kg of corrected milk over the same time as the milk put in: 24 hours for a test day. A figure has no value
 * when a component the formula uses was not measured; means of breed or herd never stand in.
 */
public interface CorrectedMilkFormula extends PublishedMethod {

    /** What the trade calls it, with what tells it from its namesakes: {@code ECM 3.5/3.2 (0.323, 12.82, 7.13)}. */
    String title();

    /** The formula as a weighted sum of masses. */
    MassWeights weights();

    /** The composition at which its source says that it gives back the milk put in. */
    StandardMilk standard();

    ProteinBasis proteinBasis();

    /** The lactose that stands in when none was measured; empty when the formula needs no lactose or nothing may stand in. */
    default OptionalDouble assumedLactosePct() {
        return OptionalDouble.empty();
    }

    /** Fat below which the formula is known to be off; such figures carry {@link FindingCode#FORMULA_OUT_OF_RANGE}. */
    default OptionalDouble lowestFatPct() {
        return OptionalDouble.empty();
    }

    /**
     * What one kg of milk of the standard composition really comes to. Some published forms are not 1 there; then every figure
     * carries {@link FindingCode#FORMULA_NOT_NORMALISED}.
     */
    default double factorAtStandard() {
        return weights().ofOneKg(standard());
    }

    /** Corrected milk of one day, kg in 24 hours. */
    default Figure ofTestDay(TestDay test, LocalDate asOf) {
        return CorrectedMilkFormulas.figure(this, MilkMasses.of(test), asOf)
                .input(UsedInput.used("test-day", test.date()))
                .build();
    }

    /**
     * Corrected milk of any length of time, such as a lactation.
     *
     * @param milkKg milk, kg
     * @param fatKg fat in it, kg
     * @param proteinKg protein in it, kg
     * @param lactoseKg lactose in it, kg
     * @throws IllegalArgumentException if a mass is not finite
     */
    default Figure ofYield(
            double milkKg, OptionalDouble fatKg, OptionalDouble proteinKg, OptionalDouble lactoseKg, LocalDate asOf) {
        MilkMasses masses = MilkMasses.ofYield(milkKg, fatKg, proteinKg, lactoseKg);
        return CorrectedMilkFormulas.figure(this, masses, asOf).build();
    }
}
