package org.pailbook.records.problem;

import io.vertx.core.http.HttpServerResponse;
import java.util.Map;
import java.util.function.BiConsumer;

/**
 * Headers of every answer, also of those made before any routing: media types are meant as they stand, no page may be built
 * around an answer, and neither a cache nor the next address learns anything of a herd. An address that needs another value sets it.
 */
final class SafetyHeaders {
    private static final Map<String, String> ALL = Map.of(
            "X-Content-Type-Options", "nosniff",
            "X-Frame-Options", "DENY",
            "Content-Security-Policy", "default-src 'none'; frame-ancestors 'none'",
            "Referrer-Policy", "no-referrer",
            "Cache-Control", "private, no-store");

    private SafetyHeaders() {}

    /** Puts those on an answer that it does not say itself. */
    static void addMissing(HttpServerResponse answer) {
        ALL.forEach((name, value) -> {
            if (!answer.headers().contains(name)) {
                answer.putHeader(name, value);
            }
        });
    }

    /** Gives name and value of each to whoever puts it on an answer. */
    static void each(BiConsumer<String, String> answer) {
        ALL.forEach(answer);
    }
}
