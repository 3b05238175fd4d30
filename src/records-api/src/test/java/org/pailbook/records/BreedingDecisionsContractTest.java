package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The farm's choice not to breed a cow: she leaves the lists to serve her, the reason is said, and what was before stays as it was. */
@QuarkusTest
class BreedingDecisionsContractTest {
    private static final String PRICES =
            "{\"validFrom\":\"2025-01-01\",\"currency\":\"EUR\",\"milkPricePerKg\":0.45,\"heiferPrice\":1700,\"cullPrice\":832}";

    private static TestHerd twoCows() {
        TestHerd herd = TestHerd.make();
        for (String cow : List.of("ASH", "BIRCH")) {
            herd.withAnimal(cow).withCalving(cow, "2025-10-01", 2).withTestDay(cow, "2026-01-10", 25);
        }
        return herd;
    }

    private static Answer decide(TestHerd herd, String cow, String date, String rest) {
        return herd.post(
                "breeding-decisions",
                "{\"animal\":" + TestHerd.animal(cow) + ",\"date\":\"" + date + "\",\"decision\":" + rest + "}");
    }

    private static JsonNode list(Answer worklist, String name) {
        for (JsonNode one : worklist.at("/lists")) {
            if (one.path("list").asText().equals(name)) {
                return one.path("cows");
            }
        }
        throw new AssertionError(worklist.text());
    }

    private static List<String> on(TestHerd herd, String list, String day) {
        List<String> cows = new ArrayList<>();
        list(herd.get("/breeding-worklist?asOf=" + day).expecting(200), list)
                .forEach(cow -> cows.add(cow.at("/animal/id").asText()));
        return cows;
    }

    @Test
    void aMarkedCowLeavesTheListToBreedFromItsDayOnAndTheReasonIsSaid() {
        TestHerd herd = twoCows();
        Answer unmarked = herd.get("/breeding-worklist?asOf=2026-01-20").expecting(200);
        decide(herd, "ASH", "2026-01-15", "\"doNotBreed\",\"reason\":\"third mastitis\"")
                .expecting(201);
        assertThat(on(herd, "toBreed", "2026-01-14")).containsExactly("ASH", "BIRCH");
        assertThat(on(herd, "toBreed", "2026-01-15")).containsExactly("BIRCH");
        assertThat(on(herd, "notToBreed", "2026-01-14")).isEmpty();
        JsonNode ash = list(herd.get("/breeding-worklist?asOf=2026-01-20"), "notToBreed")
                .get(0);
        assertThat(ash.path("why").asText())
                .isEqualTo("Not to be bred since 2026-01-15, by the farm's choice: third mastitis.");
        assertThat(ash.path("day").asText()).isEqualTo("2026-01-15");
        Answer summary = herd.getAnimal("ASH", "/summary?asOf=2026-01-20").expecting(200);
        assertThat(summary.textAt("/decisions/breeding/notToBeBredSince")).isEqualTo("2026-01-15");
        assertThat(summary.textAt("/decisions/breeding/notToBeBredReason")).isEqualTo("third mastitis");
        // as it was known before
        Answer before = herd.get("/breeding-worklist?asOf=2026-01-20&knownAt=" + unmarked.textAt("/knownAt"));
        assertThat(before.at("/lists")).isEqualTo(unmarked.at("/lists"));
        decide(herd, "ASH", "2026-02-01", "\"breedAgain\"").expecting(201);
        assertThat(on(herd, "toBreed", "2026-02-01")).containsExactly("ASH", "BIRCH");
        assertThat(on(herd, "notToBreed", "2026-01-31")).containsExactly("ASH");
        assertThat(herd.get("/breeding-decisions").at("/items").size()).isEqualTo(2);
    }

    @Test
    void aMarkedCowIsValuedWithoutBreeding() {
        TestHerd herd = twoCows();
        herd.post("prices", PRICES).expecting(201);
        decide(herd, "ASH", "2026-01-15", "\"doNotBreed\"").expecting(201);
        Answer bred = herd.getAnimal("BIRCH", "/outlook?asOf=2026-01-20").expecting(200);
        Answer marked = herd.getAnimal("ASH", "/outlook?asOf=2026-01-20").expecting(200);
        // the same cow but for the mark: worth what the other way of keeping her sister is worth
        assertThat(marked.numberAt("/outlook/retentionPayoff/value"))
                .isCloseTo(bred.numberAt("/outlook/alternative/payoff/value"), within(1e-6));
        Answer ranking = herd.get("/culling-ranking?asOf=2026-01-20").expecting(200);
        for (JsonNode cow : ranking.at("/cows")) {
            assertThat(cow.has("notToBeBred"))
                    .isEqualTo(cow.at("/animal/id").asText().equals("ASH"));
        }
    }

    @Test
    void aDecisionAfterSheLeftIsRefused() {
        TestHerd herd = twoCows().withDeparture("ASH", "2026-01-12", "sale");
        assertThat(decide(herd, "ASH", "2026-01-15", "\"doNotBreed\"")
                        .expecting(422)
                        .text())
                .contains("after-departure");
    }
}
