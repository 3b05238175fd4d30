package org.pailbook.records.calculate;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.inject.Inject;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import java.io.InputStream;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
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
    private final Caller caller;
    private final Clock clock;

    @Inject
    CalculateResource(Caller caller, Clock clock) {
        this.caller = caller;
        this.clock = clock;
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

    private ObjectNode read(InputStream body, HttpHeaders headers) {
        caller.requireScope(Scope.CALCULATE);
        return RecordDesk.readObject(body, headers, LimitedBody.MANY_RECORDS);
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MILLIS);
    }
}
