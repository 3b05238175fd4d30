package org.pailbook.records.exchange;

import jakarta.inject.Inject;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.core.MediaType;
import java.net.URI;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;

/** Leads a list that is asked for as {@code text/csv} to the table of its kind: one address for people, one for programs. */
final class TableFilter {
    private static final Pattern LIST = Pattern.compile("/v1/herds/[^/]+/([a-z-]+)");

    private final KindTables tables;

    @Inject
    TableFilter(KindTables tables) {
        this.tables = tables;
    }

    @ServerRequestFilter(preMatching = true)
    void leadToTable(ContainerRequestContext request) {
        List<MediaType> wanted = request.getAcceptableMediaTypes();
        if (!request.getMethod().equals("GET") || wanted.isEmpty() || !isTable(wanted.get(0))) {
            return;
        }
        URI asked = request.getUriInfo().getRequestUri();
        Matcher list = LIST.matcher(asked.getRawPath());
        if (list.matches() && tables.isKind(list.group(1))) {
            String query = asked.getRawQuery() == null ? "" : "?" + asked.getRawQuery();
            request.setRequestUri(asked.resolve(asked.getRawPath() + ".csv" + query));
        }
    }

    private static boolean isTable(MediaType type) {
        return type.getType().equals("text") && type.getSubtype().equals("csv");
    }
}
