package org.pailbook.records.projection;

import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.time.Clock;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.pailbook.records.access.HerdAccess;
import org.pailbook.records.computed.HerdLearning;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;

/** How right a herd's past projections were, over HTTP. */
@Path("/v1/herds/{herd}/projection-accuracy")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Summaries")
public class ProjectionAccuracyResource {
    private final HerdAccess access;
    private final HerdLearning learning;
    private final Clock clock;

    @Inject
    ProjectionAccuracyResource(HerdAccess access, HerdLearning learning, Clock clock) {
        this.access = access;
        this.learning = learning;
        this.clock = clock;
    }

    @GET
    @Operation(
            operationId = "getProjectionAccuracy",
            summary =
                    "How right the herd's past projections were, by number of tests, and how often their intervals held")
    public ProjectionAccuracyView getProjectionAccuracy(
            @PathParam("herd") String herdCode,
            @QueryParam("asOf")
                    @Parameter(
                            description = "Events after this day take no part; today in the herd's zone if left out",
                            example = "2025-11-30")
                    String asOf) {
        HerdRow herd = access.toRead(herdCode);
        AsOf day = AsOf.of(asOf, herd.zone(), clock);
        return ProjectionAccuracyView.of(herd, learning.of(herd, day.day()), day);
    }
}
