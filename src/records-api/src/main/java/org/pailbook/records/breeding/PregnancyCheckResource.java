package org.pailbook.records.breeding;

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
import org.pailbook.records.store.PregnancyCheckRow;
import org.pailbook.records.wire.Page;
import org.pailbook.records.wire.StoredView;

/** The pregnancy checks of a herd over HTTP. */
@Path("/v1/herds/{herd}/pregnancy-checks")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Pregnancy checks")
public class PregnancyCheckResource extends EventResource<PregnancyCheckRow, PregnancyCheckBody> {
    private final PregnancyCheckKind kind;

    @Inject
    PregnancyCheckResource(PregnancyCheckKind kind) {
        this.kind = kind;
    }

    @Override
    protected EventKind<PregnancyCheckRow> kind() {
        return kind;
    }

    @Override
    protected PregnancyCheckBody view(PregnancyCheckRow record, AnimalIdentifier animal) {
        return PregnancyCheckBody.of(record, animal);
    }

    @GET
    @Operation(operationId = "listPregnancyChecks", summary = "The pregnancy checks of a herd, by day")
    public Page<StoredView<PregnancyCheckBody>> listPregnancyChecks(
            @PathParam("herd") String herd, @BeanParam ListQuery query, @Context UriInfo address) {
        return list(herd, query, address);
    }

    @GET
    @Path("/{id}")
    @Operation(operationId = "getPregnancyCheck", summary = "One pregnancy check")
    public RestResponse<StoredView<PregnancyCheckBody>> getPregnancyCheck(
            @PathParam("herd") String herd,
            @PathParam("id") String id,
            @BeanParam KnownAtQuery query,
            @Context HttpHeaders headers) {
        return one(herd, id, query, headers);
    }

    @POST
    @Operation(operationId = "upsertPregnancyCheck", summary = "Post one pregnancy check; a resend changes nothing")
    @RequestBody(
            required = true,
            content =
                    @Content(
                            mediaType = "application/json",
                            schema = @Schema(implementation = PregnancyCheckBody.class)))
    public RestResponse<PostedAnswer<PregnancyCheckBody>> upsertPregnancyCheck(
            @PathParam("herd") String herd, InputStream body, @Context HttpHeaders headers) {
        return post(herd, body, headers);
    }

    @POST
    @Path("/bulk")
    @Operation(operationId = "bulkPregnancyChecks", summary = "Post many pregnancy checks as JSON, NDJSON or CSV")
    public Response bulkPregnancyChecks(
            @PathParam("herd") String herd,
            @BeanParam BulkQuery query,
            InputStream body,
            @Context HttpHeaders headers) {
        return postMany(herd, query, body, headers);
    }
}
