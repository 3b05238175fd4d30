package org.pailbook.lactation.projection;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.reference.TraitStandards;
import org.pailbook.lactation.testday.AddedTestVariance;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.lactation.testday.UsableTests;

/**
 * Best prediction of lactation milk: the mean curve of the cow's group, moved by her own test days as far as they can be trusted.
 *
 * <p>Each test day's deviation from the mean is weighted by what it says of the total: {@code yhat = 1'mu + w' (ym - K mu)}, {@code w = Vm^-1
 * K V 1}. Any plan of tests will do, none too; a late first test and gaps need nothing special, and tests past day 305 still count. Cost grows
 * with the third power of the number of tests: ten take microseconds, a weight every day some milliseconds.
 *
 * @see "VanRaden, P. M. (1997). Lactation yields and accuracies computed from test day yields and (co)variances by best prediction. J. Dairy
 *     Sci. 80:3015-3022 (abstract read)"
 */
public final class BestPrediction implements PublishedMethod {
    private static final Citation CITATION = new Citation(
            "VanRaden, P. M.", 1997, "J. Dairy Sci. 80:3015-3022; correlations of Cole et al. 2009", HowKnown.READ);

    private final IntervalCalibration calibration;

    public BestPrediction() {
        this(IntervalCalibration.NONE);
    }

    private BestPrediction(IntervalCalibration calibration) {
        this.calibration = Objects.requireNonNull(calibration, "calibration");
    }

    /** The same method with intervals as wide as past projections showed they must be. */
    public BestPrediction withCalibration(IntervalCalibration learned) {
        return new BestPrediction(learned);
    }

    @Override
    public String id() {
        return "best-prediction-vanraden-1997";
    }

    @Override
    public int version() {
        return 3;
    }

    @Override
    public Citation citation() {
        return CITATION;
    }

    /** Projects a lactation, each test with the variance it says it has; see the longer form. */
    public Projection305 project(Lactation lactation, LactationStandard standard, LocalDate asOf) {
        return project(lactation, standard, asOf, TestDay::addedVarianceShare);
    }

    /**
     * Projects a lactation as it stood on a day.
     *
     * @param standard of the cow's breed and parity, kg per day
     * @param asOf later tests and a later end are as if not recorded
     * @param extraVarianceShare for a test told from a part of its milkings: {@link AddedTestVariance#share}; 1.0 for a
     *     test on a day she was ill (a rule of ours); 0 for an ordinary test
     * @throws IllegalArgumentException if an extra variance is negative
     */
    public Projection305 project(
            Lactation lactation,
            LactationStandard standard,
            LocalDate asOf,
            ToDoubleFunction<TestDay> extraVarianceShare) {
        return project(lactation, TraitStandards.single(LactationTrait.MILK, standard), asOf, extraVarianceShare);
    }

    /** Projects milk, fat, protein and cell score together, each test with the variance it says it has; see the longest form. */
    public Projection305 project(Lactation lactation, TraitStandards standards, LocalDate asOf) {
        return project(lactation, standards, asOf, TestDay::addedVarianceShare);
    }

    /**
     * Projects several traits at once: a test without a sample still tells of fat and protein by its milk. Milk is projected from milk alone.
     *
     * @param standards milk alone, or milk, fat and protein, with the cell score or without
     */
    public Projection305 project(
            Lactation lactation,
            TraitStandards standards,
            LocalDate asOf,
            ToDoubleFunction<TestDay> extraVarianceShare) {
        UsableTests usable = UsableTests.of(lactation, asOf);
        Optional<TraitWeights> cells = standards
                .cells()
                .map(ofScore -> new TraitWeights(
                        usable, TraitStandards.single(LactationTrait.CELLS, ofScore), (TestDay test) -> 0));
        return new Projection305(
                this,
                calibration,
                lactation.asOf(asOf),
                standards,
                asOf,
                usable,
                new TraitWeights(usable, standards, extraVarianceShare),
                cells);
    }
}
