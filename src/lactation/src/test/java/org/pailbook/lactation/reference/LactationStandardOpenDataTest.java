package org.pailbook.lactation.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pailbook.lactation.OpenTestDays;
import org.pailbook.lactation.SharedData;
import org.pailbook.lactation.testday.Lactation;

/** The shipped standards, made again from the open test days by Commons Math's regression. */
class LactationStandardOpenDataTest {

    // tests as counted in the table of class curves worked out from the same data outside this project
    @ParameterizedTest
    @CsvSource({
        "Holstein, 1, 300",
        "Holstein, 2, 200",
        "RDM, 1, 254",
        "RDM, 2, 173",
        "Jersey, 1, 253",
        "Jersey, 2, 237",
        "any, 1, 807",
        "any, 2, 610"
    })
    void shippedFiguresComeOutOfTheData(String breed, int parity, int tests) {
        List<Lactation> group = OpenTestDays.read(SharedData.orSkip()).stream()
                .filter(one -> one.isOfClass(breed.equals("any") ? one.breed() : breed, parity == 1))
                .map(OpenTestDays::lactation)
                .toList();
        for (LactationTrait trait : LactationTrait.values()) {
            WilminkClassFit fit = WilminkClassFit.of(group, trait);
            LactationStandard shipped = LactationStandards.forCow(breed, parity, trait);
            if (trait == LactationTrait.MILK) {
                assertThat(fit.tests()).isEqualTo(tests);
            }
            for (int day : new int[] {1, 60, 305}) {
                assertThat(shipped.meanKg(day)).as("%s", trait).isCloseTo(fit.kg(day), within(1e-5));
            }
            assertThat(shipped.spread().sdPerDay(1)).as("%s", trait).isCloseTo(fit.residualSdKg(), within(1e-6));
        }
    }
}
