package org.pailbook.records.projection;

import jakarta.inject.Inject;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.pailbook.records.access.HerdAccess;
import org.pailbook.records.computed.CurvesView;
import org.pailbook.records.computed.Subject;
import org.pailbook.records.computed.YieldsView;
import org.pailbook.records.problem.Fault;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.AnimalRow;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;
import org.pailbook.records.wire.Page;

/** Lactations of a cow over HTTP. */
@Path("/v1/herds/{herd}/animals/{animal}/lactations")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Lactations")
public class LactationResource {
    private static final String CURRENT = "current";

    private final HerdAccess access;
    private final LactationQueries lactations;
    private final Clock clock;

    @Inject
    LactationResource(HerdAccess access, LactationQueries lactations, Clock clock) {
        this.access = access;
        this.lactations = lactations;
        this.clock = clock;
    }

    @GET
    @Operation(operationId = "listLactations", summary = "All lactations of a cow, in order of calving")
    public Page<LactationView> listLactations(
            @PathParam("herd") String herdCode, @PathParam("animal") String animal, @BeanParam LactationQuery query) {
        HerdRow herd = access.toRead(herdCode);
        AnimalRow cow = access.animal(herd, animal);
        AsOf asOf = AsOf.of(query.asOf, herd.zone(), clock);
        List<LactationView> views = lactations.all(herd, cow, asOf, query.choice(false));
        return new Page<>(views, null);
    }

    @GET
    @Path("/current")
    @Operation(operationId = "getCurrentLactation", summary = "The latest lactation of a cow with its figures")
    public LactationView getCurrentLactation(
            @PathParam("herd") String herdCode, @PathParam("animal") String animal, @BeanParam LactationQuery query) {
        return one(herdCode, animal, Optional.empty(), query);
    }

    @GET
    @Path("/{parity}")
    @Operation(operationId = "getLactation", summary = "The lactation of a parity with its figures")
    public LactationView getLactation(
            @PathParam("herd") String herdCode,
            @PathParam("animal") String animal,
            @PathParam("parity") String parity,
            @BeanParam LactationQuery query) {
        return one(herdCode, animal, number(parity), query);
    }

    @GET
    @Path("/{parity}/curve")
    @Operation(
            operationId = "getLactationCurve",
            summary = "Curves fitted to the tests of a lactation: one by its name, or all of them side by side")
    public CurvesView getLactationCurve(
            @PathParam("herd") String herdCode,
            @PathParam("animal") String animal,
            @PathParam("parity") String parity,
            @BeanParam CurveQuery query) {
        Subject subject = subject(herdCode, animal, parity, query.asOf);
        return CurvesView.of(subject, query.models(), query.isExplained());
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
            description = "A picture with title and description; not there without a calving",
            content = @Content(mediaType = "image/svg+xml", schema = @Schema(type = SchemaType.STRING)))
    public Response getLactationPicture(
            @PathParam("herd") String herdCode,
            @PathParam("animal") String animal,
            @PathParam("parity") String parity,
            @QueryParam("asOf")
                    @Parameter(
                            description = "Events after this day take no part; today in the herd's zone if left out",
                            example = "2025-11-30")
                    String asOfDay) {
        HerdRow herd = access.toRead(herdCode);
        AnimalRow cow = access.animal(herd, animal);
        String svg = lactations
                .picture(herd, cow, number(parity), AsOf.of(asOfDay, herd.zone(), clock))
                .orElseThrow(() -> new Problem(
                        ProblemCode.NOT_FOUND,
                        "There is no lactation to draw: no calving of that parity by that day."));
        return Response.ok(svg, "image/svg+xml").build();
    }

    @GET
    @Path("/{parity}/yield")
    @Operation(
            operationId = "getLactationYield",
            summary = "What a cow gave so far in a lactation: by one method, or by all of them side by side")
    public YieldsView getLactationYield(
            @PathParam("herd") String herdCode,
            @PathParam("animal") String animal,
            @PathParam("parity") String parity,
            @BeanParam YieldQuery query) {
        Subject subject = subject(herdCode, animal, parity, query.asOf);
        return YieldsView.of(subject, query.methodId(), query.isExplained());
    }

    private Subject subject(String herdCode, String animal, String parity, String asOfDay) {
        HerdRow herd = access.toRead(herdCode);
        AnimalRow cow = access.animal(herd, animal);
        return lactations.subject(herd, cow, number(parity), AsOf.of(asOfDay, herd.zone(), clock));
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

    private LactationView one(String herdCode, String animal, Optional<Integer> parity, LactationQuery query) {
        HerdRow herd = access.toRead(herdCode);
        AnimalRow cow = access.animal(herd, animal);
        AsOf asOf = AsOf.of(query.asOf, herd.zone(), clock);
        return lactations.one(herd, cow, parity, asOf, query.choice(true));
    }
}
