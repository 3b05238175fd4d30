package org.pailbook.records.wire;

import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.figure.Measured;

/**
 * A measure of a herd: what was counted over what, and the figure.
 *
 * @param measure stable name
 * @param what in the barn's words
 */
@Schema(name = "MeasuredFigure", description = "A herd's figure with what is counted over what, in words and numbers")
public record MeasuredView(
        @Schema(examples = "herd-turnover", required = true) String measure,
        @Schema(required = true) String what,
        @Schema(required = true) CountView numerator,
        @Schema(required = true) CountView denominator,
        @Schema(required = true) FigureView figure) {

    /** One side of the line. */
    @Schema(name = "MeasureCount")
    public record CountView(String what, double value) {}

    public static MeasuredView of(Measured measured) {
        return new MeasuredView(
                measured.measure().id(),
                measured.measure().what(),
                new CountView(measured.measure().numerator(), measured.numerator()),
                new CountView(measured.measure().denominator(), measured.denominator()),
                FigureView.of(measured.figure(), false));
    }
}
