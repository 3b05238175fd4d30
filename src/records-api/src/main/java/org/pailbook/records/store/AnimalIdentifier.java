package org.pailbook.records.store;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/**
 * A name by which an animal is known, unique within a herd and scheme.
 *
 * @param scheme who gives the identifiers, as in ICAR's data exchange: reverse domain, {@code std.iso.11784}
 * @param id the identifier
 */
@Schema(name = "AnimalIdentifier", description = "Scheme and identifier, unique within the herd")
public record AnimalIdentifier(
        @JsonProperty("scheme") @Schema(examples = "example.eartag", required = true)
        String scheme,

        @JsonProperty("id") @Schema(examples = "PT-BA-0412", required = true)
        String id) {

    /** As one segment of an address: {@code scheme:id}, or our id alone, percent-encoded. */
    public String pathSegment() {
        String reference = scheme.equals("id") ? id : scheme + ":" + id;
        return URLEncoder.encode(reference, StandardCharsets.UTF_8).replace("+", "%20");
    }
}
