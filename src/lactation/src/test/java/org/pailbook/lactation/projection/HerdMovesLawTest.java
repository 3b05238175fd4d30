package org.pailbook.lactation.projection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/** Calving season and a herd's level that moves, learned from invented herds of which they are known. */
class HerdMovesLawTest {
    private static final long SEED = 12;
    private static final LocalDate FROM = LocalDate.of(2018, 1, 5);
    private static final LocalDate LATER = LocalDate.of(2030, 1, 1);
    private static final LactationStandard REFERENCE = LactationStandards.refinedForCow("HOL", 1, LactationTrait.MILK);

    /** Lactations that calve evenly over so many years, their level moved by their calving. */
    private static List<HerdLactation> herd(int cows, int years, ToDoubleFunction<LocalDate> levelKg) {
        Random random = new Random(SEED);
        double[] none = new double[306];
        SimulatedHerd simulated = new SimulatedHerd(SEED, REFERENCE.spread(), none);
        List<HerdLactation> herd = new ArrayList<>();
        for (int i = 0; i < cows; i++) {
            LocalDate calving = FROM.plusDays(random.nextInt(365 * years));
            double[] departure = simulated.dailyKg();
            List<TestDay> tests = new ArrayList<>();
            for (int day = 10 + i % 20; day <= 305; day += 30) {
                double kg = REFERENCE.meanKg(day) + levelKg.applyAsDouble(calving) + departure[day];
                tests.add(TestDay.ofMilk(calving.plusDays(day), Math.max(3, kg)));
            }
            herd.add(new HerdLactation("cow " + i, "HOL", Lactation.inMilk(1, calving, tests)));
        }
        return herd;
    }

    private static double meanKg(HerdStandards herd, LocalDate calving) {
        return herd.forCow("new", "HOL", 1, calving, LactationTrait.MILK).meanKg(150);
    }

    @Test
    void aSeasonOfTheHerdIsFoundAndSaid() {
        // 2 kg more for calvings in mid-January, 2 kg less in mid-July
        HerdStandards herd = HerdStandards.learn(
                herd(600, 3, calving -> 2 * Math.cos(2 * Math.PI * (calving.getDayOfYear() - 15) / 365.0)), LATER);
        LocalDate january = LocalDate.of(2021, 1, 15);
        LocalDate july = LocalDate.of(2021, 7, 15);
        double year = herd.forCow("new", "HOL", 1, LactationTrait.MILK).meanKg(150);
        // 600 lactations of some 4 kg spread: a wave's standard error is about .25 kg
        assertThat(meanKg(herd, january) - year).as("seed %d", SEED).isCloseTo(2, within(0.8));
        assertThat(meanKg(herd, july) - year).as("seed %d", SEED).isCloseTo(-2, within(0.8));
        Finding said = herd.forCow("new", "HOL", 1, january, LactationTrait.MILK).findings().stream()
                .filter(one -> one.code() == FindingCode.CALVING_SEASON)
                .findFirst()
                .orElseThrow();
        assertThat(said.seen().orElseThrow()).startsWith("+").endsWith("kg a day of milk for calvings in January");
        assertThat(herd.forCow("new", "HOL", 1, LactationTrait.MILK).findings()).isEmpty();
    }

    @Test
    void withoutASeasonAlmostNoneIsBelieved() {
        HerdStandards herd = HerdStandards.learn(herd(600, 3, calving -> 0), LATER);
        double year = herd.forCow("new", "HOL", 1, LactationTrait.MILK).meanKg(150);
        for (int month = 1; month <= 12; month++) {
            assertThat(meanKg(herd, LocalDate.of(2021, month, 10)))
                    .as("seed %d, month %d", SEED, month)
                    .isCloseTo(year, within(0.35));
        }
    }

    @Test
    void calvingsOfFewMonthsTellOfNoSeason() {
        List<HerdLactation> block = herd(400, 3, calving -> 2).stream()
                .filter(one -> one.lactation().calvingDate().getMonthValue() <= CalvingSeason.LEAST_MONTHS - 1)
                .toList();
        HerdStandards herd = HerdStandards.learn(block, LATER);
        assertThat(meanKg(herd, LocalDate.of(2021, 1, 15))).isEqualTo(meanKg(herd, LocalDate.of(2021, 7, 15)));
    }

    // a herd that rises by .5 kg a year for ten years: the mean of all calvings lies 2.5 kg below today's level; with
    // the last years weighing more it lies less below
    @Test
    void recentLactationsWeighMoreInAHerdThatRises() {
        List<HerdLactation> rising = herd(500, 10, calving -> 0.5 * (calving.getYear() - FROM.getYear()));
        double moved = HerdStandards.learn(rising, LATER)
                        .forCow("new", "HOL", 1, LactationTrait.MILK)
                        .meanKg(150)
                - REFERENCE.meanKg(150);
        assertThat(moved).as("seed %d", SEED).isBetween(2.6, 4.0);
    }

    @Test
    void leavingOutTheNewestCowIsAsIfSheHadNeverBeenThere() {
        List<HerdLactation> all = new ArrayList<>(herd(80, 3, calving -> 0));
        Lactation late =
                Lactation.inMilk(1, LocalDate.of(2024, 6, 1), List.of(TestDay.ofMilk(LocalDate.of(2024, 7, 1), 44)));
        HerdStandards without = HerdStandards.learn(all, LATER);
        all.add(new HerdLactation("late", "HOL", late));
        HerdStandards with = HerdStandards.learn(all, LATER);
        LactationStandard expected = without.forCow("late", "HOL", 1, late.calvingDate(), LactationTrait.MILK);
        LactationStandard leftOut = with.forCow("late", "HOL", 1, late.calvingDate(), LactationTrait.MILK);
        assertThat(leftOut.meanKg(100)).isCloseTo(expected.meanKg(100), within(1e-9));
        assertThat(leftOut.spread().sdPerDay(100)).isCloseTo(expected.spread().sdPerDay(100), within(1e-9));
    }
}
