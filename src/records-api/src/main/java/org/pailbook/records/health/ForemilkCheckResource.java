package org.pailbook.records.health;

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
import org.pailbook.records.exchange.EventResource;
import org.pailbook.records.exchange.KnownAtQuery;
import org.pailbook.records.exchange.ListQuery;
import org.pailbook.records.intake.EventKind;
import org.pailbook.records.intake.PostedAnswer;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.ForemilkCheckRow;
import org.pailbook.records.wire.Page;
import org.pailbook.records.wire.StoredView;

/** The foremilk checks of a herd over HTTP. */
@Path("/v1/herds/{herd}/foremilk-checks")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Foremilk checks")
public class ForemilkCheckResource extends EventResource<ForemilkCheckRow, ForemilkCheckBody> {
    private final ForemilkCheckKind kind;

    @Inject
    ForemilkCheckResource(ForemilkCheckKind kind) {
        this.kind = kind;
    }

    @Override
    protected EventKind<ForemilkCheckRow> kind() {
        return kind;
    }

    @Override
    protected ForemilkCheckBody view(ForemilkCheckRow record, AnimalIdentifier animal) {
        return ForemilkCheckBody.of(record, animal);
    }

    @GET
    @Operation(operationId = "listForemilkChecks", summary = "The foremilk checks of a herd, by day")
    public Page<StoredView<ForemilkCheckBody>> listForemilkChecks(
            @PathParam("herd") String herd, @BeanParam ListQuery query, @Context UriInfo address) {
        return list(herd, query, address);
    }

    @GET
    @Path("/{id}")
    @Operation(operationId = "getForemilkCheck", summary = "One foremilk check")
    public RestResponse<StoredView<ForemilkCheckBody>> getForemilkCheck(
            @PathParam("herd") String herd,
            @PathParam("id") String id,
            @BeanParam KnownAtQuery query,
            @Context HttpHeaders headers) {
        return one(herd, id, query, headers);
    }

    @POST
    @Operation(operationId = "upsertForemilkCheck", summary = "Post one foremilk check; a resend changes nothing")
    @RequestBody(
            required = true,
            content =
                    @Content(
                            mediaType = "application/json",
                            schema = @Schema(implementation = ForemilkCheckBody.class)))
    public RestResponse<PostedAnswer<ForemilkCheckBody>> upsertForemilkCheck(
            @PathParam("herd") String herd, InputStream body, @Context HttpHeaders headers) {
        return post(herd, body, headers);
    }

    @POST
    @Path("/bulk")
    @Operation(operationId = "bulkForemilkChecks", summary = "Post many foremilk checks as JSON, NDJSON or CSV")
    public Response bulkForemilkChecks(
            @PathParam("herd") String herd,
            @BeanParam BulkQuery query,
            InputStream body,
            @Context HttpHeaders headers) {
        return postMany(herd, query, body, headers);
    }
}
