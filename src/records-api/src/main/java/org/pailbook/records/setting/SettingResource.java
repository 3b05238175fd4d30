package org.pailbook.records.setting;

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
import org.pailbook.records.store.SettingRow;
import org.pailbook.records.wire.Page;
import org.pailbook.records.wire.StoredView;

/** The settings of a herd over HTTP. */
@Path("/v1/herds/{herd}/settings")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Settings")
public class SettingResource extends HerdRecordResource<SettingRow, SettingBody> {
    private final SettingKind kind;

    @Inject
    SettingResource(SettingKind kind) {
        this.kind = kind;
    }

    @Override
    protected HerdRecordKind<SettingRow> kind() {
        return kind;
    }

    @Override
    protected SettingBody view(SettingRow record) {
        return SettingBody.of(record);
    }

    @GET
    @Operation(operationId = "listSettings", summary = "The settings of a herd, by day")
    public Page<StoredView<SettingBody>> listSettings(
            @PathParam("herd") String herd, @BeanParam PeriodQuery query, @Context UriInfo address) {
        return list(herd, query, address);
    }

    @GET
    @Path("/{id}")
    @Operation(operationId = "getSetting", summary = "One set of settings")
    public RestResponse<StoredView<SettingBody>> getSetting(
            @PathParam("herd") String herd,
            @PathParam("id") String id,
            @BeanParam KnownAtQuery query,
            @Context HttpHeaders headers) {
        return one(herd, id, query, headers);
    }

    @POST
    @Operation(operationId = "upsertSetting", summary = "Post one set of settings; a resend changes nothing")
    @RequestBody(
            required = true,
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = SettingBody.class)))
    public RestResponse<PostedAnswer<SettingBody>> upsertSetting(
            @PathParam("herd") String herd, InputStream body, @Context HttpHeaders headers) {
        return post(herd, body, headers);
    }

    @POST
    @Path("/bulk")
    @Operation(operationId = "bulkSettings", summary = "Post many settings as JSON, NDJSON or CSV")
    public Response bulkSettings(
            @PathParam("herd") String herd,
            @BeanParam BulkQuery query,
            InputStream body,
            @Context HttpHeaders headers) {
        return postMany(herd, query, body, headers);
    }
}
