package org.pailbook.records.tank;

import jakarta.inject.Inject;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.io.InputStream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestResponse;
import org.pailbook.records.exchange.BulkQuery;
import org.pailbook.records.exchange.HerdRecordResource;
import org.pailbook.records.exchange.KnownAtQuery;
import org.pailbook.records.exchange.PeriodQuery;
import org.pailbook.records.intake.HerdRecordKind;
import org.pailbook.records.intake.PostedAnswer;
import org.pailbook.records.store.TankReadingRow;
import org.pailbook.records.wire.Page;
import org.pailbook.records.wire.StoredView;

/** The tank readings of a herd over HTTP. */
@Path("/v1/herds/{herd}/tank-readings")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Tank readings")
public class TankReadingResource extends HerdRecordResource<TankReadingRow, TankReadingBody> {
    private final TankReadingKind kind;

    @Inject
    TankReadingResource(TankReadingKind kind) {
        this.kind = kind;
    }

    @Override
    protected HerdRecordKind<TankReadingRow> kind() {
        return kind;
    }

    @Override
    protected TankReadingBody view(TankReadingRow record) {
        return TankReadingBody.of(record);
    }

    @GET
    @Operation(operationId = "listTankReadings", summary = "The tank readings of a herd, by day")
    public Page<StoredView<TankReadingBody>> listTankReadings(
            @PathParam("herd") String herd, @BeanParam PeriodQuery query, @Context UriInfo address) {
        return list(herd, query, address);
    }

    @GET
    @Path("/{id}")
    @Operation(operationId = "getTankReading", summary = "One tank reading")
    public RestResponse<StoredView<TankReadingBody>> getTankReading(
            @PathParam("herd") String herd,
            @PathParam("id") String id,
            @BeanParam KnownAtQuery query,
            @Context HttpHeaders headers) {
        return one(herd, id, query, headers);
    }

    @POST
    @Operation(operationId = "upsertTankReading", summary = "Post one tank reading; a resend changes nothing")
    @RequestBody(
            required = true,
            content =
                    @Content(mediaType = "application/json", schema = @Schema(implementation = TankReadingBody.class)))
    public RestResponse<PostedAnswer<TankReadingBody>> upsertTankReading(
            @PathParam("herd") String herd, InputStream body, @Context HttpHeaders headers) {
        return post(herd, body, headers);
    }

    @POST
    @Path("/bulk")
    @Operation(operationId = "bulkTankReadings", summary = "Post many tank readings as JSON, NDJSON or CSV")
    public Response bulkTankReadings(
            @PathParam("herd") String herd,
            @BeanParam BulkQuery query,
            InputStream body,
            @Context HttpHeaders headers) {
        return postMany(herd, query, body, headers);
    }
}
