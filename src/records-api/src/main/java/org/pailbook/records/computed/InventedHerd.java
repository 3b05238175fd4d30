package org.pailbook.records.computed;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import org.pailbook.lactation.breeding.BreedingHistory;
import org.pailbook.lactation.event.Calving;
import org.pailbook.lactation.event.DryOff;
import org.pailbook.lactation.event.Insemination;
import org.pailbook.lactation.event.PregnancyCheck;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.testday.CowHistory;
import org.pailbook.lactation.testday.DatedLimits;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.AnimalRow;
import org.pailbook.records.store.CowRecord;
import org.pailbook.records.store.HerdRow;

/**
 * A herd that is nobody's and in no database, for {@link Rehearsed}: cows in milk on both sides of their group's mean, tested every month,
 * served and checked; half of them with a lactation before. Its numbers are drawn, and nobody gets to see a figure made from them.
 *
 * @param row the herd; each turn has a change number of its own, so that nothing kept of the turn before is taken
 * @param histories of the animals' breeding, in their order
 */
public record InventedHerd(
        HerdRow row, List<AnimalRow> animals, List<CowRecord> records, List<BreedingHistory> histories) {
    /** The day it is looked at. */
    public static final LocalDate DAY = LocalDate.of(2025, 6, 30);

    private static final String NAME = "rehearsal";
    private static final List<String> BREEDS = List.of("HOL", "JER", "RDM");
    private static final int MOST_PARITY = 4;
    private static final int FROM_CALVING_TO_CALVING = 385;
    private static final int DRY_DAYS = 60;
    private static final int BETWEEN_TESTS = 30;
    private static final int BETWEEN_HEATS = 21;
    private static final int UNTIL_CHECKED = 35;
    private static final double CONCEPTION_RATE = 0.4;

    /** @param turn from 1 */
    public static InventedHerd of(int cows, int turn) {
        HerdRow row = new HerdRow();
        row.id = NAME;
        row.code = NAME;
        row.name = NAME;
        row.timeZone = "UTC";
        row.changeSeq = turn;
        row.recordedAt = Instant.EPOCH;
        Random random = new Random(turn);
        InventedHerd herd = new InventedHerd(row, new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
        for (int cow = 0; cow < cows; cow++) {
            herd.add(cow, random);
        }
        return herd;
    }

    private void add(int cow, Random random) {
        AnimalRow animal = new AnimalRow();
        animal.id = NAME + cow;
        animal.herdId = row.id;
        animal.breed = BREEDS.get(cow % BREEDS.size());
        animal.identifiers = List.of(new AnimalIdentifier(NAME, animal.id));
        animals.add(animal);
        CowHistory history = history(animal.breed, random);
        records.add(new CowRecord(
                animal.id,
                animal.identifiers,
                Optional.empty(),
                Optional.of(animal.breed),
                history,
                DatedLimits.PUBLISHED));
        histories.add(breeding(animal.breed, history, random));
    }

    private static CowHistory history(String breed, Random random) {
        CowHistory.Builder history = CowHistory.builder();
        int parity = 1 + random.nextInt(MOST_PARITY);
        LocalDate calved = DAY.minusDays(10 + random.nextInt(300));
        double level = 1 + 0.15 * random.nextGaussian();
        if (parity > 1 && random.nextBoolean()) {
            LocalDate before = calved.minusDays(FROM_CALVING_TO_CALVING);
            LocalDate dry = calved.minusDays(DRY_DAYS);
            history.calving(new Calving(before, OptionalInt.of(parity - 1)));
            test(history, breed, parity - 1, level, before, dry, random);
            history.dryOff(new DryOff(dry));
        }
        history.calving(new Calving(calved, OptionalInt.of(parity)));
        test(history, breed, parity, level, calved, DAY, random);
        return history.build();
    }

    private static void test(
            CowHistory.Builder history,
            String breed,
            int parity,
            double level,
            LocalDate calved,
            LocalDate until,
            Random random) {
        for (int day = 5 + random.nextInt(BETWEEN_TESTS); !calved.plusDays(day).isAfter(until); day += BETWEEN_TESTS) {
            double kg = level * LactationStandards.forCow(breed, parity).meanKg(day) + 1.5 * random.nextGaussian();
            history.testDay(new TestDay(
                    calved.plusDays(day),
                    OptionalDouble.of(Math.max(4, kg)),
                    OptionalDouble.of(4.1 + 0.4 * random.nextGaussian()),
                    OptionalDouble.of(3.4 + 0.2 * random.nextGaussian()),
                    OptionalDouble.empty(),
                    OptionalDouble.of(20 + random.nextInt(400))));
        }
    }

    private static BreedingHistory breeding(String breed, CowHistory history, Random random) {
        List<Insemination> services = new ArrayList<>();
        List<PregnancyCheck> checks = new ArrayList<>();
        for (Calving calving : history.calvings()) {
            LocalDate served = calving.date().plusDays(50 + random.nextInt(40));
            boolean isOpen = true;
            while (isOpen && !served.isAfter(DAY)) {
                isOpen = random.nextDouble() >= CONCEPTION_RATE;
                services.add(Insemination.on(served));
                checks.add(PregnancyCheck.of(
                        served.plusDays(UNTIL_CHECKED),
                        isOpen ? PregnancyCheck.Result.OPEN : PregnancyCheck.Result.PREGNANT));
                served = served.plusDays(UNTIL_CHECKED + BETWEEN_HEATS);
            }
        }
        return new BreedingHistory(
                breed,
                history.calvings(),
                services,
                checks,
                List.of(),
                history.dryOffs(),
                history.departures(),
                List.of());
    }
}
