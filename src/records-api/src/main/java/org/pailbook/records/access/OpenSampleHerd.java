package org.pailbook.records.access;

import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Set;

/**
 * Lets a newcomer look at the invented sample herd from the same machine without a key. Nothing else is ever open: no other
 * herd, no writing, no other machine.
 */
@ApplicationScoped
public class OpenSampleHerd {
    private final RoutingContext routing;
    private volatile String code;

    @Inject
    OpenSampleHerd(RoutingContext routing) {
        this.routing = routing;
    }

    /** Opens the herd with that code for reading from this machine. */
    public void open(String herdCode) {
        this.code = herdCode;
    }

    Set<String> codes() {
        return code == null ? Set.of() : Set.of(code);
    }

    /** @param herdCode the herd the address names; null if it names none */
    boolean admits(String herdCode) {
        // a proxy on this machine would make everybody look local, so a forwarded request is not
        boolean forwarded = routing.request().getHeader("Forwarded") != null
                || routing.request().getHeader("X-Forwarded-For") != null
                || routing.request().getHeader("Via") != null;
        return code != null
                && (herdCode == null || herdCode.equals(code))
                && !forwarded
                && isLoopback(routing.request().remoteAddress().hostAddress());
    }

    private static boolean isLoopback(String address) {
        try {
            return address != null && InetAddress.getByName(address).isLoopbackAddress();
        } catch (UnknownHostException neverForAnAddress) {
            return false;
        }
    }
}
