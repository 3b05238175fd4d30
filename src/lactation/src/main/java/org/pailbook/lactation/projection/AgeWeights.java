package org.pailbook.lactation.projection;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;

/**
 * How much a lactation counts by its age: one that calved six years before the herd's newest counts half, for herds move on. A rule of ours.
 *
 * @param newest last calving of the herd
 * @param newestAnimal whose it was
 * @param newestOfOthers last calving of another cow
 */
record AgeWeights(LocalDate newest, String newestAnimal, LocalDate newestOfOthers) {
    private static final double HALF_WEIGHT_DAYS = 6 * 365.25;

    static AgeWeights of(List<HerdLactation> lactations) {
        LocalDate newest = LocalDate.MIN;
        String animal = "";
        for (HerdLactation one : lactations) {
            if (one.lactation().calvingDate().isAfter(newest)) {
                newest = one.lactation().calvingDate();
                animal = one.animal();
            }
        }
        LocalDate ofOthers = LocalDate.MIN;
        for (HerdLactation one : lactations) {
            if (!one.animal().equals(animal) && one.lactation().calvingDate().isAfter(ofOthers)) {
                ofOthers = one.lactation().calvingDate();
            }
        }
        return new AgeWeights(newest, animal, ofOthers);
    }

    double weight(LocalDate calvingDate) {
        return weight(calvingDate, newest);
    }

    /** What the weights of the others are to be multiplied with when a cow is left out, so that they are as if she had never been there. */
    double withoutCow(String animal) {
        boolean matters = animal.equals(newestAnimal) && !newestOfOthers.equals(LocalDate.MIN);
        return matters ? 1 / weight(newestOfOthers, newest) : 1;
    }

    private static double weight(LocalDate calvingDate, LocalDate latest) {
        return Math.pow(0.5, ChronoUnit.DAYS.between(calvingDate, latest) / HALF_WEIGHT_DAYS);
    }
}
