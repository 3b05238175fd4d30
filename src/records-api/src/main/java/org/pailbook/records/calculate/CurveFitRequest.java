package org.pailbook.records.calculate;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.curve.CurveModel;
import org.pailbook.lactation.curve.LactationCurves;
import org.pailbook.records.computed.CurvesView;
import org.pailbook.records.computed.MethodChoice;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.FindingView;

/** What to fit to which tests: a lactation with dates, or bare days and weights. */
final class CurveFitRequest {
    /** Later points are no lactation, and sums over days would run long. Ours. */
    private static final double LATEST_DAY = 10_000;

    private final List<CurveModel> models;
    /** Null if bare points were posted. */
    private final PostedLactation lactation;

    private final double[] daysInMilk;
    private final double[] milkKg;

    /** The members as they stand in the description of the API; the class reads them itself. */
    @Schema(
            name = "CurveFitRequest",
            description = "A lactation with its test days, or bare daysInMilk and milkKg; which curves to fit",
            allOf = PostedLactation.class,
            examples = "{\"model\":\"wood-1967\",\"calvingDate\":\"2025-01-01\",\"parity\":2,\"testDays\":["
                    + "{\"date\":\"2025-01-16\",\"milkKg\":23.656},{\"date\":\"2025-02-15\",\"milkKg\":28.23},"
                    + "{\"date\":\"2025-03-14\",\"milkKg\":28.291},{\"date\":\"2025-04-14\",\"milkKg\":27.473},"
                    + "{\"date\":\"2025-05-13\",\"milkKg\":25.668}]}")
    record Members(
            @Schema(description = "Curve by its name; all of them, compared, if left out", examples = "wood-1967")
            String model,

            @Schema(description = "Several curves by their names; not together with model")
            List<String> models,

            @Schema(
                    description = "In place of calvingDate and testDays: days from calving, above 0, in any order;"
                            + " nothing is left out or judged then, and weeks will do as well",
                    maxItems = PostedLactation.MOST_TEST_DAYS)
            List<Double> daysInMilk,

            @Schema(
                    description = "Milk of 24 hours on each of those days, kg",
                    maxItems = PostedLactation.MOST_TEST_DAYS)
            List<Double> milkKg) {}

    private CurveFitRequest(List<CurveModel> models, PostedLactation lactation, double[] daysInMilk, double[] milkKg) {
        this.models = models;
        this.lactation = lactation;
        this.daysInMilk = daysInMilk;
        this.milkKg = milkKg;
    }

    static CurveFitRequest read(ObjectNode body) {
        Fields fields = new Fields(body, "");
        List<CurveModel> models = readModels(fields);
        boolean hasDays = fields.has("daysInMilk");
        CurveFitRequest request = hasDays || fields.has("milkKg")
                ? readPoints(fields, models)
                : new CurveFitRequest(models, PostedLactation.read(fields), null, null);
        fields.finish();
        fields.refuseIfWrong();
        return request;
    }

    private static List<CurveModel> readModels(Fields fields) {
        Optional<CurveModel> one = MethodChoice.ofMember(fields, "model", LactationCurves.all());
        List<String> ids = fields.texts("models", LactationCurves.all().size(), 100);
        if (ids != null && fields.has("model")) {
            fields.findings()
                    .add(FindingView.error("not-together", fields.pointer("models"), "send model or models, not both"));
        }
        if (ids == null) {
            return one.map(List::of).orElse(LactationCurves.all());
        }
        if (ids.isEmpty()) {
            fields.findings()
                    .add(FindingView.error(
                            "required", fields.pointer("models"), "must name a curve; leave it out for all of them"));
        }
        List<CurveModel> chosen = new ArrayList<>();
        for (int i = 0; i < ids.size(); i++) {
            Optional<CurveModel> model = LactationCurves.byId(ids.get(i));
            if (model.isEmpty()) {
                fields.findings()
                        .add(FindingView.error(
                                        "unknown-code",
                                        fields.pointer("models") + "/" + i,
                                        "must be one of " + String.join(", ", MethodChoice.ids(LactationCurves.all())))
                                .seen(ids.get(i)));
            }
            model.filter(found -> !chosen.contains(found)).ifPresent(chosen::add);
        }
        return chosen;
    }

    private static CurveFitRequest readPoints(Fields fields, List<CurveModel> models) {
        fields.require("daysInMilk");
        fields.require("milkKg");
        double[] days = fields.measures("daysInMilk", PostedLactation.MOST_TEST_DAYS);
        double[] kg = fields.measures("milkKg", PostedLactation.MOST_TEST_DAYS);
        if (days != null && kg != null && days.length != kg.length) {
            fields.findings()
                    .add(FindingView.error(
                                    "length-differs",
                                    fields.pointer("milkKg"),
                                    "must have as many entries as daysInMilk")
                            .seen(Integer.toString(kg.length))
                            .expecting(days.length + " entries"));
        }
        for (int i = 0; days != null && i < days.length; i++) {
            String place = fields.pointer("daysInMilk") + "/" + i;
            boolean isNoted = fields.findings().stream().anyMatch(finding -> place.equals(finding.pointer()));
            if (!(days[i] > 0 && days[i] <= LATEST_DAY) && !isNoted) {
                fields.findings()
                        .add(FindingView.error("out-of-range", place, "must lie above 0, the day of calving")
                                .seen(Double.toString(days[i]))
                                .expecting("above 0, at most " + (int) LATEST_DAY));
            }
        }
        return new CurveFitRequest(models, null, days, kg);
    }

    CurvesView answer(boolean explain, Instant computedAt) {
        return lactation == null
                ? CurvesView.ofPoints(daysInMilk, milkKg, models, explain, computedAt.toString())
                : CurvesView.of(lactation.subject(computedAt), models, explain);
    }
}
