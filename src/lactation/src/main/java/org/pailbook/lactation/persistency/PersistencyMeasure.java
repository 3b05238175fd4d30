package org.pailbook.lactation.persistency;

import java.util.List;
import java.util.OptionalInt;
import org.pailbook.lactation.curve.CurveFit;
import org.pailbook.lactation.curve.LactationCurve;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.PublishedMethod;

/** A persistency read off a lactation curve. Implementations are listed in {@link PersistencyMeasures}. */
public interface PersistencyMeasure extends PublishedMethod {
    /** Fewer tests give no persistency, whatever the curve; ours. */
    int LEAST_TESTS = 4;

    /** Unit of the measure: {@code %}, {@code kg/d}, or {@code 1} for a pure number. */
    String unit();

    /** Last day in milk the measure looks at; empty if it is a property of the whole curve. */
    OptionalInt lastDayNeeded();

    /** Whether the measure is defined for that curve. */
    boolean isDefinedFor(LactationCurve curve);

    /**
     * The measure of a curve with known parameters.
     *
     * @throws IllegalArgumentException if it is not defined for that curve
     */
    double of(LactationCurve curve);

    /** What was compared, with the numbers, in one line. */
    String arithmetic(LactationCurve curve);

    /**
     * The measure of one cow's fitted curve. No value if the fit was refused, under four tests, if the tests do not span enough of the
     * lactation, or if they end more than a month before the days the measure looks at.
     */
    default Figure ofFit(CurveFit fit) {
        Figure.Builder figure = Figure.of(this, unit(), fit.asOf())
                .noInterval("a curve of one cow's tests; no interval was published for this measure")
                .inputs(fit.inputs())
                .findings(fit.findings());
        if (fit.isRefused()) {
            return figure.build();
        }
        if (fit.testCount() < LEAST_TESTS) {
            return figure.finding(Finding.of(FindingCode.TOO_FEW_TESTS)
                            .withSeen(fit.testCount() + " tests")
                            .withExpected(LEAST_TESTS + " tests or more"))
                    .build();
        }
        if (!fit.spansEnoughForShape()) {
            return figure.finding(Finding.of(FindingCode.PERSISTENCY_REFUSED)
                            .withSeen("tests too close together or too early"))
                    .build();
        }
        OptionalInt lastDay = lastDayNeeded();
        if (lastDay.isPresent() && fit.totalKg(1, lastDay.getAsInt()).isEmpty()) {
            return figure.finding(Finding.of(FindingCode.LACTATION_TOO_SHORT)
                            .withSeen("last test on day "
                                    + (int) fit.lastTestDaysInMilk().orElseThrow())
                            .withExpected("tests to about day " + lastDay.getAsInt()))
                    .build();
        }
        LactationCurve curve = fit.curve().orElseThrow();
        if (!isDefinedFor(curve)) {
            return figure.finding(
                            Finding.of(FindingCode.PERSISTENCY_REFUSED).withSeen("a curve of another kind or shape"))
                    .build();
        }
        double value = of(curve);
        return figure.value(value)
                .explanation(new Explanation(List.of(new Explanation.Part(arithmetic(curve), value))))
                .build();
    }
}
