package org.pailbook.lactation.summary;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import org.pailbook.lactation.figure.Measured;
import org.pailbook.lactation.figure.Proportion;
import org.pailbook.lactation.persistency.HerdStay;
import org.pailbook.lactation.testday.Lactation;

/**
 * Cows that leave, for each 100 cow-years. Exits are counted by where they went and by the first reason recorded; they are not split into chosen and
 * not chosen, which is poorly defined. Herds compare poorly: reasons are not recorded alike.
 *
 * @see "Fetrow, Nordlund and Norman (2006), J. Dairy Sci. 89:1896-1905, abstract (read)"
 */
public final class HerdTurnover {
    /** Of days in a year for cow-years. */
    public static final double DAYS_OF_A_YEAR = 365.25;

    private static final double PER_HUNDRED = 100;
    private static final int EARLY_DAYS = 60;
    private static final String NOT_RECORDED = "unknown";

    private final List<HerdExit> exits;
    private final long cowDays;
    private final LocalDate asOf;
    private final Proportion early;

    private HerdTurnover(List<HerdExit> exits, long cowDays, Proportion early, LocalDate asOf) {
        this.exits = List.copyOf(exits);
        this.cowDays = cowDays;
        this.early = early;
        this.asOf = asOf;
    }

    /**
     * @param cows also those that left
     * @param exits all on record; those of heifers, doubles, and those outside the time take no part
     * @param from first day
     * @param asOf last day
     */
    public static HerdTurnover of(List<HerdCow> cows, List<HerdExit> exits, LocalDate from, LocalDate asOf) {
        long cowDays = 0;
        int calvings = 0;
        int early = 0;
        List<HerdExit> counted = new ArrayList<>();
        for (HerdCow cow : cows) {
            for (HerdStay stay : cow.stays()) {
                cowDays += stay.cowDays(from, asOf);
                Optional<LocalDate> left = stay.exitDate().filter(day -> !day.isBefore(from) && !day.isAfter(asOf));
                left.flatMap(day -> exits.stream()
                                .filter(exit -> exit.animal().equals(cow.cow().animal())
                                        && exit.date().equals(day))
                                .findFirst())
                        .ifPresent(counted::add);
                for (Lactation lactation : stay.lactations()) {
                    LocalDate calving = lactation.calvingDate();
                    if (!calving.isBefore(from) && !calving.plusDays(EARLY_DAYS).isAfter(asOf)) {
                        calvings++;
                        early += stay.exitDate()
                                        .filter(day -> !day.isAfter(calving.plusDays(EARLY_DAYS)))
                                        .isPresent()
                                ? 1
                                : 0;
                    }
                }
            }
        }
        return new HerdTurnover(counted, cowDays, new Proportion(early, calvings), asOf);
    }

    /** Of counts already made. */
    static Measured turnover(int exits, double cowYears, LocalDate asOf) {
        return Measured.ratio(HerdMeasures.TURNOVER, exits, cowYears, PER_HUNDRED, "per 100 cow-years", asOf);
    }

    /** Days cows were in the milking herd, dry days included; the day of a departure is not counted. */
    public long cowDays() {
        return cowDays;
    }

    public Measured rate() {
        return turnover(exits.size(), cowDays / DAYS_OF_A_YEAR, asOf);
    }

    public Measured deathRate() {
        return Measured.ratio(
                HerdMeasures.DEATH_RATE,
                exits.stream().filter(HerdExit::died).count(),
                cowDays / DAYS_OF_A_YEAR,
                PER_HUNDRED,
                "per 100 cow-years",
                asOf);
    }

    public Measured withinSixtyDays() {
        return Measured.share(HerdMeasures.EARLY_EXITS, early, asOf, List.of());
    }

    /** Each exit once. */
    public Map<String, Integer> byDestination() {
        return count(exit -> List.of(exit.destination()));
    }

    /** Each exit once, by its first reason; without one it is "unknown". */
    public Map<String, Integer> byReason() {
        return count(exit -> List.of(exit.firstReason()));
    }

    /** Each exit under every reason recorded for it, so that the counts may add up to more than the exits; without one it is "unknown". */
    public Map<String, Integer> byAnyReason() {
        return count(exit -> exit.reasons().isEmpty() ? List.of("") : exit.reasons());
    }

    private Map<String, Integer> count(Function<HerdExit, List<String>> what) {
        Map<String, Integer> counts = new TreeMap<>();
        for (HerdExit exit : exits) {
            for (String name : what.apply(exit)) {
                counts.merge(name.isBlank() ? NOT_RECORDED : name, 1, Integer::sum);
            }
        }
        return counts;
    }
}
