package org.pailbook.records.problem;

import io.vertx.ext.web.RoutingContext;
import java.util.UUID;

/** The id under which a request stands in answers and in the log. */
public final class RequestId {
    private static final String KEY = "pailbook.request-id";
    private static final int LENGTH = 12;

    private RequestId() {}

    /** The id of this request, made at the first call. */
    public static String of(RoutingContext routing) {
        String id = routing.get(KEY);
        if (id == null) {
            id = UUID.randomUUID().toString().replace("-", "").substring(0, LENGTH);
            routing.put(KEY, id);
        }
        return id;
    }
}
