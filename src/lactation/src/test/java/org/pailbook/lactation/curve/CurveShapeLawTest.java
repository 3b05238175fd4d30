package org.pailbook.lactation.curve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Function;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Laws of the curves themselves, with parameters drawn at random round usual ones. */
class CurveShapeLawTest {
    private static final long SEED = 1997;

    /** A way to make a curve from its parameters, with usual parameters; these are the check values used elsewhere. */
    private record Kind(Function<double[], LactationCurve> of, double... usual) {}

    private static final Map<String, Kind> KINDS = Map.of(
            "wood", new Kind(p -> new WoodCurve(p[0], p[1], p[2]), 15, 0.2, 0.004),
            "wilmink", new Kind(p -> new WilminkCurve(p[0], p[1], p[2], p[3]), 30, -10, -0.04, 0.05),
            "ali-schaeffer", new Kind(p -> new AliSchaefferCurve(p[0], p[1], p[2], p[3], p[4]), 20, -8, -1, 6, -1.2),
            "dijkstra", new Kind(p -> new DijkstraCurve(p[0], p[1], p[2], p[3]), 18, 0.025, 0.05, 0.0022),
            "nelder", new Kind(p -> new NelderCurve(p[0], p[1], p[2]), 0.25, 0.022, 0.00006),
            "cobby", new Kind(p -> new CobbyLeDuCurve(p[0], p[1], p[2]), 32, 0.05, 0.08),
            "guo-swalve", new Kind(p -> new GuoSwalveCurve(p[0], p[1], p[2]), 22, -1.9, 6.5),
            "legendre", new Kind(p -> new LegendreCurve(5, 305, p), 34, -4, -1.6, 1.5, -0.8, 0.3),
            "spline",
                    new Kind(
                            p -> new NaturalSplineCurve(new double[] {5, 30, 60, 120, 200, 305}, p),
                            20,
                            28,
                            30,
                            26,
                            22,
                            12));

    private interface Law {
        void check(Kind kind, double[] parameters, String where);
    }

    private static Stream<DynamicTest> forEveryKind(Law law) {
        return KINDS.entrySet().stream()
                .map(entry -> DynamicTest.dynamicTest(entry.getKey(), () -> {
                    Random random = new Random(SEED);
                    for (int i = 0; i < 40; i++) {
                        double[] parameters = entry.getValue().usual().clone();
                        for (int k = 0; k < parameters.length; k++) {
                            parameters[k] *= 0.8 + 0.4 * random.nextDouble();
                        }
                        law.check(entry.getValue(), parameters, "seed " + SEED + " draw " + i);
                    }
                }));
    }

    @TestFactory
    Stream<DynamicTest> theGradientIsTheChangeOfTheMilkWithEachParameter() {
        return forEveryKind((kind, parameters, where) -> {
            LactationCurve curve = kind.of().apply(parameters);
            for (double day : List.of(2.0, 17.5, 60.0, 150.0, 305.0, 320.0)) {
                double[] gradient = curve.gradient(day);
                for (int k = 0; k < parameters.length; k++) {
                    double step = 1e-5 * Math.abs(parameters[k]);
                    double[] more = parameters.clone();
                    double[] less = parameters.clone();
                    more[k] += step;
                    less[k] -= step;
                    double bySteps = (kind.of().apply(more).milkKgPerDay(day)
                                    - kind.of().apply(less).milkKgPerDay(day))
                            / (2 * step);
                    assertThat(gradient[k])
                            .as("%s day %s parameter %d", where, day, k)
                            .isCloseTo(bySteps, Offset.offset(1e-6 * (1 + Math.abs(bySteps))));
                }
            }
        });
    }

    @TestFactory
    Stream<DynamicTest> theSlopeIsTheChangeOfTheMilkWithTheDay() {
        return forEveryKind((kind, parameters, where) -> {
            LactationCurve curve = kind.of().apply(parameters);
            for (double day : List.of(2.0, 17.5, 60.0, 150.0, 290.0, 320.0)) {
                double step = 1e-4;
                double bySteps = (curve.milkKgPerDay(day + step) - curve.milkKgPerDay(day - step)) / (2 * step);
                assertThat(curve.slopeKgPerDayPerDay(day))
                        .as("%s day %s", where, day)
                        .isCloseTo(bySteps, Offset.offset(1e-6));
            }
        });
    }

    @TestFactory
    Stream<DynamicTest> theSlopeIsZeroAtThePeakAndNoWholeDayGivesMore() {
        return forEveryKind((kind, parameters, where) -> {
            LactationCurve curve = kind.of().apply(parameters);
            double peak = curve.peakDaysInMilk().orElseThrow();
            double most = curve.peakMilkKgPerDay().orElseThrow();
            assertThat(curve.slopeKgPerDayPerDay(peak)).as(where).isCloseTo(0, Offset.offset(1e-10));
            for (int day = 1; day <= 305; day++) {
                assertThat(curve.milkKgPerDay(day)).as("%s day %d", where, day).isLessThanOrEqualTo(most + 1e-12);
            }
        });
    }

    @TestFactory
    Stream<DynamicTest> aTotalIsTheSumOfItsDaysAndAdjoiningTotalsAddUp() {
        return forEveryKind((kind, parameters, where) -> {
            LactationCurve curve = kind.of().apply(parameters);
            double sum = 0;
            for (int day = 12; day <= 243; day++) {
                sum += curve.milkKgPerDay(day);
            }
            assertThat(curve.totalKg(12, 243)).as(where).isCloseTo(sum, Offset.offset(1e-9 * sum));
            assertThat(curve.totalKg(12, 100) + curve.totalKg(101, 243))
                    .as(where)
                    .isCloseTo(sum, Offset.offset(1e-9 * sum));
        });
    }

    @TestFactory
    Stream<DynamicTest> theParametersComeBackInTheirOrder() {
        return forEveryKind((kind, parameters, where) -> {
            LactationCurve curve = kind.of().apply(parameters);
            assertThat(curve.parameters().stream()
                            .mapToDouble(CurveParameter::value)
                            .toArray())
                    .as(where)
                    .isEqualTo(parameters);
            assertThat(curve.parameters())
                    .allMatch(parameter -> parameter.standardError().isEmpty());
            assertThat(curve)
                    .isEqualTo(kind.of().apply(parameters))
                    .hasSameHashCodeAs(kind.of().apply(parameters));
        });
    }
}
