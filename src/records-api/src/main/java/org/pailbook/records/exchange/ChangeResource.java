package org.pailbook.records.exchange;

import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.pailbook.records.access.HerdAccess;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.store.HerdRow;

/** The changes of a herd over HTTP, for tools that keep a copy. */
@Path("/v1/herds/{herd}/changes")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Changes")
public class ChangeResource {
    private final HerdAccess access;
    private final ComputedDesk computed;
    private final ChangeFeed feed;

    @Inject
    ChangeResource(HerdAccess access, ComputedDesk computed, ChangeFeed feed) {
        this.access = access;
        this.computed = computed;
        this.feed = feed;
    }

    @GET
    @Operation(
            operationId = "listChanges",
            summary = "Every change of a herd in order; keep nextAfter and ask again to miss and repeat nothing")
    public ChangesView listChanges(
            @PathParam("herd") String herdCode,
            @QueryParam("after")
                    @Parameter(description = "Number of the last change you have; 0 for the first", example = "4182")
                    String after,
            @QueryParam("limit") @Parameter(description = "Changes an answer, 1 to 1000", example = "100") String limit,
            @QueryParam("knownAt")
                    @Parameter(
                            description = "Changes recorded after this instant are left out; now if left out",
                            example = "2025-12-01T20:11:04Z")
                    String knownAt) {
        long number = number(after, access.toRead(herdCode));
        return feed.after(computed.toRead(herdCode, knownAt), number, Pages.limit(limit));
    }

    private static long number(String after, HerdRow herd) {
        if (after == null) {
            return 0;
        }
        // a number beyond the last change is of another database, or of this one before it was put back from a copy
        if (!after.matches("[0-9]{1,18}") || Long.parseLong(after) > herd.changeSeq) {
            throw Problem.badParameter("after", "expected a whole number from 0 to the last change", after);
        }
        return Long.parseLong(after);
    }
}
