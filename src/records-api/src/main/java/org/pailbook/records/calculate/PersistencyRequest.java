package org.pailbook.records.calculate;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.curve.CurveModel;
import org.pailbook.lactation.curve.LactationCurves;
import org.pailbook.records.computed.MethodChoice;
import org.pailbook.records.wire.Fields;

/** Which lactation to tell the persistency of, and the curve some measures are read off. */
final class PersistencyRequest {
    private final PostedLactation lactation;
    private final CurveModel model;

    /** The members as they stand in the description of the API; the class reads them itself. */
    @Schema(
            name = "PersistencyRequest",
            description = "A lactation with its test days",
            allOf = PostedLactation.class,
            requiredProperties = {"calvingDate", "testDays"},
            examples = "{\"calvingDate\":\"2025-01-01\",\"parity\":2,\"breed\":\"HOL\",\"testDays\":["
                    + "{\"date\":\"2025-01-16\",\"milkKg\":23.656},{\"date\":\"2025-02-15\",\"milkKg\":28.23},"
                    + "{\"date\":\"2025-03-14\",\"milkKg\":28.291},{\"date\":\"2025-04-14\",\"milkKg\":27.473},"
                    + "{\"date\":\"2025-05-13\",\"milkKg\":25.668}]}")
    record Members(
            @Schema(
                    description = "Curve that measures of a curve are read off; wood-1967 if left out",
                    examples = "wood-1967")
            String model) {}

    private PersistencyRequest(PostedLactation lactation, CurveModel model) {
        this.lactation = lactation;
        this.model = model;
    }

    static PersistencyRequest read(ObjectNode body) {
        Fields fields = new Fields(body, "");
        CurveModel model =
                MethodChoice.ofMember(fields, "model", LactationCurves.all()).orElse(LactationCurves.WOOD);
        PostedLactation lactation = PostedLactation.read(fields);
        fields.finish();
        fields.refuseIfWrong();
        return new PersistencyRequest(lactation, model);
    }

    PersistencyView answer(boolean explain, Instant computedAt) {
        return PersistencyView.of(lactation.subject(computedAt), model, explain);
    }
}
