package org.pailbook.records.herd;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.store.HerdRow;

/** A herd on the wire, in both directions. */
@Schema(
        name = "Herd",
        description = "A herd; its code is in every path, its zone says when a day begins",
        requiredProperties = {"code", "name", "timeZone"},
        examples = "{\"code\":\"ash-lane\",\"name\":\"Ash Lane\",\"timeZone\":\"Europe/Dublin\"}")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record HerdBody(
        @Schema(pattern = "[a-z0-9-]{1,40}") String code,
        String name,

        @Schema(description = "IANA zone", examples = "Europe/Dublin")
        String timeZone) {

    static HerdBody of(HerdRow row) {
        return new HerdBody(row.code, row.name, row.timeZone);
    }
}
