package org.pailbook.records.exchange;

import jakarta.ws.rs.core.UriBuilder;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.util.function.Predicate;
import org.pailbook.records.problem.Problem;

/** Pages of a list: how many records each has, and the address of the next. */
public final class Pages {
    private static final int MOST = 1000;
    private static final int USUAL = 100;

    private Pages() {}

    /** Records a page, from the query parameter {@code limit}. */
    public static int limit(String text) {
        if (text == null) {
            return USUAL;
        }
        if (!text.matches("[0-9]{1,4}") || Integer.parseInt(text) < 1 || Integer.parseInt(text) > MOST) {
            throw Problem.badParameter("limit", "expected a whole number from 1 to " + MOST, text);
        }
        return Integer.parseInt(text);
    }

    /** Whether a parameter asks for something: {@code true} or {@code false}, false if it was not sent. */
    public static boolean flag(String parameter, String sent) {
        if (sent != null && !sent.equals("true") && !sent.equals("false")) {
            throw Problem.badParameter(parameter, "expected true or false", sent);
        }
        return "true".equals(sent);
    }

    /**
     * The key a list in order of one key goes on after; before every key when there is no cursor.
     *
     * @param shape what the keys of that list look like
     */
    public static String after(String cursor, Predicate<String> shape) {
        return cursor == null ? "" : Cursor.place(cursor, shape);
    }

    /** Address of the page after that id. */
    public static String next(UriInfo address, String lastId) {
        return withCursor(address, Cursor.of(lastId));
    }

    /** This address with another cursor; scheme and host are left to the caller, who may be behind a proxy. */
    static String withCursor(UriInfo address, String cursor) {
        URI next = UriBuilder.fromUri(address.getRequestUri())
                .replaceQueryParam("cursor", cursor)
                .build();
        return next.getRawPath() + "?" + next.getRawQuery();
    }
}
