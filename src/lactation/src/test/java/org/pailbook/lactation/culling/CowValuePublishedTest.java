package org.pailbook.lactation.culling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The reference set solved by us, against a reference program of the same definition (Python, numpy). */
class CowValuePublishedTest {
    private static final double MONEY = 1e-6;
    private static final CowValueTable TABLE = CowValueTable.solve(CullingPrices.REFERENCE, HerdParameters.REFERENCE);

    @Test
    void everyNineteenthStageIsWhatTheReferenceProgramGives() throws IOException, URISyntaxException {
        Path file = Path.of(
                CowValuePublishedTest.class.getResource("cow-value-facts.csv").toURI());
        assertThat(CowValueRows.compare(Files.readAllLines(file))).isEqualTo(87);
    }

    @Test
    void aFreshHeiferAndAMonthOfTheSlot() {
        assertThat(TABLE.heiferValueCu()).isCloseTo(22106.672556, within(MONEY));
        assertThat(TABLE.slotCuPerMonth()).isCloseTo(82.801965, within(MONEY));
    }

    @Test
    void stagesKeptReplacedAndForced() {
        assertThat(CowValueTable.stages()).hasSize(1665);
        assertThat(CowValueTable.stages().stream().filter(TABLE::isKept)).hasSize(1338);
        assertThat(CowValueTable.stages().stream().filter(stage -> !TABLE.isKept(stage)))
                .hasSize(327);
        assertThat(CowValueTable.stages().stream().filter(CowStage::mustGo)).hasSize(15);
    }

    @Test
    void theHerdOfSuchSlotsInTheLongRun() {
        SteadyState herd = TABLE.steadyState();
        assertThat(herd.unplannedExitsPerSlotYear()).isCloseTo(0.170392371, within(MONEY));
        assertThat(herd.chosenExitsPerSlotYear()).isCloseTo(0.185418908, within(MONEY));
        assertThat(herd.milkKgPerSlotYear()).isCloseTo(8443.057401, within(MONEY));
        assertThat(herd.meanParity()).isCloseTo(2.160857388, within(MONEY));
        assertThat(herd.dryShare()).isCloseTo(0.111697560, within(MONEY));
        assertThat(herd.pregnantShare()).isCloseTo(0.557143718, within(MONEY));
        assertThat(herd.meanNewPregnancyCu()).isCloseTo(255.506516, within(MONEY));
        assertThat(herd.meanPregnancyLossCu()).isCloseTo(442.010381, within(MONEY));
    }

    // First month in milk in which an open cow of each class is replaced
    @ParameterizedTest
    @CsvSource({"1, 11, 13, 13", "2, 9, 11, 12", "3, 8, 9, 11", "4, 7, 9, 10", "5, 7, 8, 10"})
    void theMonthInWhichAnOpenCowGoes(int parity, int low, int mean, int high) {
        int[] expected = {low, mean, high};
        for (int k = 1; k <= 3; k++) {
            int milkClass = k;
            assertThat(IntStream.rangeClosed(3, 21)
                            .filter(month -> !TABLE.isKept(new CowStage(parity, month, 0, milkClass)))
                            .findFirst())
                    .hasValue(expected[k - 1]);
        }
    }

    // 1 - (1 - 0.22)^(30.4375/21) and 1.05^(-1/12), worked from the formulas
    @Test
    void conceptionAndDiscountOfAMonth() {
        assertThat(HerdParameters.REFERENCE.group(1).conceptionSharePerMonth()).isCloseTo(0.3024081416, within(1e-10));
        assertThat(CullingPrices.REFERENCE.monthlyDiscountFactor()).isCloseTo(0.9959424074, within(1e-10));
    }
}
