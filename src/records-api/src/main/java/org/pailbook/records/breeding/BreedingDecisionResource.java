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
import org.pailbook.records.store.BreedingDecisionRow;
import org.pailbook.records.wire.Page;
import org.pailbook.records.wire.StoredView;

/** A herd's choices whether to serve cows, over HTTP. */
@Path("/v1/herds/{herd}/breeding-decisions")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Breeding decisions")
public class BreedingDecisionResource extends EventResource<BreedingDecisionRow, BreedingDecisionBody> {
    private final BreedingDecisionKind kind;

    @Inject
    BreedingDecisionResource(BreedingDecisionKind kind) {
        this.kind = kind;
    }

    @Override
    protected EventKind<BreedingDecisionRow> kind() {
        return kind;
    }

    @Override
    protected BreedingDecisionBody view(BreedingDecisionRow record, AnimalIdentifier animal) {
        return BreedingDecisionBody.of(record, animal);
    }

    @GET
    @Operation(operationId = "listBreedingDecisions", summary = "The choices of a herd whether to serve cows, by day")
    public Page<StoredView<BreedingDecisionBody>> listBreedingDecisions(
            @PathParam("herd") String herd, @BeanParam ListQuery query, @Context UriInfo address) {
        return list(herd, query, address);
    }

    @GET
    @Path("/{id}")
    @Operation(operationId = "getBreedingDecision", summary = "One choice whether to serve a cow")
    public RestResponse<StoredView<BreedingDecisionBody>> getBreedingDecision(
            @PathParam("herd") String herd,
            @PathParam("id") String id,
            @BeanParam KnownAtQuery query,
            @Context HttpHeaders headers) {
        return one(herd, id, query, headers);
    }

    @POST
    @Operation(
            operationId = "upsertBreedingDecision",
            summary = "Post one choice whether to serve a cow; a resend changes nothing")
    @RequestBody(
            required = true,
            content =
                    @Content(
                            mediaType = "application/json",
                            schema = @Schema(implementation = BreedingDecisionBody.class)))
    public RestResponse<PostedAnswer<BreedingDecisionBody>> upsertBreedingDecision(
            @PathParam("herd") String herd, InputStream body, @Context HttpHeaders headers) {
        return post(herd, body, headers);
    }

    @POST
    @Path("/bulk")
    @Operation(
            operationId = "bulkBreedingDecisions",
            summary = "Post many choices whether to serve cows as JSON, NDJSON or CSV")
    public Response bulkBreedingDecisions(
            @PathParam("herd") String herd,
            @BeanParam BulkQuery query,
            InputStream body,
            @Context HttpHeaders headers) {
        return postMany(herd, query, body, headers);
    }
}
