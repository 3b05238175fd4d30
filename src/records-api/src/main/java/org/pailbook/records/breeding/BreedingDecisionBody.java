package org.pailbook.records.breeding;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.BreedingDecisionRow;

/** A choice whether to serve a cow on the wire, in both directions. */
@Schema(
        name = "BreedingDecision",
        description = "Whether a cow is to be served, by the farm's choice; holds from its day until the next one",
        requiredProperties = {"animal", "date", "decision"},
        examples =
                "{\"animal\":{\"scheme\":\"example.eartag\",\"id\":\"PT-BA-0412\"},\"date\":\"2025-11-12\",\"decision\":\"doNotBreed\",\"reason\":\"third mastitis this year\"}")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record BreedingDecisionBody(
        AnimalIdentifier animal,

        @Schema(description = "First day it holds, in the herd's zone")
        LocalDate date,

        @Schema(
                description = "doNotBreed takes her off the lists to serve her; breedAgain puts her back",
                enumeration = {"doNotBreed", "breedAgain"})
        String decision,

        @Schema(description = "Why, in your own words; shown where she is listed")
        String reason,

        @Schema(description = "Your own words") String note,

        @Schema(description = "Tool that sends it") String source,

        @Schema(description = "Its id in that tool; needs source")
        String sourceId) {

    static BreedingDecisionBody of(BreedingDecisionRow row, AnimalIdentifier animal) {
        return new BreedingDecisionBody(animal, row.date, row.decision, row.reason, row.note, row.source, row.sourceId);
    }
}
