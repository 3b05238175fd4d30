package org.pailbook.lactation.culling;

import java.time.LocalDate;
import java.util.List;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.sentence.SentenceCode;

/**
 * What it is worth that a cow is pregnant: the slot with her pregnant less the slot with her open in the same month, the best being done in both. Also
 * the means over a herd: of a new pregnancy over conceptions, of a loss over losses.
 */
public final class PregnancyValue implements PublishedMethod {
    public static final PregnancyValue PREGNANT_OVER_OPEN = new PregnancyValue();

    private PregnancyValue() {}

    /** What a new pregnancy is worth in the herd of the table, mean over conceptions. */
    public Figure meanOfNewPregnancies(SteadyState herd, LocalDate asOf) {
        return figure("mean over conceptions, at the start of the next month", herd.meanNewPregnancyCu(), asOf);
    }

    /** What a lost pregnancy costs in the herd of the table, mean over losses. */
    public Figure meanCostOfLosses(SteadyState herd, LocalDate asOf) {
        return figure("mean over losses, at the start of the next month", herd.meanPregnancyLossCu(), asOf);
    }

    Figure figure(String what, double cu, LocalDate asOf) {
        return Figure.of(this, "cu", asOf)
                .noInterval(SentenceCode.MEAN_OVER_ALL_THAT_MAY_COME)
                .value(cu)
                .explanation(new Explanation(List.of(new Explanation.Part(what, cu))))
                .build();
    }

    @Override
    public String id() {
        return "pregnancy-value";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return new Citation(
                "De Vries, A.",
                2006,
                "Economic value of pregnancy in dairy cattle, J Dairy Sci 89:3876 (definition)",
                HowKnown.FROM_MEMORY);
    }
}
