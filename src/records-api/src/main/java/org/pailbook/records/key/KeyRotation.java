package org.pailbook.records.key;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** How a key is to change its text. */
@Schema(name = "KeyRotation", examples = "{\"overlapHours\":24}")
record KeyRotation(
        @Schema(description = "Hours the old text works on, 0 to 720; 24 if left out")
        Integer overlapHours) {
    private static final int USUAL_HOURS = 24;
    private static final int MOST_HOURS = 720;

    static KeyRotation read(ObjectNode body) {
        Fields fields = new Fields(body, "");
        Integer hours = fields.integer("overlapHours", 0, MOST_HOURS);
        fields.finish();
        if (!fields.findings().isEmpty()) {
            throw Problem.validation(
                    fields.findings().stream().map(FindingView::asFault).toList());
        }
        return new KeyRotation(hours);
    }

    Duration overlap() {
        return Duration.ofHours(overlapHours == null ? USUAL_HOURS : overlapHours);
    }
}
