package org.pailbook.records.access;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Base64;
import java.util.Optional;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.store.ApiKeyRow;
import org.pailbook.records.store.ApiKeys;
import org.pailbook.records.store.ServiceSecrets;

/**
 * Sessions of people who signed in with a key in a browser. The cookie holds the id of the key, never its text, and until when it is good, signed
 * with a secret all services on one database share: whichever of them answers the next page knows who is signed in. A revoked key ends its
 * sessions.
 */
@ApplicationScoped
public class Sessions {
    public static final String COOKIE = "pailbook-session";
    public static final Duration LENGTH = Duration.ofHours(12);
    private static final String ALGORITHM = "HmacSHA256";

    private static final int UNAUTHORIZED = 401;

    private final ApiKeys keys;
    private final Login login;
    private final Clock clock;
    private final ServiceSecrets secrets;

    @Inject
    Sessions(ApiKeys keys, Login login, Clock clock, ServiceSecrets secrets) {
        this.keys = keys;
        this.login = login;
        this.clock = clock;
        this.secrets = secrets;
    }

    /**
     * A session for whoever has the text of a key that is good; empty if it is not.
     *
     * @param address whom the text came from
     * @throws Problem if too many unknown ones came from there
     */
    public Optional<String> begin(String keyText, String address) {
        if (keyText.isBlank()) {
            return Optional.empty();
        }
        try {
            ApiKeyRow key = login.accept(keyText.strip(), address);
            String said = key.id + "." + clock.instant().plus(LENGTH).getEpochSecond();
            return Optional.of(said + "." + signature(said));
        } catch (Problem refused) {
            if (refused.code().status() == UNAUTHORIZED) {
                return Optional.empty();
            }
            throw refused;
        }
    }

    /** The key of a session, if the session is one of ours and still good, and so is the key. */
    Optional<ApiKeyRow> keyOf(String session) {
        int end = session.lastIndexOf('.');
        int middle = end < 0 ? -1 : session.lastIndexOf('.', end - 1);
        if (middle < 0) {
            return Optional.empty();
        }
        byte[] expected = signature(session.substring(0, end)).getBytes(StandardCharsets.UTF_8);
        byte[] sent = session.substring(end + 1).getBytes(StandardCharsets.UTF_8);
        if (!MessageDigest.isEqual(expected, sent)) {
            return Optional.empty();
        }
        Instant until = Instant.ofEpochSecond(Long.parseLong(session.substring(middle + 1, end)));
        return clock.instant().isBefore(until)
                ? keys.findByIdOptional(session.substring(0, middle)).filter(login::isGood)
                : Optional.empty();
    }

    private String signature(String said) {
        try {
            Mac mac = Mac.getInstance(ALGORITHM);
            mac.init(new SecretKeySpec(secrets.of(ServiceSecrets.SESSIONS), ALGORITHM));
            return Base64.getUrlEncoder()
                    .withoutPadding()
                    .encodeToString(mac.doFinal(said.getBytes(StandardCharsets.UTF_8)));
        } catch (GeneralSecurityException impossible) {
            throw new IllegalStateException("every Java platform has HmacSHA256", impossible);
        }
    }
}
