package org.pailbook.records.summary;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.pailbook.lactation.breeding.BreedingRecord;
import org.pailbook.lactation.breeding.BreedingSettings;
import org.pailbook.lactation.breeding.BreedingSummary;
import org.pailbook.lactation.figure.Measured;
import org.pailbook.lactation.summary.HerdCareers;
import org.pailbook.lactation.summary.HerdCow;
import org.pailbook.lactation.summary.HerdExit;
import org.pailbook.lactation.summary.HerdLactationMeasures;
import org.pailbook.lactation.summary.HerdMilk;
import org.pailbook.lactation.summary.HerdOnDay;
import org.pailbook.lactation.summary.HerdTurnover;
import org.pailbook.lactation.summary.ParityGroup;
import org.pailbook.lactation.udderhealth.CellCountCut;
import org.pailbook.lactation.udderhealth.HerdCellCounts;

/**
 * A herd's measures on one day, in one order, so that two days can be laid beside each other.
 *
 * @param breeding how well the herd gets in calf
 * @param cellsOfLastTest cell counts of the last test
 * @param cellsOfYear cell counts of the year
 */
record DayMeasures(
        HerdMilk milk,
        HerdLactationMeasures lactations,
        HerdTurnover turnover,
        HerdCareers careers,
        HerdOnDay day,
        List<Measured> breeding,
        List<Measured> cellsOfLastTest,
        List<Measured> cellsOfYear) {
    static final int YEAR_DAYS = 365;

    /** A measure, of one lactation group if one is named. */
    record Line(String lactations, Measured measured) {}

    /**
     * @param cows all animals of the herd as they were on the day
     * @param herd the same animals together
     * @param bred the same animals
     */
    static DayMeasures of(
            List<HerdCow> cows,
            HerdOnDay herd,
            List<BreedingRecord> bred,
            List<HerdCareers.Career> careers,
            List<HerdExit> exits,
            BreedingSettings settings,
            CellCountCut cut,
            LocalDate day) {
        BreedingSummary summary = BreedingSummary.of(bred, settings, day);
        HerdCellCounts cells = HerdCellCounts.of(
                cows.stream().map(cow -> cow.cow().cellCounts()).toList(), cut, day);
        return new DayMeasures(
                HerdMilk.of(cows, day),
                HerdLactationMeasures.of(cows, day),
                HerdTurnover.of(cows, exits, day.minusDays(YEAR_DAYS - 1L), day),
                HerdCareers.of(careers, day),
                herd,
                breeding(summary),
                cellsOfLastTest(cells),
                cellsOfYear(cells));
    }

    private static List<Measured> breeding(BreedingSummary bred) {
        return List.of(
                bred.cycles().pregnancyRateOfLateCycles(),
                bred.cycles().pregnancyRateOfYear(),
                bred.cycles().inseminationRiskOfYear(),
                bred.outcomes().conceptionRisk(),
                bred.outcomes().servicesPerConception(),
                bred.intervals().daysOpen(),
                bred.intervals().calvingInterval());
    }

    private static List<Measured> cellsOfLastTest(HerdCellCounts cells) {
        return Stream.concat(Stream.of(cells.prevalence()), cells.ratesOfLastTest().stream())
                .toList();
    }

    private static List<Measured> cellsOfYear(HerdCellCounts cells) {
        return Stream.of(
                        cells.ratesOfYear().stream(),
                        cells.ratesOverDryPeriod().stream(),
                        Stream.of(cells.freshHeifersHigh()))
                .flatMap(each -> each)
                .toList();
    }

    /** All that can be compared with another day, in one order. Projections are not: what the herd had taught by then is not kept. */
    List<Line> lines() {
        List<Line> lines = new ArrayList<>();
        Stream.of(
                        List.of(
                                milk.perMilkingCow(),
                                milk.perCow(),
                                milk.annualised(),
                                milk.percentInMilk(),
                                milk.percentFirstLactation(),
                                lactations.peakFirstToMature(),
                                turnover.rate(),
                                turnover.deathRate(),
                                turnover.withinSixtyDays(),
                                careers.ageAtFirstCalving(),
                                careers.stayability()),
                        breeding,
                        cellsOfLastTest,
                        cellsOfYear)
                .flatMap(List::stream)
                .forEach(one -> lines.add(new Line(null, one)));
        for (Map<ParityGroup, Measured> byGroup :
                List.of(lactations.peak(), lactations.completed305(), lactations.persistency())) {
            byGroup.forEach((group, one) -> lines.add(new Line(group.wireName(), one)));
        }
        return lines;
    }
}
