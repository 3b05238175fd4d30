package org.pailbook.lactation.summary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.projection.BestPrediction;
import org.pailbook.lactation.projection.HerdLactation;
import org.pailbook.lactation.projection.IntervalCalibration;
import org.pailbook.lactation.projection.Projection305;
import org.pailbook.lactation.projection.ProjectionAccuracy;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/** What a herd may be taught by, and what it must not: laws on invented herds. */
class HerdKnowledgeLawTest {
    private static final long SEED = 305;
    private static final LocalDate CALVING = LocalDate.of(2022, 3, 1);
    private static final LocalDate LATER = LocalDate.of(2025, 1, 1);

    private static Lactation lactation(Random random, int parity, LocalDate calving, int tests, double levelKg) {
        List<TestDay> days = new ArrayList<>();
        double cow = levelKg + 4 * random.nextGaussian();
        for (int i = 0; i < tests; i++) {
            int day = 15 + 30 * i;
            double kg = Math.max(4, cow - 0.05 * day + 1.5 * random.nextGaussian());
            days.add(TestDay.ofMilk(calving.plusDays(day), kg)
                    .withFatPct(4 + 0.3 * random.nextGaussian())
                    .withProteinPct(3.4 + 0.2 * random.nextGaussian())
                    .withSccThousandPerMl(60 + random.nextInt(200)));
        }
        return Lactation.inMilk(parity, calving, days);
    }

    private static List<HerdLactation> herd(Random random, int cows, double levelKg) {
        List<HerdLactation> herd = new ArrayList<>();
        for (int i = 0; i < cows; i++) {
            herd.add(new HerdLactation("cow " + i, "HOL", lactation(random, 2, CALVING.plusDays(i), 10, levelKg)));
        }
        return herd;
    }

    private static Projection305 project(HerdKnowledge herd, String animal, Lactation lactation) {
        return herd.method()
                .project(lactation, herd.standards(animal, "HOL", lactation.parity(), lactation.calvingDate()), LATER);
    }

    private static double halfWidthKg(Projection305 projection, double share) {
        Figure figure = projection.milk305();
        return figure.interval(share).orElseThrow().high() - figure.orThrow();
    }

    @Test
    void withoutHistoryTheMeanIsTheShippedReference() {
        HerdKnowledge nothing = HerdKnowledge.learn(List.of(), LATER);
        for (LactationTrait trait : List.of(LactationTrait.MILK, LactationTrait.FAT, LactationTrait.PROTEIN)) {
            Projection305 projection = project(nothing, "new", Lactation.inMilk(1, CALVING, List.of()));
            double reference = LactationStandards.refinedForCow("HOL", 1, trait).meanTotalKg(305);
            assertThat(projection.toDay(trait, 305).orElseThrow().orThrow())
                    .as(trait.name())
                    .isCloseTo(reference, within(1e-9 * reference));
        }
        assertThat(nothing.lactations()).isZero();
        assertThat(nothing.accuracy().rows()).isEmpty();
        assertThat(nothing.calibration()).isSameAs(IntervalCalibration.OPEN_DATA);
    }

    @Test
    void noHistoryAndNothingKnownAreTheSame() {
        Lactation lactation = lactation(new Random(SEED), 2, CALVING, 3, 30);
        Projection305 learned = project(HerdKnowledge.learn(List.of(), LATER), "a", lactation);
        Projection305 none = project(HerdKnowledge.none(), "a", lactation);
        assertThat(learned.milk305()).usingRecursiveComparison().isEqualTo(none.milk305());
        assertThat(learned.cellScore305()).usingRecursiveComparison().isEqualTo(none.cellScore305());
        assertThat(learned.milk305().findings()).noneMatch(one -> one.code() == FindingCode.STANDARD_LEARNED);
    }

    @Test
    void aHerdOfOneCowTeachesHerGroupNothing() {
        Random random = new Random(SEED);
        Lactation first = lactation(random, 1, CALVING, 10, 40);
        Lactation second = lactation(random, 2, CALVING.plusDays(400), 2, 45);
        HerdKnowledge herd = HerdKnowledge.learn(
                List.of(new HerdLactation("only", "HOL", first), new HerdLactation("only", "HOL", second)), LATER);
        assertThat(herd.lactations()).isEqualTo(2);
        assertThat(herd.testDays()).isEqualTo(12);
        // her first has nothing before it: she is projected from the reference alone
        assertThat(project(herd, "only", first).milk305Kg())
                .isCloseTo(project(HerdKnowledge.none(), "only", first).milk305Kg(), within(1e-6));
        assertThat(halfWidthKg(project(herd, "only", first), 0.80))
                .isCloseTo(halfWidthKg(project(HerdKnowledge.none(), "only", first), 0.80), within(1e-6));
        // her second knows of her first, and says so
        Projection305 known = project(herd, "only", second);
        assertThat(known.milk305().findings())
                .extracting(Finding::code)
                .contains(FindingCode.OWN_EARLIER_LACTATIONS)
                .doesNotContain(FindingCode.STANDARD_LEARNED);
        assertThat(halfWidthKg(known, 0.80))
                .isLessThan(halfWidthKg(project(HerdKnowledge.none(), "only", second), 0.8));
    }

    @Test
    void aCowsOwnLactationOfThatDayAndLaterOnesDoNotChangeHerProjection() {
        Random random = new Random(SEED);
        List<HerdLactation> others = herd(random, 60, 34);
        Lactation now = lactation(random, 3, CALVING.plusDays(800), 3, 50);
        List<HerdLactation> withHer = new ArrayList<>(others);
        withHer.add(new HerdLactation("she", "HOL", now));
        withHer.add(new HerdLactation("she", "HOL", lactation(random, 4, CALVING.plusDays(950), 10, 60)));
        Projection305 without = project(HerdKnowledge.learn(others, LATER), "she", now);
        Projection305 with = project(HerdKnowledge.learn(withHer, LATER), "she", now);
        assertThat(with.milk305Kg()).isCloseTo(without.milk305Kg(), within(1e-6));
        assertThat(with.fat305().orElseThrow().orThrow())
                .isCloseTo(without.fat305().orElseThrow().orThrow(), within(1e-6));
        assertThat(with.milk305().findings())
                .extracting(Finding::code)
                .doesNotContain(FindingCode.OWN_EARLIER_LACTATIONS);
        // and a stranger is told something by her
        Lactation other = lactation(random, 2, CALVING, 1, 30);
        assertThat(Math.abs(project(HerdKnowledge.learn(withHer, LATER), "new", other)
                                .milk305Kg()
                        - project(HerdKnowledge.learn(others, LATER), "new", other)
                                .milk305Kg()))
                .isGreaterThan(1);
    }

    @Test
    void aCowsEarlierLactationTellsOfHerInEveryTraitAndIsSaid() {
        Random random = new Random(SEED);
        List<HerdLactation> others = herd(random, 60, 34);
        Lactation now = lactation(random, 3, CALVING.plusDays(800), 1, 40);
        List<HerdLactation> withHer = new ArrayList<>(others);
        withHer.add(new HerdLactation("she", "HOL", lactation(random, 2, CALVING, 10, 60)));
        Projection305 without = project(HerdKnowledge.learn(others, LATER), "she", now);
        Projection305 with = project(HerdKnowledge.learn(withHer, LATER), "she", now);
        assertThat(with.milk305Kg()).isGreaterThan(without.milk305Kg() + 100);
        assertThat(with.fat305().orElseThrow().orThrow())
                .isGreaterThan(without.fat305().orElseThrow().orThrow());
        assertThat(with.fat305().orElseThrow().findings())
                .extracting(Finding::code)
                .contains(FindingCode.OWN_EARLIER_LACTATIONS);
        assertThat(with.reliabilityShare(LactationTrait.PROTEIN).orElseThrow()).isBetween(0.0, 1.0);
    }

    @Test
    void theFigureSaysWhatOtherCowsTaughtIt() {
        List<HerdLactation> cows = herd(new Random(SEED), 12, 34);
        HerdKnowledge herd = HerdKnowledge.learn(cows, LATER);
        Finding told = project(herd, "cow 3", cows.get(3).lactation()).milk305().findings().stream()
                .filter(one -> one.code() == FindingCode.STANDARD_LEARNED)
                .findFirst()
                .orElseThrow();
        assertThat(told.seen()).contains("11 lactations, 110 test days");
        assertThat(project(herd, "cow 3", cows.get(3).lactation())
                        .cellScore305()
                        .orElseThrow()
                        .findings())
                .contains(told);
    }

    @Test
    void aRichHerdMovesWhatIsExpectedOfANewCowAndNarrowsIt() {
        HerdKnowledge rich = HerdKnowledge.learn(herd(new Random(SEED), 60, 45), LATER);
        Lactation fresh = Lactation.inMilk(2, CALVING, List.of());
        Projection305 known = project(rich, "new", fresh);
        Projection305 unknown = project(HerdKnowledge.none(), "new", fresh);
        assertThat(known.milk305Kg()).isGreaterThan(unknown.milk305Kg() + 1000);
        assertThat(known.sharedHerdErrorKg()).isLessThan(unknown.sharedHerdErrorKg());
    }

    @Test
    void milkAloneIsTheMilkOfAllTraits() {
        List<HerdLactation> cows = herd(new Random(SEED), 12, 34);
        HerdKnowledge herd = HerdKnowledge.learn(cows, LATER);
        Lactation lactation = lactation(new Random(SEED + 1), 2, CALVING, 4, 30);
        Projection305 all = project(herd, "new", lactation);
        Projection305 milk = herd.method().project(lactation, herd.milkStandard("new", "HOL", 2, CALVING), LATER);
        assertThat(milk.milk305Kg()).isCloseTo(all.milk305Kg(), within(1e-9 * all.milk305Kg()));
        assertThat(milk.standardErrorKg()).isCloseTo(all.standardErrorKg(), within(1e-9 * all.standardErrorKg()));
    }

    @Test
    void completedLactationsCalibrateTheIntervalsAndUncompletedDoNot() {
        List<HerdLactation> cows = herd(new Random(SEED), 50, 34);
        HerdKnowledge early = HerdKnowledge.learn(cows, CALVING.plusDays(200));
        assertThat(early.completedLactations()).isZero();
        assertThat(early.isCalibratedByHerd()).isFalse();
        assertThat(early.calibration()).isSameAs(IntervalCalibration.OPEN_DATA);
        HerdKnowledge few = HerdKnowledge.learn(cows.subList(0, HerdKnowledge.LEAST_COMPLETED - 1), LATER);
        assertThat(few.completedLactations()).isEqualTo(HerdKnowledge.LEAST_COMPLETED - 1);
        assertThat(few.calibration()).isSameAs(IntervalCalibration.OPEN_DATA);
        HerdKnowledge late = HerdKnowledge.learn(cows, LATER);
        assertThat(late.isCalibratedByHerd()).isTrue();
        ProjectionAccuracy.Row row = late.accuracy().rows().get(1);
        assertThat(row.tests()).isEqualTo(1);
        assertThat(row.lactations()).isEqualTo(50);
        // 50 of its own, neighbours among them, count as much as the 50 that stand for a factor of 1
        assertThat(late.calibration().factor(1))
                .isBetween(
                        1.0,
                        (late.accuracy().rows().stream()
                                                .mapToDouble(ProjectionAccuracy.Row::errorRatio)
                                                .max()
                                                .orElseThrow()
                                        + 1)
                                / 2);
        assertThat(new BestPrediction().id()).isEqualTo(late.method().id());
    }

    /** Judged by its own errors the share inside would be the nominal one at every number of tests. */
    @Test
    void whetherIntervalsHeldIsJudgedByOtherCows() {
        HerdKnowledge herd = HerdKnowledge.learn(herd(new Random(SEED), 200, 34), LATER);
        for (ProjectionAccuracy.Row row : herd.accuracy().rows()) {
            // five standard errors of a share among 200
            assertThat(row.coverage80Share()).isBetween(0.80 - 5 * 0.0283, 0.80 + 5 * 0.0283);
            assertThat(row.coverage95Share()).isBetween(0.95 - 5 * 0.0154, 1.0);
        }
        assertThat(herd.accuracy().rows().stream()
                        .mapToDouble(ProjectionAccuracy.Row::coverage80Share)
                        .distinct()
                        .count())
                .isGreaterThan(3);
    }

    @Test
    void testsAfterTheDayTeachNothing() {
        List<HerdLactation> cows = herd(new Random(SEED), 12, 34);
        assertThat(HerdKnowledge.learn(cows, CALVING.plusDays(14)).lactations()).isZero();
        assertThat(HerdKnowledge.learn(cows, CALVING.plusDays(15)).testDays()).isEqualTo(1);
    }
}
