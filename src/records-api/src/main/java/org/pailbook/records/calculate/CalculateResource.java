package org.pailbook.records.calculate;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.inject.Inject;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.io.InputStream;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.pailbook.records.access.Caller;
import org.pailbook.records.access.Scope;
import org.pailbook.records.computed.CurvesView;
import org.pailbook.records.computed.YieldsView;
import org.pailbook.records.exchange.RecordDesk;
import org.pailbook.records.wire.LimitedBody;

/** Figures of what is posted, over HTTP. Nothing is stored. */
@Path("/v1/calculate")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Calculations")
public class CalculateResource {
    private static final String CSV = "text/csv";

    private final Caller caller;
    private final Clock clock;
    private final ObjectMapper json;

    @Inject
    CalculateResource(Caller caller, Clock clock, ObjectMapper json) {
        this.caller = caller;
        this.clock = clock;
        this.json = json;
    }

    @POST
    @Path("/curve-fit")
    @Operation(
            operationId = "calculateCurveFit",
            summary = "Fit lactation curves to posted tests; stores nothing; needs the scope calculate")
    @RequestBody(
            required = true,
            content =
                    @Content(
                            mediaType = "application/json",
                            schema = @Schema(implementation = CurveFitRequest.Members.class)))
    public CurvesView calculateCurveFit(@BeanParam ExplainQuery query, InputStream body, @Context HttpHeaders headers) {
        return CurveFitRequest.read(read(body, headers)).answer(query.isExplained(), now());
    }

    @POST
    @Path("/accumulated-yield")
    @Operation(
            operationId = "calculateAccumulatedYield",
            summary = "Add up what a cow gave from posted tests; stores nothing; needs the scope calculate")
    @RequestBody(
            required = true,
            content =
                    @Content(
                            mediaType = "application/json",
                            schema = @Schema(implementation = YieldRequest.Members.class)))
    public YieldsView calculateAccumulatedYield(
            @BeanParam ExplainQuery query, InputStream body, @Context HttpHeaders headers) {
        return YieldRequest.read(read(body, headers)).answer(query.isExplained(), now());
    }

    @POST
    @Path("/corrected-milk")
    @Operation(
            operationId = "calculateCorrectedMilk",
            summary = "Bring posted milk to a standard composition; stores nothing; needs the scope calculate")
    @RequestBody(
            required = true,
            content =
                    @Content(
                            mediaType = "application/json",
                            schema = @Schema(implementation = CorrectedMilkRequest.Members.class)))
    public CorrectedMilkView calculateCorrectedMilk(
            @BeanParam ExplainQuery query, InputStream body, @Context HttpHeaders headers) {
        return CorrectedMilkRequest.read(read(body, headers)).answer(query.isExplained(), now());
    }

    @POST
    @Path("/persistency")
    @Operation(
            operationId = "calculatePersistency",
            summary = "Tell how a posted lactation holds up; stores nothing; needs the scope calculate")
    @RequestBody(
            required = true,
            content =
                    @Content(
                            mediaType = "application/json",
                            schema = @Schema(implementation = PersistencyRequest.Members.class)))
    public PersistencyView calculatePersistency(
            @BeanParam ExplainQuery query, InputStream body, @Context HttpHeaders headers) {
        return PersistencyRequest.read(read(body, headers)).answer(query.isExplained(), now());
    }

    @POST
    @Path("/cow-value")
    @Operation(
            operationId = "calculateCowValue",
            summary =
                    "Tell what keeping a posted cow is worth over replacing her; stores nothing; needs the scope calculate",
            description =
                    "An estimate to think with, never an order; show its caution with it. Prices and herd left out take values of an"
                            + " invented reference set, which the answer names. Money in your currency units.")
    @RequestBody(
            required = true,
            content =
                    @Content(
                            mediaType = "application/json",
                            schema = @Schema(implementation = CowValueRequest.Members.class)))
    public CowValueView calculateCowValue(
            @BeanParam ExplainQuery query, InputStream body, @Context HttpHeaders headers) {
        Instant now = now();
        return CowValueRequest.read(read(body, headers), now).answer(query.isExplained(), now);
    }

    @POST
    @Path("/projections")
    @Produces({MediaType.APPLICATION_JSON, CSV})
    @Operation(
            operationId = "calculateProjections",
            summary = "Project posted lactations to 305 days, learning from posted history; needs the scope calculate",
            description =
                    "JSON is answered with JSON, a table of test days with a table of one line a lactation. In a table"
                            + " every lactation is projected, and those of the other cows are its history. Columns: animal, parity, breed, calving_date,"
                            + " test_date, dim, milk_kg, fat_pct, protein_pct, scc_thousand. Stores nothing.")
    @RequestBody(
            required = true,
            content = {
                @Content(
                        mediaType = "application/json",
                        schema = @Schema(implementation = ProjectionsRequest.Members.class)),
                @Content(mediaType = CSV, schema = @Schema(implementation = String.class))
            })
    @APIResponse(
            responseCode = "200",
            description = "OK",
            content = {
                @Content(mediaType = "application/json", schema = @Schema(implementation = ProjectionsView.class)),
                @Content(mediaType = CSV, schema = @Schema(implementation = String.class))
            })
    public Response calculateProjections(
            @BeanParam ProjectionsQuery query, InputStream body, @Context HttpHeaders headers) {
        caller.requireScope(Scope.CALCULATE);
        boolean isTable = RecordDesk.isTable(headers);
        InputStream limited = new LimitedBody(body, LimitedBody.MANY_RECORDS);
        boolean explain = query.isExplained(isTable);
        Optional<LocalDate> asOf = query.asOfTable(isTable);
        ProjectionsWriting projections =
                new ProjectionsWriting(isTable ? TestDayTable.read(limited, asOf) : ProjectionsRequest.read(limited));
        Instant now = now();
        StreamingOutput answer =
                isTable ? projections::writeCsv : stream -> projections.writeJson(json, stream, explain, now);
        return Response.ok(answer)
                .type(isTable ? CSV + ";charset=utf-8;header=present" : MediaType.APPLICATION_JSON)
                .build();
    }

    private ObjectNode read(InputStream body, HttpHeaders headers) {
        caller.requireScope(Scope.CALCULATE);
        return RecordDesk.readObject(body, headers, LimitedBody.MANY_RECORDS);
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MILLIS);
    }
}
