package org.pailbook.records.calculate;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.records.computed.MethodChoice;
import org.pailbook.records.computed.YieldsView;
import org.pailbook.records.wire.Fields;

/** Which lactation to add up, and by which method. */
final class YieldRequest {
    private static final String ALL = "all";

    private final PostedLactation lactation;
    private final String methodId;

    /** The members as they stand in the description of the API; the class reads them itself. */
    @Schema(
            name = "AccumulatedYieldRequest",
            description = "A lactation with its test days, and how to add up what she gave",
            allOf = PostedLactation.class,
            requiredProperties = {"calvingDate", "testDays"},
            examples = "{\"method\":\"test-interval\",\"calvingDate\":\"2025-03-25\",\"parity\":3,\"breed\":\"RDC\","
                    + "\"testDays\":[{\"date\":\"2025-04-08\",\"milkKg\":28.2,\"fatPct\":3.65},"
                    + "{\"date\":\"2025-05-06\",\"milkKg\":24.8,\"fatPct\":3.45},"
                    + "{\"date\":\"2025-06-05\",\"milkKg\":26.6,\"fatPct\":3.4}]}")
    record Members(
            @Schema(
                    description = "Method by its name; all, or left out: all of them side by side",
                    examples = "test-interval")
            String method) {}

    private YieldRequest(PostedLactation lactation, String methodId) {
        this.lactation = lactation;
        this.methodId = methodId;
    }

    static YieldRequest read(ObjectNode body) {
        Fields fields = new Fields(body, "");
        List<String> known = Stream.concat(Stream.of(ALL), MethodChoice.ids(MethodChoice.yieldMethods()).stream())
                .toList();
        String method = fields.code("method", known);
        PostedLactation lactation = PostedLactation.read(fields);
        fields.finish();
        fields.refuseIfWrong();
        return new YieldRequest(lactation, ALL.equals(method) ? null : method);
    }

    YieldsView answer(boolean explain, Instant computedAt) {
        return YieldsView.of(lactation.subject(computedAt), methodId, explain);
    }
}
