package org.pailbook.records.exchange;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import org.pailbook.records.intake.PostedRow;
import org.pailbook.records.problem.Fault;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.problem.ProblemCode;
import org.pailbook.records.wire.FindingView;
import org.pailbook.records.wire.StrictJson;

/** {@code {"rows": [...]}} or a bare array of records. */
final class JsonRows implements RowReader {
    private final JsonParser parser;
    private final boolean inObject;
    private final String at;
    private int row;

    JsonRows(InputStream body) throws IOException {
        parser = StrictJson.parser(body);
        JsonToken first = parser.nextToken();
        if (first == null) {
            throw new Problem(ProblemCode.EMPTY_BODY, "Send {\"rows\": [...]} or an array of records.");
        }
        inObject = first == JsonToken.START_OBJECT;
        at = inObject ? "/rows" : "";
        if (inObject) {
            openRows();
        } else if (first != JsonToken.START_ARRAY) {
            throw notRows("");
        }
    }

    private void openRows() throws IOException {
        if (parser.nextToken() != JsonToken.FIELD_NAME || !parser.currentName().equals("rows")) {
            throw notRows(parser.currentName() == null ? "/rows" : "/" + parser.currentName());
        }
        if (parser.nextToken() != JsonToken.START_ARRAY) {
            throw notRows("/rows");
        }
    }

    @Override
    public PostedRow next() throws IOException {
        if (parser.nextToken() == JsonToken.END_ARRAY) {
            finish();
            return null;
        }
        JsonNode node = StrictJson.value(parser);
        row++;
        String pointer = at + "/" + (row - 1);
        if (node instanceof ObjectNode object) {
            return new PostedRow(row, 0, pointer, object, List.of());
        }
        return new PostedRow(
                row,
                0,
                pointer,
                null,
                List.of(FindingView.error("not-an-object", pointer, "must be a JSON object")
                        .seen(String.valueOf(node))));
    }

    private void finish() throws IOException {
        if (inObject && parser.nextToken() != JsonToken.END_OBJECT) {
            throw notRows("/" + parser.currentName());
        }
        if (parser.nextToken() != null) {
            throw new Problem(ProblemCode.MALFORMED_JSON, "There is more text after the rows.");
        }
    }

    private static Problem notRows(String pointer) {
        return Problem.validation(List.of(Fault.inBody(
                pointer,
                "not-rows",
                "the body must be {\"rows\": [...]} with no other member, or an array of records")));
    }
}
