package org.pailbook.records.feed;

import jakarta.inject.Inject;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.pailbook.records.access.FeedAccess;
import org.pailbook.records.access.WithoutKey;
import org.pailbook.records.exchange.ClocksQuery;
import org.pailbook.records.exchange.ComputedDesk;
import org.pailbook.records.exchange.CsvTable;
import org.pailbook.records.exchange.HerdTable;
import org.pailbook.records.exchange.KnownHerd;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.store.FeedRow;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;

/** The tables behind feeds, for the web import of a spreadsheet. */
@Path("/feeds")
@WithoutKey
@Tag(name = "Feeds")
public class FeedTableResource {
    private final FeedKeyStore feeds;
    private final FeedAccess access;
    private final FeedTables tables;
    private final ComputedDesk desk;

    @Inject
    FeedTableResource(FeedKeyStore feeds, FeedAccess access, FeedTables tables, ComputedDesk desk) {
        this.feeds = feeds;
        this.access = access;
        this.tables = tables;
        this.desk = desk;
    }

    @GET
    @Path("/{token}/{report}.csv")
    @Produces({"text/csv", MediaType.WILDCARD})
    @Operation(operationId = "getFeedTable", summary = "The table of a feed, for a spreadsheet's web import")
    @APIResponse(
            responseCode = "200",
            description = "UTF-8 with byte order mark, CRLF, header row",
            content = @Content(mediaType = "text/csv", schema = @Schema(implementation = String.class)))
    public Response getFeedTable(
            @PathParam("token") @Parameter(description = "The secret of the feed") String token,
            @PathParam("report") @Parameter(description = "Name of the report it shows: test-days") String report,
            @BeanParam ClocksQuery clocks,
            @QueryParam("locale")
                    @Parameter(
                            description = "semicolon: semicolons between cells and a comma in numbers",
                            example = "semicolon")
                    String locale) {
        FeedRow feed = feeds.working(access.count(feeds.withToken(token).filter(found -> found.report.equals(report))));
        if (locale != null && !locale.equals("semicolon")) {
            throw Problem.badParameter("locale", "expected semicolon", locale);
        }
        KnownHerd known = desk.known(access.toRead(feed), clocks);
        HerdRow herd = known.herd();
        AsOf day = known.asOf();
        feeds.noteUse(feed);
        HerdTable table = tables.named(report).orElseThrow(Problem::notFound);
        StreamingOutput rows = out -> table.writeCsv(herd, day, locale != null, out);
        return Response.ok(rows)
                .type(CsvTable.MEDIA_TYPE)
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        "inline; filename=\"" + herd.code + "-" + report + "-" + day.day() + ".csv\"")
                .build();
    }
}
