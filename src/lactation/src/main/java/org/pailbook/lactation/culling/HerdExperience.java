package org.pailbook.lactation.culling;

import java.util.Objects;
import java.util.Optional;

/**
 * What a herd's own records tell of one parity, and how far that is believed: n observations count n / (n + 60) against the reference
 * (ours). Observations are cow-months for exits, eligible 21-day cycles for conceptions, test days for milk.
 *
 * @param exits cows of the parity that left unplanned
 * @param freshCowMonths cow-months in months 1 and 2 after calving
 * @param laterCowMonths cow-months from month 3 on
 * @param pregnancies conceptions within the eligible cycles
 * @param eligibleCycles 21-day cycles in which an open cow could have conceived
 * @param milk the herd's own curve, if there is one
 * @param testDays test days the curve rests on
 */
public record HerdExperience(
        int exits,
        double freshCowMonths,
        double laterCowMonths,
        int pregnancies,
        int eligibleCycles,
        Optional<MilkByMonth> milk,
        int testDays) {
    /** Observations at which the herd's own figure counts as much as the reference. Ours. */
    static final double HALF_BELIEVED = 60;

    public static final HerdExperience NONE = new HerdExperience(0, 0, 0, 0, 0, Optional.empty(), 0);

    /** Where only services and their outcomes are known. */
    public static HerdExperience ofPregnancies(int pregnancies, int eligibleCycles) {
        return new HerdExperience(0, 0, 0, pregnancies, eligibleCycles, Optional.empty(), 0);
    }

    public HerdExperience {
        Objects.requireNonNull(milk, "milk");
        if (exits < 0 || !(freshCowMonths >= 0) || !(laterCowMonths >= 0) || testDays < 0) {
            throw new IllegalArgumentException("counts must not be negative: exits " + exits + ", cow-months "
                    + freshCowMonths + " and " + laterCowMonths + ", test days " + testDays);
        }
        if (pregnancies < 0 || pregnancies > eligibleCycles) {
            throw new IllegalArgumentException(
                    "pregnancies (" + pregnancies + ") must be 0 to eligibleCycles (" + eligibleCycles + ")");
        }
    }

    /**
     * The reference moved towards the herd.
     *
     * @param freshExitFactor how much likelier an exit is in the fresh months
     */
    public ParityGroup appliedTo(ParityGroup reference, double freshExitFactor) {
        double cowMonths = freshCowMonths + laterCowMonths;
        double atRisk = freshCowMonths * freshExitFactor + laterCowMonths;
        double ownExits = atRisk == 0 ? 0 : Math.min(1, exits / atRisk);
        double ownPregnancies = eligibleCycles == 0 ? 0 : (double) pregnancies / eligibleCycles;
        return new ParityGroup(
                milk.map(own -> reference.milk().movedTo(own, weight(testDays))).orElse(reference.milk()),
                reference.bodyWeightKg(),
                between(reference.unplannedExitSharePerMonth(), ownExits, atRisk == 0 ? 0 : weight(cowMonths)),
                between(reference.pregnancyRate21DayShare(), ownPregnancies, pregnancyWeight()));
    }

    /** How far the herd's own pregnancies are believed against the reference, 0 to 1. */
    public double pregnancyWeight() {
        return weight(eligibleCycles);
    }

    private static double between(double reference, double own, double weightOfOwn) {
        return (1 - weightOfOwn) * reference + weightOfOwn * own;
    }

    /** How far its own exits are believed against the reference, 0 to 1. */
    public double exitWeight() {
        return weight(freshCowMonths + laterCowMonths);
    }

    static double weight(double observations) {
        return observations / (observations + HALF_BELIEVED);
    }
}
