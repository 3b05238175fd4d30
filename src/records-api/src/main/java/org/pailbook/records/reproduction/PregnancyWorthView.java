package org.pailbook.records.reproduction;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.culling.PregnancyValue;
import org.pailbook.records.computed.AssumedView;
import org.pailbook.records.computed.PregnancyWorth;
import org.pailbook.records.wire.FigureView;
import org.pailbook.records.wire.FigureView.MethodView;
import org.pailbook.records.wire.FigureView.WarningView;

/** What pregnancies are worth, by the table the culling ranking is made from. */
@Schema(
        name = "PregnancyWorth",
        description =
                "What a pregnancy is worth, by the same prices and the same table as the culling ranking; without a milk, a"
                        + " heifer and a cull price there is no value, and the warnings say so. An expectation over many cows")
@JsonInclude(JsonInclude.Include.NON_NULL)
record PregnancyWorthView(
        @Schema(enumeration = {"ok", "notEnoughData"}) String status,

        @Schema(description = "ISO 4217, of every sum of money here")
        String currency,

        MethodView method,

        @Schema(description = "A new pregnancy, mean over conceptions in the herd of the model")
        FigureView meanNewPregnancy,

        @Schema(description = "What a lost one costs, mean over losses")
        FigureView meanPregnancyLoss,

        @Schema(description = "What is not recorded; values of an invented reference set stood in")
        List<AssumedView> assumed,

        List<WarningView> warnings) {
    static PregnancyWorthView of(PregnancyWorth worth, LocalDate day) {
        return new PregnancyWorthView(
                worth.currency().isPresent() ? "ok" : "notEnoughData",
                worth.currency().orElse(null),
                MethodView.of(PregnancyValue.PREGNANT_OVER_OPEN),
                worth.meanOfNewPregnancies(day)
                        .map(one -> FigureView.of(one, false))
                        .orElse(null),
                worth.meanCostOfLosses(day)
                        .map(one -> FigureView.of(one, false))
                        .orElse(null),
                worth.assumed(),
                worth.findings().stream().map(WarningView::of).toList());
    }
}
