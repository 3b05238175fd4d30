package org.pailbook.records.exchange;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.util.RawValue;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.jboss.resteasy.reactive.RestResponse;
import org.pailbook.records.access.Caller;
import org.pailbook.records.problem.Fault;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.IdempotentAnswerRow;
import org.pailbook.records.store.IdempotentAnswers;
import org.pailbook.records.store.RecordIds;

/**
 * Does a request that carries an {@code Idempotency-Key} once, and gives its first answer again whenever it is sent again within a day.
 *
 * <p>A request that was refused as a whole stored nothing: its key is free again. While one runs, the same key is answered with 409; the
 * claim of a service that died ends by itself after two minutes, and doing such a request again does no harm.
 *
 * @see "draft-ietf-httpapi-idempotency-key-header-07 (October 2025, a draft; abstract seen, the rest from memory)"
 */
@ApplicationScoped
public class OnceOnly {
    private static final String KEY = "Idempotency-Key";
    private static final String REPLAYED = "Idempotency-Replayed";
    private static final String SHAPE = "[\\x21-\\x7e]{8,64}";
    private static final Duration RENEW_AFTER = Duration.ofSeconds(20);

    private final IdempotentAnswers answers;
    private final Caller caller;
    private final RoutingContext routing;
    private final ObjectMapper json;
    private final Clock clock;

    @Inject
    OnceOnly(IdempotentAnswers answers, Caller caller, RoutingContext routing, ObjectMapper json, Clock clock) {
        this.answers = answers;
        this.caller = caller;
        this.routing = routing;
        this.json = json;
        this.clock = clock;
    }

    /** For an answer whose entity is written as JSON. */
    public <T> RestResponse<T> single(
            HttpHeaders headers, InputStream body, Function<InputStream, RestResponse<T>> work) {
        return once(headers, body, work, made -> keeping(made, made.getEntity()), this::asRestResponse);
    }

    /** For an answer that shows a secret once: kept, and given again, is what it says without the secret. */
    public <T> RestResponse<T> showingOnce(
            HttpHeaders headers,
            InputStream body,
            Function<InputStream, RestResponse<T>> work,
            UnaryOperator<T> withoutSecret) {
        AtomicReference<RestResponse<T>> first = new AtomicReference<>();
        RestResponse<T> kept = once(
                headers,
                body,
                sent -> {
                    first.set(work.apply(sent));
                    return first.get();
                },
                made -> keeping(made, withoutSecret.apply(made.getEntity())),
                this::asRestResponse);
        return first.get() == null ? kept : first.get();
    }

    private KeptAnswer keeping(RestResponse<?> made, Object entity) {
        return KeptAnswer.of(
                made.getStatus(),
                BulkIntake.JSON,
                made.getHeaderString(HttpHeaders.LOCATION),
                made.getHeaderString(HttpHeaders.ETAG),
                out -> out.write(json.writeValueAsBytes(entity)));
    }

    /** For an answer whose entity is a stream. */
    Response many(HttpHeaders headers, InputStream body, Function<InputStream, Response> work) {
        return once(
                headers,
                body,
                work,
                made -> KeptAnswer.of(made.getStatus(), made.getMediaType().toString(), null, null, ((StreamingOutput)
                        made.getEntity())::write),
                (kept, replayed) -> {
                    Response.ResponseBuilder answer = Response.status(kept.status())
                            .type(kept.mediaType())
                            .entity((StreamingOutput) kept::writeTo);
                    return (replayed ? answer.header(REPLAYED, "true") : answer).build();
                });
    }

    private <R> R once(
            HttpHeaders headers,
            InputStream body,
            Function<InputStream, R> work,
            Function<R, KeptAnswer> keeping,
            BiFunction<KeptAnswer, Boolean, R> answering) {
        String key = key(headers);
        if (key == null) {
            return work.apply(body);
        }
        String claimId = RecordIds.next();
        IdempotentAnswerRow row = answers.claim(caller.keyId(), key, claimId, now());
        FingerprintedBody counted = new FingerprintedBody(body, start(headers), renewing(claimId));
        if (row.status != null) {
            if (!counted.fingerprint().equals(row.requestSha256)) {
                throw new Problem(
                        ProblemCode.IDEMPOTENCY_KEY_REUSED,
                        "Another body or address was sent with this key before; take a new key for a new request.",
                        List.of(Fault.inHeader(KEY, "idempotency-key-reused", "belongs to another request")));
            }
            return answering.apply(
                    new KeptAnswer(row.status, row.mediaType, row.location, row.etag, answers.body(row.claimId)), true);
        }
        if (!row.claimId.equals(claimId)) {
            throw new Problem(
                            ProblemCode.IN_PROGRESS,
                            "A request with this key is still running; ask again.",
                            List.of(Fault.inHeader(KEY, "in-progress", "is of a request that still runs")))
                    .withHeader(HttpHeaders.RETRY_AFTER, "5");
        }
        boolean answered = false;
        try {
            KeptAnswer kept = keeping.apply(work.apply(counted));
            row.requestSha256 = counted.fingerprint();
            row.status = kept.status();
            row.mediaType = kept.mediaType();
            row.location = kept.location();
            row.etag = kept.etag();
            answers.keep(row, kept.gzip(), now());
            answered = true;
            return answering.apply(kept, false);
        } finally {
            if (!answered) {
                answers.release(claimId);
            }
        }
    }

    /** The key sent, without the quotes it may stand in; null if there is none. */
    private static String key(HttpHeaders headers) {
        String sent = headers.getHeaderString(KEY);
        if (sent == null) {
            return null;
        }
        String key = sent.length() > 1 && sent.startsWith("\"") && sent.endsWith("\"")
                ? sent.substring(1, sent.length() - 1)
                : sent;
        if (!key.matches(SHAPE)) {
            throw new Problem(
                    ProblemCode.BAD_HEADER,
                    "The header " + KEY + " could not be read.",
                    List.of(Fault.inHeader(KEY, "bad-header", "must be 8 to 64 printable characters without blanks")
                            .withValue(sent)));
        }
        return key;
    }

    private String start(HttpHeaders headers) {
        return String.join(
                "\n",
                routing.request().method().name(),
                routing.request().uri(),
                String.valueOf(headers.getHeaderString(HttpHeaders.CONTENT_TYPE)),
                "");
    }

    private Runnable renewing(String claimId) {
        AtomicReference<Instant> renewed = new AtomicReference<>(now());
        return () -> {
            if (now().isAfter(renewed.get().plus(RENEW_AFTER))) {
                renewed.set(now());
                answers.renew(claimId, now());
            }
        };
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MILLIS);
    }

    /** The declared type of the entity is of no concern: what is written is the text that was kept. */
    @SuppressWarnings("unchecked")
    private <T> RestResponse<T> asRestResponse(KeptAnswer kept, boolean replayed) {
        ByteArrayOutputStream text = new ByteArrayOutputStream();
        try {
            kept.writeTo(text);
        } catch (IOException damaged) {
            throw new UncheckedIOException(damaged);
        }
        RestResponse.ResponseBuilder<Object> answer = RestResponse.ResponseBuilder.create(
                        RestResponse.Status.fromStatusCode(kept.status()),
                        (Object) new RawValue(text.toString(StandardCharsets.UTF_8)))
                .header(HttpHeaders.ETAG, kept.etag());
        if (kept.location() != null) {
            answer.location(URI.create(kept.location()));
        }
        if (replayed) {
            answer.header(REPLAYED, "true");
        }
        return (RestResponse<T>) answer.build();
    }
}
