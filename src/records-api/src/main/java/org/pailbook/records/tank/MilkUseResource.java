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
import org.pailbook.records.store.MilkUseRow;
import org.pailbook.records.wire.Page;
import org.pailbook.records.wire.StoredView;

/** The uses of milk of a herd over HTTP. */
@Path("/v1/herds/{herd}/milk-uses")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Uses of milk")
public class MilkUseResource extends HerdRecordResource<MilkUseRow, MilkUseBody> {
    private final MilkUseKind kind;

    @Inject
    MilkUseResource(MilkUseKind kind) {
        this.kind = kind;
    }

    @Override
    protected HerdRecordKind<MilkUseRow> kind() {
        return kind;
    }

    @Override
    protected MilkUseBody view(MilkUseRow record) {
        return MilkUseBody.of(record);
    }

    @GET
    @Operation(operationId = "listMilkUses", summary = "The uses of milk of a herd, by day")
    public Page<StoredView<MilkUseBody>> listMilkUses(
            @PathParam("herd") String herd, @BeanParam PeriodQuery query, @Context UriInfo address) {
        return list(herd, query, address);
    }

    @GET
    @Path("/{id}")
    @Operation(operationId = "getMilkUse", summary = "One use of milk")
    public RestResponse<StoredView<MilkUseBody>> getMilkUse(
            @PathParam("herd") String herd,
            @PathParam("id") String id,
            @BeanParam KnownAtQuery query,
            @Context HttpHeaders headers) {
        return one(herd, id, query, headers);
    }

    @POST
    @Operation(operationId = "upsertMilkUse", summary = "Post one use of milk; a resend changes nothing")
    @RequestBody(
            required = true,
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = MilkUseBody.class)))
    public RestResponse<PostedAnswer<MilkUseBody>> upsertMilkUse(
            @PathParam("herd") String herd, InputStream body, @Context HttpHeaders headers) {
        return post(herd, body, headers);
    }

    @POST
    @Path("/bulk")
    @Operation(operationId = "bulkMilkUses", summary = "Post many uses of milk as JSON, NDJSON or CSV")
    public Response bulkMilkUses(
            @PathParam("herd") String herd,
            @BeanParam BulkQuery query,
            InputStream body,
            @Context HttpHeaders headers) {
        return postMany(herd, query, body, headers);
    }
}
