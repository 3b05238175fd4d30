package org.pailbook.lactation.projection;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.pailbook.lactation.day.DaysInMilk;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.reference.TraitStandards;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.UsableTests;

/**
 * A herd's completed lactations projected again as they stood after each test, beside what they came to: what the herd learns its accuracy and
 * its intervals from.
 *
 * <p>Completed: milked to day 275 or later, and known by all her tests with a reliability of .9 or more. What she came to is itself a best prediction
 * from all tests, so the standard error of the difference is {@code sqrt(SEP^2 - SEP_all^2)}. Of her own lactations only earlier ones take part in her
 * standard; other cows' tests up to the as-of date do, also later ones than the projection would have known. Rules of ours.
 */
public final class PastProjections {
    private static final int COMPLETED_FROM_DAY = 275;
    private static final double LEAST_RELIABILITY = 0.9;

    private PastProjections() {}

    /** False for one that is too young to have been completed: known without a look at her tests. */
    public static boolean mayBeCompleted(Lactation lactation, LocalDate asOf) {
        return lactation.daysInMilk(asOf) >= COMPLETED_FROM_DAY;
    }

    /**
     * One error for each completed lactation and each number of tests from none to all but one.
     *
     * @param standards learned from the same herd
     */
    public static List<ProjectionError> of(List<HerdLactation> history, HerdStandards standards, LocalDate asOf) {
        List<ProjectionError> errors = new ArrayList<>();
        BestPrediction method = new BestPrediction();
        for (HerdLactation one : history) {
            Lactation lactation = one.lactation().asOf(asOf);
            UsableTests usable = UsableTests.of(lactation, asOf);
            if (!usable.isEmpty() && usable.daysInMilk(usable.count() - 1) >= COMPLETED_FROM_DAY) {
                LactationStandard milk = standards.forCowWithHerPast(
                        one.animal(), one.breed(), lactation.parity(), lactation.calvingDate(), LactationTrait.MILK);
                TraitStandards standard = TraitStandards.single(LactationTrait.MILK, milk);
                Projection305 whole = method.project(lactation, standard, asOf);
                if (whole.reliabilityShare() >= LEAST_RELIABILITY) {
                    add(errors, lactation, usable, standard, whole);
                }
            }
        }
        return errors;
    }

    private static void add(
            List<ProjectionError> errors,
            Lactation lactation,
            UsableTests usable,
            TraitStandards standard,
            Projection305 whole) {
        BestPrediction method = new BestPrediction();
        double wholeVariance = whole.standardErrorKg() * whole.standardErrorKg();
        for (int tests = 0; tests < usable.count(); tests++) {
            if (tests > 0 && usable.daysInMilk(tests - 1) > DaysInMilk.STANDARD_LACTATION_DAYS) {
                return;
            }
            LocalDate then = tests == 0
                    ? lactation.calvingDate()
                    : usable.tests().get(tests - 1).date();
            Projection305 projection = method.project(lactation, standard, then);
            double variance = projection.standardErrorKg() * projection.standardErrorKg() - wholeVariance;
            if (variance > 0) {
                errors.add(new ProjectionError(tests, projection.milk305Kg(), Math.sqrt(variance), whole.milk305Kg()));
            }
        }
    }
}
