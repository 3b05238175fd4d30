package org.pailbook.lactation.correctedmilk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.UsedInput;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.testday.TestDay;

class CorrectedMilkLawTest {
    private static final long SEED = 20240308;
    private static final LocalDate DAY = LocalDate.of(2024, 3, 8);
    private static final OptionalDouble NONE = OptionalDouble.empty();

    private static List<FindingCode> codes(Figure figure) {
        return figure.findings().stream().map(Finding::code).toList();
    }

    @Test
    void twiceTheMilkOfTheSameCompositionIsTwiceTheCorrectedMilk() {
        Random random = new Random(SEED);
        for (int i = 0; i < 200; i++) {
            double milk = 5 + 50 * random.nextDouble();
            double fat = 3 + 3 * random.nextDouble();
            double protein = 2.5 + 2 * random.nextDouble();
            for (CorrectedMilkFormula formula : withoutSolids()) {
                TestDay once = TestDay.ofMilk(DAY, milk)
                        .withFatPct(fat)
                        .withProteinPct(protein)
                        .withLactosePct(4.7);
                TestDay twice = TestDay.ofMilk(DAY, 2 * milk)
                        .withFatPct(fat)
                        .withProteinPct(protein)
                        .withLactosePct(4.7);
                assertThat(formula.ofTestDay(twice, DAY).orThrow())
                        .as("seed " + SEED + ", " + formula.id())
                        .isCloseTo(2 * formula.ofTestDay(once, DAY).orThrow(), within(1e-9));
            }
        }
    }

    @Test
    void correctedMilkOfTheSumIsTheSumOfCorrectedMilk() {
        Random random = new Random(SEED);
        for (CorrectedMilkFormula formula : withoutSolids()) {
            double sum = 0;
            double milkKg = 0;
            double fatKg = 0;
            double proteinKg = 0;
            double lactoseKg = 0;
            for (int day = 0; day < 10; day++) {
                double milk = 5 + 50 * random.nextDouble();
                double fat = milk * (3 + 3 * random.nextDouble()) / 100;
                double protein = milk * (2.5 + 2 * random.nextDouble()) / 100;
                double lactose = milk * 0.047;
                sum += formula.ofYield(
                                milk,
                                OptionalDouble.of(fat),
                                OptionalDouble.of(protein),
                                OptionalDouble.of(lactose),
                                DAY)
                        .orThrow();
                milkKg += milk;
                fatKg += fat;
                proteinKg += protein;
                lactoseKg += lactose;
            }
            assertThat(formula.ofYield(
                                    milkKg,
                                    OptionalDouble.of(fatKg),
                                    OptionalDouble.of(proteinKg),
                                    OptionalDouble.of(lactoseKg),
                                    DAY)
                            .orThrow())
                    .as("seed " + SEED + ", " + formula.id())
                    .isCloseTo(sum, within(1e-9));
        }
    }

    @Test
    void milkOfTheStandardCompositionComesToItsFactor() {
        for (CorrectedMilkFormula formula : withoutSolids()) {
            StandardMilk standard = formula.standard();
            TestDay test = TestDay.ofMilk(DAY, 40)
                    .withFatPct(standard.fatPct())
                    .withProteinPct(standard.proteinPct().orElse(3.3))
                    .withLactosePct(standard.lactosePct().orElse(4.8));
            assertThat(formula.ofTestDay(test, DAY).orThrow())
                    .as(formula.id())
                    .isCloseTo(40 * formula.factorAtStandard(), within(1e-9));
        }
        Figure solids = SolidsCorrectedMilk.SCM.ofSolids(40, OptionalDouble.of(1.6), OptionalDouble.of(3.56), DAY);
        assertThat(solids.orThrow()).isCloseTo(40 * SolidsCorrectedMilk.SCM.factorAtStandard(), within(1e-9));
    }

    @Test
    void partsOfTheExplanationAddUpToTheValue() {
        TestDay test =
                TestDay.ofMilk(DAY, 28.4).withFatPct(4.31).withProteinPct(3.52).withLactosePct(4.63);
        for (CorrectedMilkFormula formula : withoutSolids()) {
            Figure figure = formula.ofTestDay(test, DAY);
            assertThat(figure.explanation().parts()).as(formula.id()).hasSizeGreaterThan(1);
            assertThat(figure.explanation().total()).as(formula.id()).isEqualTo(figure.orThrow());
        }
        assertThat(FatCorrectedMilk.FCM_4
                        .ofTestDay(test, DAY)
                        .explanation()
                        .parts()
                        .get(1)
                        .what())
                .isEqualTo("fat: 15.0000 x 1.2240 kg");
        assertThat(NordicEnergyCorrectedMilk.SJAUNJA
                        .ofTestDay(test, DAY)
                        .explanation()
                        .parts()
                        .get(0)
                        .what())
                .isEqualTo("milk: 783.2000 / 3140.00000 x 28.4000 kg");
    }

    @Test
    void theDayTestedIsNamedAsInput() {
        TestDay test = TestDay.ofMilk(DAY, 28).withFatPct(4.3).withProteinPct(3.5);
        assertThat(IdfMilk2015.FPCM.ofTestDay(test, DAY).inputs()).containsExactly(UsedInput.used("test-day", DAY));
        assertThat(MilkEnergyFormula.NASEM_2021.ofTestDay(test, DAY).inputs())
                .containsExactly(UsedInput.used("test-day", DAY));
    }

    @Test
    void whatWasNotMeasuredLeavesNoValueAndNamesTheGap() {
        TestDay noFat = TestDay.ofMilk(DAY, 30).withProteinPct(3.3);
        TestDay noProtein = TestDay.ofMilk(DAY, 30).withFatPct(4.0);
        TestDay both = noProtein.withProteinPct(3.3);
        TestDay noMilk = new TestDay(DAY, NONE, OptionalDouble.of(4), OptionalDouble.of(3.3), NONE, NONE);
        for (CorrectedMilkFormula formula : withoutSolids()) {
            assertThat(formula.ofTestDay(noFat, DAY).value()).as(formula.id()).isEmpty();
            assertThat(codes(formula.ofTestDay(noFat, DAY))).as(formula.id()).contains(FindingCode.FAT_NEEDED);
            assertThat(codes(formula.ofTestDay(noMilk, DAY))).as(formula.id()).contains(FindingCode.MILK_NEEDED);
            boolean usesProtein = formula.proteinBasis() != ProteinBasis.UNUSED;
            assertThat(formula.ofTestDay(noProtein, DAY).value().isEmpty())
                    .as(formula.id())
                    .isEqualTo(usesProtein);
            assertThat(codes(formula.ofTestDay(noProtein, DAY)).contains(FindingCode.PROTEIN_NEEDED))
                    .as(formula.id())
                    .isEqualTo(usesProtein);
        }
        assertThat(codes(NordicEnergyCorrectedMilk.SJAUNJA_LACTOSE.ofTestDay(both, DAY)))
                .containsExactly(FindingCode.LACTOSE_NEEDED);
        assertThat(codes(SolidsCorrectedMilk.SCM.ofTestDay(both, DAY)))
                .containsExactly(FindingCode.SOLIDS_NOT_FAT_NEEDED);
        assertThat(codes(SolidsCorrectedMilk.SCM.ofSolids(30, NONE, OptionalDouble.of(2.6), DAY)))
                .containsExactly(FindingCode.FAT_NEEDED);
    }

    @Test
    void lactoseNotMeasuredIsTheStandardOfTheFormulaAndIsSaid() {
        TestDay test = TestDay.ofMilk(DAY, 30).withFatPct(4.2).withProteinPct(3.4);
        Figure assumed = IdfMilk2022.FPCM.ofTestDay(test, DAY);
        assertThat(codes(assumed)).containsExactly(FindingCode.LACTOSE_ASSUMED);
        assertThat(assumed.findings().get(0).text()).contains("4.8 %");
        Figure measured = IdfMilk2022.FPCM.ofTestDay(test.withLactosePct(4.8), DAY);
        assertThat(codes(measured)).isEmpty();
        assertThat(measured.orThrow()).isEqualTo(assumed.orThrow());
        assertThat(IdfMilk2022.FPCM.ofTestDay(test.withLactosePct(4.2), DAY).orThrow())
                .isLessThan(assumed.orThrow());
    }

    @Test
    void fatBelowThreePercentIsToldForFatCorrectedMilk() {
        TestDay low = TestDay.ofMilk(DAY, 30).withFatPct(2.99).withProteinPct(3.3);
        assertThat(codes(FatCorrectedMilk.FCM_4.ofTestDay(low, DAY))).containsExactly(FindingCode.FORMULA_OUT_OF_RANGE);
        assertThat(FatCorrectedMilk.FCM_4.ofTestDay(low, DAY).value()).isPresent();
        assertThat(codes(FatCorrectedMilk.FCM_4.ofTestDay(low.withFatPct(3.0), DAY)))
                .isEmpty();
        assertThat(codes(IdfMilk2015.FPCM.ofTestDay(low, DAY))).isEmpty();
    }

    @Test
    void whatCannotBeIsRefused() {
        TestDay negative = TestDay.ofMilk(DAY, -1).withFatPct(4).withProteinPct(3.3);
        TestDay heavy = TestDay.ofMilk(DAY, 30).withFatPct(60).withProteinPct(41);
        assertThat(codes(FatCorrectedMilk.FCM_4.ofTestDay(negative, DAY))).contains(FindingCode.VALUE_IMPOSSIBLE);
        assertThat(codes(IdfMilk2015.FPCM.ofTestDay(heavy, DAY))).containsExactly(FindingCode.VALUE_IMPOSSIBLE);
        assertThat(codes(FatCorrectedMilk.FCM_4.ofYield(30, OptionalDouble.of(-1), NONE, NONE, DAY)))
                .contains(FindingCode.VALUE_IMPOSSIBLE);
        assertThat(codes(SolidsCorrectedMilk.SCM.ofSolids(30, OptionalDouble.of(1), OptionalDouble.of(-0.1), DAY)))
                .containsExactly(FindingCode.VALUE_IMPOSSIBLE);
        assertThat(codes(SolidsCorrectedMilk.SCM.ofSolids(30, OptionalDouble.of(2), OptionalDouble.of(29), DAY)))
                .containsExactly(FindingCode.VALUE_IMPOSSIBLE);
        assertThatThrownBy(() -> FatCorrectedMilk.FCM_4.ofYield(Double.NaN, NONE, NONE, NONE, DAY))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("milkKg");
    }

    @Test
    void solidsThatJustFillTheMilkAreStillPossible() {
        assertThat(SolidsCorrectedMilk.SCM
                        .ofSolids(30, OptionalDouble.of(2), OptionalDouble.of(28), DAY)
                        .value())
                .isPresent();
        assertThat(codes(SolidsCorrectedMilk.SCM.ofSolids(30, OptionalDouble.of(2), OptionalDouble.of(28.01), DAY)))
                .containsExactly(FindingCode.VALUE_IMPOSSIBLE);
    }

    @Test
    void aMassThatIsNoNumberIsNamed() {
        OptionalDouble one = OptionalDouble.of(1);
        OptionalDouble nan = OptionalDouble.of(Double.NaN);
        FatCorrectedMilk fcm = FatCorrectedMilk.FCM_4;
        assertThatThrownBy(() -> fcm.ofYield(30, nan, one, one, DAY)).hasMessageContaining("fatKg");
        assertThatThrownBy(() -> fcm.ofYield(30, one, nan, one, DAY)).hasMessageContaining("proteinKg");
        assertThatThrownBy(() -> fcm.ofYield(30, one, one, nan, DAY)).hasMessageContaining("lactoseKg");
        assertThatThrownBy(() -> SolidsCorrectedMilk.SCM.ofSolids(30, one, nan, DAY))
                .hasMessageContaining("solidsNotFatKg");
        assertThatThrownBy(() -> new MassWeights(0, 1, 1, 0, 0, 0)).hasMessageContaining("divisor");
    }

    @Test
    void energyOfAYieldIsThatOfItsDays() {
        TestDay test = TestDay.ofMilk(DAY, 30).withFatPct(4).withProteinPct(3.3).withLactosePct(4.7);
        for (MilkEnergyFormula formula : MilkEnergyFormula.all()) {
            double oneDay = formula.ofTestDay(test, DAY).orThrow();
            Figure tenDays =
                    formula.ofYield(300, OptionalDouble.of(12), OptionalDouble.of(9.9), OptionalDouble.of(14.1), DAY);
            assertThat(tenDays.orThrow()).as(formula.id()).isCloseTo(10 * oneDay, within(1e-9));
            assertThat(tenDays.unit()).isEqualTo("Mcal");
            assertThat(formula.weights().perMilkKg()).isZero();
            assertThat(formula.citation().text()).isNotBlank();
            assertThat(formula.version()).isEqualTo(1);
            assertThat(codes(formula.ofTestDay(TestDay.ofMilk(DAY, 30).withFatPct(4), DAY)))
                    .contains(FindingCode.PROTEIN_NEEDED);
        }
        assertThat(MilkEnergyFormula.all())
                .extracting(MilkEnergyFormula::id)
                .containsExactly("nel-nrc-2001-crude", "nel-nrc-2001-true", "nel-nasem-2021");
        assertThat(MilkEnergyFormula.all())
                .extracting(MilkEnergyFormula::proteinBasis)
                .containsExactly(ProteinBasis.CRUDE, ProteinBasis.TRUE, ProteinBasis.TRUE);
    }

    @Test
    void theProteinAFormulaMeansIsSaid() {
        assertThat(CorrectedMilkFormulas.all())
                .extracting(CorrectedMilkFormula::proteinBasis)
                .containsExactly(
                        ProteinBasis.UNUSED,
                        ProteinBasis.UNUSED,
                        ProteinBasis.TRUE,
                        ProteinBasis.CRUDE,
                        ProteinBasis.NOT_STATED,
                        ProteinBasis.NOT_STATED,
                        ProteinBasis.NOT_STATED,
                        ProteinBasis.NOT_STATED,
                        ProteinBasis.NOT_STATED,
                        ProteinBasis.NOT_STATED,
                        ProteinBasis.NOT_STATED,
                        ProteinBasis.UNUSED);
    }

    @Test
    void noMilkAtAllIsZeroCorrectedMilk() {
        Figure figure = FatCorrectedMilk.FCM_4.ofYield(0, OptionalDouble.of(0), NONE, NONE, DAY);
        assertThat(figure.orThrow()).isZero();
    }

    @Test
    void everyFormulaHasItsOwnIdAndTitleAndIsFoundByIt() {
        assertThat(CorrectedMilkFormulas.all())
                .extracting(CorrectedMilkFormula::id)
                .doesNotHaveDuplicates();
        assertThat(CorrectedMilkFormulas.all())
                .extracting(CorrectedMilkFormula::title)
                .doesNotHaveDuplicates();
        for (CorrectedMilkFormula formula : CorrectedMilkFormulas.all()) {
            assertThat(formula.id()).matches("[a-z0-9]+(-[a-z0-9]+)*");
            assertThat(CorrectedMilkFormulas.byId(formula.id())).containsSame(formula);
            assertThat(formula.citation().text()).isNotBlank();
            assertThat(formula.version()).isEqualTo(1);
        }
        assertThat(CorrectedMilkFormulas.byId("ecm")).isEmpty();
        assertThat(CorrectedMilkFormulas.RECOMMENDED.id()).isEqualTo("fpcm-2022");
    }

    private static List<CorrectedMilkFormula> withoutSolids() {
        return CorrectedMilkFormulas.all().stream()
                .filter(formula -> formula != SolidsCorrectedMilk.SCM)
                .toList();
    }
}
