package org.pailbook.records.feed;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.io.InputStream;
import java.net.URI;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
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
import org.pailbook.records.exchange.Cursors;
import org.pailbook.records.exchange.OnceOnly;
import org.pailbook.records.exchange.Pages;
import org.pailbook.records.exchange.RecordDesk;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.ApiKeyRow;
import org.pailbook.records.store.FeedRow;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.Herds;
import org.pailbook.records.store.RecordIds;
import org.pailbook.records.wire.Page;

/** Making, listing and revoking feeds over HTTP. */
@Path("/v1/feeds")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Feeds")
public class FeedResource {
    private final FeedKeyStore feeds;
    private final FeedTables tables;
    private final Herds herds;
    private final HerdAccess access;
    private final Cursors cursors;
    private final Caller caller;
    private final Clock clock;
    private final OnceOnly once;

    @Inject
    FeedResource(
            FeedKeyStore feeds,
            FeedTables tables,
            Herds herds,
            HerdAccess access,
            Cursors cursors,
            Caller caller,
            Clock clock,
            OnceOnly once) {
        this.once = once;
        this.feeds = feeds;
        this.tables = tables;
        this.herds = herds;
        this.access = access;
        this.cursors = cursors;
        this.caller = caller;
        this.clock = clock;
    }

    @GET
    @Operation(operationId = "listFeeds", summary = "The feeds this key made; with the scope admin all feeds")
    public Page<FeedView> listFeeds(
            @QueryParam("limit") @Parameter(description = "Feeds a page, 1 to 1000", example = "100") String limit,
            @QueryParam("cursor") @Parameter(description = "Place in the list, from the last page") String cursor,
            @Context UriInfo address) {
        int most = Pages.limit(limit);
        List<FeedRow> found =
                new ArrayList<>(feeds.page(onlyKey(), cursors.after(address, cursor, RecordIds::isId), most + 1));
        String next = null;
        if (found.size() > most) {
            found.remove(most);
            next = cursors.next(address, found.get(most - 1).id);
        }
        return new Page<>(
                found.stream()
                        .map(feed -> FeedView.of(feed, herds.findById(feed.herdId).code, null))
                        .toList(),
                next);
    }

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            operationId = "createFeed",
            summary =
                    "Make an address that shows one table of one herd without a key; it is in this answer only, also if the request is sent again")
    @RequestBody(
            required = true,
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = NewFeed.class)))
    public RestResponse<FeedView> createFeed(InputStream body, @Context HttpHeaders headers) {
        ApiKeyRow key = key();
        return once.showingOnce(
                headers, body, sent -> create(key, RecordDesk.readObject(sent, headers)), FeedView::withoutAddress);
    }

    private RestResponse<FeedView> create(ApiKeyRow key, ObjectNode body) {
        NewFeed wanted = NewFeed.read(body, LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC), tables);
        HerdRow herd = access.toRead(wanted.herd());
        FeedKeyStore.MadeFeed made = feeds.create(herd, wanted, key.id);
        return RestResponse.ResponseBuilder.<FeedView>created(URI.create("/v1/feeds/" + made.row().id))
                .entity(FeedView.of(made.row(), herd.code, made.token()))
                .build();
    }

    @DELETE
    @Path("/{id}")
    @Operation(operationId = "revokeFeed", summary = "Revoke a feed; it stays listed")
    public void revokeFeed(@PathParam("id") String id) {
        feeds.revoke(id, onlyKey());
    }

    /** Whose feeds the caller may see: null for everybody's. */
    private String onlyKey() {
        ApiKeyRow key = key();
        return caller.scopes().contains(Scope.ADMIN) && caller.reachesEveryHerd() ? null : key.id;
    }

    private ApiKeyRow key() {
        return caller.key()
                .orElseThrow(() -> new Problem(ProblemCode.NOT_AUTHENTICATED, "Feeds are made and kept by a key."));
    }
}
