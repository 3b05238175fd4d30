package org.pailbook.records.key;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import java.io.InputStream;
import java.net.URI;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestResponse;
import org.pailbook.records.access.Caller;
import org.pailbook.records.access.KeyStore;
import org.pailbook.records.access.Scope;
import org.pailbook.records.exchange.OnceOnly;
import org.pailbook.records.exchange.RecordDesk;
import org.pailbook.records.wire.Page;

/** Keys over HTTP. */
@Path("/v1")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Keys")
public class KeyResource {
    private final KeyStore keys;
    private final Caller caller;
    private final OnceOnly once;

    @Inject
    KeyResource(KeyStore keys, Caller caller, OnceOnly once) {
        this.once = once;
        this.keys = keys;
        this.caller = caller;
    }

    @GET
    @Path("/me")
    @Operation(operationId = "getMe", summary = "What the key of this request may do")
    public MeView getMe() {
        return MeView.of(caller);
    }

    @GET
    @Path("/keys")
    @Operation(operationId = "listKeys", summary = "All keys, without their text; needs the scope admin")
    public Page<KeyView> listKeys() {
        requireAdministrator();
        return new Page<>(keys.all().stream().map(row -> KeyView.of(row, null)).toList(), null);
    }

    @POST
    @Path("/keys")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            operationId = "createKey",
            summary =
                    "Make a key; its text is in this answer only, also if the request is sent again; needs the scope admin")
    @RequestBody(
            required = true,
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = NewKey.class)))
    public RestResponse<KeyView> createKey(InputStream body, @Context HttpHeaders headers) {
        requireAdministrator();
        return once.showingOnce(
                headers, body, sent -> create(RecordDesk.readObject(sent, headers)), KeyView::withoutText);
    }

    private RestResponse<KeyView> create(ObjectNode body) {
        NewKey wanted = NewKey.read(body);
        KeyStore.MadeKey made = keys.create(wanted.label(), wanted.scopeSet(), wanted.herds(), wanted.expiresOn());
        return RestResponse.ResponseBuilder.<KeyView>created(URI.create("/v1/keys/" + made.row().id))
                .entity(KeyView.of(made.row(), made.text()))
                .build();
    }

    @POST
    @Path("/keys/{id}/rotate")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            operationId = "rotateKey",
            summary = "Give a key a new text; the old one works on for overlapHours; needs the scope admin")
    @RequestBody(
            required = true,
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = KeyRotation.class)))
    public RestResponse<KeyView> rotateKey(@PathParam("id") String id, InputStream body, @Context HttpHeaders headers) {
        requireAdministrator();
        return once.showingOnce(
                headers, body, sent -> rotate(id, RecordDesk.readObject(sent, headers)), KeyView::withoutText);
    }

    private RestResponse<KeyView> rotate(String id, ObjectNode body) {
        KeyStore.MadeKey made = keys.rotate(id, KeyRotation.read(body).overlap());
        return RestResponse.ok(KeyView.of(made.row(), made.text()));
    }

    @DELETE
    @Path("/keys/{id}")
    @Operation(operationId = "revokeKey", summary = "Revoke a key; it stays listed; needs the scope admin")
    public void revokeKey(@PathParam("id") String id) {
        requireAdministrator();
        keys.revoke(id);
    }

    private void requireAdministrator() {
        caller.requireScope(Scope.ADMIN);
        caller.requireEveryHerd();
    }
}
