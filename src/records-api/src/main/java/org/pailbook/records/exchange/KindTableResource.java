package org.pailbook.records.exchange;

import jakarta.inject.Inject;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.pailbook.records.intake.DatedKind;
import org.pailbook.records.intake.RecordKind;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.store.HerdRow;

/** The records of a kind as a table that goes in again unchanged; a list asked for as {@code text/csv} comes here too. */
@Path("/v1/herds/{herd}/{kind: [a-z-]+}.csv")
@Tag(name = "Tables")
public class KindTableResource {
    private final ComputedDesk computed;
    private final KindTables tables;

    @Inject
    KindTableResource(ComputedDesk computed, KindTables tables) {
        this.computed = computed;
        this.tables = tables;
    }

    @GET
    @Produces({"text/csv", MediaType.WILDCARD})
    @Operation(operationId = "getKindTable", summary = "All records of a kind as CSV, to be kept or sent in again")
    @APIResponse(
            responseCode = "200",
            description = "UTF-8 with byte order mark, CRLF, a header row of the columns that bulk takes",
            content = @Content(mediaType = "text/csv", schema = @Schema(implementation = String.class)))
    public Response getKindTable(
            @PathParam("herd") @Parameter(description = "Code of the herd") String herdCode,
            @PathParam("kind") @Parameter(description = "Kind of record, as in the path of its list") String kindName,
            @BeanParam TableQuery query) {
        HerdRow herd = computed.toRead(herdCode, query.knownAt);
        RecordKind<?> kind = tables.kind(kindName).orElseThrow(Problem::notFound);
        if (!(kind instanceof DatedKind<?>) && (query.from != null || query.to != null)) {
            throw Problem.badParameter(query.from == null ? "to" : "from", "is not for " + kindName, "a day");
        }
        query.isWithSemicolons();
        query.first();
        query.last();
        StreamingOutput out = stream -> tables.write(kind, herd, query, stream);
        return Response.ok(out)
                .type(CsvTable.MEDIA_TYPE)
                .header("Content-Disposition", "inline; filename=\"" + herd.code + "-" + kindName + ".csv\"")
                .build();
    }
}
