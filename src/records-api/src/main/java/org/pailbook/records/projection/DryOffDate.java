package org.pailbook.records.projection;

import java.time.LocalDate;
import java.util.Optional;
import org.pailbook.lactation.projection.Projection305;
import org.pailbook.lactation.reference.DailySpread;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.wire.FigureView;

/**
 * A dry-off somebody plans, as entered.
 *
 * @param isOfOneLactation whether a date outside the lactation is a mistake; in a list of lactations it fits one of them at most
 */
record DryOffDate(LocalDate date, boolean isOfOneLactation) {
    /** What she is expected to give up to it; empty if the date is not in this lactation. */
    Optional<LactationView.ToDryOffView> expected(Lactation lactation, Projection305 projection, boolean explain) {
        int day = lactation.daysInMilk(date);
        if (day < 1 || day > DailySpread.LAST_DAY) {
            if (isOfOneLactation) {
                throw Problem.badParameter(
                        "dryOffDate",
                        "must lie 1 to " + DailySpread.LAST_DAY + " days after the calving on "
                                + lactation.calvingDate(),
                        date.toString());
            }
            return Optional.empty();
        }
        return Optional.of(new LactationView.ToDryOffView(
                date.toString(),
                day,
                FigureView.of(projection.milkToDay(day), explain),
                figure(projection, LactationTrait.FAT, day, explain),
                figure(projection, LactationTrait.PROTEIN, day, explain)));
    }

    private static FigureView figure(Projection305 projection, LactationTrait trait, int day, boolean explain) {
        return FigureView.of(projection.toDay(trait, day).orElseThrow(), explain);
    }
}
