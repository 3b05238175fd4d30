package org.pailbook.records.projection;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.computed.CurveView;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.wire.FigureView;
import org.pailbook.records.wire.FigureView.WarningView;

/**
 * A lactation and its figures.
 *
 * @param status ok, or notEnoughData with the reason among the warnings
 * @param state inMilk, driedOff, left, or endNotRecorded
 * @param daysInMilk on the as-of day, or on the last day she was milked in it
 */
@Schema(
        name = "Lactation",
        description = "A lactation with its yield so far, corrected milk, curve and 305-day projection")
@JsonInclude(JsonInclude.Include.NON_NULL)
record LactationView(
        String herd,
        AnimalIdentifier animal,
        Integer parity,
        String calvedOn,

        @Schema(enumeration = {"inMilk", "driedOff", "left", "endNotRecorded"})
        String state,

        @Schema(description = "Last day she was milked in it, if it has ended")
        String endedOn,

        Integer daysInMilk,

        @Schema(description = "Events after this day took no part")
        String asOf,

        @Schema(
                description =
                        "When the last change this answer knows of was recorded, or as asked; with it and asOf it is repeated")
        String knownAt,

        String computedAt,
        @Schema(enumeration = {"ok", "notEnoughData"}) String status,

        @Schema(description = "Milk from day 1 to the last test or day 305, kg")
        FigureView accumulated,

        FigureView accumulatedFat,
        FigureView accumulatedProtein,
        FigureView fatPct,
        FigureView proteinPct,

        @Schema(description = "Accumulated milk brought to a standard composition")
        FigureView corrected,

        CurveView curve,

        @Schema(description = "Milk of days 1 to 305 if she is milked to day 305, kg")
        FigureView projected305,

        @Schema(description = "Fat of days 1 to 305 if she is milked to day 305, kg")
        FigureView projected305Fat,

        @Schema(description = "Protein of days 1 to 305 if she is milked to day 305, kg")
        FigureView projected305Protein,

        @Schema(description = "Mean somatic cell score of days 1 to 305; read it with your veterinarian")
        FigureView projected305CellScore,

        @Schema(description = "If she is milked to the dry-off planned, only with dryOffDate")
        ToDryOffView projectedToDryOff,

        @Schema(description = "Each day 1 to 305, only with daily=true")
        List<DayView> dailyExpectation,

        @Schema(description = "Of the projection: milk up to the last test, kg")
        Double producedKg,

        @Schema(description = "Of the projection: milk from the last test to day 305, kg")
        Double expectedRestKg,

        @Schema(description = "Share of the differences between cows that her tests explain, 0 to 1")
        Double reliabilityShare,

        @Schema(description = "What her next test should show")
        NextTestView nextTest,

        @Schema(description = "About the lactation itself; each figure has its own")
        List<WarningView> warnings) {

    /** What a test day should show. */
    @Schema(name = "NextTest")
    record NextTestView(
            String date, int daysInMilk, double milkKg, FigureView.Ends interval80, FigureView.Ends interval95) {}

    /** What she is expected to give up to a planned dry-off. */
    @Schema(name = "ProjectedToDryOff")
    record ToDryOffView(
            @Schema(description = "As entered") String dryOffDate,

            @Schema(description = "Of the dry-off; the last day counted")
            int daysInMilk,

            @Schema(description = "Milk of day 1 to that day, kg")
            FigureView milk,

            @Schema(description = "Fat of day 1 to that day, kg")
            FigureView fat,

            @Schema(description = "Protein of day 1 to that day, kg")
            FigureView protein) {}

    /** One day's milk as it would be weighed; a day that was weighed has its weight. */
    @Schema(name = "ExpectedDay")
    record DayView(
            int daysInMilk,
            @Schema(description = "kg in 24 hours") double milkKg,
            FigureView.Ends interval80) {}
}
