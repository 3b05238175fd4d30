package org.pailbook.records.projection;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.projection.IntervalCalibration;
import org.pailbook.lactation.projection.ProjectionAccuracy;
import org.pailbook.lactation.summary.HerdKnowledge;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;
import org.pailbook.records.wire.FigureView.MethodView;

/**
 * How right the projections of a herd were.
 *
 * @param status ok, or notEnoughData while no lactation is completed
 */
@Schema(
        name = "ProjectionAccuracy",
        description =
                "Completed lactations projected again as they stood after each test, held against what they came to: 305-day milk")
@JsonInclude(JsonInclude.Include.NON_NULL)
record ProjectionAccuracyView(
        String herd,

        @Schema(description = "Events after this day took no part")
        String asOf,

        @Schema(
                description =
                        "When the last change this answer knows of was recorded, or as asked; with it and asOf it is repeated")
        String knownAt,

        String computedAt,
        @Schema(enumeration = {"ok", "notEnoughData"}) String status,
        @Schema(examples = "milk305Kg") String figure,
        @Schema(examples = "kg") String unit,
        MethodView method,

        @Schema(description = "Completed lactations the table is made from")
        int completedLactations,

        @Schema(description = "Lactations of the herd that its standards learned from")
        int lactationsLearnedFrom,

        @Schema(description = "Test days of the herd that its standards learned from")
        int testDaysLearnedFrom,

        @Schema(
                description = "Where the widths of the intervals come from",
                enumeration = {"herd", "shipped"})
        String calibratedBy,

        List<RowView> rows,

        @Schema(description = "What to keep in mind when reading the table")
        List<String> notes) {

    /** Accuracy after so many tests. */
    @Schema(name = "ProjectionAccuracyRow")
    record RowView(
            @Schema(description = "Test days the projections were made from")
            int tests,

            @Schema(description = "Projections, one a lactation")
            int lactations,

            double meanTrueKg,

            @Schema(description = "Mean of projection less truth, kg")
            double biasKg,

            @Schema(description = "Standard deviation of projection less truth, kg")
            double errorSdKg,

            double meanAbsoluteErrorKg,

            @Schema(description = "In percent of the mean truth")
            double meanAbsoluteErrorPct,

            double rootMeanSquareErrorKg,

            @Schema(description = "Of projection and truth, -1 to 1; 0 where either does not vary")
            double correlation,

            @Schema(description = "Share of truths inside the 80 % interval, 0 to 1")
            double coverage80Share,

            @Schema(description = "Share of truths inside the 95 % interval, 0 to 1")
            double coverage95Share,

            @Schema(
                    description =
                            "What the standard error of the model is multiplied with; above 1 widens the intervals")
            double calibrationFactor) {

        static RowView of(ProjectionAccuracy.Row row, IntervalCalibration calibration) {
            return new RowView(
                    row.tests(),
                    row.lactations(),
                    row.meanTrueKg(),
                    row.biasKg(),
                    row.errorSdKg(),
                    row.meanAbsoluteErrorKg(),
                    100 * row.meanAbsoluteErrorKg() / row.meanTrueKg(),
                    row.rootMeanSquareErrorKg(),
                    row.correlation(),
                    row.coverage80Share(),
                    row.coverage95Share(),
                    calibration.factor(row.tests()));
        }
    }

    private static final List<String> ALWAYS = List.of(
            "Completed lactations only: milked to day 275 or later and well enough tested. Cows that left or dried off early are not in it,"
                    + " so projections of cows now in milk may err more.",
            "What a lactation came to is its projection from all its tests, not a sum of weights of every day.",
            "Of a cow's own lactations only earlier ones took part; tests of other cows up to asOf did, later ones than the projection"
                    + " would have known among them.");

    static ProjectionAccuracyView of(HerdRow herd, HerdKnowledge knowledge, AsOf asOf) {
        List<RowView> rows = knowledge.accuracy().rows().stream()
                .map(row -> RowView.of(row, knowledge.calibration()))
                .toList();
        boolean own = knowledge.isCalibratedByHerd();
        String widths = own
                ? "The shipped widths of the intervals are moved by these lactations, n of them with weight n / (n + 50); for the shares"
                        + " inside, each cow's by the other cows only."
                : "Too few completed lactations yet to move the widths of the intervals: they are as shipped.";
        return new ProjectionAccuracyView(
                herd.code,
                asOf.day().toString(),
                asOf.knownAtText(),
                asOf.computedAt().toString(),
                rows.isEmpty() ? "notEnoughData" : "ok",
                "milk305Kg",
                "kg",
                MethodView.of(knowledge.method()),
                knowledge.completedLactations(),
                knowledge.lactations(),
                knowledge.testDays(),
                own ? "herd" : "shipped",
                rows,
                Stream.concat(ALWAYS.stream(), Stream.of(widths)).toList());
    }
}
