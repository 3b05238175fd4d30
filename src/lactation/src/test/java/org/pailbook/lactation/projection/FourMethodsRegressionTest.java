package org.pailbook.lactation.projection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pailbook.lactation.accumulation.AccumulatedYield;
import org.pailbook.lactation.accumulation.IcarExample;
import org.pailbook.lactation.accumulation.TestIntervalMethod;
import org.pailbook.lactation.accumulation.YieldAccumulation;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.reference.TraitStandards;

/**
 * One lactation by all four methods of ICAR's Procedure 2: the table in the package description. The first row is the published worked example
 * (see its own test); the other three are our earlier output, frozen, with the shipped Danish Red standard, parity 2 or more.
 */
class FourMethodsRegressionTest {

    @ParameterizedTest
    @CsvSource({
        "test-interval, 4973.2, 190.2, 3.82",
        "interpolation-standard-curves, 5022.9, 200.4, 3.99",
        "best-prediction-to-date, 4996.7, 195.8, 3.92",
        "multiple-trait-procedure, 5061.5, 196.5, 3.88"
    })
    void theWorkedLactation(String method, double milkKg, double fatKg, double fatPct) {
        TraitStandards standards = LactationStandards.traitsForCow("RDC", 3);
        YieldAccumulation accumulation =
                StandardCurveAccumulations.byId(method, standards).orElse(TestIntervalMethod.STANDARD_305);
        AccumulatedYield yield = accumulation.accumulate(IcarExample.lactation(), IcarExample.END);
        assertThat(accumulation.id()).isEqualTo(method);
        assertThat(yield.milk().orThrow()).isCloseTo(milkKg, within(0.05));
        assertThat(yield.fat().orThrow()).isCloseTo(fatKg, within(0.05));
        assertThat(yield.fatPct().orThrow()).isCloseTo(fatPct, within(0.005));
    }
}
