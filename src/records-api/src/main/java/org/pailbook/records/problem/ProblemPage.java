package org.pailbook.records.problem;

import java.util.stream.Collectors;

/** A problem told to people: what the pages answer where the rest of the service answers a problem body. */
public final class ProblemPage {
    public static final String MEDIA_TYPE = "text/html; charset=utf-8";
    /** Nothing from elsewhere, no script, no style but our own file. */
    public static final String CONTENT_SECURITY_POLICY =
            "default-src 'none'; style-src 'self'; img-src 'self' data:; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

    /** For a page that takes what people type: our own file of script, which sends to us only. */
    public static final String CONTENT_SECURITY_POLICY_WITH_SCRIPT =
            CONTENT_SECURITY_POLICY + "; script-src 'self'; connect-src 'self'";

    private static final String PAGES = "/pages";

    private ProblemPage() {}

    /** Whether a path is one of the pages. */
    static boolean isFor(String path) {
        return path.equals(PAGES) || path.startsWith(PAGES + "/");
    }

    static String of(ProblemBody problem) {
        String faults = problem.errors().stream()
                .map(fault -> "<li>" + (fault.parameter() == null ? "" : escaped(fault.parameter()) + ": ")
                        + escaped(fault.message()) + "</li>")
                .collect(Collectors.joining());
        return """
                <!DOCTYPE html>
                <html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
                <title>%2$s - Pailbook</title><link rel="icon" href="data:,"><link rel="stylesheet" href="/pages/pailbook.css"></head>
                <body><main><h1>%2$s</h1><p>%3$s</p><ul>%4$s</ul>
                <p><a href="/pages">Herds</a> <a href="/pages/sign-in">Sign in with another key</a></p>
                <p class="small">%1$d %5$s, request %6$s</p></main></body></html>
                """.formatted(
                        problem.status(),
                        escaped(problem.title()),
                        escaped(String.valueOf(problem.detail())),
                        faults,
                        escaped(problem.code()),
                        escaped(problem.requestId()));
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
