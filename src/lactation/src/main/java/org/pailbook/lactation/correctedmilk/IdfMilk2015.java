package org.pailbook.lactation.correctedmilk;

import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;

/**
 * Fat-and-protein-corrected milk of the dairy federation's 2015 footprint guide: {@code M (0.1226 f + 0.0776 p + 0.2534)}, M in kg, f
 * and p in percent, p true protein.
 *
 * <p>0.99988 at its standard of 4 % fat and 3.3 % protein: the coefficients are rounded. The 2022 edition, {@link IdfMilk2022}, counts
 * lactose and differs.
 *
 * @see "IDF (2015). Bulletin 479 (number from memory); formula from memory, supported by (0.0929, 0.0588, 0.192) / 0.75764"
 */
public final class IdfMilk2015 extends WeighedFormula {
    public static final IdfMilk2015 FPCM = new IdfMilk2015();

    private IdfMilk2015() {
        super(
                "fpcm-2015",
                "FPCM 4.0/3.3 (IDF 2015)",
                StandardMilk.ofFatProtein(4.0, 3.3),
                MassWeights.ofPercents(0.1226, 0.0776, 0, 0.2534, 1),
                new Citation(
                        "International Dairy Federation",
                        2015,
                        "Bulletin 479, A common carbon footprint approach for the dairy sector",
                        HowKnown.FROM_MEMORY));
    }

    @Override
    public ProteinBasis proteinBasis() {
        return ProteinBasis.TRUE;
    }
}
