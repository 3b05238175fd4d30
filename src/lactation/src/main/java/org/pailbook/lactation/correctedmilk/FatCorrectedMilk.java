package org.pailbook.lactation.correctedmilk;

import java.util.OptionalDouble;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;

/**
 * Milk corrected to a common fat content by weight of milk and fat: {@code 0.4 M + 15 F} for 4 % fat, M and F in kg.
 *
 * <p>Below 3 % fat it falls short of the energy of the milk by up to 15 % (Tyrrell and Reid 1965, abstract); such figures say so.
 *
 * @see "Gaines, W. L. (1928). Illinois Agr. Exp. Stn. Bull. 308 (from memory)"
 */
public final class FatCorrectedMilk extends WeighedFormula {
    /** 4 % fat: {@code 0.4 M + 15 F}. Exactly 1 at 4 %. */
    public static final FatCorrectedMilk FCM_4 = new FatCorrectedMilk(
            "fcm-4",
            "FCM 4 %",
            StandardMilk.ofFat(4.0),
            MassWeights.ofMasses(0.4, 15, 0),
            new Citation(
                    "Gaines, W. L.",
                    1928,
                    "Illinois Agr. Exp. Stn. Bull. 308 (place from memory); 0.4 M + 15 F",
                    HowKnown.FROM_MEMORY));

    /** 3.5 % fat: {@code 0.432 M + 16.23 F}. 1.00005 at 3.5 %; within 0.1 % of FCM 4 % divided by 0.925. */
    public static final FatCorrectedMilk FCM_3_5 = new FatCorrectedMilk(
            "fcm-3-5",
            "FCM 3.5 %",
            StandardMilk.ofFat(3.5),
            MassWeights.ofMasses(0.432, 16.23, 0),
            new Citation(
                    "After Gaines, W. L.",
                    1928,
                    "3.5 % form in common use, 0.432 M + 16.23 F; who rounded it so is not known to us",
                    HowKnown.FROM_MEMORY));

    private FatCorrectedMilk(String id, String title, StandardMilk standard, MassWeights weights, Citation citation) {
        super(id, title, standard, weights, citation);
    }

    /** 3 %; Tyrrell and Reid 1965, abstract. */
    @Override
    public OptionalDouble lowestFatPct() {
        return OptionalDouble.of(3.0);
    }

    @Override
    public ProteinBasis proteinBasis() {
        return ProteinBasis.UNUSED;
    }
}
