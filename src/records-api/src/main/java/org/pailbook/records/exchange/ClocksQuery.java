package org.pailbook.records.exchange;

import jakarta.ws.rs.QueryParam;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;

/** For which day a figure is, and what is to be known for it. With both an old answer is repeated. */
public class ClocksQuery {
    @QueryParam("asOf")
    @Parameter(
            description = "Events after this day take no part; today in the herd's zone if left out",
            example = "2025-11-30")
    String asOf;

    @QueryParam("knownAt")
    @Parameter(
            description = "Versions recorded after this instant take no part; now if left out",
            example = "2025-12-01T20:11:04Z")
    String knownAt;
}
