package org.pailbook.records.intake;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.pailbook.records.wire.FindingView;

/**
 * One record as it was posted.
 *
 * @param row number in the request, from 1
 * @param line line of the file, from 1; 0 where the form has no lines
 * @param pointer its place in the body; empty for a body that is one record
 * @param content its members; empty if it could not be read
 * @param unreadable why it could not be read; empty if it could
 */
public record PostedRow(int row, int line, String pointer, ObjectNode content, List<FindingView> unreadable) {

    /** The only record of a request. */
    public static PostedRow single(ObjectNode content) {
        return new PostedRow(1, 0, "", content, List.of());
    }
}
