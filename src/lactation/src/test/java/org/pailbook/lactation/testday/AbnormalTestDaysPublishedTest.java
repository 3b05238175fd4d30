package org.pailbook.lactation.testday;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.testday.AbnormalTestDays.Judged;
import org.pailbook.lactation.testday.AbnormalTestDays.Verdict;

/** Limits of Wiggans, VanRaden and Philpot (2003), abstract: 60 %, 150 %, 4.5 kg, half the neighbours, 59 kg above. */
class AbnormalTestDaysPublishedTest {
    private static final long SEED = 2003;
    private static final LocalDate CALVING = LocalDate.of(2023, 1, 1);
    private static final LocalDate LATER = CALVING.plusDays(400);

    /** Cows of many levels that keep what they give: the slope is 0 everywhere. */
    private static YieldSlope level() {
        Random random = new Random(SEED);
        List<Lactation> herd = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            double kg = 10 + 30 * random.nextDouble();
            List<TestDay> tests = new ArrayList<>();
            for (int day = 6 + random.nextInt(30); day < 300; day += 20 + random.nextInt(20)) {
                tests.add(TestDay.ofMilk(CALVING.plusDays(day), kg));
            }
            herd.add(Lactation.inMilk(2, CALVING, tests));
        }
        return YieldSlope.learn(herd, LATER).orElseThrow();
    }

    private static List<Judged> judge(Set<LocalDate> sick, double... kgEvery30Days) {
        List<TestDay> tests = new ArrayList<>();
        for (int i = 0; i < kgEvery30Days.length; i++) {
            tests.add(TestDay.ofMilk(CALVING.plusDays(20 + 30L * i), kgEvery30Days[i]));
        }
        return AbnormalTestDays.by(level()).judge(Lactation.inMilk(2, CALVING, tests), sick, LATER);
    }

    private static List<Verdict> verdicts(double... kg) {
        return judge(Set.of(), kg).stream().map(Judged::verdict).toList();
    }

    @Test
    void below60PercentOfExpectedIsAbnormalAndBothWeightsAreShown() {
        List<Judged> judged = judge(Set.of(), 30, 17.9, 30);
        assertThat(judged).extracting(Judged::verdict).containsExactly(Verdict.NORMAL, Verdict.BELOW, Verdict.NORMAL);
        Judged low = judged.get(1);
        assertThat(low.expectedKg().orElseThrow()).isCloseTo(30, within(1e-6));
        assertThat(low.clippedKg().orElseThrow()).isCloseTo(18, within(1e-6));
        assertThat(low.test().milkKg()).hasValue(17.9);
        assertThat(low.finding().orElseThrow().code()).isEqualTo(FindingCode.TEST_BELOW_EXPECTED);
        assertThat(low.finding().orElseThrow().expected()).hasValue("about 30.0 kg; at the limit 18.0 kg");
        assertThat(verdicts(30, 30, 18.1)).containsOnly(Verdict.NORMAL);
    }

    @Test
    void of28KilogramsExpected16Point8To42AreNormal() {
        // check V41: Wiggans, VanRaden and Philpot (2003), J. Dairy Sci. 86:2721, abstract (read); both ends are normal
        assertThat(AbnormalTestDays.isWithinLimits(16.79, 28)).isFalse();
        assertThat(AbnormalTestDays.isWithinLimits(16.80, 28)).isTrue();
        assertThat(AbnormalTestDays.isWithinLimits(42.00, 28)).isTrue();
        assertThat(AbnormalTestDays.isWithinLimits(42.01, 28)).isFalse();
    }

    @Test
    void above150PercentOfExpectedIsAbnormal() {
        List<Judged> judged = judge(Set.of(), 20, 30.1, 20);
        assertThat(judged.get(1).verdict()).isEqualTo(Verdict.ABOVE);
        assertThat(judged.get(1).clippedKg().orElseThrow()).isCloseTo(30, within(1e-6));
        assertThat(judged.get(1).finding().orElseThrow().code()).isEqualTo(FindingCode.TEST_ABOVE_EXPECTED);
        assertThat(verdicts(20, 29.9, 20)).containsOnly(Verdict.NORMAL);
    }

    @Test
    void theNextTestIsExpectedFromTheLastNormalOne() {
        // 17.5 would be normal after 17, but 17 was not: it is judged by the 30 before
        assertThat(verdicts(30, 30, 17, 17.5, 30))
                .containsExactly(Verdict.NORMAL, Verdict.NORMAL, Verdict.BELOW, Verdict.BELOW, Verdict.NORMAL);
    }

    @Test
    void theFirstTestIsJudgedByTheNext() {
        List<Judged> judged = judge(Set.of(), 17.9, 30, 30);
        assertThat(judged).extracting(Judged::verdict).containsExactly(Verdict.BELOW, Verdict.NORMAL, Verdict.NORMAL);
        assertThat(judged.get(0).expectedKg().orElseThrow()).isCloseTo(30, within(1e-6));
        // the weight after the first is the odd one, as the third shows (ours)
        assertThat(verdicts(30, 17, 30)).containsExactly(Verdict.NORMAL, Verdict.BELOW, Verdict.NORMAL);
        assertThat(verdicts(20, 34, 20)).containsExactly(Verdict.NORMAL, Verdict.ABOVE, Verdict.NORMAL);
    }

    @Test
    void under4Point5KgIsLeftOutForASickCowOrBelowHalfTheNeighbours() {
        Set<LocalDate> sick = Set.of(CALVING.plusDays(50));
        assertThat(judge(sick, 5, 4.4, 5).get(1).verdict()).isEqualTo(Verdict.NOT_CREDIBLE);
        assertThat(judge(Set.of(), 5, 4.4, 5).get(1).verdict()).isEqualTo(Verdict.NORMAL);
        assertThat(judge(Set.of(), 30, 4.4, 30).get(1).verdict()).isEqualTo(Verdict.NOT_CREDIBLE);
        assertThat(judge(sick, 30, 4.5, 30).get(1).verdict()).isEqualTo(Verdict.BELOW);
        // neighbours 8 and 9.6: half the mean is 4.4
        assertThat(judge(Set.of(), 8, 4.4, 9.6).get(1).verdict()).isEqualTo(Verdict.BELOW);
        assertThat(judge(Set.of(), 8, 4.3, 9.6).get(1).verdict()).isEqualTo(Verdict.NOT_CREDIBLE);
        assertThat(judge(Set.of(), 30, 4.4).get(1).clippedKg()).isEmpty();
        // the last test has one neighbour only, and so has the first
        assertThat(verdicts(30, 30, 4.4)).containsExactly(Verdict.NORMAL, Verdict.NORMAL, Verdict.NOT_CREDIBLE);
        assertThat(verdicts(8.9, 8.9, 4.46)).containsExactly(Verdict.NORMAL, Verdict.NORMAL, Verdict.BELOW);
        assertThat(verdicts(4.4, 8.7, 8.7)).containsExactly(Verdict.BELOW, Verdict.NORMAL, Verdict.NORMAL);
        assertThat(verdicts(4.4, 30, 30)).containsExactly(Verdict.NOT_CREDIBLE, Verdict.NORMAL, Verdict.NORMAL);
    }

    @Test
    void moreThan59KgAboveExpectedIsLeftOut() {
        assertThat(judge(Set.of(), 30, 89.5, 30).get(1).verdict()).isEqualTo(Verdict.NOT_CREDIBLE);
        assertThat(judge(Set.of(), 30, 88.5, 30).get(1).verdict()).isEqualTo(Verdict.ABOVE);
    }

    @Test
    void aSingleTestIsNotJudged() {
        assertThat(verdicts(30)).containsExactly(Verdict.NOT_JUDGED);
        assertThat(verdicts()).isEmpty();
    }

    @Test
    void aSlopeLearnedFromDataOfItsFormGivesThatFormBack() {
        Random random = new Random(SEED);
        List<Lactation> herd = new ArrayList<>();
        for (int i = 0; i < 100; i++) {
            int day = 5 + random.nextInt(25);
            double kg = 10 + 30 * random.nextDouble();
            List<TestDay> tests = new ArrayList<>();
            for (int n = 0; n < 9; n++) {
                tests.add(TestDay.ofMilk(CALVING.plusDays(day), kg));
                int interval = 25 + random.nextInt(10);
                kg += interval * trueSlope(day, kg);
                day += interval;
            }
            herd.add(Lactation.inMilk(2, CALVING, tests));
        }
        YieldSlope slope = YieldSlope.learn(herd, LATER).orElseThrow();
        for (int day : new int[] {10, 49, 50, 120, 250}) {
            assertThat(slope.kgPerDayPerDay(day, 25)).as("seed " + SEED).isCloseTo(trueSlope(day, 25), within(1e-7));
            double next = slope.nextKg(day, 25, 30);
            assertThat(next).isCloseTo(25 + 30 * trueSlope(day, 25), within(1e-5));
            assertThat(slope.previousKg(day, next, 30)).isCloseTo(25, within(1e-9));
        }
    }

    @Test
    void expectationsFollowTheSlopeOverTheInterval() {
        // cows that lose 0.1 kg a day: 30 kg leads to expect 27 after 30 days and 25.5 after 45
        Random random = new Random(SEED);
        List<Lactation> herd = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            double start = 35 + 20 * random.nextDouble();
            List<TestDay> tests = new ArrayList<>();
            for (int day = 6 + random.nextInt(30); day < 300; day += 20 + random.nextInt(20)) {
                tests.add(TestDay.ofMilk(CALVING.plusDays(day), start - 0.1 * day));
            }
            herd.add(Lactation.inMilk(2, CALVING, tests));
        }
        AbnormalTestDays falling =
                AbnormalTestDays.by(YieldSlope.learn(herd, LATER).orElseThrow());
        Lactation cow = Lactation.inMilk(
                2,
                CALVING,
                List.of(
                        TestDay.ofMilk(CALVING.plusDays(60), 30),
                        TestDay.ofMilk(CALVING.plusDays(90), 10),
                        TestDay.ofMilk(CALVING.plusDays(105), 25)));
        List<Judged> judged = falling.judge(cow, Set.of(), LATER);
        // the first is judged by the third, 45 days later, since the second does not fit the third
        assertThat(judged.get(0).expectedKg().orElseThrow()).isCloseTo(29.5, within(1e-5));
        assertThat(judged.get(1).expectedKg().orElseThrow()).isCloseTo(27, within(1e-5));
        assertThat(judged.get(2).expectedKg().orElseThrow()).isCloseTo(25.5, within(1e-5));
        assertThat(judged).extracting(Judged::verdict).containsExactly(Verdict.NORMAL, Verdict.BELOW, Verdict.NORMAL);
        // by the next alone, 30 days later
        List<Judged> two = falling.judge(
                Lactation.inMilk(
                        2,
                        CALVING,
                        List.of(TestDay.ofMilk(CALVING.plusDays(60), 30), TestDay.ofMilk(CALVING.plusDays(90), 24))),
                Set.of(),
                LATER);
        assertThat(two.get(0).expectedKg().orElseThrow()).isCloseTo(27, within(1e-5));
    }

    @Test
    void theMethodNamesItsSource() {
        AbnormalTestDays method = AbnormalTestDays.by(level());
        assertThat(method.id()).isEqualTo("abnormal-test-days-wiggans-2003");
        assertThat(method.version()).isEqualTo(1);
        assertThat(method.citation().place()).contains("86:2721");
    }

    private static double trueSlope(int day, double kg) {
        return day < 50
                ? 0.3 - 0.004 * day + 0.00002 * day * day - 0.004 * kg + 0.00003 * day * kg
                : -0.02 - 0.0002 * day + 0.0000004 * day * day - 0.001 * kg + 0.000001 * day * kg;
    }

    @Test
    void tooFewPairsGiveNoSlope() {
        List<TestDay> tests = new ArrayList<>();
        for (int day = 10; day < 300; day += 30) {
            tests.add(TestDay.ofMilk(CALVING.plusDays(day), 20 + day % 7));
        }
        Lactation one = Lactation.inMilk(1, CALVING, tests);
        assertThat(YieldSlope.learn(List.of(one), LATER)).isEmpty();
        List<Lactation> same = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            same.add(one);
        }
        // 40 times the same two early tests do not tell five terms apart
        assertThat(YieldSlope.learn(same, LATER)).isEmpty();
    }
}
