package org.pailbook.lactation.summary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.figure.Measured;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.summary.HerdCareers.Career;

/** Age at first calving and stayability; definitions are common practice, values worked by hand. */
class HerdCareersPublishedTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 1);

    private static Career calvedAt(long days) {
        return new Career(Optional.of(DAY.minusDays(100 + days)), DAY.minusDays(100), 1, false);
    }

    private static List<Career> cows(int number, int parity, boolean hasLeft) {
        List<Career> cows = new ArrayList<>();
        for (int i = 0; i < number; i++) {
            cows.add(new Career(Optional.empty(), DAY.minusDays(1500), parity, hasLeft));
        }
        return cows;
    }

    @Test
    void theAgeIsTheMedianInMonthsOfTheYearsFirstCalvings() {
        // 700, 730.5 and 800 days: the median is 730.5 / 30.4375 = 24 months; days are whole, so 731 / 30.4375
        List<Career> heifers = new ArrayList<>(List.of(calvedAt(700), calvedAt(731), calvedAt(800)));
        heifers.add(new Career(Optional.empty(), DAY.minusDays(20), 1, false));
        heifers.add(new Career(Optional.of(DAY.minusDays(2000)), DAY.minusDays(1200), 2, false));
        Measured age = HerdCareers.of(heifers, DAY).ageAtFirstCalving();
        assertThat(age.figure().orThrow()).isCloseTo(731 / 30.4375, within(1e-12));
        assertThat(age.numerator()).isEqualTo(3);
        assertThat(age.denominator()).isEqualTo(4);
        heifers.add(calvedAt(740));
        assertThat(HerdCareers.of(heifers, DAY).ageAtFirstCalving().figure().orThrow())
                .isCloseTo((731 + 740) / 2.0 / 30.4375, within(1e-12));
    }

    @Test
    void cowsComeToTheirThirdCalvingLactationByLactation() {
        // by hand: 20 cows ended their first lactation, 4 of them by leaving; 12 ended their second, 3 by leaving; the
        // others are on the way.
        // (1 - 4/20) (1 - 3/12) = 0.8 x 0.75 = 60 %
        List<Career> herd = new ArrayList<>();
        herd.addAll(cows(4, 1, true));
        herd.addAll(cows(6, 1, false));
        herd.addAll(cows(3, 2, true));
        herd.addAll(cows(4, 2, false));
        herd.addAll(cows(7, 3, false));
        herd.addAll(cows(2, 5, true));
        Measured stay = HerdCareers.of(herd, DAY).stayability();
        assertThat(stay.figure().orThrow()).isCloseTo(60, within(1e-9));
        assertThat(stay.numerator()).isEqualTo(9);
        assertThat(stay.denominator()).isEqualTo(26);
        // Greenwood: 0.6 sqrt(4/(20 x 16) + 3/(12 x 9)) = 0.6 x 0.200693; log(-log): 0.6^exp(+-1.959964 x 0.200693 /
        // log 0.6)
        Interval interval = stay.figure().interval(0.95).orElseThrow();
        double factor = Math.exp(1.959964 * Math.sqrt(4 / 320.0 + 3 / 108.0) / Math.log(0.6));
        assertThat(interval.low()).isCloseTo(100 * Math.pow(0.6, 1 / factor), within(1e-6));
        assertThat(interval.high()).isCloseTo(100 * Math.pow(0.6, factor), within(1e-6));
    }

    @Test
    void whatIsNotKnownYetHasNoFigureAndNotZero() {
        for (List<Career> herd : List.of(List.<Career>of(), cows(5, 1, false), cows(5, 2, false))) {
            Measured stay = HerdCareers.of(herd, DAY).stayability();
            assertThat(stay.figure().value()).isEmpty();
            assertThat(stay.figure().findings())
                    .extracting(Finding::code)
                    .containsExactly(FindingCode.NOTHING_TO_COUNT);
        }
        assertThat(HerdCareers.of(cows(5, 2, false), DAY)
                        .ageAtFirstCalving()
                        .figure()
                        .value())
                .isEmpty();
        assertThat(HerdCareers.of(cows(8, 3, false), DAY).stayability().figure().orThrow())
                .isEqualTo(100);
    }
}
