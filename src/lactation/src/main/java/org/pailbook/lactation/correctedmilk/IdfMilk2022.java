package org.pailbook.lactation.correctedmilk;

import java.util.OptionalDouble;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;

/**
 * Fat-and-protein-corrected milk of the dairy federation's 2022 footprint standard:
 * {@code M (0.0929 f + 0.0547 p + 0.0395 l) / (0.0929 x 4 + 0.0547 x 3.3 + 0.0395 x 4.8)}, M in kg, f, p, l in percent.
 *
 * <p>Exactly 1 at 4 % fat, 3.3 % protein, 4.8 % lactose. Lactose that was not measured is taken as 4.8 % and the figure says so.
 * {@link IdfMilk2015} is the earlier edition. 0.0547 is the coefficient
 * of crude protein in NRC 2001 (from memory); which protein the standard means was not read.
 *
 * @see "IDF (2022). Bulletin 520/2022, equation 10, as documented in the FAO open livestock life-cycle library (read there)"
 */
public final class IdfMilk2022 extends WeighedFormula {
    /** Percent; the formula's own standard. */
    private static final double LACTOSE_PCT = 4.8;

    public static final IdfMilk2022 FPCM = new IdfMilk2022();

    private IdfMilk2022() {
        super(
                "fpcm-2022",
                "FPCM 4.0/3.3/4.8 (IDF 2022)",
                StandardMilk.ofFatProtein(4.0, 3.3).withLactosePct(LACTOSE_PCT),
                MassWeights.ofPercents(0.0929, 0.0547, 0.0395, 0, 0.0929 * 4.0 + 0.0547 * 3.3 + 0.0395 * LACTOSE_PCT),
                new Citation(
                        "International Dairy Federation",
                        2022,
                        "Bulletin 520/2022, The IDF global carbon footprint standard for the dairy sector, equation 10",
                        HowKnown.TRANSCRIBED));
    }

    @Override
    public OptionalDouble assumedLactosePct() {
        return OptionalDouble.of(LACTOSE_PCT);
    }

    @Override
    public ProteinBasis proteinBasis() {
        return ProteinBasis.CRUDE;
    }
}
