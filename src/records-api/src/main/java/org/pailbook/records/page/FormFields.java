package org.pailbook.records.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.wire.LimitedBody;

/**
 * The fields of a form as a browser sends them, of any number: a sheet of many cows has more than the server's own reader takes.
 *
 * @see "application/x-www-form-urlencoded, URL standard (from memory)"
 */
final class FormFields {
    private static final long MOST_BYTES = 4 * LimitedBody.ONE_RECORD;

    private final Map<String, String> fields = new LinkedHashMap<>();

    private FormFields() {}

    static FormFields read(InputStream body) {
        FormFields form = new FormFields();
        try {
            String text = new String(new LimitedBody(body, MOST_BYTES).readAllBytes(), StandardCharsets.US_ASCII);
            for (String pair : text.split("&")) {
                int equals = pair.indexOf('=');
                if (equals > 0) {
                    form.fields.put(decoded(pair.substring(0, equals)), decoded(pair.substring(equals + 1)));
                }
            }
        } catch (IllegalArgumentException brokenEscape) {
            throw new Problem(ProblemCode.MALFORMED_FORM, "A field has an escape that cannot be.");
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
        return form;
    }

    private static String decoded(String text) {
        return URLDecoder.decode(text, StandardCharsets.UTF_8);
    }

    /** What was typed, without blanks around it; empty if there was no such field, or nothing in it. */
    Optional<String> text(String name) {
        return Optional.ofNullable(fields.get(name)).map(String::strip).filter(text -> !text.isEmpty());
    }

    /** @throws Problem if the field is missing or empty */
    String required(String name) {
        return text(name)
                .orElseThrow(
                        () -> new Problem(ProblemCode.MALFORMED_FORM, "The field " + name + " is missing.", List.of()));
    }

    /** Every field as it was typed, by its name. */
    Map<String, String> typed() {
        return Collections.unmodifiableMap(fields);
    }

    boolean has(String name) {
        return fields.containsKey(name);
    }

    /** Names of all fields, in the order sent. */
    List<String> names() {
        return List.copyOf(fields.keySet());
    }
}
