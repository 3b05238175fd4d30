package org.pailbook.records.summary;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.computed.UsedSettingsView;
import org.pailbook.records.wire.FigureView;
import org.pailbook.records.wire.MeasuredView;

/** A herd's measures by definition; first lactations apart from later ones. */
@Schema(
        name = "HerdMeasures",
        description =
                "Milk of all cows, lactation groups, stages, turnover, breeding, udder health, what falls due, and a year before")
record HerdMeasuresView(
        MeasuredView milkPerCow,
        MeasuredView annualisedMilk,
        MeasuredView percentInMilk,
        MeasuredView percentFirstLactation,
        List<ParityView> parities,
        List<GroupView> lactationGroups,
        MeasuredView peakFirstToMature,

        @Schema(description = "Only lactations and stages with cows")
        List<StageView> milkByStage,

        FigureView rollingHerdAverage,

        @Schema(
                description =
                        "Fat-and-protein-corrected milk of 365 days for each cow-year; emissions are not worked out")
        FigureView fpcmPerCowYear,

        TurnoverView turnover,
        MeasuredView ageAtFirstCalving,
        MeasuredView stayabilityToThird,

        @Schema(description = "How well the herd gets in calf; more of it in breeding-summary")
        List<MeasuredView> breeding,

        @Schema(description = "States between tests; more of it in udder-health")
        List<MeasuredView> udderHealth,

        @Schema(
                description =
                        "Animals found pregnant by the month they are due in, and cows in milk by the month to dry them off; days that"
                                + " are past count to the first. Served and not checked are not in it")
        List<DueView> dueByMonth,

        UsedSettingsView usedSettings,

        @Schema(description = "Figures beside the same ones 365 days earlier, made from what had happened by then")
        List<ComparedView> yearBefore) {

    /** Cows of a parity. */
    @Schema(name = "ParityCount")
    record ParityView(int parity, int cows) {}

    /** First, second, third and later lactations. */
    @Schema(name = "LactationGroup")
    record GroupView(
            @Schema(enumeration = {"1", "2", "3+"}) String lactations,
            int cows,
            MeasuredView peak,
            MeasuredView milk305Completed,
            MeasuredView milk305Projected,
            MeasuredView persistency) {}

    /** Milk of one lactation group in one stage. */
    @Schema(name = "MilkByStage")
    record StageView(
            String lactations, @Schema(examples = "41-100") String daysInMilk, MeasuredView milk) {}

    /** Cows that left in the year. */
    @Schema(name = "HerdTurnover")
    record TurnoverView(
            String from,
            long cowDays,
            MeasuredView rate,
            MeasuredView deathRate,
            MeasuredView withinSixtyDays,
            List<CountedView> byDestination,

            @Schema(description = "By the first reason; unknown where none was recorded")
            List<CountedView> byReason,

            @Schema(
                    description =
                            "Each under every reason recorded for her, so the counts may be more than the cows that left")
            List<CountedView> byAnyReason) {}

    /** What falls due in a month. */
    @Schema(name = "DueByMonth")
    record DueView(@Schema(examples = "2026-06") String month, int cowsToCalve, int heifersToCalve, int cowsToDryOff) {}

    /** So many of one name. */
    @Schema(name = "NamedCount")
    record CountedView(String name, int cows) {}

    /** A figure now and a year before. */
    @Schema(name = "ComparedFigure")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record ComparedView(
            String measure,

            @Schema(description = "1, 2 or 3+; absent for all cows")
            String lactations,

            String what,
            FigureView now,
            FigureView yearBefore,

            @Schema(description = "Now less a year before; absent unless both have a value")
            Double difference) {}
}
