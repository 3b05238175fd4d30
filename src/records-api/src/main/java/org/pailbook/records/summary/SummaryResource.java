package org.pailbook.records.summary;

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
import org.pailbook.records.access.HerdAccess;
import org.pailbook.records.exchange.ClocksQuery;
import org.pailbook.records.exchange.ComputedDesk;

/** Summaries of cows and herds over HTTP. */
@Path("/v1/herds/{herd}")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Summaries")
public class SummaryResource {
    private final HerdAccess access;
    private final ComputedDesk desk;
    private final SummaryQueries summaries;

    @Inject
    SummaryResource(HerdAccess access, ComputedDesk desk, SummaryQueries summaries) {
        this.access = access;
        this.desk = desk;
        this.summaries = summaries;
    }

    @GET
    @Path("/summary")
    @Operation(operationId = "getHerdSummary", summary = "The herd at a glance, with a line for each cow in milk")
    public RestResponse<HerdSummaryView> getHerdSummary(
            @PathParam("herd") String herd, @BeanParam ClocksQuery clocks, @Context HttpHeaders headers) {
        return desk.answer(herd, clocks, headers, known -> summaries.ofHerd(known.herd(), known.asOf()));
    }

    @GET
    @Path("/animals/{animal}/summary")
    @Operation(operationId = "getCowSummary", summary = "One cow at a glance")
    public RestResponse<CowSummaryView> getCowSummary(
            @PathParam("herd") String herd,
            @PathParam("animal") String animal,
            @BeanParam ClocksQuery clocks,
            @Context HttpHeaders headers) {
        return desk.answer(
                herd,
                clocks,
                headers,
                known -> summaries.ofCow(known.herd(), access.animal(known.herd(), animal), known.asOf()));
    }
}
