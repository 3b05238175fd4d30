package org.pailbook.records.summary;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.wire.FigureView;

/** One herd at a glance. */
@Schema(
        name = "HerdSummary",
        description = "Counts by state, the last test date, projections, and a line for each cow in milk")
@JsonInclude(JsonInclude.Include.NON_NULL)
record HerdSummaryView(
        String herd,
        String name,
        String asOf,

        @Schema(
                description =
                        "When the last change this answer knows of was recorded, or as asked; with it and asOf it is repeated")
        String knownAt,

        String computedAt,
        @Schema(enumeration = {"ok", "notEnoughData"}) String status,
        CountsView animals,
        FigureView meanDaysInMilk,

        @Schema(description = "Latest day up to asOf on which a cow was tested")
        String lastTestDate,

        @Schema(description = "Milk of all cows tested on that day, kg in 24 hours")
        FigureView milkOfLastTestDate,

        FigureView meanMilkOfLastTestDate,
        @Schema(description = "Weighted by milk") FigureView fatPct,
        @Schema(description = "Weighted by milk") FigureView proteinPct,

        @Schema(description = "Weighted by milk, as in a tank, thousand per mL")
        FigureView scc,

        FigureView meanSomaticCellScore,

        @Schema(description = "Mean over the cows in milk, if each is milked to day 305, kg")
        FigureView meanProjected305,

        @Schema(description = "Measures with what is counted over what, and the same time a year before")
        HerdMeasuresView measures,

        @Schema(description = "What the herd's records lack as a whole; each figure names what it lacks")
        List<FigureView.WarningView> warnings,

        @Schema(description = "The cows in milk, longest in milk first")
        List<CowLineView> cowsInMilk) {

    /** How many animals are in which state. */
    @Schema(name = "AnimalCounts")
    record CountsView(int total, int inMilk, int dry, int notCalved, int left) {}

    /** One cow in milk. */
    @Schema(name = "CowLine")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record CowLineView(
            AnimalIdentifier animal,
            String name,
            int parity,
            int daysInMilk,
            String lastTestDate,
            @Schema(description = "kg in 24 hours") Double lastMilkKg,
            Double accumulatedKg,
            Double projected305Kg,
            FigureView.Ends interval80,
            FigureView.Ends interval95,
            int testDays,
            List<String> warnings) {}
}
