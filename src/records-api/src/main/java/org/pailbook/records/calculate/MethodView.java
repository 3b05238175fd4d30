package org.pailbook.records.calculate;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.Locale;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.correctedmilk.CorrectedMilkFormula;
import org.pailbook.lactation.correctedmilk.MilkEnergyFormula;
import org.pailbook.lactation.correctedmilk.ProteinBasis;
import org.pailbook.lactation.correctedmilk.StandardMilk;
import org.pailbook.lactation.curve.CurveModel;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.persistency.PersistencyMeasure;
import org.pailbook.records.wire.FigureView;
import org.pailbook.records.wire.OrNull;

/**
 * A published method and what has to be known to choose it.
 *
 * @param name as in the method of a figure, and as asked for
 * @param kind what it answers
 */
@Schema(name = "PublishedMethod", description = "A method of this service, with its source and when it refuses")
@JsonInclude(JsonInclude.Include.NON_NULL)
record MethodView(
        @Schema(examples = "wood-1967") String name,

        @Schema(description = "Raised whenever a result changes")
        String version,

        @Schema(examples = "curve") String kind,
        @Schema(description = "What the trade calls it") String title,
        @Schema(description = "Where it is described") String source,

        @Schema(description = "read, transcribed, from-memory, ours or common-practice")
        String sourceKnown,

        @Schema(description = "Fewer usable tests are refused")
        Integer leastTests,

        @Schema(description = "Parameters of a curve") Integer parameterCount,

        @Schema(description = "Last day in milk a measure of persistency looks at")
        Integer lastDayNeeded,

        @Schema(description = "Composition at which corrected milk equals milk, as its source states")
        Composition standard,

        @Schema(description = "What one kg of that milk really comes to")
        Double factorAtStandard,

        @Schema(description = "Stands in, with a warning, when lactose was not measured")
        Double assumedLactosePct,

        @Schema(description = "Fat below which the formula is known to be off")
        Double lowestFatPct,

        @Schema(
                description = "Which protein it means",
                enumeration = {"crude", "true", "not-stated", "unused"})
        String proteinBasis) {

    /** Percent by mass; what the formula does not use is absent. */
    @Schema(name = "MilkComposition")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Composition(double fatPct, Double proteinPct, Double lactosePct, Double solidsNotFatPct) {
        static Composition of(StandardMilk standard) {
            return new Composition(
                    standard.fatPct(),
                    OrNull.of(standard.proteinPct()),
                    OrNull.of(standard.lactosePct()),
                    OrNull.of(standard.solidsNotFatPct()));
        }
    }

    static MethodView of(PublishedMethod method, String kind) {
        FigureView.MethodView common = FigureView.MethodView.of(method);
        Integer leastTests = null;
        Integer parameterCount = null;
        Integer lastDay = null;
        if (method instanceof CurveModel curve) {
            leastTests = curve.leastTests();
            parameterCount = curve.parameterCount();
        } else if (method instanceof PersistencyMeasure measure) {
            leastTests = PersistencyMeasure.LEAST_TESTS;
            lastDay = OrNull.of(measure.lastDayNeeded());
        }
        CorrectedMilkFormula formula = method instanceof CorrectedMilkFormula corrected ? corrected : null;
        ProteinBasis basis = formula != null
                ? formula.proteinBasis()
                : method instanceof MilkEnergyFormula energy ? energy.proteinBasis() : null;
        return new MethodView(
                common.name(),
                common.version(),
                kind,
                formula == null ? null : formula.title(),
                common.source(),
                common.sourceKnown(),
                leastTests,
                parameterCount,
                lastDay,
                formula == null ? null : Composition.of(formula.standard()),
                formula == null ? null : (Double) formula.factorAtStandard(),
                formula == null ? null : OrNull.of(formula.assumedLactosePct()),
                formula == null ? null : OrNull.of(formula.lowestFatPct()),
                basis == null ? null : basis.name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }
}
