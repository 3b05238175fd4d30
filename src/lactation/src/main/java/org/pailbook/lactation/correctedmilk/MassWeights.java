package org.pailbook.lactation.correctedmilk;

/**
 * A formula as a weighted sum of masses: {@code (m M + f F + p P + l L + s S) / divisor}, all masses in kg.
 *
 * <p>Published forms in percent are the same sum: {@code M x 0.383 fatPct} is {@code 38.3 F}. A weight of 0 means that the formula
 * does not use that component.
 *
 * @param perMilkKg weight of a kg of milk
 * @param perFatKg weight of a kg of fat
 * @param perProteinKg weight of a kg of protein
 * @param perLactoseKg weight of a kg of lactose
 * @param perSolidsNotFatKg weight of a kg of solids-not-fat
 * @param divisor what the sum is divided by, in the unit of the weights
 */
public record MassWeights(
        double perMilkKg,
        double perFatKg,
        double perProteinKg,
        double perLactoseKg,
        double perSolidsNotFatKg,
        double divisor) {

    public MassWeights {
        if (!(divisor > 0)) {
            throw new IllegalArgumentException("divisor (" + divisor + ") must be above 0");
        }
    }

    /** Weights as they stand in a formula on masses, without a divisor. */
    static MassWeights ofMasses(double perMilkKg, double perFatKg, double perProteinKg) {
        return new MassWeights(perMilkKg, perFatKg, perProteinKg, 0, 0, 1);
    }

    /** Weights as they stand in a formula of the form {@code M (f fatPct + p proteinPct + l lactosePct + c) / divisor}. */
    static MassWeights ofPercents(
            double perFatPct, double perProteinPct, double perLactosePct, double constant, double divisor) {
        return new MassWeights(constant, 100 * perFatPct, 100 * perProteinPct, 100 * perLactosePct, 0, divisor);
    }

    /** What one kg of that milk comes to. Absent components count as nothing: only ask where the formula needs no more. */
    double ofOneKg(StandardMilk milk) {
        double sum = perMilkKg
                + perFatKg * milk.fatPct() / 100
                + perProteinKg * milk.proteinPct().orElse(0) / 100
                + perLactoseKg * milk.lactosePct().orElse(0) / 100
                + perSolidsNotFatKg * milk.solidsNotFatPct().orElse(0) / 100;
        return sum / divisor;
    }
}
