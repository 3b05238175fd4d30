package org.pailbook.records.access;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import org.pailbook.records.problem.Fault;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;

/** The key a request holds: {@code X-API-Key}, a Bearer token, or the password of Basic with any user name. */
final class SentKey {
    private static final String API_KEY_HEADER = "X-API-Key";
    private static final String AUTHORIZATION = "Authorization";
    private static final String CHALLENGE = "Bearer realm=\"pailbook\", Basic realm=\"pailbook\", charset=\"UTF-8\"";

    private SentKey() {}

    /**
     * The key's text, if one was sent.
     *
     * @param headers gives the value of a header by its name, or null
     * @throws Problem if two different keys were sent, or none can be read from the header
     */
    static Optional<String> in(UnaryOperator<String> headers) {
        Set<String> given = new TreeSet<>(all(headers));
        if (given.size() > 1) {
            throw new Problem(
                    ProblemCode.BAD_HEADER,
                    "Two different keys were sent.",
                    List.of(Fault.inHeader(AUTHORIZATION, "two-keys", "send one key only")));
        }
        return given.stream().findFirst();
    }

    /** The refusal of a request that holds no key. */
    static Problem missing() {
        return refused(ProblemCode.NOT_AUTHENTICATED, "Send a key as X-API-Key, as Bearer token or as Basic password.");
    }

    /** A refusal that tells how a key may be sent. */
    static Problem refused(ProblemCode code, String detail) {
        return new Problem(code, detail).withHeader("WWW-Authenticate", CHALLENGE);
    }

    private static List<String> all(UnaryOperator<String> headers) {
        List<String> found = new ArrayList<>();
        String apiKey = headers.apply(API_KEY_HEADER);
        if (apiKey != null && !apiKey.isBlank()) {
            found.add(apiKey.strip());
        }
        String authorization = headers.apply(AUTHORIZATION);
        if (authorization != null) {
            found.add(inAuthorization(authorization.strip()));
        }
        return found;
    }

    private static String inAuthorization(String header) {
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
                        AUTHORIZATION, "bad-header", "must be Bearer <key> or Basic with the key as password")));
    }
}
