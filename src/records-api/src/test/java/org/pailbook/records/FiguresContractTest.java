package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.quarkus.test.junit.QuarkusTest;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.reference.LactationStandard;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.reference.LactationTrait;
import org.pailbook.lactation.reference.MeanUncertainty;
import org.pailbook.lactation.summary.HerdKnowledge;

/** Figures through the API, against a published example, arithmetic of our own, and what must be said when data lack. */
@QuarkusTest
class FiguresContractTest {
    /**
     * ICAR Guidelines, Section 2, Procedure 2, worked example of the test interval method. From memory; its four published totals (284 days,
     * 4973.2 kg, 190.2 kg of fat, 3.82 %) are reproduced by hand from these rows.
     */
    private static TestHerd icarExample() {
        TestHerd herd = TestHerd.make().withAnimal("ICAR").withCalving("ICAR", "2024-03-25", 2);
        Object[][] tests = {
            {"2024-04-08", 28.2, 3.65},
            {"2024-05-06", 24.8, 3.45},
            {"2024-06-05", 26.6, 3.40},
            {"2024-07-07", 23.2, 3.55},
            {"2024-08-02", 20.2, 3.85},
            {"2024-08-30", 17.8, 4.05},
            {"2024-09-25", 13.2, 4.45},
            {"2024-10-27", 9.6, 4.65},
            {"2024-11-22", 5.8, 4.95},
            {"2024-12-20", 4.4, 5.25},
        };
        for (Object[] test : tests) {
            herd.withTestDay("ICAR", (String) test[0], (double) test[1], (double) test[2]);
        }
        return herd.withDryOff("ICAR", "2025-01-03");
    }

    @Test
    void icarsTestIntervalExampleComesOutWithItsFourPublishedTotals() {
        Answer answer = icarExample()
                .getAnimal("ICAR", "/lactations/2?asOf=2025-01-31&explain=true")
                .expecting(200);
        assertThat(answer.countAt("/daysInMilk")).isEqualTo(284);
        assertThat(answer.numberAt("/accumulated/value")).isCloseTo(4973.2, within(0.05));
        assertThat(answer.numberAt("/accumulatedFat/value")).isCloseTo(190.2, within(0.05));
        assertThat(answer.numberAt("/fatPct/value")).isCloseTo(3.82, within(0.005));
        assertThat(answer.textAt("/state")).isEqualTo("driedOff");
        assertThat(answer.textAt("/endedOn")).isEqualTo("2025-01-03");
        assertThat(answer.textAt("/accumulated/unit")).isEqualTo("kg");
        assertThat(answer.countAt("/accumulated/inputs/testDays")).isEqualTo(10);
        double parts = 0;
        for (var part : answer.at("/accumulated/explanation")) {
            parts += part.path("amount").doubleValue();
        }
        assertThat(parts).isCloseTo(answer.numberAt("/accumulated/value"), within(1e-9));
    }

    @Test
    void everyFigureSaysItsMethodAndItsIntervalOrWhyThereIsNone() {
        Answer answer = icarExample().getAnimal("ICAR", "/lactations/current?asOf=2024-10-01");
        for (String figure : List.of("accumulated", "accumulatedFat", "fatPct", "corrected", "projected305")) {
            assertThat(answer.textAt("/" + figure + "/method/name")).as(figure).isNotBlank();
            assertThat(answer.textAt("/" + figure + "/method/source"))
                    .as(figure)
                    .isNotBlank();
            boolean interval = answer.at("/" + figure + "/interval80").isObject();
            assertThat(interval || answer.at("/" + figure + "/intervalNote").isTextual())
                    .as(figure)
                    .isTrue();
        }
        assertThat(answer.at("/projected305/interval80").isObject()).isTrue();
        assertThat(answer.numberAt("/projected305/interval95/low"))
                .isLessThan(answer.numberAt("/projected305/interval80/low"));
    }

    @Test
    void theDayOfCalvingIsDay0() {
        // ICAR example: calved 25 March, first test 8 April, 14 days (from memory)
        TestHerd herd = TestHerd.make().withAnimal("A").withCalving("A", "2024-03-25", 1);
        assertThat(herd.post("test-days", TestHerd.testDayJson("A", "2024-04-08", 28.2))
                        .countAt("/daysInMilk"))
                .isEqualTo(14);
        Answer atCalving = herd.post("test-days", TestHerd.testDayJson("A", "2024-03-25", 8));
        assertThat(atCalving.countAt("/daysInMilk")).isZero();
        assertThat(atCalving.findingCodes()).contains("test-on-colostrum-days");
        Answer summary = herd.getAnimal("A", "/summary?asOf=2024-04-10").expecting(200);
        assertThat(summary.countAt("/daysInMilk")).isEqualTo(16);
    }

    /** Best prediction (VanRaden 1997) by plain matrices: only the standard's mean, variances and herd level are the library's. */
    @Test
    void aProjectionIsWhatPlainMatrixArithmeticMakesOfTheStandard() {
        TestHerd herd = TestHerd.make().withAnimal("A", ",\"breed\":\"HOL\"").withCalving("A", "2025-01-10", 2);
        int[] days = {20, 50, 80};
        double[] milkKg = {31.0, 36.4, 33.9};
        herd.withTestDay("A", "2025-01-30", milkKg[0]);
        herd.withTestDay("A", "2025-03-01", milkKg[1]);
        herd.withTestDay("A", "2025-03-31", milkKg[2]);
        Answer answer =
                herd.getAnimal("A", "/lactations/current?asOf=2025-04-05").expecting(200);

        LactationStandard standard = HerdKnowledge.none().milkStandard("A", "HOL", 2, LocalDate.of(2025, 1, 10));
        // an unsure mean is one more cause of difference between what is measured, and between it and the total
        MeanUncertainty unsure = standard.meanUncertainty().orElseThrow();
        int n = days.length;
        double[][] vm = new double[n][n];
        double[] c = new double[n];
        double mean = 0;
        double variance = unsure.between(MeanUncertainty.ofTotal(305), MeanUncertainty.ofTotal(305));
        for (int t = 1; t <= 305; t++) {
            mean += standard.meanKg(t);
            for (int s = 1; s <= 305; s++) {
                variance += standard.spread().covariance(t, s);
            }
            for (int i = 0; i < n; i++) {
                c[i] += standard.spread().covariance(days[i], t);
            }
        }
        for (int i = 0; i < n; i++) {
            c[i] += unsure.between(MeanUncertainty.ofDay(days[i]), MeanUncertainty.ofTotal(305));
            for (int j = 0; j < n; j++) {
                vm[i][j] = standard.spread().covariance(days[i], days[j])
                        + unsure.between(MeanUncertainty.ofDay(days[i]), MeanUncertainty.ofDay(days[j]));
            }
        }
        double[] w = solved(vm, c);
        double projected = mean;
        double errorVariance = variance;
        for (int i = 0; i < n; i++) {
            projected += w[i] * (milkKg[i] - standard.meanKg(days[i]));
            errorVariance -= w[i] * c[i];
        }
        // Student's t with 10 degrees of freedom, quantiles .90 and .975 of any table, variance 10 / 8; 1.13 ours, see
        // IntervalCalibration.OPEN_DATA
        double half80 = 1.13 * Math.sqrt(8 / 10.0) * 1.37218 * Math.sqrt(errorVariance);
        double half95 = 1.13 * Math.sqrt(8 / 10.0) * 2.22814 * Math.sqrt(errorVariance);
        assertThat(answer.numberAt("/projected305/value")).isCloseTo(projected, within(1e-6));
        assertThat(answer.numberAt("/projected305/interval80/low")).isCloseTo(projected - half80, within(0.1));
        assertThat(answer.numberAt("/projected305/interval80/high")).isCloseTo(projected + half80, within(0.1));
        assertThat(answer.numberAt("/projected305/interval95/high")).isCloseTo(projected + half95, within(0.1));
        assertThat(answer.numberAt("/producedKg") + answer.numberAt("/expectedRestKg"))
                .isCloseTo(projected, within(1e-6));
    }

    /** Gauss's elimination without pivoting; a matrix of variances needs none. */
    private static double[] solved(double[][] matrix, double[] right) {
        int n = right.length;
        double[] x = right.clone();
        for (int k = 0; k < n; k++) {
            for (int i = k + 1; i < n; i++) {
                double factor = matrix[i][k] / matrix[k][k];
                for (int j = k; j < n; j++) {
                    matrix[i][j] -= factor * matrix[k][j];
                }
                x[i] -= factor * x[k];
            }
        }
        for (int i = n - 1; i >= 0; i--) {
            for (int j = i + 1; j < n; j++) {
                x[i] -= matrix[i][j] * x[j];
            }
            x[i] /= matrix[i][i];
        }
        return x;
    }

    @Test
    void anEmptyHerdIsCountedAsZeroCowsAndGivesNoFigure() {
        Answer answer = TestHerd.make().get("/summary?asOf=2025-01-31").expecting(200);
        assertThat(answer.textAt("/status")).isEqualTo("notEnoughData");
        for (String state : List.of("total", "inMilk", "dry", "notCalved", "left")) {
            assertThat(answer.countAt("/animals/" + state)).isZero();
        }
        assertThat(answer.at("/cowsInMilk").isArray()).isTrue();
        assertThat(answer.at("/cowsInMilk").size()).isZero();
        assertThat(answer.at("/lastTestDate").isMissingNode()).isTrue();
        for (String figure : List.of("meanDaysInMilk", "milkOfLastTestDate", "fatPct", "scc", "meanProjected305")) {
            assertThat(answer.textAt("/" + figure + "/status")).as(figure).isEqualTo("notEnoughData");
            assertThat(answer.at("/" + figure + "/value").isMissingNode())
                    .as(figure)
                    .isTrue();
        }
    }

    @Test
    void aCowWithoutATestGetsHerGroupsProjectionAndNoYield() {
        TestHerd herd = TestHerd.make().withAnimal("A", ",\"breed\":\"HOL\"").withCalving("A", "2025-01-10", 2);
        Answer answer =
                herd.getAnimal("A", "/lactations/current?asOf=2025-01-20").expecting(200);
        assertThat(answer.textAt("/status")).isEqualTo("notEnoughData");
        assertThat(answer.textAt("/accumulated/status")).isEqualTo("notEnoughData");
        assertThat(answer.at("/accumulated/value").isMissingNode()).isTrue();
        double mean = 0;
        for (int day = 1; day <= 305; day++) {
            mean += LactationStandards.refinedForCow("HOL", 2, LactationTrait.MILK)
                    .meanKg(day);
        }
        assertThat(answer.numberAt("/projected305/value")).isCloseTo(mean, within(1e-6));
        assertThat(answer.numberAt("/reliabilityShare")).isZero();
        assertThat(answer.textAt("/curve/status")).isEqualTo("notEnoughData");
    }

    @Test
    void aHeiferHasNoLactationAndTheAnswerSaysWhatIsMissing() {
        TestHerd herd = TestHerd.make().withAnimal("H", ",\"birthDate\":\"2024-01-01\"");
        Answer summary = herd.getAnimal("H", "/summary?asOf=2025-01-31").expecting(200);
        assertThat(summary.textAt("/state")).isEqualTo("notCalved");
        assertThat(summary.textAt("/status")).isEqualTo("notEnoughData");
        assertThat(summary.at("/daysInMilk").isMissingNode()).isTrue();
        Answer current =
                herd.getAnimal("H", "/lactations/current?asOf=2025-01-31").expecting(200);
        assertThat(current.textAt("/status")).isEqualTo("notEnoughData");
        assertThat(current.at("/warnings").findValuesAsText("code")).contains("no-calving");
        herd.getAnimal("H", "/lactations/1?asOf=2025-01-31").expecting(200);
        assertThat(herd.get("/summary?asOf=2025-01-31").countAt("/animals/notCalved"))
                .isEqualTo(1);
    }

    @Test
    void aDryCowAndOneThatLeftAreNeitherInMilkNorForgotten() {
        TestHerd herd = TestHerd.make()
                .withAnimal("D")
                .withCalving("D", "2024-03-25", 1)
                .withTestDay("D", "2024-05-01", 25)
                .withDryOff("D", "2025-01-03")
                .withAnimal("L")
                .withCalving("L", "2024-03-25", 1)
                .withTestDay("L", "2024-05-01", 21)
                .withDeparture("L", "2024-06-01", "sale");
        Answer dry = herd.getAnimal("D", "/summary?asOf=2025-01-31").expecting(200);
        assertThat(dry.textAt("/state")).isEqualTo("dry");
        assertThat(dry.at("/daysInMilk").isMissingNode()).isTrue();
        assertThat(dry.textAt("/calvedOn")).isEqualTo("2024-03-25");
        Answer left = herd.getAnimal("L", "/lactations/current?asOf=2025-01-31").expecting(200);
        assertThat(left.textAt("/state")).isEqualTo("left");
        assertThat(left.textAt("/endedOn")).isEqualTo("2024-06-01");
        // one test, so its weight holds from day 1 to the day she left: 68 days of 21 kg, by hand
        assertThat(left.numberAt("/accumulated/value")).isCloseTo(68 * 21.0, within(1e-9));
        Answer summary = herd.get("/summary?asOf=2025-01-31").expecting(200);
        assertThat(summary.countAt("/animals/total")).isEqualTo(2);
        assertThat(summary.countAt("/animals/dry")).isEqualTo(1);
        assertThat(summary.countAt("/animals/left")).isEqualTo(1);
        assertThat(summary.at("/cowsInMilk").size()).isZero();
        Answer earlier = herd.get("/summary?asOf=2024-05-31").expecting(200);
        assertThat(earlier.countAt("/animals/inMilk")).isEqualTo(2);
    }

    @Test
    void anAnswerForAPastDayIsNotMovedByWhatHappenedLater() {
        TestHerd herd = TestHerd.make()
                .withAnimal("A")
                .withCalving("A", "2025-01-10", 2)
                .withTestDay("A", "2025-02-09", 31)
                .withTestDay("A", "2025-03-11", 36);
        List<String> addresses = List.of("/summary?asOf=2025-03-31", "/test-days?asOf=2025-03-31");
        List<String> cowAddresses = List.of("/summary?asOf=2025-03-31", "/lactations/current?asOf=2025-03-31");
        List<String> before =
                addresses.stream().map(address -> plain(herd.get(address))).toList();
        List<String> cowBefore = cowAddresses.stream()
                .map(address -> plain(herd.getAnimal("A", address)))
                .toList();
        herd.withTestDay("A", "2025-04-10", 12).withDryOff("A", "2025-05-01").withDeparture("A", "2025-05-20", "sale");
        assertThat(addresses.stream().map(address -> plain(herd.get(address)))).isEqualTo(before);
        assertThat(cowAddresses.stream().map(address -> plain(herd.getAnimal("A", address))))
                .isEqualTo(cowBefore);
        assertThat(plain(herd.get("/summary?asOf=2025-05-31"))).isNotEqualTo(before.get(0));
    }

    private static String plain(Answer answer) {
        return answer.expecting(200).text().replaceAll("\"(computed|known)At\":\"[^\"]*\"", "");
    }
}
