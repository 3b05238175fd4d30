package org.pailbook.benchmarks.accuracy;

import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.figure.Interval;
import org.pailbook.lactation.testday.Lactation;

/** A way to project a lactation to 305 days, taught by other cows if it can be. */
interface ProjectionRule {
    String name();

    /** The rule as these lactations teach it; none of them is of a cow that will be projected with it. */
    Taught learn(List<KnownLactation> others);

    /** A rule ready to project. */
    @FunctionalInterface
    interface Taught {
        /** @return empty where the rule gives no figure, too few tests for one */
        Optional<Answer> project(String animal, String breed, Lactation lactation);
    }

    /**
     * A projection.
     *
     * @param interval80 empty if the rule has none
     */
    record Answer(double kg, Optional<Interval> interval80, Optional<Interval> interval95) {
        static Optional<Answer> bare(double kg) {
            return Optional.of(new Answer(kg, Optional.empty(), Optional.empty()));
        }
    }
}
