package org.pailbook.records.projection;

import jakarta.inject.Inject;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestResponse;
import org.pailbook.records.computed.HerdLearning;
import org.pailbook.records.exchange.ClocksQuery;
import org.pailbook.records.exchange.ComputedDesk;

/** How right a herd's past projections were, over HTTP. */
@Path("/v1/herds/{herd}/projection-accuracy")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Summaries")
public class ProjectionAccuracyResource {
    private final ComputedDesk desk;
    private final HerdLearning learning;

    @Inject
    ProjectionAccuracyResource(ComputedDesk desk, HerdLearning learning) {
        this.desk = desk;
        this.learning = learning;
    }

    @GET
    @Operation(
            operationId = "getProjectionAccuracy",
            summary =
                    "How right the herd's past projections were, by number of tests, and how often their intervals held")
    public RestResponse<ProjectionAccuracyView> getProjectionAccuracy(
            @PathParam("herd") String herd, @BeanParam ClocksQuery clocks, @Context HttpHeaders headers) {
        return desk.answer(
                herd,
                clocks,
                headers,
                known -> ProjectionAccuracyView.of(
                        known.herd(), learning.of(known.herd(), known.asOf().day()), known.asOf()));
    }
}
