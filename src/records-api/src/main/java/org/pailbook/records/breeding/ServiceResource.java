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
import org.pailbook.records.store.ServiceRow;
import org.pailbook.records.wire.Page;
import org.pailbook.records.wire.StoredView;

/** The services of a herd over HTTP. */
@Path("/v1/herds/{herd}/services")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Services")
public class ServiceResource extends EventResource<ServiceRow, ServiceBody> {
    private final ServiceKind kind;

    @Inject
    ServiceResource(ServiceKind kind) {
        this.kind = kind;
    }

    @Override
    protected EventKind<ServiceRow> kind() {
        return kind;
    }

    @Override
    protected ServiceBody view(ServiceRow record, AnimalIdentifier animal) {
        return ServiceBody.of(record, animal);
    }

    @GET
    @Operation(operationId = "listServices", summary = "The services of a herd, by day")
    public Page<StoredView<ServiceBody>> listServices(
            @PathParam("herd") String herd, @BeanParam ListQuery query, @Context UriInfo address) {
        return list(herd, query, address);
    }

    @GET
    @Path("/{id}")
    @Operation(operationId = "getService", summary = "One service")
    public RestResponse<StoredView<ServiceBody>> getService(
            @PathParam("herd") String herd,
            @PathParam("id") String id,
            @BeanParam KnownAtQuery query,
            @Context HttpHeaders headers) {
        return one(herd, id, query, headers);
    }

    @POST
    @Operation(operationId = "upsertService", summary = "Post one service; a resend changes nothing")
    @RequestBody(
            required = true,
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = ServiceBody.class)))
    public RestResponse<PostedAnswer<ServiceBody>> upsertService(
            @PathParam("herd") String herd, InputStream body, @Context HttpHeaders headers) {
        return post(herd, body, headers);
    }

    @POST
    @Path("/bulk")
    @Operation(operationId = "bulkServices", summary = "Post many services as JSON, NDJSON or CSV")
    public Response bulkServices(
            @PathParam("herd") String herd,
            @BeanParam BulkQuery query,
            InputStream body,
            @Context HttpHeaders headers) {
        return postMany(herd, query, body, headers);
    }
}
