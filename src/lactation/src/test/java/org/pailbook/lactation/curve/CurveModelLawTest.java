package org.pailbook.lactation.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Laws every curve model keeps, on monthly tests drawn with a fixed seed from an invented curve with noise. */
class CurveModelLawTest {
    private static final long SEED = 1967;
    private static final WoodCurve COW = new WoodCurve(14, 0.24, 0.0042);

    /** Ten monthly tests; {@code days} is filled, the milk returned. */
    private static double[] tests(Random random, double[] days, double noiseKg) {
        double[] kg = new double[days.length];
        for (int i = 0; i < days.length; i++) {
            days[i] = 8 + 30 * i + random.nextInt(15);
            kg[i] = COW.milkKgPerDay(days[i]) + noiseKg * random.nextGaussian();
        }
        return kg;
    }

    /** The models that minimise squared kg and nothing else: not logarithms, no smoothing. */
    private static Stream<DynamicTest> forEveryLeastSquaresModel(Consumer<CurveModel> law) {
        return LactationCurves.all().stream()
                .filter(model -> model != LactationCurves.WOOD_LOG_LINEAR && model != LactationCurves.SMOOTHING_SPLINE)
                .map(model -> DynamicTest.dynamicTest(model.id(), () -> law.accept(model)));
    }

    private static Stream<DynamicTest> forEveryModel(Consumer<CurveModel> law) {
        return LactationCurves.all().stream()
                .map(model -> DynamicTest.dynamicTest(model.id(), () -> law.accept(model)));
    }

    @TestFactory
    Stream<DynamicTest> scalingEveryWeightScalesTheCurveItsSpreadAndNotItsPeakDay() {
        return forEveryModel(model -> {
            Random random = new Random(SEED);
            for (int cow = 0; cow < 20; cow++) {
                double[] days = new double[10];
                double[] kg = tests(random, days, 1);
                double factor = 0.5 + 2 * random.nextDouble();
                CurveEstimate fit = model.estimate(days, kg);
                CurveEstimate scaled = model.estimate(
                        days, Arrays.stream(kg).map(x -> factor * x).toArray());
                String where = "seed " + SEED + " cow " + cow;
                assertThat(scaled.curve().isPresent())
                        .as(where)
                        .isEqualTo(fit.curve().isPresent());
                if (fit.curve().isEmpty()) {
                    continue;
                }
                LactationCurve before = fit.curve().orElseThrow();
                LactationCurve after = scaled.curve().orElseThrow();
                for (int day = 5; day <= 305; day += 50) {
                    assertThat(after.milkKgPerDay(day))
                            .as(where)
                            .isCloseTo(factor * before.milkKgPerDay(day), Offset.offset(1e-6));
                }
                assertThat(scaled.residualSdKg().orElseThrow())
                        .as(where)
                        .isCloseTo(factor * fit.residualSdKg().orElseThrow(), Offset.offset(1e-8));
                assertThat(after.peakDaysInMilk().isPresent())
                        .isEqualTo(before.peakDaysInMilk().isPresent());
                before.peakDaysInMilk()
                        .ifPresent(peak -> assertThat(after.peakDaysInMilk().orElseThrow())
                                .as(where)
                                .isCloseTo(peak, Offset.offset(1e-3)));
            }
        });
    }

    @TestFactory
    Stream<DynamicTest> noNearbyParametersFitBetter() {
        return forEveryLeastSquaresModel(model -> {
            Random random = new Random(SEED);
            double[] days = new double[10];
            double[] kg = tests(random, days, 1);
            CurveEstimate fit = model.estimate(days, kg);
            // at a minimum the residuals are orthogonal to the change of the curve with every fitted parameter
            double[] residuals = fit.residualsKg();
            LactationCurve curve = fit.curve().orElseThrow();
            for (int k = 0; k < model.parameterCount(); k++) {
                double dot = 0;
                double length = 0;
                for (int i = 0; i < days.length; i++) {
                    double derivative = curve.gradient(days[i])[k];
                    dot += derivative * residuals[i];
                    length += derivative * derivative;
                }
                assertThat(dot / Math.sqrt(length)).as("parameter %d", k).isCloseTo(0, Offset.offset(1e-7));
            }
        });
    }

    @TestFactory
    Stream<DynamicTest> theSlopeIsTheChangeFromDayToDay() {
        return forEveryModel(model -> {
            double[] days = new double[10];
            double[] kg = tests(new Random(SEED), days, 1);
            LactationCurve curve = model.estimate(days, kg).curve().orElseThrow();
            for (double day : new double[] {6, 33.5, 150, 290}) {
                double step = 1e-4;
                double bySteps = (curve.milkKgPerDay(day + step) - curve.milkKgPerDay(day - step)) / (2 * step);
                assertThat(curve.slopeKgPerDayPerDay(day)).isCloseTo(bySteps, Offset.offset(1e-6));
            }
        });
    }

    @TestFactory
    Stream<DynamicTest> theSlopeIsZeroAtThePeakAndNoDayGivesMore() {
        return forEveryModel(model -> {
            Random random = new Random(SEED);
            for (int cow = 0; cow < 20; cow++) {
                double[] days = new double[10];
                double[] kg = tests(random, days, 0.5);
                LactationCurve curve = model.estimate(days, kg).curve().orElse(COW);
                if (curve.peakDaysInMilk().isEmpty()) {
                    continue;
                }
                double peak = curve.peakDaysInMilk().getAsDouble();
                double most = curve.peakMilkKgPerDay().orElseThrow();
                assertThat(curve.slopeKgPerDayPerDay(peak)).isCloseTo(0, Offset.offset(1e-9));
                assertThat(curve.milkKgPerDay(peak - 1)).isLessThanOrEqualTo(most);
                assertThat(curve.milkKgPerDay(peak + 1)).isLessThanOrEqualTo(most);
            }
        });
    }

    @TestFactory
    Stream<DynamicTest> totalsOverAdjoiningSpansAddUpAndATotalIsTheSumOfItsDays() {
        return forEveryModel(model -> {
            double[] days = new double[10];
            double[] kg = tests(new Random(SEED), days, 1);
            LactationCurve curve = model.estimate(days, kg).curve().orElseThrow();
            Random random = new Random(SEED);
            for (int i = 0; i < 30; i++) {
                int from = 1 + random.nextInt(100);
                int middle = from + random.nextInt(100);
                int to = middle + 1 + random.nextInt(100);
                double sum = 0;
                for (int day = from; day <= to; day++) {
                    sum += curve.milkKgPerDay(day);
                }
                double total = curve.totalKg(from, to);
                assertThat(total).isCloseTo(sum, Offset.offset(1e-9 * Math.abs(sum)));
                assertThat(curve.totalKg(from, middle) + curve.totalKg(middle + 1, to))
                        .isCloseTo(total, Offset.offset(1e-9 * Math.abs(total)));
            }
            assertThat(curve.totalKg(7, 7)).isCloseTo(curve.milkKgPerDay(7), Offset.offset(1e-9));
        });
    }

    @TestFactory
    Stream<DynamicTest> theOrderOfThePointsDoesNotMatterBeyondRounding() {
        return forEveryModel(model -> {
            double[] days = new double[10];
            double[] kg = tests(new Random(SEED), days, 1);
            double[] daysBack = new double[10];
            double[] kgBack = new double[10];
            for (int i = 0; i < 10; i++) {
                daysBack[i] = days[9 - i];
                kgBack[i] = kg[9 - i];
            }
            LactationCurve forward = model.estimate(days, kg).curve().orElseThrow();
            LactationCurve back = model.estimate(daysBack, kgBack).curve().orElseThrow();
            for (int day = 5; day <= 305; day += 20) {
                assertThat(back.milkKgPerDay(day)).isCloseTo(forward.milkKgPerDay(day), Offset.offset(1e-7));
            }
        });
    }

    @TestFactory
    Stream<DynamicTest> measuringEveryTestTwiceKeepsTheCurve() {
        return forEveryLeastSquaresModel(model -> {
            double[] days = new double[10];
            double[] kg = tests(new Random(SEED), days, 1);
            double[] daysTwice = new double[20];
            double[] kgTwice = new double[20];
            for (int i = 0; i < 20; i++) {
                daysTwice[i] = days[i / 2];
                kgTwice[i] = kg[i / 2];
            }
            CurveEstimate once = model.estimate(days, kg);
            CurveEstimate twice = model.estimate(daysTwice, kgTwice);
            for (int day = 5; day <= 305; day += 20) {
                assertThat(twice.curve().orElseThrow().milkKgPerDay(day))
                        .isCloseTo(once.curve().orElseThrow().milkKgPerDay(day), Offset.offset(1e-7));
            }
            assertThat(twice.rssKg2().orElseThrow()).isCloseTo(2 * once.rssKg2().orElseThrow(), Offset.offset(1e-8));
        });
    }

    @TestFactory
    Stream<DynamicTest> pointsThatCannotBeAreProgrammingErrors() {
        return forEveryModel(model -> {
            double[] days = {10, 40, 70, 100, 130, 160, 190, 220};
            double[] kg = {20, 25, 24, 23, 22, 20, 19, 18};
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> model.estimate(days, new double[3]))
                    .withMessageContaining("must have the same length");
            double[] dayZero = days.clone();
            dayZero[0] = 0;
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> model.estimate(dayZero, kg))
                    .withMessage("daysInMilk (0.0) must be finite and above 0");
            double[] endless = days.clone();
            endless[7] = Double.POSITIVE_INFINITY;
            assertThatIllegalArgumentException().isThrownBy(() -> model.estimate(endless, kg));
            double[] notANumber = kg.clone();
            notANumber[3] = Double.NaN;
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> model.estimate(days, notANumber))
                    .withMessage("milkKg (NaN) must be finite");
        });
    }

    @TestFactory
    Stream<DynamicTest> testsThatAllLieOnOneDayDetermineNoCurve() {
        return forEveryModel(model -> {
            double[] days = new double[10];
            double[] kg = new double[10];
            Arrays.fill(days, 50);
            Arrays.setAll(kg, i -> 25 + 0.1 * i);
            CurveEstimate fit = model.estimate(days, kg);
            assertThat(fit.curve()).isEmpty();
            assertThat(fit.refusal()).isPresent();
            assertThat(fit.parameters()).isEmpty();
            assertThat(fit.rssKg2()).isEmpty();
            assertThat(fit.conditionNumber()).isEmpty();
        });
    }

    @TestFactory
    Stream<DynamicTest> fewerPointsThanParametersAreRefused() {
        return forEveryModel(model -> {
            int points = model.parameterCount() - 1;
            double[] days = new double[points];
            Arrays.setAll(days, i -> 10 + 30 * i);
            double[] kg = Arrays.stream(days).map(COW::milkKgPerDay).toArray();
            assertThat(model.estimate(days, kg).refusal().orElseThrow().code().code())
                    .isEqualTo("too-few-tests");
            assertThat(model.leastTests()).isGreaterThan(model.parameterCount());
        });
    }

    @Test
    void woodReturnsTheParametersOfItsOwnPoints() {
        Random random = new Random(SEED);
        for (int cow = 0; cow < 500; cow++) {
            WoodCurve curve = new WoodCurve(
                    5 + 30 * random.nextDouble(), -0.1 + 0.6 * random.nextDouble(), 0.01 * random.nextDouble());
            double[] days = new double[8];
            tests(random, days, 0);
            double[] kg = Arrays.stream(days).map(curve::milkKgPerDay).toArray();
            WoodCurve fitted =
                    (WoodCurve) LactationCurves.WOOD.estimate(days, kg).curve().orElseThrow();
            String where = "seed " + SEED + " cow " + cow;
            assertThat(fitted.a()).as(where).isCloseTo(curve.a(), Offset.offset(1e-8));
            assertThat(fitted.b()).as(where).isCloseTo(curve.b(), Offset.offset(1e-9));
            assertThat(fitted.c()).as(where).isCloseTo(curve.c(), Offset.offset(1e-11));
        }
    }

    @Test
    void idsAreUniqueAndFoundAgain() {
        List<String> ids = LactationCurves.all().stream().map(CurveModel::id).toList();
        assertThat(ids).doesNotHaveDuplicates().allMatch(id -> id.matches("[a-z0-9-]+"));
        for (CurveModel model : LactationCurves.all()) {
            assertThat(LactationCurves.byId(model.id())).containsSame(model);
            assertThat(model.version()).isEqualTo(1);
            assertThat(model.citation().text())
                    .contains(String.valueOf(model.citation().year()));
        }
        assertThat(LactationCurves.byId("no-such-curve")).isEmpty();
    }
}
