package org.pailbook.lactation.summary;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import org.pailbook.lactation.accumulation.AccumulatedYield;
import org.pailbook.lactation.accumulation.TestIntervalMethod;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.projection.BestPrediction;
import org.pailbook.lactation.projection.Projection305;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.testday.AssembledLactation;
import org.pailbook.lactation.testday.CowHistory;
import org.pailbook.lactation.testday.CowLactations;
import org.pailbook.lactation.testday.LactationAssembly;
import org.pailbook.lactation.testday.TestDay;

/**
 * A cow on one day: her state, her lactations, and the figures of the latest one, each by the method its name says.
 *
 * @param breed as recorded; empty text if it is not
 * @param lactations hers up to that day
 * @param hasLeft whether she left the herd, and did not calve in it again
 */
public record CowOnDay(String breed, CowLactations lactations, boolean hasLeft) {
    private static final BestPrediction PROJECTION = new BestPrediction();

    public CowOnDay {
        Objects.requireNonNull(breed, "breed");
        Objects.requireNonNull(lactations, "lactations");
    }

    /**
     * Puts a cow's events together as they stood on a day.
     *
     * @param breed ICAR code or name; empty text if not recorded
     */
    public static CowOnDay of(CowHistory history, String breed, LocalDate asOf) {
        CowHistory known = history.asOf(asOf);
        CowLactations lactations = LactationAssembly.ofOurRules().assemble(known, asOf);
        Optional<LocalDate> calved =
                lactations.latest().map(latest -> latest.lactation().calvingDate());
        boolean left = known.departures().stream()
                .anyMatch(departure -> calved.isEmpty() || !departure.date().isBefore(calved.get()));
        return new CowOnDay(breed, lactations, left);
    }

    public LocalDate asOf() {
        return lactations.asOf();
    }

    public CowState state() {
        if (hasLeft) {
            return CowState.LEFT;
        }
        return lactations
                .latest()
                .map(latest -> latest.end() == AssembledLactation.End.IN_MILK ? CowState.IN_MILK : CowState.DRY)
                .orElse(CowState.NOT_CALVED);
    }

    /** Days in milk on the day; empty unless she is in milk. */
    public OptionalInt daysInMilk() {
        return state() == CowState.IN_MILK
                ? OptionalInt.of(DaysInMilk.on(
                        lactations.latest().orElseThrow().lactation().calvingDate(), asOf()))
                : OptionalInt.empty();
    }

    /** The last test day of the latest lactation, whatever was measured. */
    public Optional<TestDay> lastTestDay() {
        return lactations
                .latest()
                .map(latest -> latest.lactation().testDays())
                .filter(tests -> !tests.isEmpty())
                .map(tests -> tests.get(tests.size() - 1));
    }

    /** Yield of a lactation so far, days 1 to 305 at most. */
    public AccumulatedYield accumulated(AssembledLactation of) {
        return TestIntervalMethod.STANDARD_305.accumulate(of.lactation(), asOf());
    }

    /** 305-day projection of a lactation, against the standard of her breed and parity. */
    public Projection305 projection(AssembledLactation of) {
        LactationStandard standard =
                LactationStandards.forCow(breed, of.lactation().parity());
        return PROJECTION.project(of.lactation(), standard, asOf());
    }
}
