package org.pailbook.lactation.correctedmilk;

import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;

/**
 * Energy-corrected milk of the Nordic proposal and the forms derived from it: energy of the milk from fat, protein and either lactose or
 * a constant, divided by 3.14 MJ, the energy of a kg of standard milk.
 *
 * <p>All of them are called ECM in the trade and they differ by up to 0.9 %; so each has its own name here.
 *
 * @see "Sjaunja, L. O., Baevre, L., Junkkarinen, L., Pedersen, J., Setala, J. (1990). A Nordic proposal for an energy corrected milk
 *     (ECM) formula. EAAP Publ. 50:156-157 (pages from memory)"
 */
public final class NordicEnergyCorrectedMilk extends WeighedFormula {
    private static final String NORDIC = "EAAP Publ. 50:156-157 (pages from memory); ";

    /**
     * {@code M (383 f + 242 p + 783.2) / 3140}. 0.99936 at 4.0/3.4 %, 0.99166 at 4.0/3.3 %. Often rounded to
     * {@code M (0.25 + 0.122 f + 0.077 p)}. The constant stands for 4.61 % lactose in {@link #SJAUNJA_LACTOSE}.
     */
    public static final NordicEnergyCorrectedMilk SJAUNJA = new NordicEnergyCorrectedMilk(
            "ecm-sjaunja-1990",
            "ECM 3.14 MJ (Sjaunja, fat and protein)",
            StandardMilk.ofFatProtein(4.0, 3.4),
            MassWeights.ofPercents(383, 242, 0, 783.2, 3140),
            new Citation(
                    "Sjaunja, L. O. et al.", 1990, NORDIC + "M (383 f + 242 p + 783.2) / 3140", HowKnown.TRANSCRIBED));

    /**
     * {@code M (383 f + 242 p + 165.4 l + 20.7) / 3140}. Lactose must be measured; without it {@link #SJAUNJA} is the form to choose.
     */
    public static final NordicEnergyCorrectedMilk SJAUNJA_LACTOSE = new NordicEnergyCorrectedMilk(
            "ecm-sjaunja-lactose-1990",
            "ECM 3.14 MJ (Sjaunja, with lactose)",
            StandardMilk.ofFatProtein(4.0, 3.4).withLactosePct(4.61),
            MassWeights.ofPercents(383, 242, 165.4, 20.7, 3140),
            new Citation(
                    "Sjaunja, L. O. et al.",
                    1990,
                    NORDIC + "M (383 f + 242 p + 165.4 l + 20.7) / 3140",
                    HowKnown.FROM_MEMORY));

    /**
     * {@code M (0.383 f + 0.242 p + 0.7832) / 3.1138}: the same sum over another divisor, so that it is exactly 1 at 4.0/3.3 %. 0.84 %
     * above {@link #SJAUNJA}.
     */
    public static final NordicEnergyCorrectedMilk FAT_4_PROTEIN_3_3 = new NordicEnergyCorrectedMilk(
            "ecm-4-3-3",
            "ECM 4.0/3.3 (divisor 3.1138)",
            StandardMilk.ofFatProtein(4.0, 3.3),
            MassWeights.ofPercents(0.383, 0.242, 0, 0.7832, 3.1138),
            new Citation(
                    "After Sjaunja, L. O. et al.",
                    1990,
                    "the same sum divided by 3.1138, as read on a public page",
                    HowKnown.TRANSCRIBED));

    /**
     * {@code M (0.383 f + 0.242 p + 0.7808) / 3.14}: the form in which the open data set of Friggens et al. publishes its
     * energy-corrected milk; found by regression on 128,516 values, largest difference 5e-7 kg. 0.07 % below {@link #SJAUNJA}.
     */
    public static final NordicEnergyCorrectedMilk CONSTANT_0_7808 = new NordicEnergyCorrectedMilk(
            "ecm-3-14-constant-0-7808",
            "ECM 3.14 MJ (constant 0.7808)",
            StandardMilk.ofFatProtein(4.0, 3.4),
            MassWeights.ofPercents(0.383, 0.242, 0, 0.7808, 3.14),
            new Citation(
                    "Data set milkman, R package doBy 4.7.2, after Friggens, N. C. et al.",
                    2007,
                    "formula recovered from the published column; paper J. Dairy Sci. 90:5453-5467",
                    HowKnown.READ));

    private NordicEnergyCorrectedMilk(
            String id, String title, StandardMilk standard, MassWeights weights, Citation citation) {
        super(id, title, standard, weights, citation);
    }

    @Override
    public ProteinBasis proteinBasis() {
        return ProteinBasis.NOT_STATED;
    }
}
