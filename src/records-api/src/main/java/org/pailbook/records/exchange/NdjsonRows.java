package org.pailbook.records.exchange;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.pailbook.records.intake.PostedRow;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.wire.FindingView;
import org.pailbook.records.wire.StrictJson;

/** One JSON object a line; blank lines are skipped, a line that is no object is an unreadable row. */
final class NdjsonRows implements RowReader {
    private static final int LONGEST_LINE = 64 * 1024;

    private final BufferedReader lines;
    private int line;
    private int row;

    NdjsonRows(InputStream body) {
        lines = new BufferedReader(StrictJson.utf8(body));
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
            ObjectNode object = StrictJson.object(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
            return new PostedRow(row, line, pointer, object, List.of());
        } catch (Problem unreadable) {
            String code = unreadable.code() == ProblemCode.VALIDATION_FAILED
                    ? "not-an-object"
                    : unreadable.code().code();
            FindingView finding = FindingView.error(code, pointer, "is not one JSON object on a line")
                    .seen(text);
            return new PostedRow(row, line, pointer, null, List.of(finding));
        }
    }

    /** A line without its end, or null; bounded, so that a body without line ends cannot fill the memory. */
    private String nextLine() throws IOException {
        StringBuilder text = new StringBuilder();
        int next = lines.read();
        if (next < 0) {
            return null;
        }
        line++;
        while (next >= 0 && next != '\n') {
            if (text.length() == LONGEST_LINE) {
                throw new Problem(
                        ProblemCode.TOO_LARGE, "Line " + line + " is longer than " + LONGEST_LINE + " characters.");
            }
            text.append((char) next);
            next = lines.read();
        }
        int end = text.length();
        return end > 0 && text.charAt(end - 1) == '\r' ? text.substring(0, end - 1) : text.toString();
    }
}
