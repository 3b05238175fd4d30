package org.pailbook.records.exchange;

import jakarta.ws.rs.QueryParam;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;

/** What a list of events may be asked for. */
public class ListQuery extends PeriodQuery {
    @QueryParam("animal")
    @Parameter(description = "Our id of the animal, or scheme:id", example = "example.eartag:PT-BA-0412")
    String animal;

    @QueryParam("parity")
    @Parameter(
            description =
                    "Only that lactation of the animal, from its calving to the day before the next; needs animal",
            example = "3")
    String parity;
}
