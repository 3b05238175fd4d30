package org.pailbook.lactation.projection;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.reference.DailySpread;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.reference.MeanUncertainty;
import org.pailbook.lactation.reference.TraitStandards;
import org.pailbook.lactation.testday.UsableTests;

/**
 * Standards that have learned from a herd: the reference of breed and parity, moved by the herd's own test days as far as they can be trusted,
 * with what stays unsure kept for the interval.
 *
 * <p>The herd's mean may differ from the reference by four shapes (level, start, slope, bend; {@link MeanUncertainty}); a part is common to all cows
 * of the herd, a part belongs to breed and parity. Both are shrunk: with no history the standard is the reference with the uncertainty of an
 * unknown herd, with many lactations it is the herd's own curve. The spread of lactations is learned likewise. A cow's own lactations
 * never take part in her own standard. Tests of one cow are not independent; generalised least squares weighs them so. A herd moves on:
 * a lactation that calved six years before the newest one counts half. The calving season moves the level where the herd shows one
 * ({@link CalvingSeason}). Half weight and season are rules of ours.
 *
 * <p>Correlations between days: r .998, daily error .18 of the variance (fat .23, protein .28; score r .995, .25), change in the first weeks as
 * of 240 more days over 45; likeliest on open test days of 144 lactations, rounded, ours. How far herds differ is a rule of ours, see {@link Rules}.
 *
 * @see "Generalised least squares and shrinkage: Henderson's mixed model equations, textbook; level shrinkage n / (n + kappa) is the case of one shape"
 */
public final class HerdStandards {
    private static final int SHAPES = MeanUncertainty.SHAPES;
    private static final double EARLY_EXTRA_DAYS = 240;
    private static final double EARLY_OVER_DAYS = 45;
    /** Share of a day's variance that is the cow's own through all her lactations. */
    private static final double COW_SHARE_OF_YIELD = 0.35;

    private static final double COW_SHARE_OF_SCORE = 0.1;

    private final Map<LactationTrait, TraitLearning> learning = new EnumMap<>(LactationTrait.class);

    /**
     * How far the mean of a herd, and of a breed and parity within it, may lie from the reference, in standard deviations of one day between
     * lactations. Ours; the level of a herd is 1.8 kg per 4.5 kg.
     *
     * @param herdSd of the four shapes, common to the herd
     * @param groupSd of the four shapes, of breed and parity
     * @param spreadTests how many tests the reference's spread counts as
     */
    public record Rules(double[] herdSd, double[] groupSd, double spreadTests) {
        public static final Rules OURS =
                new Rules(new double[] {0.4, 0.3, 0.2, 0.1}, new double[] {0.3, 0.4, 0.2, 0.2}, 20);

        public Rules {
            herdSd = herdSd.clone();
            groupSd = groupSd.clone();
            if (herdSd.length != SHAPES || groupSd.length != SHAPES || !(spreadTests > 0)) {
                throw new IllegalArgumentException(
                        "rules need " + SHAPES + " standard deviations each and spreadTests above 0");
            }
        }

        @Override
        public double[] herdSd() {
            return herdSd.clone();
        }

        @Override
        public double[] groupSd() {
            return groupSd.clone();
        }
    }

    private HerdStandards(ReferenceStandards reference, Rules rules, AgeWeights ages, boolean hasSeason) {
        for (LactationTrait trait : LactationTrait.values()) {
            double cowShare = trait == LactationTrait.CELLS ? COW_SHARE_OF_SCORE : COW_SHARE_OF_YIELD;
            learning.put(trait, new TraitLearning(trait, reference, rules, rhythm(trait), ages, hasSeason, cowShare));
        }
    }

    /** Learns from what was recorded up to a day, starting from the shipped standards. */
    public static HerdStandards learn(List<HerdLactation> history, LocalDate asOf) {
        return learn(history, asOf, ReferenceStandards.SHIPPED, Rules.OURS);
    }

    /**
     * @param history lactations of the herd, ended or not, of any cows; tests after {@code asOf} take no part
     * @param reference where learning starts
     */
    public static HerdStandards learn(
            List<HerdLactation> history, LocalDate asOf, ReferenceStandards reference, Rules rules) {
        Objects.requireNonNull(reference, "reference");
        Objects.requireNonNull(rules, "rules");
        record Taught(HerdLactation lactation, UsableTests tests) {}
        // each lactation by itself is most of the work, and any processor may do it;
        // they are added up in order, so that figures do not depend on who was first
        List<Taught> taught = history.parallelStream()
                .map(one -> new Taught(one, UsableTests.of(one.lactation(), asOf)))
                .filter(one -> !one.tests().isEmpty())
                .toList();
        List<HerdLactation> lactations = taught.stream().map(Taught::lactation).toList();
        HerdStandards standards =
                new HerdStandards(reference, rules, AgeWeights.of(lactations), canTellSeason(lactations));
        standards.learning.values().parallelStream().forEach(trait -> {
            List<LactationFingerprint> prints = taught.parallelStream()
                    .map(one -> trait.print(one.lactation(), one.tests()))
                    .toList();
            for (int i = 0; i < prints.size(); i++) {
                trait.add(lactations.get(i), prints.get(i));
            }
        });
        return standards;
    }

    private static boolean canTellSeason(List<HerdLactation> taught) {
        long months = taught.stream()
                .map(one -> one.lactation().calvingDate().getMonth())
                .distinct()
                .count();
        return months >= CalvingSeason.LEAST_MONTHS && taught.size() >= CalvingSeason.LEAST_LACTATIONS;
    }

    /** The standards of a cow, without anything that was learned from herself. */
    public TraitStandards forCow(String animal, String breed, int parity) {
        return TraitStandards.ofYields(
                        forCow(animal, breed, parity, LactationTrait.MILK),
                        forCow(animal, breed, parity, LactationTrait.FAT),
                        forCow(animal, breed, parity, LactationTrait.PROTEIN),
                        LactationStandards.correlations())
                .withCells(forCow(animal, breed, parity, LactationTrait.CELLS));
    }

    /** The standard of one trait of a cow, without anything that was learned from herself. */
    public LactationStandard forCow(String animal, String breed, int parity, LactationTrait trait) {
        return learning.get(trait).forCow(animal, breed, parity, 0);
    }

    /** The same for a cow that calved on a day: the herd's calving season is in it, where the herd has one, and is said. */
    public LactationStandard forCow(
            String animal, String breed, int parity, LocalDate calvingDate, LactationTrait trait) {
        return learning.get(trait).forCow(animal, breed, parity, calvingDate.getMonthValue());
    }

    /**
     * The standards of a cow that also know her own earlier lactations: what she gave above or below her group then, a part of it is expected
     * again. The figure says so by {@link FindingCode#OWN_EARLIER_LACTATIONS}. The calving season is in them too.
     *
     * <p>A share of a day's variance is the cow's own through all her lactations, {@value #COW_SHARE_OF_YIELD} of a yield's and {@value
     * #COW_SHARE_OF_SCORE} of a cell score's. The likeliest on 31 open cows with two lactations was .43 milk, .44 fat, .37 protein, .1 score; the yields
     * are held back, for cows that calve again are the better ones. Ours.
     *
     * @param calvingDate of the lactation to be projected; only lactations begun before it count as earlier
     */
    public TraitStandards forCowWithHerPast(String animal, String breed, int parity, LocalDate calvingDate) {
        return TraitStandards.ofYields(
                        forCowWithHerPast(animal, breed, parity, calvingDate, LactationTrait.MILK),
                        forCowWithHerPast(animal, breed, parity, calvingDate, LactationTrait.FAT),
                        forCowWithHerPast(animal, breed, parity, calvingDate, LactationTrait.PROTEIN),
                        LactationStandards.correlations())
                .withCells(forCowWithHerPast(animal, breed, parity, calvingDate, LactationTrait.CELLS));
    }

    /** The same for one trait. */
    public LactationStandard forCowWithHerPast(
            String animal, String breed, int parity, LocalDate calvingDate, LactationTrait trait) {
        return learning.get(trait).forCowWithHerPast(animal, breed, parity, calvingDate);
    }

    /** The milk standard of a lactation's group as all cows tell it, herself too: made once for the group. */
    LactationStandard ofGroup(HerdLactation one) {
        return forCow("", one.breed(), one.lactation().parity(), LactationTrait.MILK);
    }

    private static DailySpread rhythm(LactationTrait trait) {
        double r = trait == LactationTrait.CELLS ? 0.995 : 0.998;
        double e = switch (trait) {
            case MILK -> 0.18;
            case FAT -> 0.23;
            case PROTEIN -> 0.28;
            case CELLS -> 0.25;
        };
        return DailySpread.constant(1, r, e).withEarlyPace(EARLY_EXTRA_DAYS, EARLY_OVER_DAYS);
    }
}
