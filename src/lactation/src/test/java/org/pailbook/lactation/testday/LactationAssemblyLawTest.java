package org.pailbook.lactation.testday;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.event.Abortion;
import org.pailbook.lactation.event.Calving;
import org.pailbook.lactation.event.Departure;
import org.pailbook.lactation.event.DryOff;

class LactationAssemblyLawTest {
    private static final long SEED = 112;
    private static final LocalDate START = LocalDate.of(2018, 1, 1);
    private static final LocalDate TODAY = START.plusDays(3000);

    /** Anything goes: doubles, contradictions, events out of order. One test a day, so that the order of entry cannot matter. */
    private static CowHistory random(Random random) {
        List<Calving> calvings = new ArrayList<>();
        List<DryOff> dryOffs = new ArrayList<>();
        List<Departure> departures = new ArrayList<>();
        List<Abortion> abortions = new ArrayList<>();
        List<TestDay> tests = new ArrayList<>();
        for (int i = random.nextInt(6); i > 0; i--) {
            calvings.add(new Calving(day(random), OptionalInt.empty()));
        }
        for (int i = random.nextInt(6); i > 0; i--) {
            dryOffs.add(new DryOff(day(random)));
        }
        for (int i = random.nextInt(2); i > 0; i--) {
            departures.add(new Departure(day(random)));
        }
        for (int i = random.nextInt(3); i > 0; i--) {
            abortions.add(new Abortion(day(random), OptionalInt.of(random.nextInt(280)), random.nextBoolean()));
        }
        random.ints(30, 0, 3000)
                .distinct()
                .forEach(day -> tests.add(TestDay.ofMilk(START.plusDays(day), 20 + random.nextInt(20))));
        return new CowHistory(Optional.empty(), calvings, dryOffs, departures, abortions, tests);
    }

    private static LocalDate day(Random random) {
        return START.plusDays(random.nextInt(3000));
    }

    private static CowHistory shuffled(CowHistory history, Random random) {
        return new CowHistory(
                history.birthDate(),
                shuffle(history.calvings(), random),
                shuffle(history.dryOffs(), random),
                shuffle(history.departures(), random),
                shuffle(history.abortions(), random),
                shuffle(history.testDays(), random));
    }

    private static <T> List<T> shuffle(List<T> list, Random random) {
        List<T> copy = new ArrayList<>(list);
        Collections.shuffle(copy, random);
        return copy;
    }

    @Test
    void theOrderOfEntryDoesNotMatter() {
        Random random = new Random(SEED);
        for (int i = 0; i < 500; i++) {
            CowHistory history = random(random);
            assertThat(LactationAssembly.ofOurRules().assemble(shuffled(history, random), TODAY))
                    .as("seed " + SEED + ", round " + i)
                    .isEqualTo(LactationAssembly.ofOurRules().assemble(history, TODAY));
        }
    }

    @Test
    void everyTestIsInExactlyOnePlace() {
        Random random = new Random(SEED);
        for (int i = 0; i < 500; i++) {
            CowHistory history = random(random);
            CowLactations cow = LactationAssembly.ofOurRules().assemble(history, TODAY);
            List<TestDay> found = new ArrayList<>(cow.testsBeforeFirstCalving());
            cow.lactations().forEach(one -> found.addAll(one.lactation().testDays()));
            assertThat(found).as("seed " + SEED).containsExactlyInAnyOrderElementsOf(history.testDays());
        }
    }

    @Test
    void lactationsNeverOverlapAndParityRises() {
        Random random = new Random(SEED);
        for (int i = 0; i < 500; i++) {
            CowLactations cow = LactationAssembly.ofOurRules().assemble(random(random), TODAY);
            for (int j = 1; j < cow.lactations().size(); j++) {
                AssembledLactation earlier = cow.lactations().get(j - 1);
                AssembledLactation later = cow.lactations().get(j);
                assertThat(earlier.lastDate())
                        .hasValue(later.lactation().calvingDate().minusDays(1));
                assertThat(earlier.lactation().endDate().orElseThrow())
                        .as("seed " + SEED)
                        .isBefore(later.lactation().calvingDate());
                assertThat(later.lactation().parity())
                        .isGreaterThan(earlier.lactation().parity());
            }
        }
    }

    @Test
    void whatIsKnownLaterChangesNothingOfAnEarlierDay() {
        Random random = new Random(SEED);
        for (int i = 0; i < 200; i++) {
            CowHistory history = random(random);
            LocalDate then = day(random);
            assertThat(LactationAssembly.ofOurRules().assemble(history, then))
                    .as("seed " + SEED)
                    .isEqualTo(LactationAssembly.ofOurRules().assemble(history.asOf(then), then));
        }
    }
}
