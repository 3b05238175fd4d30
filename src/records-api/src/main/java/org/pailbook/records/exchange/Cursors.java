package org.pailbook.records.exchange;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.UriBuilder;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.security.InvalidKeyException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.pailbook.records.problem.Fault;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.store.Events;
import org.pailbook.records.store.RecordIds;
import org.pailbook.records.store.ServiceSecrets;
import org.pailbook.records.wire.WireDates;

/**
 * Places in lists, handed out with a page and taken back for the next.
 *
 * <p>A cursor is signed together with the list and the filters it was given for: with another list or other filters it is not one of this
 * service, since going on from that place would silently leave records out.
 */
@ApplicationScoped
public class Cursors {
    private static final String HMAC = "HmacSHA256";
    private static final int SIGNATURE_BYTES = 16;
    /** What may change from page to page. */
    private static final Set<String> NO_FILTERS = Set.of("cursor", "limit", "count");

    private final ServiceSecrets secrets;

    @Inject
    Cursors(ServiceSecrets secrets) {
        this.secrets = secrets;
    }

    /** The key a list in order of one key goes on after; before every key when there is no cursor. @param shape of the list's keys */
    public String after(UriInfo address, String cursor, Predicate<String> shape) {
        if (cursor == null) {
            return "";
        }
        String place = open(address, cursor);
        if (!shape.test(place)) {
            throw bad();
        }
        return place;
    }

    /** The day and id a list goes on after; null when there is no cursor. */
    Events.Position position(UriInfo address, String cursor) {
        if (cursor == null) {
            return null;
        }
        String[] parts = open(address, cursor).split(" ");
        if (parts.length != 2 || !RecordIds.isId(parts[1])) {
            throw bad();
        }
        return new Events.Position(WireDates.parse(parts[0]).orElseThrow(Cursors::bad), parts[1]);
    }

    /** Address of the page after that key; scheme and host are left to the caller, who may be behind a proxy. */
    public String next(UriInfo address, String lastKey) {
        URI next = UriBuilder.fromUri(address.getRequestUri())
                .replaceQueryParam("cursor", signed(address, lastKey))
                .build();
        return next.getRawPath() + "?" + next.getRawQuery();
    }

    String next(UriInfo address, LocalDate lastDay, String lastId) {
        return next(address, lastDay + " " + lastId);
    }

    private String signed(UriInfo address, String place) {
        byte[] text = place.getBytes(StandardCharsets.UTF_8);
        Base64.Encoder base64 = Base64.getUrlEncoder().withoutPadding();
        return base64.encodeToString(text) + "." + base64.encodeToString(signature(address, place));
    }

    private String open(UriInfo address, String cursor) {
        String[] parts = cursor.split("\\.", -1);
        if (parts.length != 2) {
            throw bad();
        }
        try {
            String place = new String(Base64.getUrlDecoder().decode(parts[0]), StandardCharsets.UTF_8);
            byte[] given = Base64.getUrlDecoder().decode(parts[1]);
            if (MessageDigest.isEqual(given, signature(address, place))) {
                return place;
            }
        } catch (IllegalArgumentException notBase64) {
            // told below
        }
        throw bad();
    }

    private byte[] signature(UriInfo address, String place) {
        StringBuilder signed = new StringBuilder(address.getPath()).append('\n').append(place);
        new TreeMap<>(address.getQueryParameters()).forEach((name, values) -> {
            if (!NO_FILTERS.contains(name)) {
                signed.append('\n').append(name).append('=').append(values.get(0));
            }
        });
        try {
            Mac mac = Mac.getInstance(HMAC);
            mac.init(new SecretKeySpec(secrets.of(ServiceSecrets.CURSORS), HMAC));
            return Arrays.copyOf(mac.doFinal(signed.toString().getBytes(StandardCharsets.UTF_8)), SIGNATURE_BYTES);
        } catch (NoSuchAlgorithmException | InvalidKeyException impossible) {
            throw new IllegalStateException("every Java platform has " + HMAC, impossible);
        }
    }

    private static Problem bad() {
        return new Problem(
                ProblemCode.BAD_CURSOR,
                "Take the address in next as it is; a cursor goes with the list and the filters it was given for.",
                List.of(Fault.inParameter("cursor", "bad-cursor", "is not one this service gave for this list")));
    }
}
