package org.pailbook.lactation.persistency;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.accumulation.TestIntervalMethod;
import org.pailbook.lactation.curve.WilminkCurve;
import org.pailbook.lactation.curve.WoodCurve;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

class PersistencyPublishedTest {
    private static final WoodCurve W = new WoodCurve(15, 0.2, 0.004);
    private static final WilminkCurve X = new WilminkCurve(30, -10, -0.04, 0.05);
    private static final LocalDate CALVING = LocalDate.of(2023, 1, 1);

    @Test
    void laterHundredsOfDaysOverTheFirst() {
        // derived: Wilmink (30, -10, -0.04, 0.05), sums 2604.2725, 2396.6947, 1997.9912
        assertThat(PeriodRatio.P2_1.of(X)).isCloseTo(92.0293, within(0.00005));
        assertThat(PeriodRatio.P3_1.of(X)).isCloseTo(76.7197, within(0.00005));
        // derived: Wood (15, 0.2, 0.004)
        assertThat(PeriodRatio.P2_1.of(W)).isCloseTo(87.8293, within(0.00005));
        assertThat(PeriodRatio.P3_1.of(W)).isCloseTo(65.4381, within(0.00005));
        assertThat(PeriodRatio.P2_1.arithmetic(X))
                .isEqualTo("100 x 2396.7 kg of days 101 to 200 / 2604.3 kg of days 1 to 100");
    }

    @Test
    void woodsOwnMeasure() {
        // Wood 1967 (from memory): S = -(b + 1) ln c = -1.2 ln 0.004
        assertThat(WoodPersistency.S.of(W)).isCloseTo(6.625753, within(5e-7));
        assertThat(WoodPersistency.s(0.2, 0.004)).isEqualTo(WoodPersistency.S.of(W));
        assertThat(WoodPersistency.S.arithmetic(W)).isEqualTo("-(0.2000 + 1) ln 0.004000");
    }

    @Test
    void declineFromDay60ToDay280() {
        // by hand: Wilmink 30 - 10 exp(-14) - 11.2 = 18.79999 on day 280, 30 - 10 exp(-3) - 2.4 = 27.10213 on day 60
        assertThat(Decline.KG_60_TO_280.of(X)).isCloseTo(-8.30214, within(5e-6));
        assertThat(Decline.PCT_60_TO_280.of(X)).isCloseTo(69.3672, within(5e-5));
        assertThat(Decline.KG_60_TO_280.arithmetic(X)).isEqualTo("18.80 kg on day 280 - 27.10 kg on day 60");
        assertThat(Decline.PCT_60_TO_280.arithmetic(X)).isEqualTo("100 x 18.80 kg on day 280 / 27.10 kg on day 60");
    }

    @Test
    void from32To29Point8KgIn33Days() {
        // common practice; derived: 100 (0.93125)^(30/33) = 93.730, 100 (1 - 0.06875 x 30/33) = 93.75
        assertThat(MonthlyPersistency.POWER.pct(32.0, 29.8, 33)).isCloseTo(93.730, within(0.0005));
        assertThat(MonthlyPersistency.LINEAR.pct(32.0, 29.8, 33)).isCloseTo(93.75, within(1e-9));
    }

    @Test
    void monthlyPersistencyTakesTheLastTwoTests() {
        Lactation lactation = Lactation.inMilk(
                2,
                CALVING,
                List.of(
                        TestDay.ofMilk(CALVING.plusDays(60), 40),
                        TestDay.ofMilk(CALVING.plusDays(90), 32.0),
                        TestDay.ofMilk(CALVING.plusDays(123), 29.8)));
        Figure figure = MonthlyPersistency.LINEAR.ofLactation(lactation, CALVING.plusDays(130));
        assertThat(figure.orThrow()).isCloseTo(93.75, within(1e-9));
        assertThat(figure.explanation().parts().get(0).what()).isEqualTo("29.8 kg after 32.0 kg, 33 d");
        assertThat(MonthlyPersistency.POWER
                        .ofLactation(lactation, CALVING.plusDays(89))
                        .findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.TOO_FEW_TESTS);
    }

    @Test
    void annualizedYieldOf9150KgIn395Days() {
        // derived: 9150 x 365 / 395
        assertThat(AnnualizedYield.kgPerYear(9150, 395)).isCloseTo(8455.06, within(0.005));
    }

    @Test
    void cowDaysOfOneTestPeriod() {
        // University of Kentucky extension (read): 98 cows x 32 d, one cow 5 d, one cow 15 d = 3,156 cow-days
        LocalDate from = LocalDate.of(2024, 3, 1);
        LocalDate to = from.plusDays(31);
        List<HerdStay> herd = new ArrayList<>();
        for (int i = 0; i < 98; i++) {
            herd.add(new HerdStay(from.minusYears(1), Optional.empty(), List.of()));
        }
        herd.add(new HerdStay(from.minusYears(1), Optional.of(from.plusDays(5)), List.of()));
        herd.add(new HerdStay(to.minusDays(14), Optional.empty(), List.of()));
        assertThat(herd.stream().mapToLong(cow -> cow.cowDays(from, to)).sum()).isEqualTo(3156);
    }

    @Test
    void rollingHerdAverageOfTwoCowsWorkedByHand() {
        // one cow gives 30 kg from 1 Jan 2023 on, tested monthly, dried off on day 305 and dry since; the other 20 kg,
        // gone on day 100 of the year
        LocalDate asOf = CALVING.plusDays(365);
        List<TestDay> high = new ArrayList<>();
        for (int day = 10; day <= 305; day += 25) {
            high.add(TestDay.ofMilk(CALVING.plusDays(day), 30));
        }
        Lactation first = new Lactation(2, CALVING, Optional.of(CALVING.plusDays(305)), high);
        LocalDate earlier = CALVING.minusDays(30);
        List<TestDay> low = new ArrayList<>();
        for (int day = 10; day <= 130; day += 20) {
            low.add(TestDay.ofMilk(earlier.plusDays(day), 20));
        }
        Lactation second = new Lactation(1, earlier, Optional.of(earlier.plusDays(130)), low);
        Figure average = RollingHerdAverage.YEAR.of(
                List.of(
                        new HerdStay(CALVING, Optional.empty(), List.of(first)),
                        new HerdStay(earlier, Optional.of(earlier.plusDays(131)), List.of(second))),
                asOf);
        // 365 days end on 1 Jan 2024: days 1 to 365 of the first cow; day 31 to 130 of the second. 305 x 30 + 100 x 20,
        // 365 + 100 cow-days
        assertThat(average.orThrow()).isCloseTo((9150.0 + 2000) / 465 * 365, within(1e-9));
        assertThat(average.findings()).isEmpty();
        assertThat(average.explanation().parts().get(0).what()).isEqualTo("11150.0 kg / 465 cow-days x 365");
    }

    @Test
    void daysOpenRunToTheConceptionOfTheConfirmedPregnancy() {
        // trade: 115 d open + 279 d gestation is an interval of 394 d
        Figure open = DaysOpen.TO_CONCEPTION.of(CALVING, Optional.of(CALVING.plusDays(115)), CALVING.plusDays(200));
        assertThat(open.orThrow()).isEqualTo(115);
        assertThat(open.findings()).isEmpty();
        Figure soFar = DaysOpen.TO_CONCEPTION.of(CALVING, Optional.empty(), CALVING.plusDays(200));
        assertThat(soFar.orThrow()).isEqualTo(200);
        assertThat(soFar.findings()).extracting(Finding::code).containsExactly(FindingCode.OPEN_SO_FAR);
        Figure notYet = DaysOpen.TO_CONCEPTION.of(CALVING, Optional.of(CALVING.plusDays(201)), CALVING.plusDays(200));
        assertThat(notYet.orThrow()).isEqualTo(200);
        Figure onTheDay = DaysOpen.TO_CONCEPTION.of(CALVING, Optional.of(CALVING.plusDays(200)), CALVING.plusDays(200));
        assertThat(onTheDay.findings()).isEmpty();
    }

    @Test
    void lifetimeOfTwoLactationsWorkedByHand() {
        // 300 x 20 kg and 100 x 30 kg; born 800 days before the first calving, second calving on day 400, last test 100
        // days later
        Lactation first = new Lactation(
                1,
                CALVING,
                Optional.of(CALVING.plusDays(300)),
                List.of(TestDay.ofMilk(CALVING.plusDays(30), 20), TestDay.ofMilk(CALVING.plusDays(300), 20)));
        LocalDate again = CALVING.plusDays(400);
        Lactation second = Lactation.inMilk(
                2, again, List.of(TestDay.ofMilk(again.plusDays(30), 30), TestDay.ofMilk(again.plusDays(100), 30)));
        LifetimeYield lifetime = LifetimeYield.by(TestIntervalMethod.WHOLE_LACTATION);
        List<Lactation> both = List.of(second, first);
        LocalDate asOf = again.plusDays(120);
        assertThat(lifetime.totalKg(both, asOf).orThrow()).isCloseTo(9000, within(1e-9));
        assertThat(lifetime.kgPerDaySinceFirstCalving(both, asOf).orThrow()).isCloseTo(9000.0 / 500, within(1e-9));
        assertThat(lifetime.kgPerDayOfLife(CALVING.minusDays(800), both, asOf).orThrow())
                .isCloseTo(9000.0 / 1300, within(1e-9));
        assertThat(lifetime.totalKg(both, asOf).explanation().parts().get(0).what())
                .isEqualTo("lactation 1, 300 d: 6000.0 kg");
        assertThat(lifetime.kgPerDaySinceFirstCalving(both, asOf)
                        .explanation()
                        .parts()
                        .get(1)
                        .what())
                .isEqualTo("lactation 2, 100 d: 3000.0 kg / 500 d");
        // as it stood before the second calving
        assertThat(lifetime.kgPerDaySinceFirstCalving(both, again.minusDays(1)).orThrow())
                .isCloseTo(20, within(1e-9));
    }
}
