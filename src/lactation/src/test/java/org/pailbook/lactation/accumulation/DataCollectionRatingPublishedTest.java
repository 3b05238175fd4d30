package org.pailbook.lactation.accumulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DataCollectionRatingPublishedTest {
    // VanRaden, USDA-ARS reference note, table 1 (read): squared correlation x 100 and rating, both printed without
    // decimals; so the
    // rating may be off by half a unit of its own and 1.04 halves of the correlation's
    @ParameterizedTest
    @CsvSource({"100, 104", "99, 103", "96, 100", "93, 97", "91, 95", "87, 90", "83, 86", "75, 78", "72, 75", "60, 62"})
    void ratingsOfThePublishedPlans(double squaredCorrelationPct, double rating) {
        assertThat(DataCollectionRating.VANRADEN.rating(squaredCorrelationPct / 100))
                .isCloseTo(rating, within(0.5 + 0.52));
    }

    @Test
    void the104TimesRule() {
        // derived: 104 x .96 = 99.84, 104 x .91 = 94.64, 104 x .83 = 86.32
        assertThat(DataCollectionRating.VANRADEN.rating(0.96)).isCloseTo(99.84, within(0.005));
        assertThat(DataCollectionRating.VANRADEN.rating(0.91)).isCloseTo(94.64, within(0.005));
        assertThat(DataCollectionRating.VANRADEN.rating(0.83)).isCloseTo(86.32, within(0.005));
        assertThat(DataCollectionRating.VANRADEN.rating(0)).isZero();
        assertThat(DataCollectionRating.VANRADEN.rating(1)).isEqualTo(104);
        assertThatThrownBy(() -> DataCollectionRating.VANRADEN.rating(1.01))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> DataCollectionRating.VANRADEN.rating(-0.01))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
