package org.pailbook.records.problem;

import java.io.ByteArrayOutputStream;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * The address in a request line, as sent, judged before anybody decodes it.
 *
 * <p>The layers above answer a broken escape with an empty 400, replace bytes that are no UTF-8 in silence and read raw bytes
 * as Latin-1; a cow's number would then be another one. So nothing of that kind gets past here.
 */
final class RequestTarget {
    private static final int DELETE_CHARACTER = 127;

    /**
     * What is wrong with an address.
     *
     * @param code the problem it is answered with
     * @param detail the same in words
     */
    record Flaw(ProblemCode code, String detail) {}

    private RequestTarget() {}

    /**
     * The first thing wrong with an address.
     *
     * @param uri path and query as they stood in the request line; with scheme and host if they were sent
     */
    static Optional<Flaw> flawIn(String uri) {
        int queryMark = uri.indexOf('?');
        String path = queryMark < 0 ? uri : uri.substring(0, queryMark);
        String query = queryMark < 0 ? "" : uri.substring(queryMark + 1);
        boolean isAbsolute = path.startsWith("http://") || path.startsWith("https://");
        if (!isAbsolute && !path.startsWith("/")) {
            return flaw(ProblemCode.BAD_PATH, "The path must start with /.");
        }
        if (!isAbsolute && path.contains("//")) {
            return flaw(ProblemCode.NO_SUCH_ROUTE, "The path has two slashes in a row.");
        }
        Optional<Flaw> inPath = flawIn(path, ProblemCode.BAD_PATH, "path");
        return inPath.isPresent() ? inPath : flawIn(query, ProblemCode.BAD_PARAMETER, "query");
    }

    private static Optional<Flaw> flawIn(String text, ProblemCode code, String place) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(text.length());
        for (int i = 0; i < text.length(); i++) {
            char character = text.charAt(i);
            if (character != '%') {
                bytes.write(character);
                continue;
            }
            int value = hexadecimal(text, i + 1) * 16 + hexadecimal(text, i + 2);
            if (value < 0) {
                return flaw(code, "The " + place + " has a % without two hexadecimal digits; % itself is sent as %25.");
            }
            if (code == ProblemCode.BAD_PATH && (value < ' ' || value == DELETE_CHARACTER)) {
                return flaw(code, "The " + place + " has a control character.");
            }
            bytes.write(value);
            i += 2;
        }
        if (!isAsciiUri(text, code == ProblemCode.BAD_PATH)) {
            return flaw(
                    code, "The " + place + " has a character that must be sent as percent escapes of its UTF-8 bytes.");
        }
        try {
            StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes.toByteArray()));
            return Optional.empty();
        } catch (CharacterCodingException notUtf8) {
            return flaw(code, "The percent escapes of the " + place + " are not UTF-8.");
        }
    }

    /** Value of a digit; far below zero if there is none, so that no sum with another digit reaches zero. */
    private static int hexadecimal(String text, int index) {
        int digit = index < text.length() ? Character.digit(text.charAt(index), 16) : -1;
        return digit < 0 ? -1000 : digit;
    }

    /** The same class judges after us, in the HTTP layer, and answers what it does not like with an empty 400. */
    private static boolean isAsciiUri(String text, boolean isPath) {
        try {
            new URI(isPath ? text : "/?" + text);
            return text.chars().allMatch(character -> character < 128 && character != '#');
        } catch (URISyntaxException notOne) {
            return false;
        }
    }

    private static Optional<Flaw> flaw(ProblemCode code, String detail) {
        return Optional.of(new Flaw(code, detail));
    }
}
