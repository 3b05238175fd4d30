package org.pailbook.records.herd;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.inject.Inject;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.io.InputStream;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestResponse;
import org.pailbook.records.access.Caller;
import org.pailbook.records.access.HerdAccess;
import org.pailbook.records.access.Scope;
import org.pailbook.records.exchange.ComputedDesk;
import org.pailbook.records.exchange.Cursors;
import org.pailbook.records.exchange.KnownAtQuery;
import org.pailbook.records.exchange.OnceOnly;
import org.pailbook.records.exchange.Pages;
import org.pailbook.records.exchange.Precondition;
import org.pailbook.records.exchange.RecordDesk;
import org.pailbook.records.exchange.VersionDesk;
import org.pailbook.records.intake.Edit;
import org.pailbook.records.store.HerdChanges;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.Herds;
import org.pailbook.records.store.SupersededVersionRow;
import org.pailbook.records.store.Versions;
import org.pailbook.records.wire.Action;
import org.pailbook.records.wire.Page;
import org.pailbook.records.wire.VersionView;

/** Herds over HTTP. */
@Path("/v1/herds")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Herds")
public class HerdResource {
    private final Herds herds;
    private final HerdIntake intake;
    private final HerdAccess access;
    private final ComputedDesk computed;
    private final Cursors cursors;
    private final Versions versions;
    private final Caller caller;
    private final OnceOnly once;

    @Inject
    HerdResource(
            Herds herds,
            HerdIntake intake,
            HerdAccess access,
            ComputedDesk computed,
            Cursors cursors,
            Versions versions,
            Caller caller,
            OnceOnly once) {
        this.once = once;
        this.herds = herds;
        this.intake = intake;
        this.access = access;
        this.computed = computed;
        this.cursors = cursors;
        this.versions = versions;
        this.caller = caller;
    }

    @GET
    @Operation(operationId = "listHerds", summary = "The herds this key reaches, by code")
    public Page<HerdBody> listHerds(
            @QueryParam("limit") @Parameter(description = "Herds a page, 1 to 1000", example = "100") String limit,
            @QueryParam("cursor") @Parameter(description = "Place in the list, from the last page") String cursor,
            @QueryParam("count") @Parameter(description = "true: tell how many there are", example = "false")
                    String count,
            @BeanParam KnownAtQuery query,
            @Context UriInfo address) {
        caller.requireScope(Scope.READ);
        query.reaches(null);
        int most = Pages.limit(limit);
        List<HerdRow> found = page(query, cursors.after(address, cursor, Herds::isCode), most + 1);
        String next = null;
        if (found.size() > most) {
            found.remove(most);
            next = cursors.next(address, found.get(most - 1).code);
        }
        return new Page<>(
                found.stream().map(HerdBody::of).toList(),
                next,
                Pages.flag("count", count) ? (Long) total(query) : null);
    }

    /** Herds as they were known then; those not known yet are left out, and others taken in their place. */
    private List<HerdRow> page(KnownAtQuery query, String after, int most) {
        List<HerdRow> found = new ArrayList<>();
        String last = after;
        while (found.size() < most) {
            int wanted = most - found.size();
            List<HerdRow> some = caller.reachesEveryHerd()
                    ? herds.pageAll(last, wanted)
                    : herds.pageOf(caller.herdCodes(), last, wanted);
            found.addAll(computed.known(some, query));
            if (some.size() < wanted) {
                break;
            }
            last = some.get(some.size() - 1).code;
        }
        return found;
    }

    private long total(KnownAtQuery query) {
        if (query.isOfThePast()) {
            return page(query, "", Integer.MAX_VALUE).size();
        }
        return caller.reachesEveryHerd() ? herds.count() : herds.count("code in ?1", caller.herdCodes());
    }

    @GET
    @Path("/{herd}")
    @Operation(operationId = "getHerd", summary = "One herd")
    public RestResponse<HerdBody> getHerd(
            @PathParam("herd") String herdCode, @BeanParam KnownAtQuery query, @Context HttpHeaders headers) {
        HerdRow herd = computed.toRead(herdCode, query);
        String tag = Precondition.tagOf(herd.version);
        return Precondition.isKnown(headers, tag)
                ? RestResponse.ResponseBuilder.<HerdBody>create(Response.Status.NOT_MODIFIED)
                        .header(HttpHeaders.ETAG, tag)
                        .build()
                : answer(RestResponse.ResponseBuilder.ok(HerdBody.of(herd)), herd);
    }

    @PUT
    @Path("/{herd}")
    public RestResponse<HerdBody> replace(
            @PathParam("herd") String herdCode, InputStream body, @Context HttpHeaders headers) {
        HerdRow herd = access.toWrite(herdCode);
        IntPredicate expected = Precondition.ofChange(headers);
        return changed(herd, expected, Edit.whole(RecordDesk.readObject(body, headers)));
    }

    @PATCH
    @Path("/{herd}")
    public RestResponse<HerdBody> patch(
            @PathParam("herd") String herdCode, InputStream body, @Context HttpHeaders headers) {
        HerdRow herd = access.toWrite(herdCode);
        IntPredicate expected = Precondition.ofChange(headers);
        return changed(herd, expected, Edit.merging(VersionDesk.readPatch(body, headers)));
    }

    private RestResponse<HerdBody> changed(HerdRow herd, IntPredicate expected, Edit edit) {
        HerdRow now = intake.change(herd, caller.keyId(), expected, edit);
        return answer(RestResponse.ResponseBuilder.ok(HerdBody.of(now)), now);
    }

    private static RestResponse<HerdBody> answer(RestResponse.ResponseBuilder<HerdBody> begun, HerdRow herd) {
        return begun.header(HttpHeaders.ETAG, Precondition.tagOf(herd.version)).build();
    }

    @GET
    @Path("/{herd}/history")
    public Page<VersionView<HerdBody>> history(@PathParam("herd") String herdCode, @BeanParam KnownAtQuery query) {
        HerdRow herd = computed.toRead(herdCode, query);
        List<HerdRow> all = new ArrayList<>();
        for (SupersededVersionRow replaced : versions.replaced(herd.id, herd.id)) {
            if (replaced.version < herd.version) {
                all.add(HerdChanges.restore(herd, replaced));
            }
        }
        all.add(herd);
        return new Page<>(
                all.stream()
                        .map(version -> new VersionView<>(
                                version.version,
                                version.recordedAt.toString(),
                                version.recordedBy,
                                null,
                                Action.of(version.version, false, false),
                                HerdBody.of(version)))
                        .toList(),
                null);
    }

    @POST
    @Operation(operationId = "createHerd", summary = "Make a herd; the same again changes nothing")
    @RequestBody(
            required = true,
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = HerdBody.class)))
    public RestResponse<HerdBody> createHerd(InputStream body, @Context HttpHeaders headers) {
        caller.requireScope(Scope.WRITE);
        caller.requireEveryHerd();
        return once.single(headers, body, sent -> create(RecordDesk.readObject(sent, headers)));
    }

    private RestResponse<HerdBody> create(ObjectNode body) {
        HerdIntake.Taken taken = intake.take(body, caller.keyId());
        HerdBody made = HerdBody.of(taken.herd());
        return answer(
                taken.isNew()
                        ? RestResponse.ResponseBuilder.<HerdBody>created(URI.create("/v1/herds/" + taken.herd().code))
                                .entity(made)
                        : RestResponse.ResponseBuilder.ok(made),
                taken.herd());
    }
}
