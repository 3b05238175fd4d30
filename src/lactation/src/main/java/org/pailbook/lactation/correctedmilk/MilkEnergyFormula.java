package org.pailbook.lactation.correctedmilk;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.UsedInput;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.testday.TestDay;

/**
 * The net energy for lactation that leaves the cow in her milk, Mcal. It checks whether weights, samples and feed of a herd fit
 * together; it is no ration.
 *
 * <p>A weighted sum of fat, protein and lactose. Lactose that was not measured is taken as 4.85 %, with a finding; fat and protein
 * must be measured.
 */
public final class MilkEnergyFormula implements PublishedMethod {
    /** Percent; the constant 0.192 Mcal per kg of the short form is 0.0395 x 4.85 (from memory, supported by that arithmetic). */
    private static final double LACTOSE_PCT = 4.85;

    /** {@code 0.0929 f + 0.0547 p + 0.0395 l} Mcal per kg of milk, p crude protein; NRC 2001, coefficients read in IDF 2022. */
    public static final MilkEnergyFormula NRC_2001_CRUDE = new MilkEnergyFormula(
            "nel-nrc-2001-crude",
            ProteinBasis.CRUDE,
            MassWeights.ofPercents(0.0929, 0.0547, 0.0395, 0, 1),
            new Citation(
                    "National Research Council",
                    2001,
                    "Nutrient requirements of dairy cattle, 7th ed.; coefficients as in IDF 2022 equation 10",
                    HowKnown.TRANSCRIBED));

    /** {@code 0.0929 f + 0.0563 p + 0.0395 l} Mcal per kg of milk, p true protein. */
    public static final MilkEnergyFormula NRC_2001_TRUE = new MilkEnergyFormula(
            "nel-nrc-2001-true",
            ProteinBasis.TRUE,
            MassWeights.ofPercents(0.0929, 0.0563, 0.0395, 0, 1),
            new Citation(
                    "National Research Council",
                    2001,
                    "Nutrient requirements of dairy cattle, 7th ed.",
                    HowKnown.FROM_MEMORY));

    /** {@code 9.29 F + 5.85 P + 3.95 L} Mcal, masses in kg, P true protein. */
    public static final MilkEnergyFormula NASEM_2021 = new MilkEnergyFormula(
            "nel-nasem-2021",
            ProteinBasis.TRUE,
            new MassWeights(0, 9.29, 5.85, 3.95, 0, 1),
            new Citation(
                    "National Academies of Sciences, Engineering, and Medicine",
                    2021,
                    "Nutrient requirements of dairy cattle, 8th ed.",
                    HowKnown.FROM_MEMORY));

    private final String id;
    private final ProteinBasis proteinBasis;
    private final MassWeights weights;
    private final Citation citation;

    private MilkEnergyFormula(String id, ProteinBasis proteinBasis, MassWeights weights, Citation citation) {
        this.id = id;
        this.proteinBasis = proteinBasis;
        this.weights = weights;
        this.citation = citation;
    }

    public static List<MilkEnergyFormula> all() {
        return List.of(NRC_2001_CRUDE, NRC_2001_TRUE, NASEM_2021);
    }

    /** Energy in the milk of one day, Mcal in 24 hours. */
    public Figure ofTestDay(TestDay test, LocalDate asOf) {
        return figure(MilkMasses.of(test), asOf)
                .input(UsedInput.used("test-day", test.date()))
                .build();
    }

    /**
     * Energy in milk of any length of time, Mcal.
     *
     * @param milkKg milk, kg
     * @param fatKg fat in it, kg
     * @param proteinKg protein in it, kg
     * @param lactoseKg lactose in it, kg
     * @throws IllegalArgumentException if a mass is not finite
     */
    public Figure ofYield(
            double milkKg, OptionalDouble fatKg, OptionalDouble proteinKg, OptionalDouble lactoseKg, LocalDate asOf) {
        return figure(MilkMasses.ofYield(milkKg, fatKg, proteinKg, lactoseKg), asOf)
                .build();
    }

    private Figure.Builder figure(MilkMasses masses, LocalDate asOf) {
        Figure.Builder figure =
                Figure.of(this, "Mcal", asOf).noInterval("a conversion; its error is that of the weights and samples");
        masses.weigh(weights, OptionalDouble.of(LACTOSE_PCT), figure);
        return figure;
    }

    public ProteinBasis proteinBasis() {
        return proteinBasis;
    }

    public MassWeights weights() {
        return weights;
    }

    @Override
    public String id() {
        return id;
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return citation;
    }
}
