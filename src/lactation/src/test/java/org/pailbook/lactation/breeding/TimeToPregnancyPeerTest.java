package org.pailbook.lactation.breeding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.internal.KaplanMeier;

/** Against the hand-worked table (ours, derived) and scipy 1.17.1: stats.ecdf(CensoredData.right_censored), log-log interval. */
class TimeToPregnancyPeerTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 4);
    private static final int[] DAYS = {5, 12, 12, 20, 25, 33, 40, 48, 60, 75};
    private static final boolean[] PREGNANT = {true, true, true, false, true, false, true, true, false, false};

    private static TimeToPregnancy.Curve curve(int[] days, boolean[] pregnant) {
        List<Boolean> happened = new ArrayList<>();
        for (boolean one : pregnant) {
            happened.add(one);
        }
        return TimeToPregnancy.KAPLAN_MEIER.curve(days, happened, DAY);
    }

    @Test
    void tenCowsComeOutAsWorkedByHand() {
        // check V16 and V17
        TimeToPregnancy.Curve curve = curve(DAYS, PREGNANT);
        double[] share = {9 / 10.0, 7 / 10.0, 7 / 12.0, 7 / 16.0, 7 / 24.0};
        double[] error = {0.094868, 0.144914, 0.161015, 0.174739, 0.166580};
        int[] atRisk = {10, 9, 6, 4, 3};
        assertThat(curve.steps()).hasSize(5);
        for (int i = 0; i < 5; i++) {
            assertThat(curve.steps().get(i).stillOpenShare()).isCloseTo(share[i], within(1e-12));
            assertThat(curve.steps().get(i).standardError()).isCloseTo(error[i], within(5e-7));
            assertThat(curve.steps().get(i).atRisk()).isEqualTo(atRisk[i]);
        }
        assertThat(curve.steps().get(2).low()).isCloseTo(0.2298, within(5e-5));
        assertThat(curve.steps().get(2).high()).isCloseTo(0.8207, within(5e-5));
        assertThat(curve.median().orThrow()).isEqualTo(40);
        assertThat(curve.cows()).isEqualTo(10);
        assertThat(curve.pregnant()).isEqualTo(6);
        double[] times = {5, 12, 12, 20, 25, 33, 40, 48, 60, 75};
        assertThat(KaplanMeier.of(times, PREGNANT).meanTo(75)).isCloseTo(40.525, within(1e-9));
    }

    @Test
    void tenCowsHaveTheIntervalsOfTheOtherProgram() {
        double[][] scipy = {
            {0.4730092714, 0.9852813934},
            {0.3287165933, 0.8919490412},
            {0.2297865189, 0.8207394972},
            {0.1187152179, 0.7256487921},
            {0.0470550143, 0.6085264832}
        };
        List<TimeToPregnancy.Step> steps = curve(DAYS, PREGNANT).steps();
        for (int i = 0; i < scipy.length; i++) {
            assertThat(steps.get(i).low()).isCloseTo(scipy[i][0], within(1e-7));
            assertThat(steps.get(i).high()).isCloseTo(scipy[i][1], within(1e-7));
        }
    }

    @Test
    void fortyCowsComeOutAsFromTheOtherProgram() {
        // numpy default_rng(21): integers(0, 150, 40), then random(40) < 0.35 censored
        int[] days = {
            45, 117, 57, 90, 69, 106, 51, 13, 44, 94, 93, 147, 36, 63, 141, 16, 105, 143, 137, 101, 133, 29, 113, 100,
            75, 148, 126, 31, 147, 128, 55, 104, 117, 33, 39, 27, 69, 143, 58, 51
        };
        int[] censored = {
            0, 0, 0, 1, 1, 0, 0, 0, 0, 1, 0, 1, 0, 0, 0, 0, 1, 1, 0, 1, 1, 1, 0, 0, 0, 0, 0, 1, 0, 1, 0, 0, 0, 1, 0, 1,
            0, 1, 1, 1
        };
        boolean[] pregnant = new boolean[days.length];
        for (int i = 0; i < days.length; i++) {
            pregnant[i] = censored[i] == 0;
        }
        List<TimeToPregnancy.Step> steps = curve(days, pregnant).steps();
        double[][] scipy = {
            {13, 0.9750000000, 0.8354854591, 0.9964401830},
            {51, 0.8102941176, 0.6421489448, 0.9049252975},
            {100, 0.5928467803, 0.4080708432, 0.7371529018},
            {117, 0.3969956118, 0.2212470718, 0.5679181851},
            {147, 0.1701409765, 0.0404129722, 0.3761938897}
        };
        for (double[] row : scipy) {
            TimeToPregnancy.Step step = steps.stream()
                    .filter(one -> one.day() == row[0])
                    .findFirst()
                    .orElseThrow();
            assertThat(step.stillOpenShare()).isCloseTo(row[1], within(1e-9));
            assertThat(step.low()).isCloseTo(row[2], within(1e-7));
            assertThat(step.high()).isCloseTo(row[3], within(1e-7));
        }
        assertThat(steps.get(steps.size() - 1).stillOpenShare()).isZero();
        // R 4.2.2, survival 3.5-3: quantile(survfit(Surv(t, d) ~ 1, conf.type = "log-log"), 0.5): 113, 75 to 137
        KaplanMeier estimate =
                KaplanMeier.of(Arrays.stream(days).asDoubleStream().toArray(), pregnant);
        assertThat(estimate.median()).hasValue(113);
        assertThat(estimate.medianLow()).hasValue(75);
        assertThat(estimate.medianHigh()).hasValue(137);
    }

    @Test
    void sharesErrorsIntervalsAndMediansAreThoseOfSurvfit() {
        // R 4.2.2 (2022-11-10 r83330), survival 3.5-3: survfit(Surv(t, d) ~ 1, conf.type = "log-log"), quantile(s,
        // 0.5),
        // summary(s, rmean = 75): rmean 40.525; std.err times surv is Greenwood's error of the share
        double[][] survfit = {
            {5, 10, 1, 0.900000000000, 0.0948683298051, 0.4730092713621, 0.985281393367},
            {12, 9, 2, 0.700000000000, 0.1449137674619, 0.3287165932797, 0.891949041225},
            {25, 6, 1, 0.583333333333, 0.1610152971799, 0.2297865189240, 0.820739497172},
            {40, 4, 1, 0.437500000000, 0.1747393892821, 0.1187152179148, 0.725648792124},
            {48, 3, 1, 0.291666666667, 0.1665798384937, 0.0470550142951, 0.608526483247}
        };
        TimeToPregnancy.Curve curve = curve(DAYS, PREGNANT);
        for (int i = 0; i < survfit.length; i++) {
            TimeToPregnancy.Step step = curve.steps().get(i);
            double[] ours = {
                step.day(),
                step.atRisk(),
                step.pregnant(),
                step.stillOpenShare(),
                step.standardError(),
                step.low(),
                step.high()
            };
            // R's 97.5 % point of the normal curve has more digits than the 1.959964 used here
            assertThat(ours).containsExactly(survfit[i], within(1e-8));
        }
        double[] times = Arrays.stream(DAYS).asDoubleStream().toArray();
        KaplanMeier estimate = KaplanMeier.of(times, PREGNANT);
        assertThat(estimate.median()).hasValue(40);
        assertThat(estimate.medianLow()).hasValue(5);
        assertThat(estimate.medianHigh()).isEmpty();
        assertThat(estimate.meanTo(75)).isCloseTo(40.52500000000, within(1e-10));
    }

    @Test
    void leavingOutTheOpenCowsWouldTellAnotherStory() {
        int[] only = {5, 12, 12, 25, 40, 48};
        assertThat(Arrays.stream(only).average().orElseThrow()).isCloseTo(23.7, within(0.05));
        assertThat(curve(DAYS, PREGNANT).median().orThrow()).isGreaterThan(23.7);
    }

    @Test
    void withoutHalfOfThemPregnantThereIsNoMedian() {
        Figure median = curve(new int[] {10, 20, 30}, new boolean[] {true, false, false})
                .median();
        assertThat(median.value()).isEmpty();
        assertThat(median.findings()).extracting(Finding::code).containsExactly(FindingCode.NOT_HALF_PREGNANT);
        assertThat(curve(new int[] {}, new boolean[] {}).median().findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.NOTHING_TO_COUNT);
    }
}
