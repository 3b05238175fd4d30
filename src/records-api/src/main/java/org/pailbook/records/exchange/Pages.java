package org.pailbook.records.exchange;

import org.pailbook.records.problem.Problem;

/** What lists are asked for in query parameters: how many records a page has, and yes or no. */
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
}
