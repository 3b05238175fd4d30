package org.pailbook.lactation.summary;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.pailbook.lactation.figure.Measured;
import org.pailbook.lactation.figure.Proportion;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.lactation.testday.UsableTests;

/** Milk of a herd on its last test date, over all cows and by lactation and stage, and who is in the herd on the day. */
public final class HerdMilk {
    private static final int YEAR_DAYS = 365;

    /** Of fewer cows there is no average: the cows say more. */
    private static final int LEAST_FOR_MEAN = 3;

    private final List<HerdCow> cows;
    private final LocalDate asOf;
    private final Optional<LocalDate> testDate;
    private final List<Weighed> weighed;

    /** A cow weighed on the last test date. */
    private record Weighed(ParityGroup group, LactationStage stage, double milkKg) {}

    /**
     * One cell of the table of milk by lactation and stage.
     *
     * @param milk no value with fewer than 3 cows
     */
    public record Cell(ParityGroup group, LactationStage stage, Measured milk) {}

    private HerdMilk(List<HerdCow> cows, LocalDate asOf) {
        this.cows = List.copyOf(cows);
        this.asOf = asOf;
        this.testDate = cows.stream()
                .flatMap(cow -> cow.cow().lactations().lactations().stream())
                .flatMap(one -> UsableTests.of(one.lactation(), asOf).tests().stream())
                .map(TestDay::date)
                .max(Comparator.naturalOrder());
        this.weighed = testDate.map(this::weighedOn).orElse(List.of());
    }

    /** @param cows as they were on the day, also those that left */
    public static HerdMilk of(List<HerdCow> cows, LocalDate asOf) {
        return new HerdMilk(cows, asOf);
    }

    private List<Weighed> weighedOn(LocalDate date) {
        List<Weighed> found = new ArrayList<>();
        for (HerdCow cow : cows) {
            Optional<Lactation> lactation = cow.lactationOn(date);
            lactation.stream()
                    .flatMap(one -> UsableTests.of(one, asOf).tests().stream()
                            .filter(test -> test.date().equals(date)))
                    .map(test -> new Weighed(
                            ParityGroup.of(lactation.get().parity()),
                            LactationStage.of(lactation.get().daysInMilk(date)),
                            test.milkKg().orElseThrow()))
                    .forEach(found::add);
        }
        return found;
    }

    /** The last day up to the as-of day on which a usable weight was taken. */
    public Optional<LocalDate> testDate() {
        return testDate;
    }

    private double sumKg() {
        return weighed.stream().mapToDouble(Weighed::milkKg).sum();
    }

    private long dry() {
        return testDate.map(
                        date -> cows.stream().filter(cow -> cow.isDryOn(date)).count())
                .orElse(0L);
    }

    public Measured perMilkingCow() {
        return Measured.ratio(HerdMeasures.MILK_MILKING_COWS, sumKg(), weighed.size(), 1, "kg/d", asOf);
    }

    /** With dry cows as zero; none while nobody was weighed. */
    public Measured perCow() {
        double all = weighed.isEmpty() ? 0 : weighed.size() + dry();
        return Measured.ratio(HerdMeasures.MILK_ALL_COWS, sumKg(), all, 1, "kg/d", asOf);
    }

    public Measured annualised() {
        double all = weighed.isEmpty() ? 0 : weighed.size() + dry();
        return Measured.ratio(HerdMeasures.ANNUALISED_MILK, sumKg() * YEAR_DAYS, all, 1, "kg/year", asOf);
    }

    /** Lactation groups in order, and the stages of each; only those with cows. */
    public List<Cell> byStage() {
        List<Cell> cells = new ArrayList<>();
        for (ParityGroup group : ParityGroup.values()) {
            for (LactationStage stage : LactationStage.values()) {
                List<Weighed> in = weighed.stream()
                        .filter(cow -> cow.group() == group && cow.stage() == stage)
                        .toList();
                if (!in.isEmpty()) {
                    double sum = in.stream().mapToDouble(Weighed::milkKg).sum();
                    cells.add(new Cell(
                            group,
                            stage,
                            FewCows.mean(HerdMeasures.MILK_BY_STAGE, sum, in.size(), LEAST_FOR_MEAN, "kg/d", asOf)));
                }
            }
        }
        return cells;
    }

    private List<CowOnDay> there() {
        return cows.stream()
                .map(HerdCow::cow)
                .filter(cow -> cow.state() == CowState.IN_MILK || cow.state() == CowState.DRY)
                .toList();
    }

    public Measured percentInMilk() {
        List<CowOnDay> there = there();
        int inMilk = (int)
                there.stream().filter(cow -> cow.state() == CowState.IN_MILK).count();
        return Measured.share(HerdMeasures.PERCENT_IN_MILK, new Proportion(inMilk, there.size()), asOf, List.of());
    }

    public Measured percentFirstLactation() {
        Map<Integer, Integer> parities = byParity();
        int all = parities.values().stream().mapToInt(Integer::intValue).sum();
        return Measured.share(
                HerdMeasures.PERCENT_FIRST_LACTATION,
                new Proportion(parities.getOrDefault(1, 0), all),
                asOf,
                List.of());
    }

    /** Cows in the herd by parity. */
    public Map<Integer, Integer> byParity() {
        Map<Integer, Integer> parities = new TreeMap<>();
        for (CowOnDay cow : there()) {
            cow.lactations()
                    .latest()
                    .ifPresent(one -> parities.merge(one.lactation().parity(), 1, Integer::sum));
        }
        return parities;
    }

    /** Cows in the herd by group, every group named. */
    public Map<ParityGroup, Integer> byGroup() {
        Map<ParityGroup, Integer> groups = new EnumMap<>(ParityGroup.class);
        for (ParityGroup group : ParityGroup.values()) {
            groups.put(group, 0);
        }
        byParity().forEach((parity, n) -> groups.merge(ParityGroup.of(parity), n, Integer::sum));
        return groups;
    }
}
