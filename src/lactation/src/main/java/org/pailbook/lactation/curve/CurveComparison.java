package org.pailbook.lactation.curve;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.UsableTests;

/**
 * Several curves fitted to the same tests of one lactation, side by side.
 *
 * <p>A small criterion says that a curve describes these tests well for the number of its parameters. It says nothing about the
 * days that were not tested, least of all the days to come.
 *
 * @param fits those that were fitted, smallest corrected Akaike criterion first; those without one (too few tests for it) after them
 * @param refused those that were not, in the order asked for; their findings say why
 */
public record CurveComparison(List<CurveFit> fits, List<CurveFit> refused) {

    public CurveComparison {
        fits = List.copyOf(fits);
        refused = List.copyOf(refused);
    }

    /** Every model of {@link LactationCurves#all()}. */
    public static CurveComparison of(Lactation lactation, LocalDate asOf) {
        return of(LactationCurves.all(), lactation, asOf);
    }

    /** @param asOf later tests, and an end after it, take no part */
    public static CurveComparison of(List<CurveModel> models, Lactation lactation, LocalDate asOf) {
        UsableTests tests = UsableTests.of(lactation, asOf);
        List<CurveFit> all =
                models.stream().map(model -> CurveFit.of(model, tests, asOf)).toList();
        return new CurveComparison(
                all.stream()
                        .filter(fit -> !fit.isRefused())
                        .sorted(Comparator.comparingDouble(fit -> fit.aicc().orElse(Double.POSITIVE_INFINITY)))
                        .toList(),
                all.stream().filter(CurveFit::isRefused).toList());
    }

    /** How much larger the criterion of a fit is than the smallest one; 0 for the best, empty for a fit without one. */
    public OptionalDouble aiccAboveBest(CurveFit fit) {
        return fit.aicc().isPresent()
                ? OptionalDouble.of(
                        fit.aicc().getAsDouble() - fits.get(0).aicc().orElseThrow())
                : OptionalDouble.empty();
    }
}
