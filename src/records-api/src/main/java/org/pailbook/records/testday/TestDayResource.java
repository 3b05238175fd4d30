package org.pailbook.records.testday;

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
import org.pailbook.records.store.TestDayRow;
import org.pailbook.records.wire.Page;
import org.pailbook.records.wire.StoredView;

/** The test days of a herd over HTTP. */
@Path("/v1/herds/{herd}/test-days")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Test days")
public class TestDayResource extends EventResource<TestDayRow, TestDayBody> {
    private final TestDayKind kind;

    @Inject
    TestDayResource(TestDayKind kind) {
        this.kind = kind;
    }

    @Override
    protected EventKind<TestDayRow> kind() {
        return kind;
    }

    @Override
    protected TestDayBody view(TestDayRow record, AnimalIdentifier animal) {
        return TestDayBody.of(record, animal);
    }

    @GET
    @Operation(operationId = "listTestDays", summary = "The test days of a herd, by day")
    public Page<StoredView<TestDayBody>> listTestDays(
            @PathParam("herd") String herd, @BeanParam ListQuery query, @Context UriInfo address) {
        return list(herd, query, address);
    }

    @GET
    @Path("/{id}")
    @Operation(operationId = "getTestDay", summary = "One test day")
    public RestResponse<StoredView<TestDayBody>> getTestDay(
            @PathParam("herd") String herd,
            @PathParam("id") String id,
            @BeanParam KnownAtQuery query,
            @Context HttpHeaders headers) {
        return one(herd, id, query, headers);
    }

    @POST
    @Operation(operationId = "upsertTestDay", summary = "Post one test day; a resend changes nothing")
    @RequestBody(
            required = true,
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = TestDayBody.class)))
    public RestResponse<PostedAnswer<TestDayBody>> upsertTestDay(
            @PathParam("herd") String herd, InputStream body, @Context HttpHeaders headers) {
        return post(herd, body, headers);
    }

    @POST
    @Path("/bulk")
    @Operation(operationId = "bulkTestDays", summary = "Post many test days as JSON, NDJSON or CSV")
    public Response bulkTestDays(
            @PathParam("herd") String herd,
            @BeanParam BulkQuery query,
            InputStream body,
            @Context HttpHeaders headers) {
        return postMany(herd, query, body, headers);
    }
}
