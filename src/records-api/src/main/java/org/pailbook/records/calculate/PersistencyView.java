package org.pailbook.records.calculate;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.pailbook.lactation.curve.CurveFit;
import org.pailbook.lactation.curve.CurveModel;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.persistency.FirstTestYield;
import org.pailbook.lactation.persistency.MonthlyPersistency;
import org.pailbook.lactation.persistency.PeakTest;
import org.pailbook.lactation.persistency.PersistencyMeasures;
import org.pailbook.lactation.persistency.SummitMilk;
import org.pailbook.lactation.projection.BestPredictionPersistency;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.records.computed.CurveView;
import org.pailbook.records.computed.Subject;
import org.pailbook.records.wire.FigureView;
import org.pailbook.records.wire.FigureView.WarningView;

/**
 * How a lactation holds up, by every measure that one lactation can be asked for.
 *
 * @param curve what the measures of a curve were read off
 * @param reliabilityShare of best-prediction-persistency
 * @param measures each a figure or its refusal
 */
@Schema(
        name = "Persistency",
        description = "How a lactation holds up: each measure with its value, or why it has none. No measure ranks cows"
                + " alone; show it beside yield")
@JsonInclude(JsonInclude.Include.NON_NULL)
record PersistencyView(
        Integer parity,
        String calvedOn,

        @Schema(description = "Events after this day took no part")
        String asOf,

        String computedAt,

        @Schema(enumeration = {"ok", "notEnoughData"}) String status,

        CurveView curve,

        @Schema(description = "Reliability of best-prediction-persistency, 0 to 1")
        Double reliabilityShare,

        List<FigureView> measures,

        @Schema(description = "About the lactation itself; each measure has its own")
        List<WarningView> warnings) {

    static PersistencyView of(Subject subject, CurveModel model, boolean explain) {
        Lactation lactation = subject.lactation().orElseThrow();
        LocalDate asOf = subject.asOf().day();
        CurveFit fit = model.fit(lactation, asOf);
        BestPredictionPersistency.Persistency predicted = new BestPredictionPersistency()
                .of(lactation, LactationStandards.forCow(subject.breed(), lactation.parity()), asOf);
        List<Figure> figures = new ArrayList<>();
        PersistencyMeasures.all().forEach(measure -> figures.add(measure.ofFit(fit)));
        MonthlyPersistency.all().forEach(measure -> figures.add(measure.ofLactation(lactation, asOf)));
        figures.add(predicted.figure());
        PeakTest.all().forEach(peak -> figures.add(peak.ofLactation(lactation, asOf)));
        figures.add(SummitMilk.SUMMIT.ofLactation(lactation, asOf));
        figures.add(FirstTestYield.BY_DAY_40.ofLactation(lactation, asOf));
        return new PersistencyView(
                lactation.parity(),
                lactation.calvingDate().toString(),
                asOf.toString(),
                subject.asOf().computedAt().toString(),
                figures.stream().anyMatch(figure -> figure.value().isPresent()) ? "ok" : "notEnoughData",
                CurveView.of(fit),
                predicted.reliabilityShare(),
                figures.stream().map(figure -> FigureView.of(figure, explain)).toList(),
                subject.findings().stream().map(WarningView::of).toList());
    }
}
