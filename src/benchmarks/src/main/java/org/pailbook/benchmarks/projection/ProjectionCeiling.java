package org.pailbook.benchmarks.projection;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import org.pailbook.benchmarks.projection.ComparedMethods.Begun;
import org.pailbook.lactation.projection.BestPrediction;
import org.pailbook.lactation.reference.DailySpread;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.testday.Lactation;
import org.pailbook.lactation.testday.TestDay;

/**
 * How small the error of a 305-day projection can be at all, if cows are as the model says: every lactation of a folder of measured ones is drawn anew from
 * its group's refined standard, weighed on the same days, and projected by best prediction that knows the true mean and the true spread. In this model
 * nothing made from these weights can have a smaller mean square of error, nor, errors being normal, a smaller mean absolute error. Beside it:
 * our own way on the same invented cows, which must learn mean and spread from the other cows, and on the real ones.
 */
public final class ProjectionCeiling {
    private static final int MOST_TESTS = 10;
    private static final int DAYS = 305;
    private static final int HERDS = 400;
    /** Our own way learns anew for each cow; fewer herds tell enough of it. */
    private static final int HERDS_LEARNED = 20;

    private static final long SEED = 305;

    private ProjectionCeiling() {}

    /** @param args the folder, as for {@link AccuracyHarness} */
    public static void main(String[] args) throws IOException {
        if (args.length != 1) {
            throw new IllegalArgumentException("one argument: the folder with testdays*.csv and truth*.csv");
        }
        List<MeasuredLactation> real = MeasuredLactation.read(Path.of(args[0]));
        double[][] best = new double[HERDS][];
        double[][] learned = new double[HERDS_LEARNED][];
        for (int herd = 0; herd < HERDS; herd++) {
            List<MeasuredLactation> drawn = drawn(real, new Random(SEED + herd));
            best[herd] = errors(drawn, ProjectionCeiling::knowing);
            if (herd < HERDS_LEARNED) {
                ComparedMethods methods = new ComparedMethods(drawn);
                learned[herd] = errors(drawn, methods::learnedKg);
            }
        }
        double[] measured = errors(real, new ComparedMethods(real)::learnedKg);
        System.out.println("Mean absolute error of 305-day milk in % of the mean, " + HERDS
                + " invented herds, ours on the first " + HERDS_LEARNED);
        System.out.println(
                "| tests | best possible | of single herds, 5 to 95 % | best possible, first herds | ours, the same | ours, real cows |");
        System.out.println("|---|---|---|---|---|---|");
        for (int tests = 0; tests <= MOST_TESTS; tests++) {
            int at = tests;
            double[] ofHerds = IntStream.range(0, HERDS)
                    .mapToDouble(herd -> best[herd][at])
                    .sorted()
                    .toArray();
            double ours = IntStream.range(0, HERDS_LEARNED)
                    .mapToDouble(herd -> learned[herd][at])
                    .average()
                    .orElseThrow();
            System.out.printf(
                    Locale.ROOT,
                    "| %d | %.2f | %.2f to %.2f | %.2f | %.2f | %.2f |%n",
                    tests,
                    IntStream.range(0, HERDS)
                            .mapToDouble(herd -> best[herd][at])
                            .average()
                            .orElseThrow(),
                    ofHerds[HERDS / 20],
                    ofHerds[HERDS - 1 - HERDS / 20],
                    IntStream.range(0, HERDS_LEARNED)
                            .mapToDouble(herd -> best[herd][at])
                            .average()
                            .orElseThrow(),
                    ours,
                    measured[tests]);
        }
    }

    /** A way of projecting. */
    private interface Way {
        double kg(Begun begun);
    }

    private static double[] errors(List<MeasuredLactation> all, Way way) {
        double[] absolute = new double[MOST_TESTS + 1];
        double[] truth = new double[MOST_TESTS + 1];
        for (MeasuredLactation one : all) {
            int most = Math.min(MOST_TESTS, one.lactation().testDays().size());
            for (int tests = 0; tests <= most && one.milk305Kg().isPresent(); tests++) {
                double trueKg = one.milk305Kg().getAsDouble();
                absolute[tests] += Math.abs(way.kg(one.begun(tests)) - trueKg);
                truth[tests] += trueKg;
            }
        }
        return IntStream.rangeClosed(0, MOST_TESTS)
                .mapToDouble(tests -> 100 * absolute[tests] / truth[tests])
                .toArray();
    }

    private static LactationStandard standard(MeasuredLactation one) {
        return LactationStandards.refinedForCow(one.breed(), one.lactation().parity(), LactationTrait.MILK)
                .withHerdLevelSdKgPerDay(0);
    }

    private static double knowing(Begun begun) {
        LocalDate end = begun.lactation().calvingDate().plusDays(DAYS + 30);
        return new BestPrediction()
                .project(begun.lactation(), standard(begun.whole()), end)
                .milk305Kg();
    }

    private static List<MeasuredLactation> drawn(List<MeasuredLactation> real, Random random) {
        List<MeasuredLactation> drawn = new ArrayList<>();
        for (MeasuredLactation one : real) {
            double[] kg = dailyKg(standard(one), random);
            Lactation lactation = one.lactation();
            List<TestDay> tests = lactation.testDays().stream()
                    .filter(test -> lactation.daysInMilk(test.date()) <= DAYS)
                    .map(test -> TestDay.ofMilk(test.date(), kg[lactation.daysInMilk(test.date())]))
                    .toList();
            double total =
                    IntStream.rangeClosed(1, DAYS).mapToDouble(day -> kg[day]).sum();
            drawn.add(new MeasuredLactation(
                    one.animal(),
                    one.breed(),
                    Lactation.inMilk(lactation.parity(), lactation.calvingDate(), tests),
                    one.milk305Kg().isPresent() ? OptionalDouble.of(total) : OptionalDouble.empty()));
        }
        return drawn;
    }

    /** Milk of each day, index is the day. Never below what a weight may be, so that every test counts. */
    private static double[] dailyKg(LactationStandard standard, Random random) {
        DailySpread spread = standard.spread();
        double e = spread.dailyErrorShare();
        double[] kg = new double[DAYS + 1];
        double lasting = random.nextGaussian();
        for (int day = 1; day <= DAYS; day++) {
            double r = day == 1 ? 0 : spread.lastingCorrelation(day - 1, day);
            lasting = r * lasting + Math.sqrt(1 - r * r) * random.nextGaussian();
            double departure = Math.sqrt(1 - e) * lasting + Math.sqrt(e) * random.nextGaussian();
            kg[day] = Math.max(3, standard.meanKg(day) + spread.sdPerDay(day) * departure);
        }
        return kg;
    }
}
