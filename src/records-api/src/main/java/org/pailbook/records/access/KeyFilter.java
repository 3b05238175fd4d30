package org.pailbook.records.access;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ResourceInfo;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.pailbook.records.problem.Fault;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.ApiKeyRow;
import org.pailbook.records.store.ApiKeys;

/** Finds the key of a request and makes its owner the caller; without a valid key nothing under {@code /v1} is reached. */
@ApplicationScoped
public class KeyFilter {
    static final String ALL_HERDS = "*";
    private static final String API_KEY_HEADER = "X-API-Key";
    private static final String CHALLENGE = "Bearer realm=\"pailbook\", Basic realm=\"pailbook\", charset=\"UTF-8\"";

    private static final String SIGN_IN = "/pages/sign-in";

    private final ApiKeys keys;
    private final Sessions sessions;
    private final Caller caller;
    private final OpenSampleHerd openSampleHerd;
    private final Clock clock;

    @Inject
    KeyFilter(ApiKeys keys, Sessions sessions, Caller caller, OpenSampleHerd openSampleHerd, Clock clock) {
        this.keys = keys;
        this.sessions = sessions;
        this.caller = caller;
        this.openSampleHerd = openSampleHerd;
        this.clock = clock;
    }

    /** An answer for whoever is to be sent elsewhere; mostly none. */
    @ServerRequestFilter
    public Optional<Response> identify(ContainerRequestContext request, ResourceInfo resource) {
        if (resource.getResourceClass().isAnnotationPresent(WithoutKey.class)) {
            return Optional.empty();
        }
        Set<String> given = new TreeSet<>(keysIn(request));
        if (given.size() > 1) {
            throw new Problem(
                    ProblemCode.BAD_HEADER,
                    "Two different keys were sent.",
                    List.of(Fault.inHeader(HttpHeaders.AUTHORIZATION, "two-keys", "send one key only")));
        }
        boolean isPage = resource.getResourceClass().isAnnotationPresent(WithSession.class);
        if (given.isEmpty()) {
            Optional<ApiKeyRow> signedIn = isPage ? signedIn(request) : Optional.empty();
            if (signedIn.isPresent()) {
                become(signedIn.get());
                return Optional.empty();
            }
            if (openSampleHerd.admits()) {
                caller.become(
                        "sample", "sample herd, reading only", EnumSet.of(Scope.READ), openSampleHerd.codes(), false);
                return Optional.empty();
            }
            if (isPage) {
                // people are shown where to sign in; a challenge would open the browser's own box instead
                return Optional.of(Response.seeOther(URI.create(SIGN_IN)).build());
            }
            throw refused(
                    ProblemCode.NOT_AUTHENTICATED, "Send a key as X-API-Key, as Bearer token or as Basic password.");
        }
        become(keys.bySecretSha256(KeyText.sha256(given.iterator().next()))
                .orElseThrow(() -> refused(ProblemCode.NOT_AUTHENTICATED, "This key is not known.")));
        return Optional.empty();
    }

    /** Whoever signed in with a key that is still in force. */
    private Optional<ApiKeyRow> signedIn(ContainerRequestContext request) {
        return Optional.ofNullable(request.getCookies().get(Sessions.COOKIE))
                .flatMap(cookie -> sessions.keyOf(cookie.getValue()))
                .filter(key -> key.isInForce(clock.instant()));
    }

    private void become(ApiKeyRow key) {
        if (key.revokedAt != null) {
            throw refused(ProblemCode.KEY_REVOKED, "This key was revoked.");
        }
        if (key.expiresOn != null && key.expiresOn.isBefore(LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC))) {
            throw refused(ProblemCode.KEY_EXPIRED, "This key expired on " + key.expiresOn + ".");
        }
        Set<Scope> scopes = Arrays.stream(key.scopes.split(" "))
                .map(name -> Scope.valueOf(name.toUpperCase(Locale.ROOT)))
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(Scope.class)));
        boolean all = key.herdCodes.equals(ALL_HERDS);
        caller.become(key.id, key.label, scopes, all ? Set.of() : Set.of(key.herdCodes.split(" ")), all);
    }

    private static List<String> keysIn(ContainerRequestContext request) {
        List<String> found = new ArrayList<>();
        String apiKey = request.getHeaderString(API_KEY_HEADER);
        if (apiKey != null && !apiKey.isBlank()) {
            found.add(apiKey.strip());
        }
        String authorization = request.getHeaderString(HttpHeaders.AUTHORIZATION);
        if (authorization != null) {
            found.add(keyInAuthorization(authorization.strip()));
        }
        return found;
    }

    private static String keyInAuthorization(String header) {
        if (header.regionMatches(true, 0, "Bearer ", 0, 7)) {
            return header.substring(7).strip();
        }
        if (header.regionMatches(true, 0, "Basic ", 0, 6)) {
            try {
                String pair = new String(
                        Base64.getDecoder().decode(header.substring(6).strip()), StandardCharsets.UTF_8);
                int colon = pair.indexOf(':');
                if (colon >= 0) {
                    return pair.substring(colon + 1);
                }
            } catch (IllegalArgumentException notBase64) {
                // told below, in the same words as a header of another kind
            }
        }
        throw new Problem(
                ProblemCode.BAD_HEADER,
                "The Authorization header could not be read.",
                List.of(Fault.inHeader(
                        HttpHeaders.AUTHORIZATION,
                        "bad-header",
                        "must be Bearer <key> or Basic with the key as password")));
    }

    private static Problem refused(ProblemCode code, String detail) {
        return new Problem(code, detail).withHeader(HttpHeaders.WWW_AUTHENTICATE, CHALLENGE);
    }
}
