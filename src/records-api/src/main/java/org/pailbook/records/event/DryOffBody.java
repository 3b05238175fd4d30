package org.pailbook.records.event;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.DryOffRow;

/** A dry-off on the wire, in both directions. */
@Schema(
        name = "DryOff",
        description = "The end of milking in a lactation",
        requiredProperties = {"animal", "date"},
        examples = "{\"animal\":{\"scheme\":\"example.eartag\",\"id\":\"PT-BA-0412\"},\"date\":\"2026-06-20\"}")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record DryOffBody(
        AnimalIdentifier animal,

        @Schema(description = "Last day on which she was milked, in the herd's zone")
        LocalDate date,

        @Schema(description = "Tool that sends it") String source,

        @Schema(description = "Its id in that tool; needs source")
        String sourceId) {

    static DryOffBody of(DryOffRow row, AnimalIdentifier animal) {
        return new DryOffBody(animal, row.date, row.source, row.sourceId);
    }
}
