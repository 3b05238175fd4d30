package org.pailbook.lactation.correctedmilk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.testday.TestDay;

/**
 * 35 kg of milk with 3.8 % fat and 3.2 % protein through every published form. The expected values are worked by hand from the forms as
 * they are printed in percent, which is another way than the weighted masses of this package.
 */
class CorrectedMilkPublishedTest {
    private static final LocalDate DAY = LocalDate.of(2024, 3, 8);
    private static final TestDay TEST = TestDay.ofMilk(DAY, 35).withFatPct(3.8).withProteinPct(3.2);

    @TestFactory
    Stream<DynamicTest> thirtyFiveKgThroughEveryForm() {
        return Stream.of(
                // Gaines 1928 (from memory): 0.4 x 35 = 14, 15 x 1.33 = 19.95
                row("fcm-4", TEST, 33.95, 0.00005),
                // from memory: 15.12 + 16.23 x 1.33
                row("fcm-3-5", TEST, 36.7059, 0.00005),
                // IDF 2015 (from memory): 35 (0.46588 + 0.24832 + 0.2534)
                row("fpcm-2015", TEST, 33.8660, 0.00005),
                // IDF 520/2022 equation 10: 35 (0.35302 + 0.17504 + 0.1896) / 0.74171
                row("fpcm-2022", TEST.withLactosePct(4.8), 33.8651, 0.00005),
                // Sjaunja et al. 1990: 35 (1455.4 + 774.4 + 783.2) / 3140
                row("ecm-sjaunja-1990", TEST, 33.5844, 0.00005),
                // the same with lactose (from memory): 35 (1455.4 + 774.4 + 793.92 + 20.7) / 3140
                row("ecm-sjaunja-lactose-1990", TEST.withLactosePct(4.8), 33.9346, 0.00005),
                // divisor 3.1138: 35 (1.4554 + 0.7744 + 0.7832) / 3.1138
                row("ecm-4-3-3", TEST, 33.8670, 0.00005),
                // the open data set's own constant: 35 (1.4554 + 0.7744 + 0.7808) / 3.14
                row("ecm-3-14-constant-0-7808", TEST, 33.55764, 0.000005),
                // after Tyrrell and Reid 1965: 11.445 + 12.95 x 1.33 + 7.2 x 1.12
                row("ecm-35-32", TEST, 36.7325, 0.00005),
                // from memory: 11.305 + 17.0506 + 7.9856
                row("ecm-35-32-323", TEST, 36.3412, 0.00005),
                // from memory: 11.361 + 17.1038 + 7.8848
                row("ecm-35-32-nrc", TEST, 36.3496, 0.00005));
    }

    private static DynamicTest row(String id, TestDay test, double expectedKg, double tolerance) {
        return DynamicTest.dynamicTest(id, () -> {
            CorrectedMilkFormula formula = CorrectedMilkFormulas.byId(id).orElseThrow();
            assertThat(formula.ofTestDay(test, DAY).orThrow()).isCloseTo(expectedKg, within(tolerance));
        });
    }

    @Test
    void solidsCorrectedMilkOf35KgWith3Point8FatAnd8Point8SolidsNotFat() {
        // Tyrrell and Reid 1965, abstract: 12.3 x 1.33 + 6.56 x 3.08 - 0.0752 x 35 = 33.9318
        Figure figure = SolidsCorrectedMilk.SCM.ofSolids(35, OptionalDouble.of(1.33), OptionalDouble.of(3.08), DAY);
        assertThat(figure.orThrow()).isCloseTo(33.9318, within(0.00005));
    }

    @Test
    void solidsCorrectedMilkAgreesWithTheEnergyFormOfTheSamePaper() {
        // Tyrrell and Reid 1965, abstract: kcal/lb = 41.84 f + 22.29 snf - 25.58, and a lb of the standard has 340;
        // rounding of the
        // three printed mass weights allows 0.01 kg
        double fromEnergy = 35 * (41.84 * 3.8 + 22.29 * 8.8 - 25.58) / 340;
        Figure figure = SolidsCorrectedMilk.SCM.ofSolids(35, OptionalDouble.of(1.33), OptionalDouble.of(3.08), DAY);
        assertThat(figure.orThrow()).isCloseTo(fromEnergy, within(0.01));
    }

    @TestFactory
    Stream<DynamicTest> factorAtTheStatedStandard() {
        return Stream.of(
                // exact by its own arithmetic
                factor("fcm-4", 1, 1e-12),
                factor("fpcm-2022", 1, 1e-12),
                // 0.432 + 16.23 x 0.035
                factor("fcm-3-5", 1.00005, 5e-6),
                // 0.4904 + 0.25608 + 0.2534
                factor("fpcm-2015", 0.99988, 5e-6),
                // (1532 + 822.8 + 783.2) / 3140
                factor("ecm-sjaunja-1990", 0.99936, 5e-6),
                // (1.532 + 0.7986 + 0.7832) / 3.1138
                factor("ecm-4-3-3", 1, 5e-6),
                // 0.327 + 0.45325 + 0.2304: the form is not normalised and its users are told
                factor("ecm-35-32", 1.01065, 5e-6),
                factor("ecm-35-32-323", 0.99986, 5e-6),
                factor("ecm-35-32-nrc", 0.99998, 5e-6));
    }

    private static DynamicTest factor(String id, double expected, double tolerance) {
        return DynamicTest.dynamicTest(
                id,
                () -> assertThat(CorrectedMilkFormulas.byId(id).orElseThrow().factorAtStandard())
                        .isCloseTo(expected, within(tolerance)));
    }

    @Test
    void onlyTheFormThatIsNotNormalisedSaysSo() {
        assertThat(CorrectedMilkFormulas.all().stream()
                        .filter(formula -> formula.ofTestDay(TEST.withLactosePct(4.8), DAY).findings().stream()
                                .map(Finding::code)
                                .anyMatch(FindingCode.FORMULA_NOT_NORMALISED::equals))
                        .map(CorrectedMilkFormula::id))
                .containsExactly("ecm-35-32");
    }

    @Test
    void energyIn35KgOfMilk() {
        // NRC 2001, crude protein, lactose 4.85 % (from memory): 35 (0.35302 + 0.17504 + 0.191575) = 25.1872 Mcal,
        // 0.7196 per kg
        Figure figure = MilkEnergyFormula.NRC_2001_CRUDE.ofTestDay(TEST, DAY);
        assertThat(figure.orThrow()).isCloseTo(25.1872, within(0.00005));
        assertThat(figure.orThrow() / 35).isCloseTo(0.7196, within(0.00005));
        assertThat(figure.findings()).extracting(Finding::code).containsExactly(FindingCode.LACTOSE_ASSUMED);
        assertThat(MilkEnergyFormula.NRC_2001_CRUDE
                        .ofTestDay(TEST.withLactosePct(4.85), DAY)
                        .findings())
                .isEmpty();
    }

    @Test
    void energyOnTrueProtein() {
        // from memory: NRC 35 (0.35302 + 0.0563 x 3.2 + 0.191575); NASEM 9.29 x 1.33 + 5.85 x 1.12 + 3.95 x 1.6975
        assertThat(MilkEnergyFormula.NRC_2001_TRUE.ofTestDay(TEST, DAY).orThrow())
                .isCloseTo(25.366425, within(1e-6));
        assertThat(MilkEnergyFormula.NASEM_2021.ofTestDay(TEST, DAY).orThrow()).isCloseTo(25.612825, within(1e-6));
    }
}
