package org.pailbook.records.exchange;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.util.RawValue;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.resteasy.reactive.RestResponse;
import org.pailbook.records.access.HerdAccess;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.store.HerdChanges;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;
import org.pailbook.records.wire.OutputVersion;
import org.pailbook.records.wire.WireDates;
import org.pailbook.records.wire.WireInstants;

/**
 * Answers what is read or computed of a herd by two clocks: for which day, and as known at which moment.
 *
 * <p>An answer is made from the versions up to one change of the herd and nothing later, so that it is of one piece whoever writes
 * meanwhile. It names the moment of that change as {@code knownAt}: asked with it again, it comes again.
 */
@ApplicationScoped
public class ComputedDesk {
    private static final int TAG_DIGITS = 32;

    private final HerdAccess access;
    private final HerdChanges changes;
    private final RoutingContext routing;
    private final Clock clock;
    private final RecentAnswers recent;
    private final ObjectMapper mapper;
    private final String outputVersion;

    @Inject
    ComputedDesk(
            HerdAccess access,
            HerdChanges changes,
            RoutingContext routing,
            Clock clock,
            OutputVersion methods,
            RecentAnswers recent,
            ObjectMapper mapper,
            @ConfigProperty(name = "quarkus.application.version") String serviceVersion) {
        this.access = access;
        this.changes = changes;
        this.routing = routing;
        this.clock = clock;
        this.recent = recent;
        this.mapper = mapper;
        this.outputVersion = serviceVersion + " " + methods.text();
    }

    /** The herd as known at the instant asked for, if the caller reaches it. */
    public HerdRow toRead(String herdCode, KnownAtQuery query) {
        WireDates.parameter("asOf", query.asOf);
        return toRead(herdCode, query.knownAt);
    }

    /** The same; null for now. */
    public HerdRow toRead(String herdCode, String knownAt) {
        return asKnown(access.toRead(herdCode), knownAt);
    }

    /** Herds as known at the instant asked for; those not known yet are left out. */
    public List<HerdRow> known(List<HerdRow> herds, KnownAtQuery query) {
        Instant at = WireInstants.parameter("knownAt", query.knownAt).orElse(null);
        if (at == null) {
            return herds;
        }
        requirePast(at, clock.instant());
        return herds.stream()
                .flatMap(herd -> changes.asKnown(herd, at).stream())
                .toList();
    }

    private HerdRow asKnown(HerdRow herd, String knownAt) {
        Optional<Instant> asked = WireInstants.parameter("knownAt", knownAt);
        if (asked.isEmpty()) {
            return herd;
        }
        Instant at = asked.get();
        // what an answer named is never too late, even if another service's clock runs ahead of this one
        if (at.isAfter(clock.instant())) {
            requirePast(at, changes.lastRecorded(herd));
        }
        return changes.asKnown(herd, at).orElseThrow(Problem::notFound);
    }

    private static void requirePast(Instant at, Instant last) {
        if (at.isAfter(last)) {
            throw Problem.badParameter(
                    "knownAt", "lies in the future: what will be known then is not known", at.toString());
        }
    }

    /** The herd as known at the instant asked for, and the day asked for. */
    public KnownHerd known(HerdRow found, ClocksQuery clocks) {
        HerdRow herd = asKnown(found, clocks.knownAt);
        Instant now = clock.instant().truncatedTo(ChronoUnit.MILLIS);
        LocalDate day = WireDates.parameter("asOf", clocks.asOf).orElseGet(() -> LocalDate.ofInstant(now, herd.zone()));
        Instant at = WireInstants.parameter("knownAt", clocks.knownAt).orElseGet(() -> changes.lastRecorded(herd));
        return new KnownHerd(herd, new AsOf(day, at, now));
    }

    /**
     * The answer as JSON, with an entity tag that changes when the figures may have: 304 if the caller has it, and without computing if it
     * was given lately.
     */
    public <T> RestResponse<T> answer(
            String herdCode, ClocksQuery clocks, HttpHeaders headers, Function<KnownHerd, T> compute) {
        return answer(
                herdCode,
                clocks,
                headers,
                (known, tag) -> asWritten(recent.findOrMake(tag, () -> json(compute.apply(known)))));
    }

    /** The same for what is not JSON: computed whenever it is asked for. */
    public <T> RestResponse<T> answerAnew(
            String herdCode, ClocksQuery clocks, HttpHeaders headers, Function<KnownHerd, T> compute) {
        return answer(herdCode, clocks, headers, (known, tag) -> compute.apply(known));
    }

    private String json(Object answer) {
        try {
            return mapper.writeValueAsString(answer);
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException("an answer that cannot be written", impossible);
        }
    }

    /** The declared type of the entity is of no concern: what is written is the text. */
    @SuppressWarnings("unchecked")
    private static <T> T asWritten(String text) {
        return (T) new RawValue(text);
    }

    private <T> RestResponse<T> answer(
            String herdCode, ClocksQuery clocks, HttpHeaders headers, BiFunction<KnownHerd, String, T> make) {
        KnownHerd known = known(access.toRead(herdCode), clocks);
        String tag = tag(known);
        if (Precondition.isKnown(headers, tag)) {
            return RestResponse.ResponseBuilder.<T>create(Response.Status.NOT_MODIFIED)
                    .header(HttpHeaders.ETAG, tag)
                    .build();
        }
        return RestResponse.ResponseBuilder.ok(make.apply(known, tag))
                .header(HttpHeaders.ETAG, tag)
                .build();
    }

    private String tag(KnownHerd known) {
        String query = routing.request().query();
        String[] parameters = query == null ? new String[0] : query.split("&");
        Arrays.sort(parameters);
        String all = String.join(
                "\n",
                known.herd().id,
                Long.toString(known.herd().changeSeq),
                known.asOf().day().toString(),
                known.asOf().knownAtText(),
                routing.request().path(),
                String.join("&", parameters),
                outputVersion);
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(all.getBytes(StandardCharsets.UTF_8));
            return "W/\"" + HexFormat.of().formatHex(hash).substring(0, TAG_DIGITS) + "\"";
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }
}
