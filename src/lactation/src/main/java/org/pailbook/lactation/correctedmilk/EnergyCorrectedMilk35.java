package org.pailbook.lactation.correctedmilk;

import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;

/**
 * Energy-corrected milk of the North American trade, stated for 3.5 % fat and 3.2 % protein, on weights of milk, fat and protein in kg.
 *
 * <p>Three roundings are in use under one name. All go back to the energy values of Tyrrell and Reid.
 *
 * @see "Tyrrell, H. F., Reid, J. T. (1965). Prediction of the energy value of cow's milk. J. Dairy Sci. 48:1215-1223 (abstract read)"
 */
public final class EnergyCorrectedMilk35 extends WeighedFormula {

    /**
     * {@code 0.327 M + 12.95 F + 7.2 P}. Not normalised: it gives 1.01065 kg for a kg of milk at 3.5/3.2 %, so 40 kg become 40.43, and
     * public pages that print 40.00 are wrong. Every figure carries that note.
     */
    public static final EnergyCorrectedMilk35 FACTOR_0_327 = new EnergyCorrectedMilk35(
            "ecm-35-32",
            "ECM 3.5/3.2 (0.327, 12.95, 7.2)",
            MassWeights.ofMasses(0.327, 12.95, 7.2),
            new Citation(
                    "After Tyrrell, H. F., Reid, J. T.",
                    1965,
                    "0.327 M + 12.95 F + 7.2 P, as printed in a trade article",
                    HowKnown.TRANSCRIBED));

    /** {@code 0.323 M + 12.82 F + 7.13 P}; 0.99986 at 3.5/3.2 %. */
    public static final EnergyCorrectedMilk35 FACTOR_0_323 = new EnergyCorrectedMilk35(
            "ecm-35-32-323",
            "ECM 3.5/3.2 (0.323, 12.82, 7.13)",
            MassWeights.ofMasses(0.323, 12.82, 7.13),
            new Citation(
                    "After Tyrrell, H. F., Reid, J. T.", 1965, "0.323 M + 12.82 F + 7.13 P", HowKnown.FROM_MEMORY));

    /** {@code 0.3246 M + 12.86 F + 7.04 P}; 0.99998 at 3.5/3.2 %. */
    public static final EnergyCorrectedMilk35 FACTOR_0_3246 = new EnergyCorrectedMilk35(
            "ecm-35-32-nrc",
            "ECM 3.5/3.2 (0.3246, 12.86, 7.04)",
            MassWeights.ofMasses(0.3246, 12.86, 7.04),
            new Citation("After National Research Council", 2001, "0.3246 M + 12.86 F + 7.04 P", HowKnown.FROM_MEMORY));

    private EnergyCorrectedMilk35(String id, String title, MassWeights weights, Citation citation) {
        super(id, title, StandardMilk.ofFatProtein(3.5, 3.2), weights, citation);
    }

    @Override
    public ProteinBasis proteinBasis() {
        return ProteinBasis.NOT_STATED;
    }
}
