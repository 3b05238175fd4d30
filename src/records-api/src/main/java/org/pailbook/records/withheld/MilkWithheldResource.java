package org.pailbook.records.withheld;

import jakarta.inject.Inject;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import java.util.OptionalInt;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestResponse;
import org.pailbook.records.exchange.ClocksQuery;
import org.pailbook.records.exchange.ComputedDesk;

/** Milk that must stay out of the tank, over HTTP. */
@Path("/v1/herds/{herd}/milk-withheld")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Udder health")
public class MilkWithheldResource {
    private final ComputedDesk desk;
    private final MilkWithheldQueries withheld;

    @Inject
    MilkWithheldResource(ComputedDesk desk, MilkWithheldQueries withheld) {
        this.desk = desk;
        this.withheld = withheld;
    }

    @GET
    @Operation(
            operationId = "getMilkWithheld",
            summary = "Whose milk must stay out of the tank at a moment, why, until when, and who said so")
    public RestResponse<MilkWithheldView> getMilkWithheld(
            @PathParam("herd") String herd,
            @BeanParam ClocksQuery clocks,
            @BeanParam MilkWithheldQuery query,
            @Context HttpHeaders headers) {
        query.check();
        OptionalInt colostrumDays = query.colostrumDays();
        return desk.answer(herd, clocks, headers, known -> withheld.at(known, query.moment(known), colostrumDays));
    }
}
