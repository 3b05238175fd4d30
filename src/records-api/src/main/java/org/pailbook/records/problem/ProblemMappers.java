package org.pailbook.records.problem;

import io.vertx.ext.web.RoutingContext;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import jakarta.ws.rs.NotAllowedException;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jboss.logging.Logger;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** Turns every exception that leaves a resource or the routing into a problem body. */
@Singleton
public final class ProblemMappers {
    private static final Logger LOG = Logger.getLogger(ProblemMappers.class);
    private static final String RETRY_SECONDS = "2";
    private static final String STORAGE_RETRY_SECONDS = "30";

    private final RoutingContext routing;
    private final KnownRoutes routes;

    @Inject
    ProblemMappers(RoutingContext routing, KnownRoutes routes) {
        this.routing = routing;
        this.routes = routes;
    }

    @ServerExceptionMapper
    public Response problem(Problem problem) {
        Response.ResponseBuilder answer = answer(problem.code(), problem.getMessage(), problem.faults());
        problem.headers().forEach(answer::header);
        return answer.build();
    }

    /** What the routing itself refuses: unknown route, method, media types. */
    @ServerExceptionMapper
    public Response refusedByRouting(WebApplicationException refusal) {
        int status = refusal.getResponse().getStatus();
        if (refusal instanceof NotFoundException && refusal.getCause() != null) {
            return answer(ProblemCode.BAD_PATH, "A part of the path could not be read.", List.of())
                    .build();
        }
        if (status >= 500) {
            return unforeseen(refusal);
        }
        if (status == 400) {
            List<Fault> faults = badMediaTypes();
            if (!faults.isEmpty()) {
                return answer(ProblemCode.BAD_HEADER, "A header holds no media type.", faults)
                        .build();
            }
        }
        ProblemCode code = ProblemCode.ofStatus(status);
        if (refusal instanceof NotFoundException || refusal instanceof NotAllowedException) {
            Set<String> methods = routes.methodsAt(routing.request().path());
            if (!methods.isEmpty()
                    && !methods.contains(routing.request().method().name())) {
                return answer(ProblemCode.METHOD_NOT_ALLOWED, detailOf(ProblemCode.METHOD_NOT_ALLOWED), List.of())
                        .header(HttpHeaders.ALLOW, String.join(", ", methods))
                        .build();
            }
        }
        return answer(code, detailOf(code), List.of()).build();
    }

    private List<Fault> badMediaTypes() {
        List<Fault> faults = new ArrayList<>();
        for (String name : List.of(HttpHeaders.CONTENT_TYPE, HttpHeaders.ACCEPT)) {
            String value = routing.request().getHeader(name);
            if (value != null && Arrays.stream(value.split(",")).anyMatch(type -> !type.contains("/"))) {
                faults.add(Fault.inHeader(name, "bad-header", "must be type/subtype")
                        .withValue(value));
            }
        }
        return faults;
    }

    @ServerExceptionMapper
    public Response unforeseen(Throwable failure) {
        if (failure instanceof IOException) {
            // the client went away or sent chunks that make no sense: nothing is wrong on our side
            LOG.debugf("%s: the body broke off: %s", RequestId.of(routing), failure.getMessage());
            return answer(ProblemCode.MALFORMED_REQUEST, "The body broke off before its end.", List.of())
                    .build();
        }
        Optional<StorageFailure> ofStorage = StorageFailure.in(failure);
        if (ofStorage.isPresent()) {
            return storageFailed(ofStorage.get(), failure);
        }
        LOG.errorf(
                failure,
                "%s: %s %s failed",
                RequestId.of(routing),
                routing.request().method(),
                ShownPath.of(routing.request()));
        return answer(
                        ProblemCode.INTERNAL,
                        "The error is logged under the request id. Sending the request again does no harm.",
                        List.of())
                .build();
    }

    private Response storageFailed(StorageFailure kind, Throwable failure) {
        String reason = StorageFailure.reason(failure);
        if (kind == StorageFailure.BUSY) {
            LOG.warnf("%s: database busy: %s", RequestId.of(routing), reason);
            return answer(ProblemCode.BUSY, "The database did not answer in time; try again.", List.of())
                    .header(HttpHeaders.RETRY_AFTER, RETRY_SECONDS)
                    .build();
        }
        LOG.errorf("%s: storage unavailable: %s", RequestId.of(routing), reason);
        return answer(
                        ProblemCode.STORAGE_UNAVAILABLE,
                        "Nothing of what was not acknowledged can be taken for stored; sending it again later does no harm.",
                        List.of())
                .header(HttpHeaders.RETRY_AFTER, STORAGE_RETRY_SECONDS)
                .build();
    }

    private Response.ResponseBuilder answer(ProblemCode code, String detail, List<Fault> faults) {
        ProblemBody body = ProblemBody.of(code, detail, faults, ShownPath.of(routing.request()), RequestId.of(routing));
        if (ProblemPage.isFor(routing.request().path())) {
            return Response.status(code.status())
                    .type(ProblemPage.MEDIA_TYPE)
                    .header("Content-Security-Policy", ProblemPage.CONTENT_SECURITY_POLICY)
                    .entity(ProblemPage.of(body));
        }
        return Response.status(code.status()).type(ProblemBody.MEDIA_TYPE).entity(body);
    }

    private static String detailOf(ProblemCode code) {
        return switch (code) {
            case NO_SUCH_ROUTE -> "The addresses of this service are listed in /v1/openapi.";
            case METHOD_NOT_ALLOWED -> "The Allow header lists the methods that do.";
            case NOT_ACCEPTABLE -> "This address sends application/json.";
            case UNSUPPORTED_MEDIA_TYPE ->
                "Send application/json; bulk addresses also read application/x-ndjson and text/csv.";
            default -> code.title() + ".";
        };
    }
}
