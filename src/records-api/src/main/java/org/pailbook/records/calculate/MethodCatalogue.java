package org.pailbook.records.calculate;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.pailbook.lactation.accumulation.DataCollectionRating;
import org.pailbook.lactation.accumulation.TestIntervalMethod;
import org.pailbook.lactation.breeding.BreedingMeasures;
import org.pailbook.lactation.breeding.GestationLength;
import org.pailbook.lactation.breeding.TimeToPregnancy;
import org.pailbook.lactation.correctedmilk.CorrectedMilkFormulas;
import org.pailbook.lactation.correctedmilk.DryMatterIntakeNasem2021;
import org.pailbook.lactation.correctedmilk.DryMatterIntakeNrc2001;
import org.pailbook.lactation.correctedmilk.MilkEnergyFormula;
import org.pailbook.lactation.culling.BestRemainingStay;
import org.pailbook.lactation.culling.CowValueCabrera2012;
import org.pailbook.lactation.culling.CullingPrices;
import org.pailbook.lactation.culling.HerdParameters;
import org.pailbook.lactation.culling.IncomeOverFeedCost;
import org.pailbook.lactation.culling.MarginalNetRevenue;
import org.pailbook.lactation.culling.MilkOnlyRanking;
import org.pailbook.lactation.culling.PayoffWithoutBreeding;
import org.pailbook.lactation.culling.PregnancyValue;
import org.pailbook.lactation.culling.RetentionPayoff;
import org.pailbook.lactation.curve.LactationCurves;
import org.pailbook.lactation.method.HowKnown;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.lactation.persistency.AnnualizedYield;
import org.pailbook.lactation.persistency.DaysOpen;
import org.pailbook.lactation.persistency.FirstTestYield;
import org.pailbook.lactation.persistency.LifetimeYield;
import org.pailbook.lactation.persistency.MatureEquivalent;
import org.pailbook.lactation.persistency.MonthlyPersistency;
import org.pailbook.lactation.persistency.ParityFactorLearning;
import org.pailbook.lactation.persistency.ParityFactors;
import org.pailbook.lactation.persistency.PeakTest;
import org.pailbook.lactation.persistency.PersistencyMeasures;
import org.pailbook.lactation.persistency.RollingHerdAverage;
import org.pailbook.lactation.persistency.SummitMilk;
import org.pailbook.lactation.projection.BestPrediction;
import org.pailbook.lactation.projection.BestPredictionPersistency;
import org.pailbook.lactation.summary.FpcmPerCowYear;
import org.pailbook.lactation.summary.HerdMean;
import org.pailbook.lactation.summary.HerdMeasures;
import org.pailbook.lactation.testday.EstimatedEnd;
import org.pailbook.lactation.testday.MilkingShares;
import org.pailbook.lactation.testday.SumOfMilkings;
import org.pailbook.lactation.testday.WiggansShortInterval;
import org.pailbook.lactation.udderhealth.SomaticCellScore;
import org.pailbook.lactation.udderhealth.TankCellCount;
import org.pailbook.lactation.udderhealth.UdderHealthMeasures;
import org.pailbook.records.computed.MethodChoice;

/**
 * Every published method of the library by what it answers; a test holds it against the classes of the library. Not listed is {@link
 * org.pailbook.lactation.testday.AbnormalTestDays}, which does not exist before a herd's tests have taught it a slope.
 */
final class MethodCatalogue {
    private static final double HALF = 0.5;

    /** Methods by kind, in the order shown. */
    static final Map<String, List<PublishedMethod>> BY_KIND = byKind();

    private MethodCatalogue() {}

    private static Map<String, List<PublishedMethod>> byKind() {
        // no factors are shipped; the citation of a figure names those of the herd or the user
        ParityFactors herdsOwn = new ParityFactors(new TreeMap<>(), 1, "the herd's own or the user's", HowKnown.OURS);
        Map<String, List<PublishedMethod>> kinds = new LinkedHashMap<>();
        kinds.put("curve", List.copyOf(LactationCurves.all()));
        kinds.put("accumulated-yield", List.copyOf(MethodChoice.yieldMethods()));
        kinds.put("projection", List.of(new BestPrediction()));
        kinds.put("corrected-milk", List.copyOf(CorrectedMilkFormulas.all()));
        kinds.put("milk-energy", List.copyOf(MilkEnergyFormula.all()));
        kinds.put(
                "persistency",
                joined(PersistencyMeasures.all(), MonthlyPersistency.all(), List.of(new BestPredictionPersistency())));
        kinds.put("early-lactation", joined(PeakTest.all(), List.of(SummitMilk.SUMMIT, FirstTestYield.BY_DAY_40)));
        kinds.put(
                "lifetime",
                List.of(
                        LifetimeYield.by(TestIntervalMethod.WHOLE_LACTATION),
                        AnnualizedYield.BY_CALVING_INTERVAL,
                        DaysOpen.TO_CONCEPTION));
        kinds.put("age-adjustment", List.of(MatureEquivalent.by(herdsOwn), ParityFactorLearning.MIXED_MODEL));
        kinds.put(
                "udder-health",
                joined(List.of(SomaticCellScore.SCS, TankCellCount.WEIGHTED_BY_MILK), UdderHealthMeasures.all()));
        kinds.put(
                "breeding",
                joined(BreedingMeasures.all(), List.of(TimeToPregnancy.KAPLAN_MEIER, GestationLength.NORMAN_2009)));
        kinds.put(
                "herd",
                joined(
                        List.of(
                                HerdMean.OVER_COWS,
                                HerdMean.OF_PROJECTIONS,
                                RollingHerdAverage.YEAR,
                                FpcmPerCowYear.IDF_2015),
                        HerdMeasures.all()));
        kinds.put(
                "daily-yield",
                // each herd learns its own share; half the milk is where it begins
                List.of(
                        SumOfMilkings.ICAR,
                        WiggansShortInterval.MORNING_UNDER_9_HOURS,
                        MilkingShares.learn(List.of(), HALF)));
        kinds.put("lactation", List.of(EstimatedEnd.HALF_THE_LAST_INTERVAL));
        kinds.put("recording", List.of(DataCollectionRating.VANRADEN));
        kinds.put(
                "culling",
                List.of(
                        RetentionPayoff.BY_DYNAMIC_PROGRAMMING,
                        PayoffWithoutBreeding.BY_DYNAMIC_PROGRAMMING,
                        // each farm has its own policy; keeping every cow as long as it goes stands here
                        CowValueCabrera2012.under(CullingPrices.REFERENCE, HerdParameters.REFERENCE, stage -> false),
                        MarginalNetRevenue.ONE_MONTH,
                        BestRemainingStay.MONTHS_AHEAD,
                        IncomeOverFeedCost.PER_DAY,
                        PregnancyValue.PREGNANT_OVER_OPEN,
                        MilkOnlyRanking.LOWEST_FIRST));
        kinds.put("feed-intake", List.of(DryMatterIntakeNrc2001.NRC, DryMatterIntakeNasem2021.NASEM));
        return kinds;
    }

    @SafeVarargs
    private static List<PublishedMethod> joined(List<? extends PublishedMethod>... lists) {
        return Stream.of(lists).<PublishedMethod>flatMap(List::stream).toList();
    }
}
