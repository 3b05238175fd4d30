package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Single milkings become test days, and figures say so. */
@QuarkusTest
class MilkingsContractTest {
    private static TestHerd herd(String zone) {
        return TestHerd.inZone(zone).withAnimal("A1").withCalving("A1", "2025-08-19", 3);
    }

    private static Answer milking(TestHerd herd, String cow, String at, String which, double kg) {
        return herd.post(
                        "milkings",
                        "{\"animal\":%s,\"startedAt\":\"%s\",\"milkingOfDay\":\"%s\",\"milkKg\":%s}"
                                .formatted(TestHerd.animal(cow), at, which, kg))
                .expecting(201);
    }

    private static Answer lactation(TestHerd herd) {
        return herd.getAnimal("A1", "/lactations/current?asOf=2025-12-31").expecting(200);
    }

    private static List<String> codes(Answer answer, String figure) {
        return answer.at("/" + figure + "/warnings").findValuesAsText("code");
    }

    private static JsonNode warning(Answer answer, String figure, String code) {
        for (JsonNode one : answer.at("/" + figure + "/warnings")) {
            if (one.path("code").asText().equals(code)) {
                return one;
            }
        }
        throw new AssertionError("no " + code + " in " + answer.text());
    }

    @Test
    void bothMilkingsOfADayAreATestDayAndEveryFigureSaysSo() {
        TestHerd herd = herd("Europe/Dublin");
        milking(herd, "A1", "2025-10-10T06:30:00+01:00", "am", 15.5);
        milking(herd, "A1", "2025-10-10T17:30:00+01:00", "pm", 11.5);
        TestHerd plain = herd("Europe/Dublin").withTestDay("A1", "2025-10-10", 27);
        Answer summed = lactation(herd);
        assertThat(summed.numberAt("/accumulated/value"))
                .isCloseTo(lactation(plain).numberAt("/accumulated/value"), within(1e-9));
        for (String figure : List.of("accumulated", "projected305")) {
            assertThat(codes(summed, figure)).as(figure).contains("summed-from-milkings");
            assertThat(warning(summed, figure, "summed-from-milkings")
                            .path("seen")
                            .asText())
                    .isEqualTo("2 of 2 milkings");
        }
        assertThat(summed.numberAt("/projected305/value"))
                .isCloseTo(lactation(plain).numberAt("/projected305/value"), within(1e-9));
    }

    @Test
    void aTestDayPostedForThatDayWinsAndSaysSo() {
        TestHerd herd = herd("Europe/Dublin").withTestDay("A1", "2025-10-10", 28);
        milking(herd, "A1", "2025-10-10T06:30:00+01:00", "am", 15.5);
        milking(herd, "A1", "2025-10-10T17:30:00+01:00", "pm", 11.5);
        TestHerd plain = herd("Europe/Dublin").withTestDay("A1", "2025-10-10", 28);
        Answer answer = lactation(herd);
        assertThat(answer.numberAt("/accumulated/value"))
                .isCloseTo(lactation(plain).numberAt("/accumulated/value"), within(1e-9));
        JsonNode warning = warning(answer, "accumulated", "posted-test-day-wins");
        assertThat(warning.path("seen").asText()).isEqualTo("28.0 kg posted, 27.0 kg from milkings");
        assertThat(warning.path("record").asText())
                .isEqualTo(herd.get("/test-days").textAt("/items/0/id"));
    }

    @Test
    void oneMilkingOfTwoTakesNoPartUntilTheHerdShowsItsShare() {
        TestHerd herd = herd("Europe/Dublin");
        milking(herd, "A1", "2025-10-10T06:30:00+01:00", "am", 15);
        Answer before = lactation(herd);
        assertThat(before.textAt("/accumulated/status")).isEqualTo("notEnoughData");
        assertThat(codes(before, "accumulated")).contains("milkings-not-summed");
        herd.withAnimal("A2");
        for (int day = 1; day <= 20; day++) {
            String date = "2025-10-%02d".formatted(day);
            milking(herd, "A2", date + "T06:30:00+01:00", "am", 12);
            milking(herd, "A2", date + "T17:30:00+01:00", "pm", 8);
        }
        // 20 paired cow-days with a share of 0.6, drawn half-way to 0.5: 15 / 0.55 = 27.27 kg on one test, day 52;
        // accumulated by hand as that weight on each of the days 1 to 52
        Answer after = lactation(herd);
        assertThat(after.numberAt("/accumulated/value")).isCloseTo(52 * 15 / 0.55, within(1e-6));
        assertThat(codes(after, "accumulated")).contains("part-of-day-weighed");
        TestHerd plain = herd("Europe/Dublin").withTestDay("A1", "2025-10-10", 27.2727272727);
        double narrow = width(lactation(plain));
        assertThat(width(after)).isGreaterThan(narrow * 1.001);
    }

    private static double width(Answer answer) {
        return answer.numberAt("/projected305/interval80/high") - answer.numberAt("/projected305/interval80/low");
    }

    @Test
    void aMilkingBelongsToTheDayOfTheHerdsZone() {
        TestHerd herd = herd("Pacific/Auckland");
        Answer late = milking(herd, "A1", "2025-10-09T17:30:00Z", "am", 15.5);
        assertThat(late.textAt("/record/startedAt")).isEqualTo("2025-10-09T17:30:00Z");
        // 06:30 on 10 October in Auckland, 52 days after 19 August
        assertThat(late.countAt("/daysInMilk")).isEqualTo(52);
        assertThat(herd.get("/milkings?from=2025-10-10").at("/items").size()).isEqualTo(1);
    }

    @Test
    void secondsDoNotMakeAnotherMilkingAndAnOffsetIsOnlyAnotherWayToWriteIt() {
        TestHerd herd = herd("Europe/Dublin");
        milking(herd, "A1", "2025-10-10T06:30:00+01:00", "am", 15.5);
        Answer same = herd.post(
                "milkings",
                "{\"animal\":%s,\"startedAt\":\"2025-10-10T05:30:00Z\",\"milkingOfDay\":\"am\",\"milkKg\":15.5}"
                        .formatted(TestHerd.animal("A1")));
        assertThat(same.textAt("/outcome")).isEqualTo("unchanged");
        Answer seconds = herd.post(
                "milkings",
                "{\"animal\":%s,\"startedAt\":\"2025-10-10T05:30:42Z\",\"milkingOfDay\":\"am\",\"milkKg\":15.5}"
                        .formatted(TestHerd.animal("A1")));
        assertThat(seconds.textAt("/outcome")).isEqualTo("updated");
    }

    @Test
    void anOddTestIsNamedWithItsRecordOnTheFiguresThatUseIt() {
        TestHerd herd = herd("Europe/Dublin").withTestDay("A1", "2025-10-10", 30, 4);
        herd.withTestDay("A1", "2025-11-10", 15, 7.5);
        Answer answer = lactation(herd);
        String id = herd.get("/test-days?from=2025-11-01").textAt("/items/0/id");
        for (String figure : List.of("accumulated", "projected305")) {
            for (String code : List.of("milk-change", "implausible")) {
                assertThat(warning(answer, figure, code).path("record").asText())
                        .as(figure + " " + code)
                        .isEqualTo(id);
            }
        }
        assertThat(warning(answer, "accumulated", "milk-change").path("seen").asText())
                .isEqualTo("15.0 kg after 30.0 kg on 2025-10-10");
    }

    /** Told once with the count, and five of them with their records. */
    @Test
    void whatIsOddAboutManyTestsIsToldOnceWithFiveOfThem() {
        TestHerd herd = herd("Europe/Dublin");
        for (int day = 10; day < 17; day++) {
            herd.withTestDay("A1", "2025-10-" + day, 30, 7.5);
        }
        JsonNode odd = warning(lactation(herd), "accumulatedFat", "implausible");
        assertThat(odd.path("count").asInt()).isEqualTo(7);
        assertThat(odd.path("date").asText()).isEqualTo("2025-10-10");
        assertThat(odd.path("others").findValuesAsText("date"))
                .containsExactly("2025-10-11", "2025-10-12", "2025-10-13", "2025-10-14");
        assertThat(odd.path("others").findValuesAsText("record"))
                .doesNotHaveDuplicates()
                .hasSize(4);
        assertThat(codes(lactation(herd), "accumulatedFat").stream().filter("implausible"::equals))
                .hasSize(1);
    }
}
