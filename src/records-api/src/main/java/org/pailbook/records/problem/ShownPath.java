package org.pailbook.records.problem;

import io.vertx.core.http.HttpServerRequest;
import java.util.regex.Pattern;

/** The path of a request as it may stand in a log or an answer: without the secret that stands in the address of a feed. */
public final class ShownPath {
    private static final Pattern FEED = Pattern.compile("^/+feeds/+[^/]+");

    private ShownPath() {}

    public static String of(HttpServerRequest request) {
        return of(request.path());
    }

    static String of(String path) {
        return path == null ? null : FEED.matcher(path).replaceFirst("/feeds/***");
    }
}
