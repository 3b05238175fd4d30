package org.pailbook.records.exchange;

import jakarta.ws.rs.core.HttpHeaders;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.pailbook.records.problem.Fault;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;

/**
 * The entity tags a request names in {@code If-Match} or {@code If-None-Match}.
 *
 * @param any whether it names none but {@code *}
 * @param tags each as it was sent, quotes and weakness mark included
 * @see "RFC 9110, sections 8.8.3, 13.1.1 and 13.1.2 (from memory)"
 */
public record Precondition(boolean any, List<String> tags) {
    private static final Pattern TAG = Pattern.compile("\\s*((?:W/)?\"[\\x21\\x23-\\x7e\\x80-\\xff]*\")\\s*(?:,|$)");

    /** The versions a change may replace; a request that names none is refused, since it might undo what another tool wrote. */
    public static IntPredicate ofChange(HttpHeaders headers) {
        Precondition sent = of(headers, HttpHeaders.IF_MATCH);
        if (sent == null) {
            throw new Problem(
                    ProblemCode.PRECONDITION_REQUIRED,
                    "Send If-Match with the ETag of the version you saw, or * for whichever is in force.",
                    List.of(Fault.inHeader(HttpHeaders.IF_MATCH, "precondition-required", "is needed here")));
        }
        // a strong comparison: a weak tag never equals
        return version -> sent.any || sent.tags.contains(tagOf(version));
    }

    /** Whether the caller has that version already. */
    public static boolean isKnown(HttpHeaders headers, String tag) {
        Precondition sent = of(headers, HttpHeaders.IF_NONE_MATCH);
        return sent != null
                && (sent.any || sent.tags.stream().anyMatch(one -> strong(one).equals(strong(tag))));
    }

    /** The entity tag of a version. */
    public static String tagOf(int version) {
        return "\"" + version + "\"";
    }

    private static String strong(String tag) {
        return tag.startsWith("W/") ? tag.substring(2) : tag;
    }

    /** The header's tags; null if it was not sent. */
    private static Precondition of(HttpHeaders headers, String name) {
        List<String> values = headers.getRequestHeader(name);
        if (values == null || values.isEmpty()) {
            return null;
        }
        String value = String.join(",", values).strip();
        if (value.equals("*")) {
            return new Precondition(true, List.of());
        }
        List<String> tags = new ArrayList<>();
        Matcher tag = TAG.matcher(value);
        int end = 0;
        while (tag.find() && tag.start() == end) {
            tags.add(tag.group(1));
            end = tag.end();
        }
        if (tags.isEmpty() || end != value.length()) {
            throw new Problem(
                    ProblemCode.BAD_HEADER,
                    "The header " + name + " could not be read.",
                    List.of(Fault.inHeader(
                                    name, "bad-header", "must be * or entity tags in double quotes, such as \"3\"")
                            .withValue(value)));
        }
        return new Precondition(false, tags);
    }
}
