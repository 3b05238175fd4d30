package org.pailbook.lactation.summary;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import org.pailbook.lactation.accumulation.AccumulatedYield;
import org.pailbook.lactation.accumulation.TestIntervalMethod;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.projection.Projection305;
import org.pailbook.lactation.testday.AssembledLactation;
import org.pailbook.lactation.testday.AssemblyRules;
import org.pailbook.lactation.testday.CowHistory;
import org.pailbook.lactation.testday.CowLactations;
import org.pailbook.lactation.testday.DatedLimits;
import org.pailbook.lactation.testday.LactationAssembly;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.lactation.udderhealth.CowCellCounts;

/**
 * A cow on one day: her state, her lactations, and the figures of the latest one, each by the method its name says.
 *
 * @param animal tells her from the other cows of the herd; any text
 * @param breed as recorded; empty text if it is not
 * @param lactations hers up to that day
 * @param hasLeft whether she left the herd, and did not calve in it again
 * @param herd what her projections start from
 */
public record CowOnDay(String animal, String breed, CowLactations lactations, boolean hasLeft, HerdKnowledge herd) {

    public CowOnDay {
        Objects.requireNonNull(animal, "animal");
        Objects.requireNonNull(breed, "breed");
        Objects.requireNonNull(lactations, "lactations");
        Objects.requireNonNull(herd, "herd");
    }

    /**
     * Puts a cow's events together as they stood on a day; nothing is known of her herd.
     *
     * @param animal tells her from the other cows of the herd
     * @param breed ICAR code or name; empty text if not recorded
     */
    public static CowOnDay of(String animal, CowHistory history, String breed, LocalDate asOf) {
        return of(animal, history, breed, asOf, DatedLimits.PUBLISHED);
    }

    /** The same where the farm has limits of its own. */
    public static CowOnDay of(String animal, CowHistory history, String breed, LocalDate asOf, DatedLimits limits) {
        CowHistory known = history.asOf(asOf);
        CowLactations lactations =
                LactationAssembly.by(AssemblyRules.OURS, limits).assemble(known, asOf);
        Optional<LocalDate> calved =
                lactations.latest().map(latest -> latest.lactation().calvingDate());
        boolean left = known.departures().stream()
                .anyMatch(departure -> calved.isEmpty() || !departure.date().isBefore(calved.get()));
        return new CowOnDay(animal, breed, lactations, left, HerdKnowledge.none());
    }

    /** The same cow, projected with what is known of her herd. */
    public CowOnDay withHerd(HerdKnowledge knowledge) {
        return new CowOnDay(animal, breed, lactations, hasLeft, knowledge);
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

    /** Projection of a lactation in milk, fat, protein and cell score, against what is known of her group in her herd. */
    public Projection305 projection(AssembledLactation of) {
        return herd.project(animal, breed, of.lactation(), asOf());
    }

    /** The same with milk only, which is equal and quicker: for lists and means over a herd. */
    public Projection305 milkProjection(AssembledLactation of) {
        return herd.projectMilk(animal, breed, of.lactation(), asOf());
    }

    /** Her cell counts over all lactations. */
    public CowCellCounts cellCounts() {
        return new CowCellCounts(animal, hasLeft(), lactations.lactations());
    }
}
