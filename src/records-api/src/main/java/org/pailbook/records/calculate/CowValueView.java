package org.pailbook.records.calculate;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.culling.CowOutlook;
import org.pailbook.lactation.culling.CullingCow;
import org.pailbook.lactation.culling.KeepOrReplace;
import org.pailbook.lactation.culling.PregnancyValue;
import org.pailbook.records.computed.AssumedView;
import org.pailbook.records.computed.CowOutlookView;
import org.pailbook.records.wire.FigureView;

/**
 * What keeping a posted cow is worth.
 *
 * @param caution to be shown with it
 */
@Schema(name = "CowValue", description = "What keeping a cow is worth over replacing her; nothing is stored")
@JsonInclude(JsonInclude.Include.NON_NULL)
record CowValueView(
        String id,
        String asOf,
        String computedAt,

        @Schema(description = "To be shown with every figure here")
        String caution,

        @JsonUnwrapped CowOutlookView outlook,

        @Schema(description = "Mean over conceptions in the herd of the model, cu")
        FigureView meanNewPregnancy,

        @Schema(description = "Mean over losses in the herd of the model, cu")
        FigureView meanPregnancyLoss,

        @Schema(description = "What nobody gave; values of an invented reference set stood in")
        List<AssumedView> assumed) {

    static CowValueView of(
            CullingCow cow,
            LocalDate asOf,
            KeepOrReplace keepOrReplace,
            List<AssumedView> assumed,
            boolean explain,
            Instant computedAt) {
        CowOutlook outlook = keepOrReplace.of(cow, asOf);
        PregnancyValue pregnancies = PregnancyValue.PREGNANT_OVER_OPEN;
        return new CowValueView(
                cow.cow().isEmpty() ? null : cow.cow(),
                asOf.toString(),
                computedAt.toString(),
                outlook.caution(),
                CowOutlookView.of(outlook, explain),
                FigureView.of(pregnancies.meanOfNewPregnancies(keepOrReplace.herd(), asOf), explain),
                FigureView.of(pregnancies.meanCostOfLosses(keepOrReplace.herd(), asOf), explain),
                assumed);
    }
}
