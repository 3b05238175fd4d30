package org.pailbook.records.app;

import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.pailbook.records.access.WithoutKey;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.wire.Page;

/** Where to begin, and what each problem code means; for whoever opens the root address or a problem's type. */
@Path("/")
@WithoutKey
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Index")
public class IndexResource {
    private final SampleHerd sampleHerd;

    @Inject
    IndexResource(SampleHerd sampleHerd) {
        this.sampleHerd = sampleHerd;
    }

    /** What is at the root address. */
    @Schema(name = "Index")
    record IndexView(String name, String does, Map<String, String> addresses) {}

    /** What a problem code means. */
    @Schema(name = "ProblemMeaning")
    record MeaningView(String code, int status, String title) {
        static MeaningView of(ProblemCode code) {
            return new MeaningView(code.code(), code.status(), code.title());
        }
    }

    /** A browser says first that it wants a web page; whatever else asks gets the addresses. */
    @GET
    @Produces({MediaType.APPLICATION_JSON, MediaType.TEXT_HTML})
    @Operation(operationId = "getIndex", summary = "Where to begin; a browser is sent on to the pages")
    @APIResponse(
            responseCode = "200",
            description = "Addresses to begin with",
            content = @Content(mediaType = "application/json", schema = @Schema(implementation = IndexView.class)))
    @APIResponse(responseCode = "303", description = "To the pages, if web pages are wanted first")
    public Response getIndex(@Context HttpHeaders headers) {
        return headers.getAcceptableMediaTypes().get(0).equals(MediaType.TEXT_HTML_TYPE)
                ? Response.seeOther(URI.create("/pages")).build()
                : Response.ok(index(), MediaType.APPLICATION_JSON).build();
    }

    private IndexView index() {
        Map<String, String> addresses = new LinkedHashMap<>();
        addresses.put("herds this key reaches", "/v1/herds");
        addresses.put("what this key may do", "/v1/me");
        addresses.put("all addresses, OpenAPI 3.1", "/v1/openapi.json");
        addresses.put("pages for people", "/pages");
        addresses.put("the same to read in a browser", "/v1/docs");
        addresses.put("problem codes", "/problems");
        addresses.put("ready for requests", "/q/health/ready");
        sampleHerd
                .openCode()
                .ifPresent(code -> addresses.put(
                        "sample herd, no key needed from this machine",
                        "/v1/herds/" + code + "/summary?asOf=" + sampleHerd.lastDay()));
        return new IndexView("Pailbook", "Test-day weights and events of a dairy herd in, figures out", addresses);
    }

    @GET
    @Path("problems")
    @Operation(operationId = "listProblems", summary = "Every problem code and what it means")
    public Page<MeaningView> listProblems() {
        return new Page<>(
                Arrays.stream(ProblemCode.values()).map(MeaningView::of).toList(), null);
    }

    @GET
    @Path("problems/{code}")
    @Operation(operationId = "getProblem", summary = "What one problem code means")
    public MeaningView getProblem(@PathParam("code") String code) {
        List<ProblemCode> found = Arrays.stream(ProblemCode.values())
                .filter(known -> known.code().equals(code))
                .toList();
        if (found.isEmpty()) {
            throw Problem.notFound();
        }
        return MeaningView.of(found.get(0));
    }
}
