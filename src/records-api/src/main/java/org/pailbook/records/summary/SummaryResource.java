package org.pailbook.records.summary;

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
import org.pailbook.records.store.AnimalRow;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;

/** Summaries of cows and herds over HTTP. */
@Path("/v1/herds/{herd}")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Summaries")
public class SummaryResource {
    private final HerdAccess access;
    private final SummaryQueries summaries;
    private final Clock clock;

    @Inject
    SummaryResource(HerdAccess access, SummaryQueries summaries, Clock clock) {
        this.access = access;
        this.summaries = summaries;
        this.clock = clock;
    }

    @GET
    @Path("/summary")
    @Operation(operationId = "getHerdSummary", summary = "The herd at a glance, with a line for each cow in milk")
    public HerdSummaryView getHerdSummary(
            @PathParam("herd") String herdCode,
            @QueryParam("asOf")
                    @Parameter(
                            description = "Events after this day take no part; today in the herd's zone if left out",
                            example = "2025-11-30")
                    String asOf) {
        HerdRow herd = access.toRead(herdCode);
        return summaries.ofHerd(herd, AsOf.of(asOf, herd.zone(), clock));
    }

    @GET
    @Path("/animals/{animal}/summary")
    @Operation(operationId = "getCowSummary", summary = "One cow at a glance")
    public CowSummaryView getCowSummary(
            @PathParam("herd") String herdCode,
            @PathParam("animal") String animal,
            @QueryParam("asOf")
                    @Parameter(
                            description = "Events after this day take no part; today in the herd's zone if left out",
                            example = "2025-11-30")
                    String asOf) {
        HerdRow herd = access.toRead(herdCode);
        AnimalRow cow = access.animal(herd, animal);
        return summaries.ofCow(herd, cow, AsOf.of(asOf, herd.zone(), clock));
    }
}
