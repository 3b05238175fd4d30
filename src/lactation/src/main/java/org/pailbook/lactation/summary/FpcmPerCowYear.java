package org.pailbook.lactation.summary;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.correctedmilk.IdfMilk2015;
import org.pailbook.lactation.figure.Explanation;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.Citation;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.persistency.HerdStay;
import org.pailbook.lactation.persistency.RollingHerdAverage;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/**
 * Fat-and-protein-corrected milk of all cows over the 365 days that end on a day, for each cow-year of 365.25 days: what those who work out emissions
 * ask for; none are worked out here. Each test day is corrected by {@link IdfMilk2015} and summed as in {@link RollingHerdAverage}; tests without fat or
 * protein are bridged by those beside them, and counted in a finding (ours).
 */
public final class FpcmPerCowYear implements PublishedMethod {
    public static final FpcmPerCowYear IDF_2015 = new FpcmPerCowYear();

    private static final double DAYS_SUMMED = 365;

    private FpcmPerCowYear() {}

    /** @return kg per cow-year */
    public Figure of(List<HerdStay> cows, LocalDate asOf) {
        Figure.Builder figure = Figure.of(this, "kg/cow-year", asOf)
                .noInterval("weights and samples of test days only; their error is not known");
        LocalDate from = asOf.minusDays((long) DAYS_SUMMED - 1);
        List<HerdStay> corrected =
                cows.parallelStream().map(cow -> corrected(cow, asOf)).toList();
        long notSampled = weighed(cows, from, asOf) - weighed(corrected, from, asOf);
        if (notSampled > 0) {
            figure.finding(Finding.of(FindingCode.FAT_MISSING)
                    .withSeen(notSampled + " tests without fat or protein; those beside them stood in"));
        }
        Figure ofYear = RollingHerdAverage.YEAR.of(corrected, asOf);
        figure.findings(ofYear.findings());
        if (ofYear.value().isEmpty()) {
            return figure.build();
        }
        double value = ofYear.orThrow() * HerdTurnover.DAYS_OF_A_YEAR / DAYS_SUMMED;
        return figure.value(value)
                .explanation(new Explanation(List.of(new Explanation.Part(
                        ofYear.explanation().parts().get(0).what() + ", of corrected milk; for a year of 365.25 days",
                        value))))
                .build();
    }

    private static long weighed(List<HerdStay> cows, LocalDate from, LocalDate asOf) {
        return cows.stream()
                .flatMap(cow -> cow.lactations().stream())
                .flatMap(lactation -> lactation.testDays().stream())
                .filter(test -> !test.date().isBefore(from) && !test.date().isAfter(asOf))
                .filter(test -> test.milkKg().isPresent())
                .count();
    }

    private static HerdStay corrected(HerdStay cow, LocalDate asOf) {
        return new HerdStay(
                cow.entryDate(),
                cow.exitDate(),
                cow.lactations().stream().map(one -> corrected(one, asOf)).toList());
    }

    private static Lactation corrected(Lactation of, LocalDate asOf) {
        return new Lactation(
                of.parity(),
                of.calvingDate(),
                of.endDate(),
                of.isEndEstimated(),
                of.testDays().stream()
                        .map(test -> corrected(test, asOf))
                        .flatMap(Optional::stream)
                        .toList());
    }

    private static Optional<TestDay> corrected(TestDay test, LocalDate asOf) {
        Figure fpcm = IdfMilk2015.FPCM.ofTestDay(test, asOf);
        return fpcm.value().isPresent() ? Optional.of(test.withMilkKg(fpcm.orThrow())) : Optional.empty();
    }

    @Override
    public String id() {
        return "fpcm-per-cow-year";
    }

    @Override
    public int version() {
        return 1;
    }

    @Override
    public Citation citation() {
        return IdfMilk2015.FPCM.citation();
    }
}
