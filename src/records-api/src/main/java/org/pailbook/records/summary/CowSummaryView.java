package org.pailbook.records.summary;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.wire.FigureView;
import org.pailbook.records.wire.FigureView.WarningView;

/**
 * One cow at a glance.
 *
 * @param state inMilk, dry, left or notCalved
 */
@Schema(name = "CowSummary", description = "One cow: state, days in milk, last test, yield so far and projection")
@JsonInclude(JsonInclude.Include.NON_NULL)
record CowSummaryView(
        String herd,
        AnimalIdentifier animal,
        String name,
        String breed,
        String asOf,

        @Schema(
                description =
                        "When the last change this answer knows of was recorded, or as asked; with it and asOf it is repeated")
        String knownAt,

        String computedAt,
        @Schema(enumeration = {"ok", "notEnoughData"}) String status,

        @Schema(enumeration = {"inMilk", "dry", "left", "notCalved"})
        String state,

        Integer parity,
        String calvedOn,

        @Schema(description = "Only while she is in milk; the calving day is 0")
        Integer daysInMilk,

        LastTestView lastTest,

        @Schema(description = "Milk of the latest lactation up to the last test or day 305, kg")
        FigureView accumulated,

        @Schema(description = "Milk of days 1 to 305 if she is milked to day 305, kg")
        FigureView projected305,

        @Schema(description = "Earlier lactations, their accumulated milk")
        List<EarlierLactationView> earlierLactations,

        CowDecisionsView decisions,

        @Schema(description = "About her events; each figure has its own")
        List<WarningView> warnings) {

    /** A measured test day, and its corrected milk. */
    @Schema(name = "LastTest")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record LastTestView(
            String date,
            int daysInMilk,
            Double milkKg,
            Double fatPct,
            Double proteinPct,
            Double sccThousandPerMl,
            FigureView correctedMilk,
            FigureView somaticCellScore) {}

    /** A lactation before the latest. */
    @Schema(name = "EarlierLactation")
    record EarlierLactationView(int parity, String calvedOn, FigureView accumulated) {}
}
