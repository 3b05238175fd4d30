package org.pailbook.records.calculate;

import jakarta.ws.rs.QueryParam;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.pailbook.records.computed.MethodChoice;

/** How much of the arithmetic is sent. */
public class ExplainQuery {
    @QueryParam("explain")
    @Parameter(description = "true: send the parts each figure was added up from", example = "false")
    String explain;

    boolean isExplained() {
        return MethodChoice.flag("explain", explain);
    }
}
