package org.pailbook.lactation.summary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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
        return new Career(Optional.of(DAY.minusDays(100 + days)), Map.of(1, DAY.minusDays(100)), false);
    }

    /** Cows that calved every 400 days, the last time so many days ago. */
    private static List<Career> cows(int number, int parity, int daysAgo, boolean hasLeft) {
        Map<Integer, LocalDate> calvings = new HashMap<>();
        for (int i = 1; i <= parity; i++) {
            calvings.put(i, DAY.minusDays(daysAgo + 400L * (parity - i)));
        }
        return Collections.nCopies(number, new Career(Optional.empty(), calvings, hasLeft));
    }

    @Test
    void theAgeIsTheMedianInMonthsOfTheYearsFirstCalvings() {
        // 700, 730.5 and 800 days: the median is 730.5 / 30.4375 = 24 months; days are whole, so 731 / 30.4375
        List<Career> heifers = new ArrayList<>(List.of(calvedAt(700), calvedAt(731), calvedAt(800)));
        heifers.add(new Career(Optional.empty(), Map.of(1, DAY.minusDays(20)), false));
        heifers.add(new Career(Optional.of(DAY.minusDays(2000)), Map.of(1, DAY.minusDays(1200)), false));
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
        // by hand: 20 first lactations old enough to tell, 4 ended by an exit; 12 second ones, 3 ended so: (1 - 4/20)
        // (1 - 3/12) = 60 %
        List<Career> herd = new ArrayList<>();
        herd.addAll(cows(4, 1, 700, true));
        herd.addAll(cows(3, 2, 700, true)); // first at 1,100 days, second at 700
        herd.addAll(cows(9, 3, 300, false)); // first at 1,100, second at 700
        herd.addAll(cows(4, 2, 300, false)); // first at 700, second too young
        // none of these can be told yet: the exit of a young lactation is known sooner than the next calving
        herd.addAll(cows(5, 1, 500, true));
        herd.addAll(cows(6, 1, 500, false));
        // open for 700 days and still there
        herd.addAll(cows(1, 1, 700, false));
        Measured stay = HerdCareers.of(herd, DAY).stayability();
        assertThat(stay.figure().orThrow()).isCloseTo(60, within(1e-9));
        assertThat(stay.numerator()).isEqualTo(16 + 9);
        assertThat(stay.denominator()).isEqualTo(20 + 12);
        // Greenwood: sum d / (n (n - d)) = 4 / 320 + 3 / 108; log(-log): 0.6^exp(+-1.959964 x root / log 0.6)
        Interval interval = stay.figure().interval(0.95).orElseThrow();
        double factor = Math.exp(1.959964 * Math.sqrt(4 / 320.0 + 3 / 108.0) / Math.log(0.6));
        assertThat(interval.low()).isCloseTo(100 * Math.pow(0.6, 1 / factor), within(1e-6));
        assertThat(interval.high()).isCloseTo(100 * Math.pow(0.6, factor), within(1e-6));
    }

    @Test
    void whatIsNotKnownYetHasNoFigureAndNotZero() {
        for (List<Career> herd :
                List.of(List.<Career>of(), cows(5, 1, 900, true), cows(5, 2, 300, true), cows(5, 2, 590, true))) {
            Measured stay = HerdCareers.of(herd, DAY).stayability();
            assertThat(stay.figure().value()).isEmpty();
            assertThat(stay.figure().findings())
                    .extracting(Finding::code)
                    .containsExactly(FindingCode.NOTHING_TO_COUNT);
        }
        assertThat(HerdCareers.of(cows(5, 2, 300, false), DAY)
                        .ageAtFirstCalving()
                        .figure()
                        .value())
                .isEmpty();
        assertThat(HerdCareers.of(cows(12, 3, 300, false), DAY)
                        .stayability()
                        .figure()
                        .orThrow())
                .isEqualTo(100);
    }
}
