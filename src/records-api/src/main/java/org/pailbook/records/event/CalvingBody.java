package org.pailbook.records.event;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.CalvingRow;

/** A calving on the wire, in both directions. */
@Schema(
        name = "Calving",
        description = "A calving; it starts a lactation",
        requiredProperties = {"animal", "date"},
        examples =
                "{\"animal\":{\"scheme\":\"example.eartag\",\"id\":\"PT-BA-0412\"},\"date\":\"2025-08-19\",\"parity\":3,\"ease\":1}")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record CalvingBody(
        AnimalIdentifier animal,

        @Schema(description = "Day in the herd's zone; day 0 of the lactation")
        LocalDate date,

        @Schema(description = "Number of calvings including this one", minimum = "1", maximum = "25")
        Integer parity,

        @Schema(description = "1 easy to 5 surgery, order of the ICAR list", minimum = "1", maximum = "5")
        Integer ease,

        @Schema(description = "The calves, as far as they were recorded")
        List<Calves.CalfBody> calves,

        @Schema(description = "Tool that sends it") String source,

        @Schema(description = "Its id in that tool; needs source")
        String sourceId) {

    static CalvingBody of(CalvingRow row, AnimalIdentifier animal) {
        return new CalvingBody(
                animal, row.date, row.parity, row.ease, Calves.view(row.calves), row.source, row.sourceId);
    }
}
