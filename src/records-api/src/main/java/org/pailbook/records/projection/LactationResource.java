package org.pailbook.records.projection;

import jakarta.inject.Inject;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestResponse;
import org.pailbook.records.access.HerdAccess;
import org.pailbook.records.computed.CurvesView;
import org.pailbook.records.computed.Subject;
import org.pailbook.records.computed.YieldsView;
import org.pailbook.records.exchange.ClocksQuery;
import org.pailbook.records.exchange.ComputedDesk;
import org.pailbook.records.exchange.KnownHerd;
import org.pailbook.records.problem.Fault;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.wire.Page;

/** Lactations of a cow over HTTP. */
@Path("/v1/herds/{herd}/animals/{animal}/lactations")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Lactations")
public class LactationResource {
    private static final String CURRENT = "current";

    private final HerdAccess access;
    private final ComputedDesk desk;
    private final LactationQueries lactations;

    @Inject
    LactationResource(HerdAccess access, ComputedDesk desk, LactationQueries lactations) {
        this.access = access;
        this.desk = desk;
        this.lactations = lactations;
    }

    @GET
    @Operation(operationId = "listLactations", summary = "All lactations of a cow, in order of calving")
    public RestResponse<Page<LactationView>> listLactations(
            @PathParam("herd") String herd,
            @PathParam("animal") String animal,
            @BeanParam ClocksQuery clocks,
            @BeanParam LactationQuery query,
            @Context HttpHeaders headers) {
        LactationQueries.Choice choice = query.choice(false);
        return desk.answer(
                herd,
                clocks,
                headers,
                known -> new Page<>(
                        lactations.all(known.herd(), access.animal(known.herd(), animal), known.asOf(), choice), null));
    }

    @GET
    @Path("/current")
    @Operation(operationId = "getCurrentLactation", summary = "The latest lactation of a cow with its figures")
    public RestResponse<LactationView> getCurrentLactation(
            @PathParam("herd") String herd,
            @PathParam("animal") String animal,
            @BeanParam ClocksQuery clocks,
            @BeanParam LactationQuery query,
            @Context HttpHeaders headers) {
        return one(herd, animal, CURRENT, clocks, query, headers);
    }

    @GET
    @Path("/{parity}")
    @Operation(operationId = "getLactation", summary = "The lactation of a parity with its figures")
    public RestResponse<LactationView> getLactation(
            @PathParam("herd") String herd,
            @PathParam("animal") String animal,
            @PathParam("parity") String parity,
            @BeanParam ClocksQuery clocks,
            @BeanParam LactationQuery query,
            @Context HttpHeaders headers) {
        return one(herd, animal, parity, clocks, query, headers);
    }

    private RestResponse<LactationView> one(
            String herd, String animal, String parity, ClocksQuery clocks, LactationQuery query, HttpHeaders headers) {
        LactationQueries.Choice choice = query.choice(true);
        return desk.answer(
                herd,
                clocks,
                headers,
                known -> lactations.one(
                        known.herd(), access.animal(known.herd(), animal), number(parity), known.asOf(), choice));
    }

    @GET
    @Path("/{parity}/curve")
    @Operation(
            operationId = "getLactationCurve",
            summary = "Curves fitted to the tests of a lactation: one by its name, or all of them side by side")
    public RestResponse<CurvesView> getLactationCurve(
            @PathParam("herd") String herd,
            @PathParam("animal") String animal,
            @PathParam("parity") String parity,
            @BeanParam ClocksQuery clocks,
            @BeanParam CurveQuery query,
            @Context HttpHeaders headers) {
        return desk.answer(
                herd,
                clocks,
                headers,
                known -> CurvesView.of(subject(known, animal, parity), query.models(), query.isExplained()));
    }

    @GET
    @Path("/{parity}/curve.svg")
    @Produces({"image/svg+xml", MediaType.WILDCARD})
    @Operation(
            operationId = "getLactationPicture",
            summary =
                    "A lactation drawn: its tests, what was expected of each day to day 305, and the band 80 in 100 weights lie in")
    @APIResponse(
            responseCode = "200",
            description =
                    "A picture with title and description, in English, weights in the unit of the herd's settings (milkUnit, kg if not set); not there without a calving",
            content = @Content(mediaType = "image/svg+xml", schema = @Schema(type = SchemaType.STRING)))
    public RestResponse<String> getLactationPicture(
            @PathParam("herd") String herd,
            @PathParam("animal") String animal,
            @PathParam("parity") String parity,
            @BeanParam ClocksQuery clocks,
            @Context HttpHeaders headers) {
        return desk.answerAnew(
                herd,
                clocks,
                headers,
                known -> lactations
                        .picture(known.herd(), access.animal(known.herd(), animal), number(parity), known.asOf())
                        .orElseThrow(() -> new Problem(
                                ProblemCode.NOT_FOUND,
                                "There is no lactation to draw: no calving of that parity by that day.")));
    }

    @GET
    @Path("/{parity}/yield")
    @Operation(
            operationId = "getLactationYield",
            summary = "What a cow gave so far in a lactation: by one method, or by all of them side by side")
    public RestResponse<YieldsView> getLactationYield(
            @PathParam("herd") String herd,
            @PathParam("animal") String animal,
            @PathParam("parity") String parity,
            @BeanParam ClocksQuery clocks,
            @BeanParam YieldQuery query,
            @Context HttpHeaders headers) {
        return desk.answer(
                herd,
                clocks,
                headers,
                known -> YieldsView.of(subject(known, animal, parity), query.methodId(), query.isExplained()));
    }

    private Subject subject(KnownHerd known, String animal, String parity) {
        return lactations.subject(known.herd(), access.animal(known.herd(), animal), number(parity), known.asOf());
    }

    /** The parity a path names; empty for the latest lactation. */
    private static Optional<Integer> number(String parity) {
        if (parity.equals(CURRENT)) {
            return Optional.empty();
        }
        if (!parity.matches("[1-9][0-9]?")) {
            throw new Problem(
                    ProblemCode.BAD_PATH,
                    "The path names current or a parity from 1 to 99.",
                    List.of(Fault.inParameter("parity", "bad-path", "expected current or 1 to 99")
                            .withValue(parity)));
        }
        return Optional.of(Integer.valueOf(parity));
    }
}
