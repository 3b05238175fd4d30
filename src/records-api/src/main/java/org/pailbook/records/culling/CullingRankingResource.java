package org.pailbook.records.culling;

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

/** The culling ranking of a herd over HTTP. */
@Path("/v1/herds/{herd}")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Culling")
public class CullingRankingResource {
    private final ComputedDesk desk;
    private final CullingRankingQueries rankings;
    private final CowOutlookQueries outlooks;
    private final HerdAccess access;

    @Inject
    CullingRankingResource(
            ComputedDesk desk, CullingRankingQueries rankings, CowOutlookQueries outlooks, HerdAccess access) {
        this.desk = desk;
        this.rankings = rankings;
        this.outlooks = outlooks;
        this.access = access;
    }

    @GET
    @Path("/culling-ranking")
    @Operation(
            operationId = "getCullingRanking",
            summary = "The herd in the order of what keeping each cow is worth, lowest first",
            description =
                    "From tests, calvings, services, pregnancy checks and prices. An estimate to think with, never an order; show its"
                            + " caution with it. Without a milk, heifer and cull price the list is by milk alone and says so.")
    public RestResponse<CullingRankingView> getCullingRanking(
            @PathParam("herd") String herd, @BeanParam ClocksQuery clocks, @Context HttpHeaders headers) {
        return desk.answer(herd, clocks, headers, known -> rankings.of(known.herd(), known.asOf()));
    }

    @GET
    @Path("/animals/{animal}/outlook")
    @Operation(
            operationId = "getCowOutlook",
            summary = "What keeping one cow is worth over replacing her, and why",
            description =
                    "As in the ranking, held against her herd, with every figure explained. An estimate to think with,"
                            + " never an order; show its caution with it. Without a milk, heifer and cull price there is none.")
    public RestResponse<CowOutlookAnswerView> getCowOutlook(
            @PathParam("herd") String herd,
            @PathParam("animal") String animal,
            @BeanParam ClocksQuery clocks,
            @Context HttpHeaders headers) {
        return desk.answer(herd, clocks, headers, known -> outlooks.of(known, access.animal(known.herd(), animal)));
    }
}
