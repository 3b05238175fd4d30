package org.pailbook.records.reproduction;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.computed.UsedSettingsView;
import org.pailbook.records.wire.FigureView;
import org.pailbook.records.wire.FigureView.WarningView;
import org.pailbook.records.wire.MeasuredView;

/** How well a herd gets in calf, over a year. */
@Schema(name = "BreedingSummary", description = "Rates, intervals and time to pregnancy, each with its counts")
@JsonInclude(JsonInclude.Include.NON_NULL)
record BreedingSummaryView(
        String herd,
        String asOf,
        String knownAt,
        String computedAt,
        @Schema(enumeration = {"ok", "notEnoughData"}) String status,
        @Schema(description = "First day looked at") String from,
        SettingsView settings,
        UsedSettingsView usedSettings,

        @Schema(description = "Of the last three cycles whose outcomes are known")
        MeasuredView pregnancyRateOfLateCycles,

        @Schema(description = "Measures of the year") List<MeasuredView> measures,

        @Schema(description = "Cycles of 21 days, counted back from asOf")
        List<CycleView> cycles,

        TimeToPregnancyView timeToPregnancy,
        PregnancyWorthView pregnancyWorth,
        List<WarningView> warnings,
        List<String> cautions) {

    /** One cycle of 21 days. */
    @Schema(name = "BreedingCycle")
    record CycleView(
            String first,
            String last,
            int eligible,
            int served,
            int pregnant,

            @Schema(description = "Served, outcome not known yet")
            int pending,

            MeasuredView inseminationRisk,
            MeasuredView pregnancyRate) {}

    /** Days from the end of the waiting period to pregnancy, open cows counted as far as known. */
    @Schema(name = "TimeToPregnancy")
    record TimeToPregnancyView(int cows, int pregnant, FigureView median, List<StepView> steps) {}

    /** A day on which cows became pregnant. */
    @Schema(name = "TimeToPregnancyStep")
    record StepView(
            int day,
            int atRisk,
            int pregnant,
            double stillOpenShare,
            double standardError,
            FigureView.Ends interval95) {}
}
