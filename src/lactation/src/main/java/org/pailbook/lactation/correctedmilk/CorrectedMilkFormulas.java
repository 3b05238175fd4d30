package org.pailbook.lactation.correctedmilk;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.sentence.Rounding;

/**
 * Every corrected-milk formula of this library. A formula is chosen by its id and never assumed: results of two of them, even two
 * that are both called ECM in the trade, are not comparable.
 */
public final class CorrectedMilkFormulas {
    /** What we would choose where no region or buyer prescribes another; a recommendation of ours, not a default. */
    public static final CorrectedMilkFormula RECOMMENDED = IdfMilk2022.FPCM;

    /** Beyond this distance from 1 a formula is called not normalised; half a per cent shows in whole kg. Ours. */
    private static final double NORMALISED_WITHIN = 0.005;

    private static final List<CorrectedMilkFormula> ALL = List.of(
            FatCorrectedMilk.FCM_4,
            FatCorrectedMilk.FCM_3_5,
            IdfMilk2015.FPCM,
            IdfMilk2022.FPCM,
            NordicEnergyCorrectedMilk.SJAUNJA,
            NordicEnergyCorrectedMilk.SJAUNJA_LACTOSE,
            NordicEnergyCorrectedMilk.FAT_4_PROTEIN_3_3,
            NordicEnergyCorrectedMilk.CONSTANT_0_7808,
            EnergyCorrectedMilk35.FACTOR_0_327,
            EnergyCorrectedMilk35.FACTOR_0_323,
            EnergyCorrectedMilk35.FACTOR_0_3246,
            SolidsCorrectedMilk.SCM);

    private CorrectedMilkFormulas() {}

    public static List<CorrectedMilkFormula> all() {
        return ALL;
    }

    public static Optional<CorrectedMilkFormula> byId(String id) {
        return ALL.stream().filter(formula -> formula.id().equals(id)).findFirst();
    }

    static Figure.Builder figure(CorrectedMilkFormula formula, MilkMasses masses, LocalDate asOf) {
        Figure.Builder figure =
                Figure.of(formula, "kg", asOf).noInterval("a conversion; its error is that of the weights and samples");
        masses.weigh(formula.weights(), formula.assumedLactosePct(), figure);
        double factor = formula.factorAtStandard();
        if (Math.abs(factor - 1) > NORMALISED_WITHIN) {
            figure.finding(Finding.of(FindingCode.FORMULA_NOT_NORMALISED)
                    .withSeen("factor " + Rounding.halfUp(factor, 5))
                    .withExpected("factor 1 at the standard composition"));
        }
        OptionalDouble fatPct = masses.fatPct();
        OptionalDouble lowest = formula.lowestFatPct();
        if (fatPct.isPresent() && lowest.isPresent() && fatPct.getAsDouble() < lowest.getAsDouble()) {
            figure.finding(Finding.of(FindingCode.FORMULA_OUT_OF_RANGE)
                    .withField("fatPct")
                    .withSeen(Rounding.halfUp(fatPct.getAsDouble(), 2) + " %")
                    .withExpected("at least " + lowest.getAsDouble() + " %"));
        }
        return figure;
    }
}
