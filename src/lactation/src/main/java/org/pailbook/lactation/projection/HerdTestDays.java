package org.pailbook.lactation.projection;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.pailbook.lactation.internal.Cholesky;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.reference.TraitStandards;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.lactation.testday.UsableTests;

/**
 * What single test days had in common for a whole herd: a hot day, a scale that weighs wrong.
 *
 * <p>All days are estimated together from the deviations of all cows, each cow's days correlated as her standard says: {@code (sum S'Vm^-1 S + I / v) h
 * = sum S'Vm^-1 d}, h the effects in standard deviations of a day's milk, S the cow's standard deviations on her test days, v the prior variance
 * {@value #EFFECT_SD} squared (ours). So a wrong day does not make its neighbours look wrong, and a change that lasts is no effect of a day; a part of each effect stays in the
 * herd's mean, which was learned from the same days. Days with fewer
 * than {@value #LEAST_COWS} cows are left alone, and of more than {@value #MOST_DAYS} days the latest are taken: it is meant for herds weighed every few
 * weeks. The cow to be projected is left out of the effects used for her.
 *
 * @see "Herd test-day effects in models of single test days: Mayeres, P. et al. (2004). J. Dairy Sci. 87:1925-1933 (abstract read); this
 *     estimate is ours"
 */
public final class HerdTestDays {
    /** Fewer cows say too little of a day; ours. */
    public static final int LEAST_COWS = 10;

    /** Most days estimated together; ours. */
    public static final int MOST_DAYS = 200;

    /** Standard deviation of a test day's effect in those of a day's milk between lactations; ours. */
    public static final double EFFECT_SD = 0.2;

    /** The same of a day that was picked because it looks odd: nearly all of its effect is believed; ours. */
    static final double ODD_EFFECT_SD = 1;

    /** Lactations with more tests take no part; ours. */
    static final int MOST_TESTS = 30;

    private final List<LocalDate> dates;
    private final Map<LocalDate, Integer> placeOfDate = new HashMap<>();
    private final double[] left;
    private final double[] right;
    private double[] effects;
    private double[][] inverse;
    private final Map<LocalDate, Set<String>> cows;
    private final Map<String, List<Part>> partsOfCow = new HashMap<>();

    /** What one lactation adds to the equations. */
    private record Part(int[] places, double[] lower, double[] right) {}

    private HerdTestDays(Map<LocalDate, Set<String>> cows, double effectSd) {
        this.cows = cows;
        List<LocalDate> enough = new TreeMap<>(cows)
                .entrySet().stream()
                        .filter(day -> day.getValue().size() >= LEAST_COWS)
                        .map(Map.Entry::getKey)
                        .collect(Collectors.toList());
        this.dates = List.copyOf(enough.subList(Math.max(0, enough.size() - MOST_DAYS), enough.size()));
        int n = dates.size();
        this.left = new double[n * (n + 1) / 2];
        this.right = new double[n];
        for (int i = 0; i < n; i++) {
            placeOfDate.put(dates.get(i), i);
            left[Cholesky.at(i, i)] = 1 / (effectSd * effectSd);
        }
    }

    /**
     * Learns the effects of a herd's test days.
     *
     * @param standards learned from the same herd
     * @param asOf later tests take no part
     */
    public static HerdTestDays learn(List<HerdLactation> history, HerdStandards standards, LocalDate asOf) {
        return learn(history, standards, asOf, date -> true, EFFECT_SD);
    }

    /** The same of days that were picked because they look odd; all others are taken to have no effect. */
    static HerdTestDays ofOdd(
            Set<LocalDate> dates, List<HerdLactation> history, HerdStandards standards, LocalDate asOf) {
        return learn(history, standards, asOf, dates::contains, ODD_EFFECT_SD);
    }

    private static HerdTestDays learn(
            List<HerdLactation> history,
            HerdStandards standards,
            LocalDate asOf,
            Predicate<LocalDate> isWanted,
            double effectSd) {
        Map<LocalDate, Set<String>> cows = new HashMap<>();
        List<UsableTests> tests = new ArrayList<>();
        for (HerdLactation one : history) {
            UsableTests usable = UsableTests.of(one.lactation(), asOf);
            tests.add(usable);
            // weighed every day she tells of the weather of many days at a high price
            usable.tests().stream()
                    .filter(test -> usable.count() <= MOST_TESTS && isWanted.test(test.date()))
                    .forEach(test -> cows.computeIfAbsent(test.date(), unused -> new HashSet<>())
                            .add(one.animal()));
        }
        HerdTestDays days = new HerdTestDays(cows, effectSd);
        for (int i = 0; i < history.size(); i++) {
            UsableTests usable = tests.get(i);
            if (usable.count() <= MOST_TESTS && days.hasAny(usable.tests())) {
                HerdLactation one = history.get(i);
                days.add(one.animal(), standards.ofGroup(one), usable);
            }
        }
        days.solve();
        return days;
    }

    /** Whether a day with an effect is among these tests. */
    public boolean hasAny(List<TestDay> tests) {
        for (TestDay test : tests) {
            if (placeOfDate.containsKey(test.date())) {
                return true;
            }
        }
        return false;
    }

    private void add(String animal, LactationStandard standard, UsableTests usable) {
        TestDayWeights weights =
                new TraitWeights(usable, TraitStandards.single(LactationTrait.MILK, standard), test -> 0).of(0);
        int n = weights.records().count();
        List<Integer> measured = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            if (placeOfDate.containsKey(dateOf(usable, weights, i))) {
                measured.add(i);
            }
        }
        int size = measured.size();
        double[] solved = weights.deviations();
        weights.solveInPlace(solved);
        Part part = new Part(new int[size], new double[size * (size + 1) / 2], new double[size]);
        for (int i = 0; i < size; i++) {
            int record = measured.get(i);
            double sd = standard.spread().sdPerDay(weights.records().day(record));
            part.places[i] = placeOfDate.get(dateOf(usable, weights, record));
            part.right[i] = sd * solved[record];
            double[] column = new double[n];
            column[record] = sd;
            weights.solveInPlace(column);
            for (int j = 0; j <= i; j++) {
                int other = measured.get(j);
                part.lower[Cholesky.at(i, j)] = column[other]
                        * standard.spread().sdPerDay(weights.records().day(other));
            }
        }
        addTo(left, right, part, 1);
        partsOfCow.computeIfAbsent(animal, unused -> new ArrayList<>()).add(part);
    }

    private static LocalDate dateOf(UsableTests usable, TestDayWeights weights, int record) {
        return usable.tests().get(weights.records().test(record)).date();
    }

    /** Places of a cow's tests rise with their days, so the lower triangle stays the lower triangle. */
    private static void addTo(double[] left, double[] right, Part part, int sign) {
        for (int i = 0; i < part.places.length; i++) {
            right[part.places[i]] += sign * part.right[i];
            for (int j = 0; j <= i; j++) {
                left[Cholesky.at(part.places[i], part.places[j])] += sign * part.lower[Cholesky.at(i, j)];
            }
        }
    }

    /** The inverse of the equations of all cows and their answer; made once, for every cow's own part is taken out of them. */
    private void solve() {
        int n = dates.size();
        Cholesky equations = Cholesky.factorInPlace(left.clone(), n);
        effects = right.clone();
        equations.solveInPlace(effects);
        inverse = new double[n][n];
        for (int i = 0; i < n; i++) {
            inverse[i][i] = 1;
            equations.solveInPlace(inverse[i]);
        }
    }

    /** The effects as all other cows of the herd tell them. */
    public TestDayEffects withoutCow(String animal) {
        List<Part> parts = partsOfCow.getOrDefault(animal, List.of());
        int[] own = parts.stream()
                .flatMapToInt(part -> Arrays.stream(part.places))
                .sorted()
                .distinct()
                .toArray();
        double[] ownRight = new double[own.length];
        Cholesky change = change(parts, own, ownRight);
        Map<LocalDate, TestDayEffects.Effect> byDate = new HashMap<>();
        double[] solved = new double[own.length];
        for (int k = 0; k < own.length; k++) {
            solved[k] = effects[own[k]] - dot(inverse[own[k]], own, ownRight);
        }
        change.solveInPlace(solved);
        for (int i = 0; i < effects.length; i++) {
            Set<String> weighed = cows.get(dates.get(i));
            int count = weighed.size() - (weighed.contains(animal) ? 1 : 0);
            if (count >= LEAST_COWS) {
                double[] row = new double[own.length];
                for (int k = 0; k < own.length; k++) {
                    row[k] = inverse[i][own[k]];
                }
                double effect = effects[i] - dot(inverse[i], own, ownRight) + dot(inverse[i], own, solved);
                change.solveInPlace(row);
                double variance = inverse[i][i] + dot(inverse[i], own, row);
                byDate.put(dates.get(i), new TestDayEffects.Effect(dates.get(i), count, effect, Math.sqrt(variance)));
            }
        }
        return new TestDayEffects(byDate);
    }

    /** {@code B^-1 - W}, B what she adds at her days, W the inverse there: {@code (A - PBP')^-1 = A^-1 + A^-1 P (B^-1 - W)^-1 P' A^-1}. */
    private Cholesky change(List<Part> parts, int[] own, double[] ownRight) {
        int size = own.length;
        double[] added = new double[size * (size + 1) / 2];
        for (Part part : parts) {
            int[] places = Arrays.stream(part.places)
                    .map(place -> Arrays.binarySearch(own, place))
                    .toArray();
            addTo(added, ownRight, new Part(places, part.lower, part.right), 1);
        }
        Cholesky ofHers = Cholesky.factorInPlace(added, size);
        double[] change = new double[size * (size + 1) / 2];
        for (int i = 0; i < size; i++) {
            double[] column = new double[size];
            column[i] = 1;
            ofHers.solveInPlace(column);
            for (int j = 0; j <= i; j++) {
                change[Cholesky.at(i, j)] = column[j] - inverse[own[i]][own[j]];
            }
        }
        return Cholesky.factorInPlace(change, size);
    }

    private static double dot(double[] row, int[] places, double[] values) {
        double sum = 0;
        for (int k = 0; k < places.length; k++) {
            sum += row[places[k]] * values[k];
        }
        return sum;
    }
}
