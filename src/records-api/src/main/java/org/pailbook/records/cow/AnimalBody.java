package org.pailbook.records.cow;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.AnimalRow;

/** An animal on the wire, in both directions. */
@Schema(
        name = "Animal",
        description = "An animal of the herd; any of its identifiers finds it",
        requiredProperties = {"identifiers"},
        examples =
                "{\"identifiers\":[{\"scheme\":\"example.eartag\",\"id\":\"PT-BA-0412\"}],\"name\":\"Bonina\",\"breed\":\"HOL\",\"sex\":\"female\",\"birthDate\":\"2022-10-03\"}")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record AnimalBody(
        List<AnimalIdentifier> identifiers,
        String name,

        @Schema(description = "ICAR breed code, or text", examples = "HOL")
        String breed,

        @Schema(enumeration = {"female", "male"}) String sex,
        LocalDate birthDate,
        @Schema(description = "Tool that sends it") String source,

        @Schema(description = "Its id in that tool; needs source")
        String sourceId) {

    static AnimalBody of(AnimalRow row) {
        return new AnimalBody(row.identifiers, row.name, row.breed, row.sex, row.birthDate, row.source, row.sourceId);
    }
}
