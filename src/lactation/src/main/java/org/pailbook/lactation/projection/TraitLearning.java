package org.pailbook.lactation.projection;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.reference.DailySpread;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.testday.UsableTests;

/** What a herd tells of one trait, group by group and cow by cow, so that any cow can be left out of what is learned for her. */
final class TraitLearning {
    /** A season that moves the level by less, in standard deviations of a day, is not spoken of. */
    private static final double LEAST_SEASON_TOLD = 0.01;

    private final LactationTrait trait;
    private final ReferenceStandards reference;
    private final HerdStandards.Rules rules;
    private final DailySpread rhythm;
    private final AgeWeights ages;
    private final boolean hasSeason;
    /** Share of a day's variance that is the cow's own through all her lactations. */
    private final double cowShare;

    private final Map<String, LactationFingerprint> byGroup = new LinkedHashMap<>();
    private final Map<String, Map<String, LactationFingerprint>> byAnimal = new HashMap<>();
    private final Map<String, List<Earlier>> lactationsOf = new HashMap<>();
    // a herd may be asked by several threads
    private final Map<String, EliminatedGroup> eliminated = new ConcurrentHashMap<>();
    private final Map<String, HerdMean> forNewCow = new ConcurrentHashMap<>();
    private final Map<String, LactationStandard> forNewCowOfMonth = new ConcurrentHashMap<>();
    private final Map<String, DailySpread> patterns = new ConcurrentHashMap<>();

    private record Earlier(LocalDate calvingDate, String group, LactationFingerprint print) {}

    TraitLearning(
            LactationTrait trait,
            ReferenceStandards reference,
            HerdStandards.Rules rules,
            DailySpread rhythm,
            AgeWeights ages,
            boolean hasSeason,
            double cowShare) {
        this.trait = trait;
        this.reference = reference;
        this.rules = rules;
        this.rhythm = rhythm;
        this.ages = ages;
        this.hasSeason = hasSeason;
        this.cowShare = cowShare;
    }

    private static String group(String breed, int parity) {
        return LactationStandards.breedGroup(breed).orElse(breed.trim().toLowerCase(Locale.ROOT))
                + (parity == 1 ? ", parity 1" : ", parity 2 or more");
    }

    /** What one lactation tells; learned when it is {@link #add added}. */
    LactationFingerprint print(HerdLactation one, UsableTests usable) {
        LactationStandard start = reference.forCow(one.breed(), one.lactation().parity(), trait);
        double[] season = hasSeason ? CalvingSeason.of(one.lactation().calvingDate()) : CalvingSeason.ofMonth(0);
        return LactationFingerprint.of(usable, trait, season, start, rhythm);
    }

    void add(HerdLactation one, LactationFingerprint print) {
        if (print.tests > 0) {
            double weight = ages.weight(one.lactation().calvingDate());
            String group = group(one.breed(), one.lactation().parity());
            byGroup.computeIfAbsent(group, unused -> new LactationFingerprint()).add(print, weight);
            byAnimal.computeIfAbsent(one.animal(), unused -> new HashMap<>())
                    .computeIfAbsent(group, unused -> new LactationFingerprint())
                    .add(print, weight);
            lactationsOf
                    .computeIfAbsent(one.animal(), unused -> new ArrayList<>())
                    .add(new Earlier(one.lactation().calvingDate(), group, print));
        }
    }

    /**
     * Levels of one cow through her lactations: a common part, found again in each as far as its tests show it; the season too.
     *
     */
    LactationStandard forCowWithHerPast(String animal, String breed, int parity, LocalDate calvingDate) {
        LactationStandard standard = forCow(animal, breed, parity, calvingDate.getMonthValue());
        double precision = 1 / cowShare;
        double weighted = 0;
        for (Earlier one : lactationsOf.getOrDefault(animal, List.of())) {
            if (one.calvingDate().isBefore(calvingDate)) {
                // tests of one lactation with the common part taken out of their variance (Sherman and Morrison)
                double without = 1 - cowShare * one.print().shapes[0][0];
                precision += one.print().shapes[0][0] / without;
                weighted += mean(one.group(), animal, byAnimal.get(animal)).levelDeviation(one.print()) / without;
            }
        }
        return weighted == 0
                ? standard
                : standard.withKnownLevel(weighted / precision, cowShare - 1 / precision)
                        .withFinding(Finding.of(FindingCode.OWN_EARLIER_LACTATIONS));
    }

    /** @param month of the calving, 1 to 12; 0 for the mean of the year */
    LactationStandard forCow(String animal, String breed, int parity, int month) {
        Map<String, LactationFingerprint> own = byAnimal.get(animal);
        String group = group(breed, parity);
        if (own != null) {
            return learned(breed, parity, month, mean(group, animal, own));
        }
        if (!byGroup.containsKey(group) && LactationStandards.breedGroup(breed).isEmpty()) {
            // any text may stand for a breed: what nobody is recorded with is not kept
            return learned(breed, parity, month, mean(group, "", Map.of()));
        }
        HerdMean mean = forNewCow.computeIfAbsent(group, name -> mean(name, "", Map.of()));
        return forNewCowOfMonth.computeIfAbsent(group + month, unused -> learned(breed, parity, month, mean));
    }

    private LactationStandard learned(String breed, int parity, int month, HerdMean mean) {
        String group = group(breed, parity);
        LactationStandard start = reference.forCow(breed, parity, trait);
        DailySpread pattern =
                byGroup.containsKey(group) ? patterns.computeIfAbsent(group, unused -> pattern(start)) : pattern(start);
        double[] season = CalvingSeason.ofMonth(month);
        LactationStandard standard = mean.standard(start, pattern, group, season);
        double shift = mean.seasonShift(start, season);
        return Math.abs(shift) < LEAST_SEASON_TOLD * start.spread().sdPerDay(LactationFingerprint.MIDDLE_DAY)
                ? standard
                : standard.withFinding(
                        Finding.of(FindingCode.CALVING_SEASON).withSeen(CalvingSeason.words(shift, trait, month)));
    }

    private DailySpread pattern(LactationStandard start) {
        double[] sd = new double[start.lastDay()];
        for (int day = 1; day <= sd.length; day++) {
            sd[day - 1] = start.spread().sdPerDay(day);
        }
        return rhythm.withSdPerDay(sd);
    }

    /** The mean of a group without one cow. */
    private HerdMean mean(String group, String animal, Map<String, LactationFingerprint> own) {
        double weight = own.isEmpty() ? 1 : ages.withoutCow(animal);
        LactationFingerprint wanted = new LactationFingerprint();
        List<EliminatedGroup> others = new ArrayList<>(byGroup.size());
        byGroup.forEach((name, print) -> {
            if (name.equals(group)) {
                wanted.add(without(print, own.get(name)), weight);
            } else if (weight == 1 && !own.containsKey(name)) {
                others.add(eliminated.computeIfAbsent(name, unused -> EliminatedGroup.of(print, rules)));
            } else {
                LactationFingerprint weighed = new LactationFingerprint();
                weighed.add(without(print, own.get(name)), weight);
                others.add(EliminatedGroup.of(weighed, rules));
            }
        });
        return new HerdMean(wanted, others, rules, hasSeason);
    }

    private static LactationFingerprint without(LactationFingerprint group, LactationFingerprint own) {
        if (own == null) {
            return group;
        }
        LactationFingerprint others = group.copy();
        others.add(own, -1);
        return others;
    }
}
