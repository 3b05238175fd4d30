package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a farm set holds from its day on, is named in every answer, and leaves what was asked for an earlier day as it was. */
@QuarkusTest
class SettingsContractTest {
    private static final List<String> ANSWERS =
            List.of("/breeding-worklist", "/breeding-summary", "/udder-health", "/milk-withheld", "/culling-ranking");

    private static final String SETTINGS =
            "{\"validFrom\":\"2026-02-01\",\"waitingDays\":75,\"checkDays\":28,\"dryDays\":45,\"colostrumDays\":7,"
                    + "\"highFrom\":150,\"tankLimit\":\"eu-853-2004\",\"closeCall\":250}";

    private static TestHerd herd() {
        return TestHerd.make().withAnimal("ASH").withCalving("ASH", "2025-12-20", 1);
    }

    private static JsonNode used(Answer answer, String setting) {
        for (JsonNode one : answer.at("/usedSettings/used")) {
            if (one.path("setting").asText().equals(setting)) {
                return one;
            }
        }
        throw new AssertionError(setting + " is not named: " + answer.text());
    }

    @Test
    void withoutASetEverythingIsUsualAndEveryAnswerSaysSo() {
        TestHerd herd = herd();
        for (String path : ANSWERS) {
            Answer answer = herd.get(path + "?asOf=2026-03-01").expecting(200);
            assertThat(answer.at("/usedSettings/validFrom").isMissingNode())
                    .as(path)
                    .isTrue();
            assertThat(answer.at("/usedSettings/used").findValuesAsText("givenBy"))
                    .as(path)
                    .isNotEmpty()
                    .containsOnly("usual");
        }
        Answer udder = herd.get("/udder-health?asOf=2026-03-01");
        assertThat(udder.at("/usedSettings/used").findValuesAsText("setting")).doesNotContain("tankLimit");
        assertThat(udder.at("/tank/standing").isMissingNode()).isTrue();
    }

    @Test
    void aSetHoldsFromItsDayOnAndAnEarlierDayStaysWhatItWas() {
        TestHerd herd = herd();
        // 71 days after calving on 1 March: on the list with a wait of 50 days, not with one of 75
        String cow = "/breeding-worklist?asOf=2026-03-01";
        assertThat(herd.get(cow).at("/lists/0/cows")).hasSize(1);
        Answer january = herd.get("/breeding-worklist?asOf=2026-01-31");
        herd.post("settings", SETTINGS).expecting(201);
        assertThat(herd.get(cow).at("/lists/0/cows")).isEmpty();
        Answer again = herd.get("/breeding-worklist?asOf=2026-01-31");
        for (String member : List.of("/settings", "/usedSettings", "/lists", "/warnings")) {
            assertThat(again.at(member)).as(member).isEqualTo(january.at(member));
        }
        for (String path : ANSWERS) {
            Answer answer = herd.get(path + "?asOf=2026-03-01").expecting(200);
            assertThat(answer.textAt("/usedSettings/validFrom")).as(path).isEqualTo("2026-02-01");
            assertThat(answer.at("/usedSettings/used").findValuesAsText("givenBy"))
                    .as(path)
                    .containsOnly("herd");
        }
        // 7 days after calving by the set, 4 without one
        herd.withAnimal("BIRCH").withCalving("BIRCH", "2026-02-20", 2);
        assertThat(herd.get("/milk-withheld?asOf=2026-02-26").at("/cows")).hasSize(1);
        Answer udder = herd.get("/udder-health?asOf=2026-03-01");
        assertThat(udder.numberAt("/highFromThousandPerMl")).isEqualTo(150);
        assertThat(udder.textAt("/tank/standing/limit")).isEqualTo("eu-853-2004");
        assertThat(used(herd.get("/culling-ranking?asOf=2026-03-01"), "closeCall")
                        .path("value")
                        .asDouble())
                .isEqualTo(250);
    }

    @Test
    void whatIsAskedGoesBeforeWhatIsSetAndALaterSetLeavesOutAsUsual() {
        TestHerd herd = herd();
        herd.post("settings", SETTINGS).expecting(201);
        Answer asked = herd.get("/breeding-worklist?asOf=2026-03-01&waitingDays=60");
        assertThat(used(asked, "waitingDays").path("givenBy").asText()).isEqualTo("asked");
        assertThat(asked.countAt("/settings/waitingDays")).isEqualTo(60);
        assertThat(asked.countAt("/settings/dryDays")).isEqualTo(45);
        herd.post("settings", "{\"validFrom\":\"2026-02-15\",\"dryDays\":50}").expecting(201);
        Answer later = herd.get("/breeding-worklist?asOf=2026-03-01");
        assertThat(later.countAt("/settings/dryDays")).isEqualTo(50);
        assertThat(later.countAt("/settings/waitingDays")).isEqualTo(50);
        assertThat(later.at("/settings/isWaitingAssumed").asBoolean()).isTrue();
        assertThat(used(later, "waitingDays").path("givenBy").asText()).isEqualTo("usual");
    }

    @Test
    void aSetThatIsChangedIsSeenAsItWasByKnownAt() {
        TestHerd herd = herd();
        herd.post("settings", SETTINGS).expecting(201);
        Answer before = herd.get("/breeding-summary?asOf=2026-03-01");
        herd.post("settings", SETTINGS.replace("75", "40")).expecting(200);
        assertThat(herd.get("/breeding-summary?asOf=2026-03-01").countAt("/settings/waitingDays"))
                .isEqualTo(40);
        Answer again = herd.get("/breeding-summary?asOf=2026-03-01&knownAt=" + before.textAt("/knownAt"));
        assertThat(again.countAt("/settings/waitingDays")).isEqualTo(75);
    }

    private static String limits(String from, String limits) {
        return "{\"validFrom\":\"" + from + "\",\"warningLimits\":[" + limits + "]}";
    }

    private static Answer fatTest(TestHerd herd, String date, double fatPct) {
        return herd.post(
                        "test-days",
                        "{\"animal\":%s,\"date\":\"%s\",\"milkKg\":30,\"fatPct\":%s}"
                                .formatted(TestHerd.animal("ASH"), date, fatPct))
                .expecting(201);
    }

    private static List<JsonNode> oddFat(TestHerd herd, String query) {
        List<JsonNode> odd = new ArrayList<>();
        herd.getAnimal("ASH", "/lactations/current?asOf=" + query)
                .expecting(200)
                .at("/accumulated/warnings")
                .forEach(warning -> {
                    if (warning.path("code").asText().equals("implausible")) {
                        odd.add(warning);
                    }
                });
        return odd;
    }

    @Test
    void aHerdIsWarnedLessOftenFromTheDayItSaysAndAnOldAnswerStaysAsItWas() {
        TestHerd herd = herd();
        assertThat(fatTest(herd, "2026-01-15", 7.4).findingCodes()).contains("implausible");
        assertThat(oddFat(herd, "2026-02-20"))
                .singleElement()
                .satisfies(odd -> assertThat(odd.path("expected").asText()).isEqualTo("2.0 to 7.0 %"));
        String knownAt =
                herd.getAnimal("ASH", "/lactations/current?asOf=2026-02-20").textAt("/knownAt");
        herd.post("settings", limits("2026-02-01", "{\"field\":\"fatPct\",\"most\":7.5}"))
                .expecting(201);
        assertThat(fatTest(herd, "2026-02-01", 7.4).findingCodes()).doesNotContain("implausible");
        Answer beyond = fatTest(herd, "2026-02-15", 7.6);
        assertThat(beyond.at("/findings").findValuesAsText("expected"))
                .contains("2.0 to 7.5 %, set by the herd from 2026-02-01");
        // the test of January is held against what is usual, that of 1 February against the herd's own, as when they
        // were posted
        assertThat(oddFat(herd, "2026-02-20"))
                .extracting(odd ->
                        odd.path("date").asText() + " " + odd.path("expected").asText())
                .containsExactly("2026-01-15 2.0 to 7.0 %", "2026-02-15 2.0 to 7.5 %, set by the herd from 2026-02-01");
        assertThat(oddFat(herd, "2026-01-31")).hasSize(1);
        herd.post("settings", limits("2026-01-01", "{\"field\":\"fatPct\",\"most\":9}"))
                .expecting(201);
        assertThat(oddFat(herd, "2026-01-31")).isEmpty();
        assertThat(oddFat(herd, "2026-02-20&knownAt=" + knownAt))
                .extracting(odd -> odd.path("expected").asText())
                .containsExactly("2.0 to 7.0 %");
    }

    @Test
    void whatCannotBeRightIsRefusedAndWhatIsNotAcceptedIsNotUsedWhateverIsSet() {
        TestHerd herd = herd();
        herd.post("settings", limits("2026-01-01", "{\"field\":\"fatPct\",\"least\":1.5,\"most\":12}"))
                .expecting(201);
        assertThat(fatTest(herd, "2026-02-01", 12.5).findingCodes()).contains("out-of-range");
        herd.post("test-days", "{\"animal\":" + TestHerd.animal("ASH") + ",\"date\":\"2026-02-02\",\"fatPct\":16}")
                .expecting(422);
        assertThat(herd.post("settings", limits("2026-03-01", "{\"field\":\"fatPct\",\"most\":12.5}"))
                        .expecting(422)
                        .textAt("/errors/0/message"))
                .contains("around 2.0 to 7.0 %, within 1.5 to 12.0 %");
    }

    @Test
    void ownLimitsComeBackInTablesAndGoWithPatches() {
        TestHerd herd = herd();
        String sent = limits(
                "2026-01-01",
                "{\"field\":\"milkChangePct\",\"least\":-60},{\"field\":\"fatProteinRatio\",\"most\":2.5}");
        Answer made = herd.post("settings", sent).expecting(201);
        assertThat(made.at("/record/warningLimits").toString())
                .isEqualTo(
                        "[{\"field\":\"milkChangePct\",\"least\":-60},{\"field\":\"fatProteinRatio\",\"most\":2.5}]");
        assertThat(herd.post("settings", sent).expecting(200).textAt("/outcome"))
                .isEqualTo("unchanged");
        String table = herd.get("/settings.csv").expecting(200).text();
        assertThat(herd.bulk("settings", "text/csv", table).expecting(200).countAt("/unchanged"))
                .isEqualTo(1);
        Answer cleared = herd.patch(
                        "/settings/" + made.textAt("/id"), "\"1\"", "{\"waitingDays\":55,\"warningLimits\":null}")
                .expecting(200);
        assertThat(cleared.at("/record/warningLimits").isMissingNode()).isTrue();
    }
}
