package org.pailbook.records.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.figure.UsedInput;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.method.PublishedMethod;

/**
 * A computed figure as it goes out: never without method, inputs and warnings.
 *
 * @param status ok, or notEnoughData when there is no value
 * @param value in {@code unit}, not rounded
 * @param interval80 prediction interval that should hold in 80 of 100 cases
 * @param intervalNote why there is no interval
 */
@Schema(name = "Figure", description = "A computed value with unit, interval, method, inputs and warnings")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record FigureView(
        @Schema(
                enumeration = {"ok", "notEnoughData"},
                required = true)
        String status,

        Double value,
        @Schema(examples = "kg", required = true) String unit,
        Ends interval80,
        Ends interval95,
        String intervalNote,
        @Schema(required = true) MethodView method,
        @Schema(description = "Days the inputs are from") InputsView inputs,
        List<WarningView> warnings,

        @Schema(description = "Parts that add up to the value; only with explain=true")
        List<PartView> explanation) {

    private static final double NARROW = 0.80;
    private static final double WIDE = 0.95;

    /** Both ends of an interval, unit of the figure. */
    @Schema(name = "Interval")
    public record Ends(double low, double high) {
        static Ends of(Interval interval) {
            return new Ends(interval.low(), interval.high());
        }
    }

    /** Which published method, which version of ours, and where it is described. */
    @Schema(name = "Method")
    public record MethodView(
            @Schema(examples = "test-interval") String name,
            @Schema(examples = "1") String version,

            @Schema(examples = "Sargent, Lytton and Wall (1968)")
            String source,

            @Schema(description = "read, transcribed, from-memory, ours or common-practice")
            String sourceKnown) {
        public static MethodView of(PublishedMethod method) {
            return new MethodView(
                    method.id(),
                    Integer.toString(method.version()),
                    method.citation().text(),
                    method.citation()
                            .howKnown()
                            .name()
                            .toLowerCase(java.util.Locale.ROOT)
                            .replace('_', '-'));
        }
    }

    /** How many inputs were used, the days they are from, and which were left out and why. */
    @Schema(name = "Inputs")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record InputsView(int testDays, String firstTest, String lastTest, List<LeftOut> excluded) {
        public static InputsView of(List<UsedInput> inputs) {
            List<String> used = inputs.stream()
                    .filter(input -> input.isUsed() && input.kind().equals("test-day"))
                    .map(input -> input.date().toString())
                    .sorted()
                    .toList();
            List<LeftOut> out = inputs.stream()
                    .filter(input -> !input.isUsed())
                    .map(input -> new LeftOut(
                            input.kind(),
                            input.date().toString(),
                            input.whyLeftOut().orElse("")))
                    .toList();
            return new InputsView(
                    used.size(),
                    used.isEmpty() ? null : used.get(0),
                    used.isEmpty() ? null : used.get(used.size() - 1),
                    out.isEmpty() ? null : out);
        }
    }

    /** An input that took no part. */
    @Schema(name = "LeftOutInput")
    public record LeftOut(String kind, String date, String why) {}

    /**
     * A finding of the computation.
     *
     * @param count how many there are of this code, member and limit, if more than this one
     * @param others where the next ones are, four at most
     */
    @Schema(name = "Warning")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record WarningView(
            String code,

            @Schema(enumeration = {"blocks", "weakens", "notes"})
            String effect,

            String message,
            String date,
            String field,
            String seen,
            String expected,

            @Schema(description = "Our id of the record it is about")
            String record,

            @Schema(
                    description =
                            "How many inputs of the figure it is said of, if more than one; the first is told here, four more in others")
            Integer count,

            @Schema(description = "The next inputs it is said of, four at most")
            List<PlaceView> others) {
        /** With the first one, four more: five are named in all. */
        private static final int MOST_OTHERS = 4;

        /** Findings of a figure's inputs, those of one code, member and limit told once. */
        public static List<WarningView> ofInputs(List<Finding> findings) {
            Map<List<Object>, List<Finding>> alike = findings.stream()
                    .collect(Collectors.groupingBy(
                            finding -> List.of(finding.code(), finding.field(), finding.expected()),
                            LinkedHashMap::new,
                            Collectors.toList()));
            return alike.values().stream().map(WarningView::ofAlike).toList();
        }

        private static WarningView ofAlike(List<Finding> alike) {
            WarningView first = of(alike.get(0));
            return alike.size() == 1
                    ? first
                    : new WarningView(
                            first.code,
                            first.effect,
                            first.message,
                            first.date,
                            first.field,
                            first.seen,
                            first.expected,
                            first.record,
                            alike.size(),
                            alike.stream()
                                    .skip(1)
                                    .limit(MOST_OTHERS)
                                    .map(WarningView::of)
                                    .map(one -> new PlaceView(one.date, one.seen, one.record))
                                    .toList());
        }

        public static WarningView of(Finding finding) {
            return new WarningView(
                    finding.code().code(),
                    finding.severity().name().toLowerCase(java.util.Locale.ROOT),
                    finding.code().meaning(),
                    finding.date().map(Object::toString).orElse(null),
                    finding.field().orElse(null),
                    finding.seen().orElse(null),
                    finding.expected().orElse(null),
                    finding.record().orElse(null),
                    null,
                    null);
        }
    }

    /** Where a finding is that is told once for several inputs. */
    @Schema(name = "WarningPlace")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record PlaceView(
            String date,
            String seen,

            @Schema(description = "Our id of the record it is about")
            String record) {}

    /** One addend of a figure. */
    @Schema(name = "ExplanationPart")
    public record PartView(String what, double amount) {}

    /** The same figure made from another figure, with that one's inputs: a conversion has none of its own. */
    public FigureView from(Figure other) {
        return new FigureView(
                status,
                value,
                unit,
                interval80,
                interval95,
                intervalNote,
                method,
                InputsView.of(other.inputs()),
                warnings,
                explanation);
    }

    /** @param explain whether to send the parts the figure was added up from */
    public static FigureView of(Figure figure, boolean explain) {
        // its words are put together when they are asked for, and only then
        List<Explanation.Part> parts = explain ? figure.explanation().parts() : List.of();
        return new FigureView(
                figure.value().isPresent() ? "ok" : "notEnoughData",
                OrNull.of(figure.value()),
                figure.unit(),
                figure.interval(NARROW).map(Ends::of).orElse(null),
                figure.interval(WIDE).map(Ends::of).orElse(null),
                figure.intervalNote().orElse(null),
                MethodView.of(figure.method()),
                InputsView.of(figure.inputs()),
                WarningView.ofInputs(figure.findings()),
                parts.isEmpty()
                        ? null
                        : parts.stream()
                                .map(part -> new PartView(part.what(), part.amount()))
                                .toList());
    }
}
