package org.pailbook.lactation.summary;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.pailbook.lactation.accumulation.TestIntervalMethod;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.figure.Measured;
import org.pailbook.lactation.method.Measure;
import org.pailbook.lactation.persistency.HerdStay;
import org.pailbook.lactation.persistency.MonthlyPersistency;
import org.pailbook.lactation.persistency.RollingHerdAverage;
import org.pailbook.lactation.projection.Projection305;
import org.pailbook.lactation.testday.AssembledLactation;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.UsableTests;

/** Peak, 305-day milk and persistency of a herd, first lactations apart from later ones, and the rolling average. */
public final class HerdLactationMeasures {
    private static final int YEAR_DAYS = 365;
    private static final int PEAK_TESTS = 3;
    private static final int PEAK_FROM_DAY = 5;
    private static final int PEAK_TO_DAY = 120;
    private static final int PERSISTENCY_FROM_DAY = 60;
    private static final int PERSISTENCY_TO_DAY = 200;

    private final List<HerdCow> cows;
    private final LocalDate asOf;
    private final Map<ParityGroup, Measured> peak;
    private final Map<ParityGroup, Measured> completed305;
    private final Map<ParityGroup, Measured> persistency;
    private final Figure rollingHerdAverage;
    private final Figure fpcmPerCowYear;

    private HerdLactationMeasures(List<HerdCow> cows, LocalDate asOf) {
        this.cows = List.copyOf(cows);
        this.asOf = asOf;
        List<Lactation> all = cows.stream()
                .flatMap(cow -> cow.cow().lactations().lactations().stream())
                .map(AssembledLactation::lactation)
                .toList();
        this.peak = means(HerdMeasures.PEAK, "kg/d", this::peakKg, passedDay(PEAK_TO_DAY, all));
        this.completed305 = means(
                HerdMeasures.MILK_305_COMPLETED,
                "kg",
                one -> TestIntervalMethod.STANDARD_305
                        .accumulate(one, asOf)
                        .milk()
                        .value(),
                all.stream().filter(this::isCompletedInYear).toList());
        this.persistency = means(HerdMeasures.PERSISTENCY, "%", this::monthlyPct, inMilk());
        List<HerdStay> stays =
                cows.stream().flatMap(cow -> cow.stays().stream()).toList();
        this.rollingHerdAverage = RollingHerdAverage.YEAR.of(stays, asOf);
        this.fpcmPerCowYear = FpcmPerCowYear.IDF_2015.of(stays, asOf);
    }

    /** @param cows as they were on the day, also those that left */
    public static HerdLactationMeasures of(List<HerdCow> cows, LocalDate asOf) {
        return new HerdLactationMeasures(cows, asOf);
    }

    private Map<ParityGroup, Measured> means(
            Measure measure, String unit, Function<Lactation, OptionalDouble> value, List<Lactation> of) {
        Map<ParityGroup, Measured> means = new EnumMap<>(ParityGroup.class);
        for (ParityGroup group : ParityGroup.values()) {
            double sum = 0;
            int n = 0;
            for (Lactation lactation : of) {
                OptionalDouble one =
                        ParityGroup.of(lactation.parity()) == group ? value.apply(lactation) : OptionalDouble.empty();
                if (one.isPresent()) {
                    sum += one.getAsDouble();
                    n++;
                }
            }
            means.put(group, Measured.ratio(measure, sum, n, 1, unit, asOf));
        }
        return means;
    }

    private List<Lactation> passedDay(int daysInMilk, List<Lactation> of) {
        return of.stream()
                .filter(one -> isInYear(one.calvingDate().plusDays(daysInMilk)))
                .toList();
    }

    private List<Lactation> inMilk() {
        return cows.stream()
                .filter(cow -> cow.cow().state() == CowState.IN_MILK)
                .map(cow -> cow.cow().lactations().latest().orElseThrow().lactation())
                .toList();
    }

    /** By group: of lactations that passed day 120 in the year. */
    public Map<ParityGroup, Measured> peak() {
        return peak;
    }

    private OptionalDouble peakKg(Lactation lactation) {
        UsableTests tests = UsableTests.of(lactation, asOf);
        double peak = 0;
        for (int i = 0; i < tests.count(); i++) {
            if (tests.daysInMilk(i) >= PEAK_FROM_DAY && tests.daysInMilk(i) <= PEAK_TO_DAY) {
                peak = Math.max(peak, tests.milkKg(i));
            }
        }
        return tests.count() >= PEAK_TESTS && peak > 0 ? OptionalDouble.of(peak) : OptionalDouble.empty();
    }

    /** Peak of first lactations over third and later ones. */
    public Measured peakFirstToMature() {
        return Measured.ratio(
                HerdMeasures.PEAK_RATIO,
                peak.get(ParityGroup.FIRST).figure().value().orElse(0),
                peak.get(ParityGroup.FIRST).figure().value().isEmpty()
                        ? 0
                        : peak.get(ParityGroup.MATURE).figure().value().orElse(0),
                1,
                "ratio",
                asOf);
    }

    /** By group: of lactations that ended, or passed day 305, in the year. */
    public Map<ParityGroup, Measured> completed305() {
        return completed305;
    }

    private boolean isCompletedInYear(Lactation lactation) {
        LocalDate day305 = lactation.calvingDate().plusDays(DaysInMilk.STANDARD_LACTATION_DAYS);
        return isInYear(lactation.endDate().filter(end -> end.isBefore(day305)).orElse(day305));
    }

    private boolean isInYear(LocalDate day) {
        return day.isAfter(asOf.minusDays(YEAR_DAYS)) && !day.isAfter(asOf);
    }

    /**
     * By group: of cows in milk with a test, by best prediction.
     *
     * @param projections of the cows in milk, in the order of the cows
     */
    public Map<ParityGroup, Measured> projected305(List<Projection305> projections) {
        Map<ParityGroup, Measured> means = new EnumMap<>(ParityGroup.class);
        Map<ParityGroup, List<Double>> values = new EnumMap<>(ParityGroup.class);
        List<CowOnDay> inMilk = cows.stream()
                .map(HerdCow::cow)
                .filter(cow -> cow.state() == CowState.IN_MILK)
                .toList();
        if (inMilk.size() != projections.size()) {
            throw new IllegalArgumentException("projections (" + projections.size() + ") must be one for each of "
                    + inMilk.size() + " cows in milk");
        }
        for (int i = 0; i < inMilk.size(); i++) {
            if (projections.get(i).tests() > 0) {
                int parity = inMilk.get(i)
                        .lactations()
                        .latest()
                        .orElseThrow()
                        .lactation()
                        .parity();
                values.computeIfAbsent(ParityGroup.of(parity), unused -> new ArrayList<>())
                        .add(projections.get(i).milk305Kg());
            }
        }
        for (ParityGroup group : ParityGroup.values()) {
            List<Double> of = values.getOrDefault(group, List.of());
            double sum = of.stream().mapToDouble(Double::doubleValue).sum();
            means.put(group, Measured.ratio(HerdMeasures.MILK_305_PROJECTED, sum, of.size(), 1, "kg", asOf));
        }
        return means;
    }

    /** By group: of cows in milk whose last two tests lie on days 60 to 200. */
    public Map<ParityGroup, Measured> persistency() {
        return persistency;
    }

    private OptionalDouble monthlyPct(Lactation lactation) {
        UsableTests tests = UsableTests.of(lactation, asOf);
        int last = tests.count() - 1;
        boolean fits = last >= 1
                && tests.daysInMilk(last - 1) >= PERSISTENCY_FROM_DAY
                && tests.daysInMilk(last) <= PERSISTENCY_TO_DAY;
        return fits ? MonthlyPersistency.POWER.ofLactation(lactation, asOf).value() : OptionalDouble.empty();
    }

    public Figure rollingHerdAverage() {
        return rollingHerdAverage;
    }

    /** Corrected milk for each cow-year, for those who work out emissions. */
    public Figure fpcmPerCowYear() {
        return fpcmPerCowYear;
    }
}
