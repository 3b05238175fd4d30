package org.pailbook.records.exchange;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.util.List;
import org.pailbook.records.intake.PostedRow;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.wire.FindingView;
import org.pailbook.records.wire.StrictJson;

/** One JSON object a line; blank lines are skipped, a line that is no object is an unreadable row. */
final class NdjsonRows implements RowReader {
    private static final int LONGEST_LINE = 64 * 1024;

    private final Reader body;
    private final char[] buffer = new char[8192];
    private int at;
    private int filled;
    private int line;
    private int row;

    NdjsonRows(InputStream body) {
        this.body = StrictJson.utf8(body);
    }

    @Override
    public PostedRow next() throws IOException {
        String text = nextLine();
        while (text != null && text.isBlank()) {
            text = nextLine();
        }
        if (text == null) {
            return null;
        }
        row++;
        String pointer = "/rows/" + (row - 1);
        try {
            ObjectNode object = StrictJson.object(text);
            return new PostedRow(row, line, pointer, object, List.of());
        } catch (Problem unreadable) {
            boolean noObject = unreadable.code() == ProblemCode.VALIDATION_FAILED
                    || unreadable.code() == ProblemCode.EMPTY_BODY; // the line says null
            String code = noObject ? "not-an-object" : unreadable.code().code();
            FindingView finding = FindingView.error(code, pointer, "is not one JSON object on a line")
                    .seen(text);
            return new PostedRow(row, line, pointer, null, List.of(finding));
        }
    }

    /** A line without its end, or null; bounded, so that a body without line ends cannot fill the memory. */
    private String nextLine() throws IOException {
        if (at == filled && !fill()) {
            return null;
        }
        line++;
        StringBuilder text = new StringBuilder();
        do {
            int end = at;
            while (end < filled && buffer[end] != '\n') {
                end++;
            }
            if (text.length() + end - at > LONGEST_LINE) {
                throw new Problem(
                        ProblemCode.TOO_LARGE, "Line " + line + " is longer than " + LONGEST_LINE + " characters.");
            }
            text.append(buffer, at, end - at);
            at = end;
            if (end < filled) {
                at++;
                break;
            }
        } while (fill());
        int length = text.length();
        return length > 0 && text.charAt(length - 1) == '\r' ? text.substring(0, length - 1) : text.toString();
    }

    private boolean fill() throws IOException {
        at = 0;
        filled = Math.max(0, body.read(buffer));
        return filled > 0;
    }
}
