package org.pailbook.records.projection;

import jakarta.ws.rs.QueryParam;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.records.computed.MethodChoice;

/** By which method the yield is added up, to which day. */
public class YieldQuery {
    @QueryParam("method")
    @Parameter(description = "Method by its name; all of them side by side if left out", example = "test-interval")
    String method;

    @QueryParam("explain")
    @Parameter(description = "true: send the parts each figure was added up from", example = "false")
    String explain;

    /** Its name; null for all. */
    String methodId() {
        return MethodChoice.ofParameter("method", method, MethodChoice.yieldMethods())
                .map(PublishedMethod::id)
                .orElse(null);
    }

    boolean isExplained() {
        return MethodChoice.flag("explain", explain);
    }
}
