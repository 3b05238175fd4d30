package org.pailbook.lactation.summary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.event.Calving;
import org.pailbook.lactation.event.Departure;
import org.pailbook.lactation.event.DryOff;
import org.pailbook.lactation.figure.Measured;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.testday.CowHistory;
import org.pailbook.lactation.testday.TestDay;

/** Herd measures on herds worked by hand; the source of each definition stands beside it. */
class HerdMeasuresPublishedTest {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 1);

    private static HerdCow cow(String name, CowHistory history) {
        return HerdCow.of(CowOnDay.of(name, history, "HOL", DAY), history);
    }

    private static CowHistory.Builder calved(int daysAgo, int parity) {
        return CowHistory.builder().calving(new Calving(DAY.minusDays(daysAgo), OptionalInt.of(parity)));
    }

    /** 35 in milk that give 861 kg together, seven dry. */
    private static List<HerdCow> fortyTwo() {
        List<HerdCow> cows = new ArrayList<>();
        for (int i = 0; i < 35; i++) {
            cows.add(cow(
                    "m" + i, calved(100, 2).testDay(TestDay.ofMilk(DAY, 24.6)).build()));
        }
        for (int i = 0; i < 7; i++) {
            cows.add(cow(
                    "d" + i,
                    calved(320, 3).dryOff(new DryOff(DAY.minusDays(20))).build()));
        }
        return cows;
    }

    @Test
    void thirtyFiveOfFortyTwoCowsGive861Kilograms() {
        // check V44 (definitions of section 8, derived): 24.6; 20.5; 7,482.5
        HerdMilk milk = HerdMilk.of(fortyTwo(), DAY);
        assertThat(milk.perMilkingCow().figure().orThrow()).isCloseTo(24.6, within(1e-9));
        assertThat(milk.perCow().figure().orThrow()).isCloseTo(20.5, within(1e-9));
        assertThat(milk.annualised().figure().orThrow()).isCloseTo(7482.5, within(1e-9));
        assertThat(milk.perCow().denominator()).isEqualTo(42);
        assertThat(milk.percentInMilk().figure().orThrow()).isCloseTo(100 * 35 / 42.0, within(1e-9));
        assertThat(milk.byParity()).isEqualTo(Map.of(2, 35, 3, 7));
        assertThat(milk.percentFirstLactation().figure().orThrow()).isZero();
        assertThat(milk.byGroup().get(ParityGroup.MATURE)).isEqualTo(7);
    }

    @Test
    void fourteenExitsIn41AndAHalfCowYears() {
        // check V45, Fetrow et al. 2006 (abstract read): 33.734940 per 100 cow-years
        assertThat(HerdTurnover.turnover(14, 41.5, DAY).figure().orThrow()).isCloseTo(33.734940, within(1e-6));
    }

    @Test
    void ninetyEightCowsOf32DaysOneOf5AndOneOf15Make3156Days() {
        // check V42 (arithmetic); the day of entry counts, the day of exit does not (ours)
        LocalDate from = DAY.minusDays(31);
        List<HerdCow> cows = new ArrayList<>();
        for (int i = 0; i < 98; i++) {
            cows.add(cow("c" + i, calved(200, 2).build()));
        }
        cows.add(cow(
                "sold",
                calved(200, 2).departure(new Departure(from.plusDays(5))).build()));
        cows.add(cow("calved", calved(14, 1).build()));
        assertThat(HerdTurnover.of(cows, List.of(), from, DAY).cowDays()).isEqualTo(3156);
    }

    @Test
    void exitsAreCountedOnceByWhereAndByTheFirstReason() {
        LocalDate from = DAY.minusDays(364);
        List<HerdCow> cows = List.of(
                cow(
                        "A",
                        calved(300, 2)
                                .departure(new Departure(DAY.minusDays(100)))
                                .build()),
                cow(
                        "B",
                        calved(200, 1)
                                .departure(new Departure(DAY.minusDays(160)))
                                .build()),
                cow(
                        "C",
                        calved(500, 3)
                                .departure(new Departure(DAY.minusDays(370)))
                                .build()),
                cow(
                        "heifer",
                        CowHistory.builder()
                                .departure(new Departure(DAY.minusDays(10)))
                                .build()),
                cow("D", calved(250, 2).build()));
        List<HerdExit> exits = new ArrayList<>(List.of(
                new HerdExit("A", DAY.minusDays(100), "slaughter", false, List.of("lowYield", "udder")),
                new HerdExit("B", DAY.minusDays(160), "death", true, List.of()),
                new HerdExit("C", DAY.minusDays(370), "sale", false, List.of("surplus")),
                new HerdExit("heifer", DAY.minusDays(10), "sale", false, List.of("surplus"))));
        exits.addAll(List.copyOf(exits));
        HerdTurnover turnover = HerdTurnover.of(cows, exits, from, DAY);
        assertThat(turnover.rate().numerator()).isEqualTo(2);
        assertThat(turnover.byDestination()).isEqualTo(Map.of("slaughter", 1, "death", 1));
        assertThat(turnover.byReason()).isEqualTo(Map.of("lowYield", 1, "unknown", 1));
        assertThat(turnover.byAnyReason()).isEqualTo(Map.of("lowYield", 1, "udder", 1, "unknown", 1));
        // A 200 days, B 40, D 251 counting today; C left before
        assertThat(turnover.cowDays()).isEqualTo(200 + 40 + 251);
        assertThat(turnover.deathRate().numerator()).isEqualTo(1);
        assertThat(turnover.withinSixtyDays().numerator()).isEqualTo(1);
        assertThat(turnover.withinSixtyDays().denominator()).isEqualTo(3);
    }

    @Test
    void aCowThatCameBackIsThereTwice() {
        CowHistory history = calved(700, 1)
                .departure(new Departure(DAY.minusDays(500)))
                .calving(new Calving(DAY.minusDays(100), OptionalInt.of(2)))
                .build();
        HerdCow cow = cow("A", history);
        assertThat(cow.stays()).hasSize(2);
        assertThat(cow.isThereOn(DAY.minusDays(501))).isTrue();
        assertThat(cow.isThereOn(DAY.minusDays(500))).isFalse();
        assertThat(cow.isThereOn(DAY.minusDays(101))).isFalse();
        assertThat(cow.isThereOn(DAY)).isTrue();
    }

    @Test
    void fewerThanThreeCowsOfAStageHaveNoAverage() {
        List<HerdCow> cows = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            cows.add(cow(
                    "a" + i,
                    calved(i < 2 ? 30 : 120, 1)
                            .testDay(TestDay.ofMilk(DAY, 20 + i))
                            .build()));
        }
        List<HerdMilk.Cell> cells = HerdMilk.of(cows, DAY).byStage();
        assertThat(cells).hasSize(2);
        assertThat(cells.get(0).stage().wireName()).isEqualTo("0-40");
        assertThat(cells.get(0).milk().figure().findings())
                .extracting(Finding::code)
                .containsExactly(FindingCode.TOO_FEW_FOR_MEAN);
        assertThat(cells.get(0).milk().denominator()).isEqualTo(2);
        assertThat(cells.get(1).milk().figure().orThrow()).isCloseTo(23, within(1e-9));
    }

    @Test
    void stagesAndGroupsMeetAtTheirEnds() {
        int[] ends = {0, 40, 41, 100, 101, 199, 200, 304, 305, 900};
        String[] names = {"0-40", "0-40", "41-100", "41-100", "101-199", "101-199", "200-304", "200-304", "305+", "305+"
        };
        for (int i = 0; i < ends.length; i++) {
            assertThat(LactationStage.of(ends[i]).wireName()).isEqualTo(names[i]);
        }
        assertThat(ParityGroup.of(1)).isEqualTo(ParityGroup.FIRST);
        assertThat(ParityGroup.of(2)).isEqualTo(ParityGroup.SECOND);
        assertThat(ParityGroup.of(3)).isEqualTo(ParityGroup.MATURE);
        assertThat(ParityGroup.of(9).wireName()).isEqualTo("3+");
    }

    private static CowHistory withTests(int calvedDaysAgo, int parity, double... dayAndKg) {
        CowHistory.Builder history = calved(calvedDaysAgo, parity);
        for (int i = 0; i < dayAndKg.length; i += 2) {
            history.testDay(TestDay.ofMilk(DAY.minusDays(calvedDaysAgo).plusDays((long) dayAndKg[i]), dayAndKg[i + 1]));
        }
        return history.build();
    }

    @Test
    void thePeakIsTheHighestTestOfDays5To120AndFirstLactationsStandApart() {
        List<HerdCow> cows = List.of(
                cow("A", withTests(200, 1, 20, 24, 60, 27, 121, 40)),
                cow("B", withTests(200, 3, 20, 34, 60, 36, 100, 33)),
                cow("two tests", withTests(200, 3, 20, 50, 60, 55)),
                cow("not there yet", withTests(119, 3, 20, 50, 60, 55, 90, 50)));
        HerdLactationMeasures measures = HerdLactationMeasures.of(cows, DAY);
        Map<ParityGroup, Measured> peak = measures.peak();
        assertThat(peak.get(ParityGroup.FIRST).figure().orThrow()).isEqualTo(27);
        assertThat(peak.get(ParityGroup.MATURE).figure().orThrow()).isEqualTo(36);
        assertThat(peak.get(ParityGroup.MATURE).denominator()).isEqualTo(1);
        assertThat(peak.get(ParityGroup.SECOND).figure().value()).isEmpty();
        assertThat(measures.peakFirstToMature().figure().orThrow()).isCloseTo(0.75, within(1e-12));
    }

    @Test
    void persistencyIsOfCowsWhoseLastTwoTestsLieOnDays60To200() {
        List<HerdCow> cows = List.of(
                cow("A", withTests(120, 2, 80, 30, 110, 28.5)),
                cow("early", withTests(120, 2, 59, 30, 89, 20)),
                cow("late", withTests(230, 2, 171, 30, 201, 20)));
        Measured second = HerdLactationMeasures.of(cows, DAY).persistency().get(ParityGroup.SECOND);
        assertThat(second.denominator()).isEqualTo(1);
        assertThat(second.figure().orThrow()).isCloseTo(95, within(1e-9));
    }

    @Test
    void completedAndGoingLactationsAreNotMixed() {
        List<HerdCow> cows = List.of(
                cow("going", withTests(150, 2, 20, 30, 60, 30, 100, 28)),
                cow("done", withTests(320, 2, 20, 20, 60, 20, 110, 20, 160, 20, 210, 20, 260, 20, 300, 20)));
        HerdLactationMeasures measures = HerdLactationMeasures.of(cows, DAY);
        Measured completed = measures.completed305().get(ParityGroup.SECOND);
        assertThat(completed.denominator()).isEqualTo(1);
        assertThat(completed.figure().orThrow()).isBetween(5900.0, 6200.0);
        HerdOnDay day = HerdOnDay.of(cows.stream().map(HerdCow::cow).toList(), DAY);
        assertThat(measures.projected305(day.milkProjections())
                        .get(ParityGroup.SECOND)
                        .denominator())
                .isEqualTo(2);
    }

    @Test
    void anEmptyHerdHasNoZeros() {
        HerdMilk milk = HerdMilk.of(List.of(), DAY);
        HerdTurnover turnover = HerdTurnover.of(List.of(), List.of(), DAY.minusDays(364), DAY);
        for (Measured none : List.of(
                milk.perCow(),
                milk.perMilkingCow(),
                milk.percentInMilk(),
                turnover.rate(),
                turnover.withinSixtyDays())) {
            assertThat(none.figure().value()).as(none.measure().id()).isEmpty();
        }
        assertThat(milk.byStage()).isEmpty();
        assertThat(HerdLactationMeasures.of(List.of(), DAY).rollingHerdAverage().value())
                .isEmpty();
    }

    @Test
    void theOrderOfTheCowsChangesNothing() {
        List<HerdCow> cows = new ArrayList<>();
        Random random = new Random(42);
        for (int i = 0; i < 40; i++) {
            cows.add(cow(
                    "c" + i,
                    withTests(
                            60 + random.nextInt(300),
                            1 + random.nextInt(4),
                            20,
                            30 + random.nextInt(9),
                            55,
                            25 + random.nextInt(9))));
        }
        HerdMilk one = HerdMilk.of(cows, DAY);
        List<HerdCow> shuffled = new ArrayList<>(cows);
        Collections.shuffle(shuffled, random);
        HerdMilk other = HerdMilk.of(shuffled, DAY);
        assertThat(other.perCow().figure().orThrow())
                .isCloseTo(one.perCow().figure().orThrow(), within(1e-9));
        assertThat(one.byParity().values().stream().mapToInt(Integer::intValue).sum())
                .isEqualTo(40);
        // cells of the table hold every cow weighed, once
        assertThat(one.byStage().stream()
                        .mapToDouble(cell -> cell.milk().denominator())
                        .sum())
                .isEqualTo(one.perMilkingCow().denominator());
    }

    @Test
    void aFigureIsComparedWithTheSameOneOnly() {
        Measured now = HerdTurnover.turnover(14, 41.5, DAY);
        Measured before = HerdTurnover.turnover(12, 40, DAY.minusDays(365));
        assertThat(new Compared(now.figure(), before.figure()).difference().orElseThrow())
                .isCloseTo(3.734940, within(1e-6));
        assertThat(new Compared(now.figure(), HerdTurnover.turnover(0, 0, DAY).figure()).difference())
                .isEmpty();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Compared(
                        now.figure(), HerdMilk.of(List.of(), DAY).perCow().figure()));
    }
}
