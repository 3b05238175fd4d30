package org.pailbook.records.calculate;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.records.wire.FigureView;
import org.pailbook.records.wire.FigureView.Ends;
import org.pailbook.records.wire.FigureView.MethodView;
import org.pailbook.records.wire.FigureView.PartView;
import org.pailbook.records.wire.FigureView.WarningView;

/** Projections of posted lactations, in the order posted. Written one after the other, never whole in memory. */
@Schema(name = "Projections", description = "305-day projections of posted lactations, in the order posted")
@JsonInclude(JsonInclude.Include.NON_NULL)
record ProjectionsView(
        @Schema(description = "As sent; absent if all test days took part")
        String asOf,

        String computedAt,
        LearnedFromView learnedFrom,

        @Schema(description = "About the history") List<WarningView> warnings,

        List<ResultView> results) {

    /** What the standards of the herd were made from. */
    @Schema(name = "LearnedFrom")
    record LearnedFromView(
            @Schema(description = "Lactations with a usable test")
            int lactations,

            int testDays,

            @Schema(description = "Completed lactations whose past projections were held against the truth")
            int completedLactations,

            @Schema(
                    description = "Where the widths of the intervals come from",
                    enumeration = {"herd", "shipped"})
            String calibratedBy) {}

    /** One lactation. */
    @Schema(name = "ProjectedLactation")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record ResultView(
            @Schema(description = "As sent") String id,
            String animal,

            @Schema(description = "On asOf, or on the last day posted; absent before the calving")
            Integer daysInMilk,

            @Schema(description = "Test days that took part")
            int testDays,

            @Schema(description = "Milk of days 1 to 305 if she is milked to day 305, kg")
            EstimateView milkKg,

            @Schema(description = "Fat of days 1 to 305 if she is milked to day 305, kg")
            EstimateView fatKg,

            @Schema(description = "Protein of days 1 to 305 if she is milked to day 305, kg")
            EstimateView proteinKg,

            @Schema(description = "Mean somatic cell score of days 1 to 305; absent if cells were never counted")
            EstimateView cellScore,

            @Schema(description = "Milk from day 1 to the last test or day 305, kg; 0 without a test")
            double soFarMilkKg,

            @Schema(description = "Last day of soFarMilkKg; 0 without a test")
            int soFarToDaysInMilk,

            MethodView method,
            List<WarningView> findings) {

        static ResultView of(ProjectedLactation one, boolean explain) {
            return new ResultView(
                    one.posted().id(),
                    one.posted().animal(),
                    one.daysInMilk() < 0 ? null : one.daysInMilk(),
                    one.projection().tests(),
                    EstimateView.of(one.milk(), one.projection().reliabilityShare(LactationTrait.MILK), explain),
                    EstimateView.of(one.fat(), one.projection().reliabilityShare(LactationTrait.FAT), explain),
                    EstimateView.of(one.protein(), one.projection().reliabilityShare(LactationTrait.PROTEIN), explain),
                    one.cellScore()
                            .map(figure -> EstimateView.of(figure, Optional.empty(), explain))
                            .orElse(null),
                    one.projection().producedKg(),
                    one.projection().producedThroughDay(),
                    MethodView.of(one.method()),
                    one.findings().stream().map(WarningView::of).toList());
        }
    }

    /** A projected total with how sure it is. */
    @Schema(name = "ProjectedTotal")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record EstimateView(
            double value,
            Ends interval80,
            Ends interval95,

            @Schema(description = "Share of the differences between cows that her tests explain, 0 to 1")
            Double reliability,

            @Schema(description = "Parts that add up to the value; only with explain=true")
            List<PartView> explanation) {

        static EstimateView of(Figure figure, Optional<Double> reliability, boolean explain) {
            FigureView shown = FigureView.of(figure, explain);
            return new EstimateView(
                    shown.value(),
                    shown.interval80(),
                    shown.interval95(),
                    reliability.orElse(null),
                    shown.explanation());
        }
    }
}
