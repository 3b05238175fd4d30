package org.pailbook.records.reproduction;

import jakarta.inject.Inject;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import java.util.function.Function;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestResponse;
import org.pailbook.lactation.breeding.BreedingSettings;
import org.pailbook.records.computed.SettingsInForce;
import org.pailbook.records.exchange.ClocksQuery;
import org.pailbook.records.exchange.ComputedDesk;

/** Breeding lists and measures of a herd over HTTP. */
@Path("/v1/herds/{herd}")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Breeding")
public class BreedingListResource {
    private final ComputedDesk desk;
    private final BreedingQueries breeding;

    @Inject
    BreedingListResource(ComputedDesk desk, BreedingQueries breeding) {
        this.desk = desk;
        this.breeding = breeding;
    }

    @GET
    @Path("/breeding-worklist")
    @Operation(
            operationId = "getBreedingWorklist",
            summary = "Who is to be served, watched, checked, dried off and expected to calve, and why")
    public RestResponse<WorklistView> getBreedingWorklist(
            @PathParam("herd") String herd,
            @BeanParam ClocksQuery clocks,
            @BeanParam BreedingQuery query,
            @Context HttpHeaders headers) {
        Function<SettingsInForce, BreedingSettings> asked = query.over();
        return desk.answer(herd, clocks, headers, known -> breeding.worklist(known, asked));
    }

    @GET
    @Path("/breeding-summary")
    @Operation(
            operationId = "getBreedingSummary",
            summary = "How well the herd gets in calf, each measure with what is counted over what")
    public RestResponse<BreedingSummaryView> getBreedingSummary(
            @PathParam("herd") String herd,
            @BeanParam ClocksQuery clocks,
            @BeanParam BreedingQuery query,
            @Context HttpHeaders headers) {
        Function<SettingsInForce, BreedingSettings> asked = query.over();
        return desk.answer(herd, clocks, headers, known -> breeding.summary(known, asked));
    }
}
