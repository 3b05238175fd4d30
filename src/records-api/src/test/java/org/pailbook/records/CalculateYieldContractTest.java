package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.quarkus.test.junit.QuarkusTest;
import org.junit.jupiter.api.Test;

@QuarkusTest
class CalculateYieldContractTest {
    private static Answer addUp(String query, String body) {
        return Posts.calculate("accumulated-yield" + query, body);
    }

    private static String icar(String method) {
        return "{" + method + Posts.ICAR_MEMBERS + Posts.icarTestDays() + "}";
    }

    // ICAR Guidelines, Section 2, worked example (rows from memory): 284 d, 4973.2 kg, 190.2 kg fat, 3.82 %
    private static void isIcarsExample(Answer answer) {
        String first = "/yields/0";
        assertThat(answer.textAt("/status")).isEqualTo("ok");
        assertThat(answer.textAt(first + "/method/name")).isEqualTo("test-interval");
        assertThat(answer.countAt(first + "/fromDaysInMilk")).isEqualTo(1);
        assertThat(answer.countAt(first + "/toDaysInMilk")).isEqualTo(284);
        assertThat(answer.numberAt(first + "/milk/value")).isCloseTo(4973.2, within(0.05));
        assertThat(answer.numberAt(first + "/fat/value")).isCloseTo(190.2, within(0.05));
        assertThat(answer.numberAt(first + "/fatPct/value")).isCloseTo(3.82, within(0.005));
        assertThat(answer.countAt(first + "/milkTests")).isEqualTo(10);
        assertThat(answer.textAt(first + "/protein/status")).isEqualTo("notEnoughData");
        assertThat(answer.at(first + "/protein/warnings").findValuesAsText("code"))
                .contains("protein-needed");
    }

    @Test
    void icarsExampleAsPosted() {
        Answer answer = addUp("", icar("\"method\":\"test-interval\",")).expecting(200);
        isIcarsExample(answer);
        assertThat(answer.at("/yields")).hasSize(1);
        assertThat(answer.textAt("/asOf")).isEqualTo("2002-01-03");
        assertThat(answer.at("/yields/0/milk/explanation").isMissingNode()).isTrue();
    }

    @Test
    void icarsExampleAsStored() {
        TestHerd herd = TestHerd.make()
                .withAnimal("A1", ",\"breed\":\"RDC\"")
                .withCalving("A1", "2001-03-25", 3)
                .withDryOff("A1", "2002-01-03");
        for (int i = 0; i < Posts.ICAR_DATES.length; i++) {
            herd.withTestDay("A1", Posts.ICAR_DATES[i], Posts.ICAR_MILK_KG[i], Posts.ICAR_FAT_PCT[i]);
        }
        for (String lactation : new String[] {"3", "current"}) {
            Answer stored = herd.getAnimal("A1", "/lactations/" + lactation + "/yield?asOf=2002-02-01")
                    .expecting(200);
            isIcarsExample(stored);
            assertThat(stored.at("/yields")).hasSize(7);
            assertThat(stored.textAt("/herd")).isEqualTo(herd.code());
            assertThat(stored.textAt("/animal/id")).isEqualTo("A1");
            assertThat(stored.textAt("/calvedOn")).isEqualTo("2001-03-25");
        }
        Answer one = herd.getAnimal("A1", "/lactations/3/yield?asOf=2001-06-05&method=test-interval&explain=true")
                .expecting(200);
        assertThat(one.at("/yields")).hasSize(1);
        // the first three intervals of the example, by hand: 394.8 + 742.0 + 771.0
        assertThat(one.numberAt("/yields/0/milk/value")).isCloseTo(1907.8, within(1e-9));
        assertThat(one.at("/yields/0/milk/explanation")).hasSize(3);
    }

    @Test
    void allMethodsAnswerSideBySideAndTheirPartsAddUp() {
        Answer answer = addUp("?explain=true", icar("\"method\":\"all\",")).expecting(200);
        isIcarsExample(answer);
        assertThat(answer.at("/yields")).hasSize(7);
        String[] icarsFour = {
            "test-interval", "interpolation-standard-curves", "best-prediction-to-date", "multiple-trait-procedure"
        };
        for (String method : icarsFour) {
            Answer one = addUp("?explain=true", icar("\"method\":\"" + method + "\","))
                    .expecting(200);
            assertThat(one.textAt("/yields/0/method/name")).isEqualTo(method);
            // ours: the methods differ by less than 2 % on this lactation, see the library's table of the four
            assertThat(one.numberAt("/yields/0/milk/value")).isBetween(4973.1, 5073.0);
            double sum = 0;
            for (int i = 0; i < one.at("/yields/0/milk/explanation").size(); i++) {
                sum += one.numberAt("/yields/0/milk/explanation/" + i + "/amount");
            }
            assertThat(sum).as(method).isCloseTo(one.numberAt("/yields/0/milk/value"), within(1e-6));
        }
        assertThat(addUp("", icar("")).expecting(200).at("/yields")).hasSize(7);
    }

    @Test
    void aFirstTestAfterDay75HasNoTestIntervalYield() {
        Answer answer = addUp(
                        "",
                        Posts.lactation("\"method\":\"test-interval\",", new double[] {90, 120}, new double[] {30, 28}))
                .expecting(200);
        assertThat(answer.textAt("/status")).isEqualTo("notEnoughData");
        assertThat(answer.at("/yields/0/milk/value").isMissingNode()).isTrue();
        assertThat(answer.at("/yields/0/milk/warnings").findValuesAsText("code"))
                .contains("first-test-too-late");
        assertThat(answer.at("/yields/0/toDaysInMilk").isMissingNode()).isTrue();
    }

    @Test
    void unusualValuesAreNotRefusedButNamedAndLeftOut() {
        Answer answer = addUp("", """
                {"method":"test-interval","calvingDate":"2025-01-01","parity":2,"testDays":[
                 {"date":"2025-01-03","milkKg":12},{"date":"2025-02-01","milkKg":240},
                 {"date":"2025-02-20","milkKg":30.123456789012345,"fatPct":38},{"date":"2025-03-20","fatPct":4},
                 {"date":"2024-12-20","milkKg":8}]}""").expecting(200);
        assertThat(answer.at("/yields/0/milk/warnings").findValuesAsText("code"))
                .contains("test-on-colostrum-days", "out-of-range", "milk-missing", "test-before-calving");
        assertThat(answer.at("/yields/0/milk/inputs/excluded")).hasSize(4);
        // by hand: one weight back to calving, 50 d
        assertThat(answer.numberAt("/yields/0/milk/value")).isCloseTo(50 * 30.123456789012345, within(1e-9));
        assertThat(answer.textAt("/yields/0/fat/status")).isEqualTo("notEnoughData");
    }

    @Test
    void withoutTestsEveryMethodSaysWhatIsMissing() {
        Answer answer = addUp("", "{\"calvingDate\":\"2025-01-01\",\"parity\":1,\"testDays\":[]}")
                .expecting(200);
        assertThat(answer.textAt("/status")).isEqualTo("notEnoughData");
        for (int i = 0; i < 7; i++) {
            assertThat(answer.at("/yields/" + i + "/milk/warnings").findValuesAsText("code"))
                    .as(answer.textAt("/yields/" + i + "/method/name"))
                    .contains("no-test-days");
        }
        Answer beforeCalving = addUp(
                        "",
                        "{\"asOf\":\"2024-06-01\",\"calvingDate\":\"2025-01-01\",\"parity\":1,\"testDays\":[{\"date\":\"2025-02-01\",\"milkKg\":30}]}")
                .expecting(200);
        assertThat(beforeCalving.textAt("/status")).isEqualTo("notEnoughData");
    }

    @Test
    void anUnknownBreedAndParityAreSaidToBeSo() {
        Answer answer = addUp("", """
                {"method":"best-prediction-to-date","calvingDate":"2025-01-01","breed":"unheard of",
                 "testDays":[{"date":"2025-02-01","milkKg":30}]}""").expecting(200);
        assertThat(answer.textAt("/warnings/0/code")).isEqualTo("parity-counted");
        assertThat(answer.countAt("/parity")).isEqualTo(1);
        assertThat(answer.at("/yields/0/milk/warnings").findValuesAsText("code"))
                .contains("reference-of-other-breed");
        assertThat(answer.at("/yields/0/milk/interval80").isMissingNode()).isFalse();
    }

    @Test
    void faultsHaveTheirPlaces() {
        Answer answer = addUp("", """
                {"method":"test-intervall","calvingDate":"2025-01-01","endDate":"2024-12-31","parity":1.5,
                 "testDays":[{"date":"2025-02-01","sccThousandPerMl":-5,"proteinPct":null}]}""").expecting(422);
        assertThat(answer.at("/errors").findValuesAsText("pointer"))
                .containsExactlyInAnyOrder(
                        "/method", "/endDate", "/parity", "/testDays/0/sccThousandPerMl", "/testDays/0/proteinPct");
        assertThat(answer.at("/errors").findValuesAsText("message"))
                .anyMatch(message -> message.contains("all, test-interval, "));
    }

    @Test
    void storedLactationsThatAreNotThereAnswerWithTheReason() {
        TestHerd herd = TestHerd.make().withAnimal("B1").withAnimal("B2").withCalving("B2", "2025-01-01", 2);
        for (String figure : new String[] {"yield", "curve"}) {
            Answer never = herd.getAnimal("B1", "/lactations/current/" + figure).expecting(200);
            assertThat(never.textAt("/status")).isEqualTo("notEnoughData");
            assertThat(never.at("/warnings").findValuesAsText("code")).contains("no-calving");
            Answer other = herd.getAnimal("B2", "/lactations/9/" + figure).expecting(200);
            assertThat(other.textAt("/status")).isEqualTo("notEnoughData");
            assertThat(other.countAt("/parity")).isEqualTo(9);
            assertThat(herd.getAnimal("B2", "/lactations/0/" + figure)
                            .expecting(400)
                            .textAt("/code"))
                    .isEqualTo("bad-path");
            herd.getAnimal("nobody", "/lactations/1/" + figure).expecting(404);
        }
        assertThat(herd.getAnimal("B2", "/lactations/2/yield?method=all-of-it")
                        .expecting(400)
                        .textAt("/detail"))
                .contains("test-interval");
        assertThat(herd.getAnimal("B2", "/lactations/2/curve?model=x")
                        .expecting(400)
                        .textAt("/detail"))
                .contains("wood-1967");
    }

    @Test
    void theCurveOfAStoredLactationIsThatOfThePostedOne() {
        TestHerd herd = TestHerd.make().withAnimal("C1").withCalving("C1", Posts.CALVING.toString(), 2);
        for (int i = 0; i < Posts.C01_DAYS.length; i++) {
            herd.withTestDay(
                    "C1", Posts.CALVING.plusDays((long) Posts.C01_DAYS[i]).toString(), Posts.C01_KG[i]);
        }
        Answer all = herd.getAnimal("C1", "/lactations/current/curve?asOf=2023-10-11")
                .expecting(200);
        Answer posted = Posts.calculate("curve-fit", Posts.lactation("", Posts.C01_DAYS, Posts.C01_KG));
        assertThat(all.at("/curves")).hasSize(13).isEqualTo(posted.at("/curves"));
        Answer one = herd.getAnimal("C1", "/lactations/2/curve?asOf=2023-10-11&model=wood-1967&explain=true")
                .expecting(200);
        assertThat(one.at("/curves")).hasSize(1);
        assertThat(one.at("/curves/0/points")).hasSize(10);
        // R 4.2.2 nls, as in the fit of the posted lactation
        assertThat(one.numberAt("/curves/0/rssKg2")).isCloseTo(10.7016638409372, within(1e-11));
        assertThat(one.textAt("/herd")).isEqualTo(herd.code());
    }
}
