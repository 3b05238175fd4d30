package org.pailbook.lactation.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.Measure;

class ProportionPublishedTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 4);
    private static final Measure SHARE =
            Measure.of("a-share", "a share", "some", "all", new Citation("nobody", 2026, "here", HowKnown.OURS));

    @Test
    void threeOfSevenLieBetween16And75Percent() {
        // check V15: Wilson's interval of 3 of 7 (textbook, derived)
        Interval interval = new Proportion(3, 7).wilson95();
        assertThat(interval.low()).isCloseTo(0.158220, within(5e-7));
        assertThat(interval.high()).isCloseTo(0.749542, within(5e-7));
        assertThat(interval.coverageShare()).isEqualTo(0.95);
    }

    @Test
    void intervalsAreThoseOfPropTest() {
        // R 4.2.2 (2022-11-10 r83330), stats: prop.test(x, n, correct = FALSE)$conf.int, which is Wilson's
        double[][] cases = {
            {3, 7, 0.158219855251, 0.749541635472},
            {4, 30, 0.0530965548405, 0.2968132668204},
            {7, 40, 0.0874541374604, 0.3194999033179},
            {0, 12, 0, 0.242494006655}
        };
        for (double[] one : cases) {
            Interval interval = new Proportion((int) one[0], (int) one[1]).wilson95();
            assertThat(interval.low()).as(one[0] + " of " + one[1]).isCloseTo(one[2], within(1e-8));
            assertThat(interval.high()).isCloseTo(one[3], within(1e-8));
        }
    }

    @Test
    void theIntervalHoldsTheShareAndLiesBetweenNoneAndAll() {
        Random random = new Random(7);
        for (int i = 0; i < 2000; i++) {
            int all = 1 + random.nextInt(300);
            Proportion some = new Proportion(random.nextInt(all + 1), all);
            Interval interval = some.wilson95();
            assertThat(interval.low()).as("seed 7, " + some).isBetween(0.0, some.share());
            assertThat(interval.high()).as("seed 7, " + some).isBetween(some.share(), 1.0);
        }
    }

    @Test
    void fewerThanTenSayReadTheCount() {
        Measured few = Measured.share(SHARE, new Proportion(3, 7), DAY, List.of());
        assertThat(few.figure().findings()).extracting(Finding::code).containsExactly(FindingCode.SMALL_NUMBER);
        assertThat(few.figure().findings().get(0).seen()).hasValue("3 of 7");
        assertThat(few.figure().orThrow()).isCloseTo(300 / 7.0, within(1e-12));
        assertThat(few.figure().explanation().total()).isEqualTo(few.figure().orThrow());
        assertThat(Measured.share(SHARE, new Proportion(3, 10), DAY, List.of())
                        .figure()
                        .findings())
                .isEmpty();
    }

    @Test
    void nothingToCountIsNoZero() {
        assertThat(Measured.share(SHARE, new Proportion(0, 0), DAY, List.of())
                        .figure()
                        .value())
                .isEmpty();
        Measured none = Measured.ratio(SHARE, 0, 0, 1, "d", DAY);
        assertThat(none.figure().value()).isEmpty();
        assertThat(none.figure().findings()).extracting(Finding::code).containsExactly(FindingCode.NOTHING_TO_COUNT);
    }

    @Test
    void aBlockingFindingTakesTheFigureAndLeavesTheCount() {
        Measured blocked =
                Measured.share(SHARE, new Proportion(3, 7), DAY, List.of(Finding.of(FindingCode.OUTCOME_PENDING)));
        assertThat(blocked.figure().value()).isEmpty();
        assertThat(blocked.numerator()).isEqualTo(3);
        assertThat(blocked.denominator()).isEqualTo(7);
    }

    @Test
    void moreThanAllIsAMistakeOfTheCaller() {
        assertThatIllegalArgumentException().isThrownBy(() -> new Proportion(8, 7));
        assertThatIllegalArgumentException().isThrownBy(() -> new Proportion(-1, 7));
    }
}
