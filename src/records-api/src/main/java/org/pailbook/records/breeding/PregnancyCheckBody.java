package org.pailbook.records.breeding;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.PregnancyCheckRow;

/** A pregnancy check on the wire, in both directions. */
@Schema(
        name = "PregnancyCheck",
        description = "A pregnancy check",
        requiredProperties = {"animal", "date", "result"},
        examples =
                "{\"animal\":{\"scheme\":\"example.eartag\",\"id\":\"PT-BA-0412\"},\"date\":\"2025-12-20\",\"result\":\"pregnant\",\"method\":\"echography\"}")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record PregnancyCheckBody(
        AnimalIdentifier animal,

        @Schema(description = "Day in the herd's zone") LocalDate date,

        @Schema(
                description = "What was found; names of the ICAR data exchange list",
                enumeration = {"empty", "pregnant", "multiple", "unknown"})
        String result,

        @Schema(
                description = "How; names of the ICAR data exchange list",
                enumeration = {"echography", "palpation", "blood", "milk", "visual", "other"})
        String method,

        @Schema(description = "Your own words") String note,

        @Schema(description = "Tool that sends it") String source,

        @Schema(description = "Its id in that tool; needs source")
        String sourceId) {

    static PregnancyCheckBody of(PregnancyCheckRow row, AnimalIdentifier animal) {
        return new PregnancyCheckBody(animal, row.date, row.result, row.method, row.note, row.source, row.sourceId);
    }
}
