package org.pailbook.records.exchange;

import jakarta.ws.rs.QueryParam;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;

/** What is to be known for an answer. */
public class KnownAtQuery {
    @QueryParam("knownAt")
    @Parameter(
            description = "Versions recorded after this instant are left out; now if left out",
            example = "2025-12-01T20:11:04Z")
    String knownAt;
}
