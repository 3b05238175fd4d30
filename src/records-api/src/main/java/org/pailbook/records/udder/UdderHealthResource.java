package org.pailbook.records.udder;

import jakarta.inject.Inject;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import java.util.Optional;
import java.util.OptionalInt;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestResponse;
import org.pailbook.lactation.udderhealth.TankLimit;
import org.pailbook.records.exchange.ClocksQuery;
import org.pailbook.records.exchange.ComputedDesk;

/** Udder health of a herd over HTTP. */
@Path("/v1/herds/{herd}/udder-health")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Udder health")
public class UdderHealthResource {
    private final ComputedDesk desk;
    private final UdderHealthQueries udders;

    @Inject
    UdderHealthResource(ComputedDesk desk, UdderHealthQueries udders) {
        this.desk = desk;
        this.udders = udders;
    }

    @GET
    @Operation(
            operationId = "getUdderHealth",
            summary = "Cell count states and rates with their counts, each cow's part of the tank, the tank's limit")
    public RestResponse<UdderHealthView> getUdderHealth(
            @PathParam("herd") String herd,
            @BeanParam ClocksQuery clocks,
            @BeanParam UdderHealthQuery query,
            @Context HttpHeaders headers) {
        OptionalInt cut = query.cut();
        Optional<TankLimit> limit = query.limit();
        return desk.answer(herd, clocks, headers, known -> udders.of(known, cut, limit));
    }
}
