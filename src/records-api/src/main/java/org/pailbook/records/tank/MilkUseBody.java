package org.pailbook.records.tank;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.store.MilkUseRow;

/** Milk that did not go to the buyer on the wire, in both directions. */
@Schema(
        name = "MilkUse",
        description = "Milk that did not go to the buyer",
        requiredProperties = {"date", "purpose", "milkKg"},
        examples = "{\"date\":\"2025-11-12\",\"purpose\":\"calves\",\"milkKg\":64}")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record MilkUseBody(
        @Schema(description = "Day in the herd's zone") LocalDate date,

        @Schema(
                description = "What the milk was used for",
                enumeration = {"calves", "household", "cheese", "directSale", "discarded", "other"})
        String purpose,

        @Schema(description = "Milk used, kg") Double milkKg,

        @Schema(description = "Your own words") String note,

        @Schema(description = "Tool that sends it") String source,

        @Schema(description = "Its id in that tool; needs source")
        String sourceId) {

    static MilkUseBody of(MilkUseRow row) {
        return new MilkUseBody(row.date, row.purpose, row.milkKg, row.note, row.source, row.sourceId);
    }
}
