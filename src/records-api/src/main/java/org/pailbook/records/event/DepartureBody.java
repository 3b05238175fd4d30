package org.pailbook.records.event;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.DepartureRow;

/** A departure on the wire, in both directions. */
@Schema(
        name = "Departure",
        description = "The animal left the herd",
        requiredProperties = {"animal", "date", "kind"},
        examples =
                "{\"animal\":{\"scheme\":\"example.eartag\",\"id\":\"PT-BA-0412\"},\"date\":\"2026-03-02\",\"kind\":\"sale\",\"note\":\"sold to a neighbour\"}")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record DepartureBody(
        AnimalIdentifier animal,

        @Schema(description = "Day she left, in the herd's zone")
        LocalDate date,

        @Schema(enumeration = {"sale", "slaughter", "death", "cullOnFarm", "transfer", "other"})
        String kind,

        @Schema(
                description =
                        "Code of the ICAR departure reason list, or your own; the one that counts if there are several")
        String reason,

        @Schema(description = "Another reason; needs reason")
        String secondReason,

        @Schema(description = "A third one; needs secondReason")
        String thirdReason,

        String note,

        @Schema(description = "Day on which she came back, if she did")
        LocalDate returnedOn,

        @Schema(description = "Tool that sends it") String source,

        @Schema(description = "Its id in that tool; needs source")
        String sourceId) {

    static DepartureBody of(DepartureRow row, AnimalIdentifier animal) {
        return new DepartureBody(
                animal,
                row.date,
                row.kind,
                row.reason,
                row.secondReason,
                row.thirdReason,
                row.note,
                row.returnedOn,
                row.source,
                row.sourceId);
    }
}
