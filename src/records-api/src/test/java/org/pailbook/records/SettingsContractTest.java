package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
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
}
