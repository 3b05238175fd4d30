package org.pailbook.records.breeding;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.ServiceRow;

/** A service on the wire, in both directions. */
@Schema(
        name = "Service",
        description = "A service: insemination, natural service or implantation",
        requiredProperties = {"animal", "date"},
        examples =
                "{\"animal\":{\"scheme\":\"example.eartag\",\"id\":\"PT-BA-0412\"},\"date\":\"2025-11-12\",\"method\":\"insemination\",\"sire\":\"example.bull:4711\"}")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ServiceBody(
        AnimalIdentifier animal,

        @Schema(description = "Day in the herd's zone") LocalDate date,

        @Schema(description = "1, or the number of a further service on that day")
        Integer serviceOfDay,

        @Schema(
                description = "How; names of the ICAR data exchange list",
                enumeration = {"naturalService", "runWithBull", "insemination", "implantation"})
        String method,

        @Schema(description = "The bull, by the identifier you use")
        String sire,

        @Schema(description = "Your own words") String note,

        @Schema(description = "Tool that sends it") String source,

        @Schema(description = "Its id in that tool; needs source")
        String sourceId) {

    static ServiceBody of(ServiceRow row, AnimalIdentifier animal) {
        return new ServiceBody(
                animal, row.date, row.serviceOfDay, row.method, row.sire, row.note, row.source, row.sourceId);
    }
}
