package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.quarkus.test.junit.QuarkusTest;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

@QuarkusTest
class CalculateCurveFitContractTest {
    /** henderson.milkfat of R package agridat 1.27, there credited to McCulloch and Henderson: fat of one cow by weeks, kg per day. */
    private static final double[] WEEKLY_FAT_KG = {
        0.31, 0.39, 0.5, 0.58, 0.59, 0.64, 0.68, 0.66, 0.67, 0.7, 0.72, 0.68, 0.65, 0.64, 0.57, 0.48, 0.46, 0.45, 0.31,
        0.33, 0.36, 0.3, 0.26, 0.34, 0.29, 0.31, 0.29, 0.2, 0.15, 0.18, 0.11, 0.07, 0.06, 0.01, 0.01
    };

    private static Answer fit(String query, String body) {
        return Posts.calculate("curve-fit" + query, body);
    }

    // R 4.2.2 nls with exact derivatives and Newton polish; standard errors and peak by the same, about six digits
    @Test
    void woodOfTenTestsIsThatOfR() {
        Answer answer = fit("", Posts.lactation("\"model\":\"wood-1967\",", Posts.C01_DAYS, Posts.C01_KG))
                .expecting(200);

        assertThat(answer.at("/curves")).hasSize(1);
        assertThat(answer.textAt("/status")).isEqualTo("ok");
        assertThat(answer.textAt("/curves/0/parameters/0/name")).isEqualTo("a");
        assertThat(answer.numberAt("/curves/0/parameters/0/value")).isCloseTo(13.7780047712798, within(1e-9));
        assertThat(answer.numberAt("/curves/0/parameters/1/value")).isCloseTo(0.224310530846183, within(1e-11));
        assertThat(answer.numberAt("/curves/0/parameters/2/value")).isCloseTo(0.00346181903751445, within(1e-13));
        assertThat(answer.numberAt("/curves/0/parameters/0/standardError")).isCloseTo(2.317938537, within(3e-4));
        assertThat(answer.numberAt("/curves/0/parameters/1/standardError")).isCloseTo(0.049389292332, within(5e-6));
        assertThat(answer.numberAt("/curves/0/rssKg2")).isCloseTo(10.7016638409372, within(1e-11));
        assertThat(answer.numberAt("/curves/0/residualSdKg")).isCloseTo(1.23645020932, within(1e-9));
        assertThat(answer.numberAt("/curves/0/bic")).isCloseTo(38.2672523915, within(1e-8));
        // Akaike's criterion of R and the correction 2 k (k + 1) / (n - k - 1) with n 10 and k 4
        assertThat(answer.numberAt("/curves/0/aicc")).isCloseTo(37.0569120195 + 8, within(1e-8));
        assertThat(answer.numberAt("/curves/0/peakDaysInMilk"))
                .isCloseTo(0.224310530846183 / 0.00346181903751445, within(1e-7));
        assertThat(answer.numberAt("/curves/0/peakDaysStandardError")).isCloseTo(6.579778, within(1e-3));
        assertThat(answer.numberAt("/curves/0/peakMilkStandardErrorKgPerDay")).isCloseTo(0.648792613, within(1e-4));
        assertThat(answer.countAt("/curves/0/totalToDaysInMilk")).isEqualTo(283);
        assertThat(answer.countAt("/curves/0/testDays")).isEqualTo(10);
        assertThat(answer.textAt("/curves/0/inputs/lastTest")).isEqualTo("2023-10-11");
        assertThat(answer.textAt("/asOf")).isEqualTo("2023-10-11");
        assertThat(answer.at("/judged").booleanValue()).isTrue();
    }

    // Wood (15, 0.2, 0.004): the sum of days 1 to 305 is 6522.048232, derived outside this project (numpy)
    @Test
    void theTotalRunsFromDay1ToTheLastTest() {
        double[] days = {15, 45, 75, 105, 135, 165, 195, 225, 255, 305};
        double[] kg = Arrays.stream(days)
                .map(day -> 15 * Math.pow(day, 0.2) * Math.exp(-0.004 * day))
                .toArray();
        Answer answer =
                fit("", Posts.lactation("\"model\":\"wood-1967\",", days, kg)).expecting(200);

        assertThat(answer.numberAt("/curves/0/totalKg")).isCloseTo(6522.048232, within(1e-4));
        assertThat(answer.countAt("/curves/0/totalToDaysInMilk")).isEqualTo(305);
    }

    // Henderson and McCulloch 1990, Transform or link?, Cornell BU-049-MA (report not found; values by R 4.2.2 nls,
    // scipy)
    @Test
    void bareWeeksAndKgAreFittedAsTheyStand() {
        StringBuilder weeks = new StringBuilder("1");
        for (int week = 2; week <= WEEKLY_FAT_KG.length; week++) {
            weeks.append(',').append(week);
        }
        Answer answer = fit(
                        "",
                        "{\"model\":\"wood-1967\",\"daysInMilk\":[" + weeks + "],\"milkKg\":"
                                + Arrays.toString(WEEKLY_FAT_KG) + "}")
                .expecting(200);

        assertThat(answer.at("/judged").booleanValue()).isFalse();
        assertThat(answer.at("/asOf").isMissingNode()).isTrue();
        assertThat(answer.numberAt("/curves/0/parameters/0/value")).isCloseTo(0.243564934861, within(1e-11));
        assertThat(answer.numberAt("/curves/0/parameters/1/value")).isCloseTo(1.00550568944, within(1e-10));
        assertThat(answer.numberAt("/curves/0/parameters/2/value")).isCloseTo(0.128617557018, within(1e-11));
        assertThat(answer.numberAt("/curves/0/rssKg2")).isCloseTo(0.0920221776218, within(1e-12));
        assertThat(answer.numberAt("/curves/0/peakDaysInMilk")).isCloseTo(7.81779496323, within(1e-9));
        assertThat(answer.numberAt("/curves/0/peakMilkKgPerDay")).isCloseTo(0.704580327208, within(1e-11));
    }

    @Test
    void withoutAModelAllCurvesAreComparedSmallestCriterionFirstAndRefusedLast() {
        double[] days = Arrays.copyOf(Posts.C01_DAYS, 6);
        double[] kg = Arrays.copyOf(Posts.C01_KG, 6);
        for (String body : List.of(
                Posts.lactation("", days, kg),
                "{\"daysInMilk\":" + Arrays.toString(days) + ",\"milkKg\":" + Arrays.toString(kg) + "}")) {
            Answer answer = fit("", body).expecting(200);
            assertThat(answer.at("/curves").findValuesAsText("name")).contains("wood-1967", "dijkstra-1997");
            assertThat(answer.at("/curves")).hasSize(13);
            double last = Double.NEGATIVE_INFINITY;
            boolean refused = false;
            for (int i = 0; i < 13; i++) {
                boolean isOk = answer.textAt("/curves/" + i + "/status").equals("ok");
                assertThat(isOk && refused)
                        .as("curve " + i + " after a refused one")
                        .isFalse();
                refused |= !isOk;
                if (!answer.at("/curves/" + i + "/aicc").isMissingNode()) {
                    assertThat(answer.numberAt("/curves/" + i + "/aicc")).isGreaterThanOrEqualTo(last);
                    last = answer.numberAt("/curves/" + i + "/aicc");
                }
            }
            assertThat(answer.numberAt("/curves/0/aiccAboveBest")).isZero();
        }
    }

    @Test
    void severalModelsAreFittedOnceEach() {
        Answer answer = fit(
                        "",
                        Posts.lactation(
                                "\"models\":[\"wilmink-1987\",\"wood-1967\",\"wilmink-1987\"],",
                                Posts.C01_DAYS,
                                Posts.C01_KG))
                .expecting(200);
        assertThat(answer.at("/curves")).hasSize(2);
        // R 4.2.2 lm: rss 9.72322163311666, less than that of Wood with as many parameters
        assertThat(answer.textAt("/curves/0/method/name")).isEqualTo("wilmink-1987");
        assertThat(answer.numberAt("/curves/0/rssKg2")).isCloseTo(9.72322163311666, within(1e-11));
        assertThat(answer.numberAt("/curves/1/aiccAboveBest"))
                .isCloseTo(10 * Math.log(10.7016638409372 / 9.72322163311666), within(1e-9));
    }

    @Test
    void explainedFitsShowEachTestBesideTheCurve() {
        Answer answer = fit(
                        "?explain=true", Posts.lactation("\"model\":\"wilmink-1987\",", Posts.C01_DAYS, Posts.C01_KG))
                .expecting(200);
        assertThat(answer.at("/curves/0/points")).hasSize(10);
        double rss = 0;
        for (int i = 0; i < 10; i++) {
            String point = "/curves/0/points/" + i;
            assertThat(answer.numberAt(point + "/daysInMilk")).isEqualTo(Posts.C01_DAYS[i]);
            assertThat(answer.numberAt(point + "/milkKg")).isEqualTo(Posts.C01_KG[i]);
            rss += Math.pow(answer.numberAt(point + "/residualKg"), 2);
        }
        assertThat(rss).isCloseTo(9.72322163311666, within(1e-10));
        // R 4.2.2 rstudent
        assertThat(answer.numberAt("/curves/0/points/8/studentizedResidual")).isCloseTo(-2.6141200354109, within(1e-9));
        assertThat(fit("", Posts.lactation("\"model\":\"wilmink-1987\",", Posts.C01_DAYS, Posts.C01_KG))
                        .at("/curves/0/points")
                        .isMissingNode())
                .isTrue();
    }

    @Test
    void aTestFarOffTheCurveIsFlaggedAndBothFitsAreShown() {
        double[] kg = Posts.C01_KG.clone();
        kg[5] = 8;
        Answer answer = fit("", Posts.lactation("\"model\":\"wilmink-1987\",", Posts.C01_DAYS, kg))
                .expecting(200);
        assertThat(answer.at("/curves/0/warnings").findValuesAsText("code")).contains("test-far-off-curve");
        assertThat(answer.countAt("/curves/0/testDays")).isEqualTo(10);
        assertThat(answer.countAt("/curves/0/withoutFarTests/testDays")).isEqualTo(9);
        assertThat(answer.textAt("/curves/0/withoutFarTests/inputs/excluded/0/why"))
                .isEqualTo("test-far-off-curve");
    }

    @Test
    void threeTestsAreTooFewForWoodAndTheAnswerSaysSo() {
        double[] days = {20, 50, 80};
        Answer answer = fit("", Posts.lactation("\"model\":\"wood-1967\",", days, new double[] {24, 30, 29}))
                .expecting(200);
        assertThat(answer.textAt("/status")).isEqualTo("notEnoughData");
        assertThat(answer.textAt("/curves/0/status")).isEqualTo("notEnoughData");
        assertThat(answer.at("/curves/0/parameters").isMissingNode()).isTrue();
        assertThat(answer.textAt("/curves/0/warnings/0/code")).isEqualTo("too-few-tests");
        assertThat(answer.textAt("/curves/0/warnings/0/effect")).isEqualTo("blocks");
        // the bare arithmetic has as many points as parameters and says nothing of spread
        Answer bare = fit("", "{\"model\":\"wood-1967\",\"daysInMilk\":[20,50,80],\"milkKg\":[24,30,29]}")
                .expecting(200);
        assertThat(bare.textAt("/curves/0/status")).isEqualTo("ok");
        assertThat(bare.at("/curves/0/residualSdKg").isMissingNode()).isTrue();
    }

    @Test
    void aCowWithoutTestsIsAValidQuestion() {
        Answer dated =
                fit("", "{\"calvingDate\":\"2025-01-01\",\"testDays\":[]}").expecting(200);
        assertThat(dated.textAt("/status")).isEqualTo("notEnoughData");
        assertThat(dated.textAt("/curves/0/warnings/0/code")).isEqualTo("no-test-days");
        assertThat(dated.textAt("/asOf")).isEqualTo("2025-01-01");
        assertThat(dated.textAt("/warnings/0/code")).isEqualTo("parity-counted");
        Answer bare = fit("", "{\"daysInMilk\":[],\"milkKg\":[]}").expecting(200);
        assertThat(bare.textAt("/status")).isEqualTo("notEnoughData");
        assertThat(bare.textAt("/curves/0/warnings/0/code")).isEqualTo("too-few-tests");
    }

    @Test
    void sameDaysAndZerosAreRefusedByTheLibraryNotByAFailure() {
        Answer sameDay = fit("", "{\"daysInMilk\":[50,50,50,50,50,50],\"milkKg\":[24,25,26,27,28,29]}")
                .expecting(200);
        assertThat(sameDay.textAt("/status")).isEqualTo("notEnoughData");
        assertThat(sameDay.at("/curves/0/warnings").findValuesAsText("code")).contains("not-estimable");
        fit("", "{\"daysInMilk\":[10,40,70,100,130,160],\"milkKg\":[0,0,0,0,0,0]}")
                .expecting(200);
        fit("", Posts.lactation("", Posts.C01_DAYS, new double[10])).expecting(200);
    }

    @Test
    void laterTestsTakeNoPartInAFitAsOfADay() {
        Answer answer = fit(
                        "",
                        Posts.lactation(
                                "\"model\":\"wood-1967\",\"asOf\":\"2023-05-14\",", Posts.C01_DAYS, Posts.C01_KG))
                .expecting(200);
        assertThat(answer.countAt("/curves/0/testDays")).isEqualTo(5);
        assertThat(answer.textAt("/asOf")).isEqualTo("2023-05-14");
    }

    @Test
    void everyFaultIsToldWithItsPlace() {
        Answer answer = fit("", """
                {"model":"wod","calvingDate":"2025-02-30","parity":0,"breed":7,"testDys":[],
                 "testDays":[{"date":"2025-03-01","milkKg":30},{"date":"2025-04-01","milkKg":-1},
                             {"milkKg":"27,4"},{"date":"2025-05-01","fatPct":1e400,"milk":3}, 5]}""").expecting(422);
        assertThat(answer.textAt("/code")).isEqualTo("validation-failed");
        assertThat(answer.at("/errors").findValuesAsText("pointer"))
                .containsExactlyInAnyOrder(
                        "/model",
                        "/calvingDate",
                        "/parity",
                        "/breed",
                        "/testDys",
                        "/testDays/1/milkKg",
                        "/testDays/2/date",
                        "/testDays/2/milkKg",
                        "/testDays/3/fatPct",
                        "/testDays/3/milk",
                        "/testDays/4");
        assertThat(answer.at("/errors").findValuesAsText("message"))
                .anyMatch(message -> message.contains("did you mean testDays?"))
                .anyMatch(message -> message.contains("did you mean milkKg?"))
                .anyMatch(message -> message.contains("wood-1967, wilmink-1987"));
    }

    @Test
    void barePointsAreCheckedEachOnItsPlace() {
        Answer answer = fit(
                        "",
                        "{\"models\":[\"wood-1967\",\"nobody-1900\"],\"daysInMilk\":[0,20,-3,true,1e9],\"milkKg\":[1,2]}")
                .expecting(422);
        assertThat(answer.at("/errors").findValuesAsText("pointer"))
                .containsExactlyInAnyOrder(
                        "/models/1", "/daysInMilk/0", "/daysInMilk/2", "/daysInMilk/3", "/daysInMilk/4", "/milkKg");
        Answer half = fit("", "{\"daysInMilk\":[10,20],\"calvingDate\":\"2025-01-01\"}")
                .expecting(422);
        assertThat(half.at("/errors").findValuesAsText("pointer")).containsExactlyInAnyOrder("/milkKg", "/calvingDate");
        Answer both = fit("", "{\"model\":\"wood-1967\",\"models\":[],\"daysInMilk\":[],\"milkKg\":[]}")
                .expecting(422);
        assertThat(both.at("/errors").findValuesAsText("code")).containsExactlyInAnyOrder("not-together", "required");
    }

    @Test
    void nothingPostedNamesWhatIsNeeded() {
        Answer answer = fit("", "{}").expecting(422);
        assertThat(answer.at("/errors").findValuesAsText("pointer"))
                .containsExactlyInAnyOrder("/calvingDate", "/testDays");
        assertThat(fit("", "").expecting(400).textAt("/code")).isEqualTo("empty-body");
        assertThat(fit("", "{\"calvingDate\":").expecting(400).textAt("/code")).isEqualTo("malformed-json");
        assertThat(fit("?explian=true", "{}").expecting(400).textAt("/errors/0/message"))
                .contains("did you mean explain?");
        assertThat(fit("?explain=yes", "{\"calvingDate\":\"2025-01-01\",\"testDays\":[]}")
                        .expecting(400)
                        .textAt("/code"))
                .isEqualTo("bad-parameter");
    }

    @Test
    void moreTestsThanALactationHoldsAreRefusedAtOnce() {
        double[] days = new double[501];
        double[] kg = new double[501];
        for (int i = 0; i < days.length; i++) {
            days[i] = i + 5;
            kg[i] = 30 - i * 0.03;
        }
        assertThat(fit("", Posts.lactation("", days, kg)).expecting(422).textAt("/errors/0/code"))
                .isEqualTo("too-many");
        fit("", Posts.lactation("", Arrays.copyOf(days, 500), Arrays.copyOf(kg, 500)))
                .expecting(200);
    }
}
