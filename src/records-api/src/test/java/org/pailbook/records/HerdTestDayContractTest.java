package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What only shows when a herd's cows are laid beside each other, who can have which record, and why a cow left. */
@QuarkusTest
class HerdTestDayContractTest {
    private static final String DAY = "2026-03-01";

    /** Six cows that calved on one day; the first two give what is said, the others 25 kg times a share of it. */
    private static TestHerd sixCows(double first, double second, double share) {
        TestHerd herd = TestHerd.make();
        for (int i = 0; i < 6; i++) {
            String cow = "C" + i;
            herd.withAnimal(cow)
                    .withCalving(cow, "2025-11-20", 2)
                    .withTestDay(cow, "2026-02-01", i == 0 ? 40 : i == 1 ? 15 : 25)
                    .withTestDay(cow, DAY, i == 0 ? first : i == 1 ? second : 25 * share);
        }
        return herd;
    }

    @Test
    void poundsForKilogramsAreAskedAboutBesideEveryFigureOfTheDay() {
        Answer summary = sixCows(18.1, 6.8, 0.4536).get("/summary?asOf=" + DAY).expecting(200);
        assertThat(summary.at("/warnings").findValuesAsText("code")).contains("unit-doubtful");
        assertThat(summary.at("/meanMilkOfLastTestDate/warnings").findValuesAsText("code"))
                .contains("unit-doubtful");
        // nothing was changed or left out
        assertThat(summary.numberAt("/milkOfLastTestDate/value"))
                .isCloseTo(18.1 + 6.8 + 4 * 25 * 0.4536, org.assertj.core.api.Assertions.within(1e-9));
        assertThat(sixCows(39, 14.5, 1)
                        .get("/summary?asOf=" + DAY)
                        .at("/warnings")
                        .findValuesAsText("code"))
                .doesNotContain("unit-doubtful", "whole-test-day-off");
    }

    @Test
    void twoSwappedCowsAreNamedInTheSummaryAndInTheTableOfFindings() {
        TestHerd herd = sixCows(15, 40, 1);
        Answer summary = herd.get("/summary?asOf=" + DAY).expecting(200);
        assertThat(summary.at("/cowsInMilk")).hasSize(6);
        summary.at("/cowsInMilk").forEach(cow -> {
            boolean isOneOfThem =
                    List.of("C0", "C1").contains(cow.at("/animal/id").asText());
            assertThat(cow.path("warnings").toString().contains("cows-swapped"))
                    .as(cow.toString())
                    .isEqualTo(isOneOfThem);
        });
        String table =
                herd.get("/reports/findings.csv?asOf=" + DAY).expecting(200).text();
        assertThat(table.lines().filter(line -> line.contains("cows-swapped")).toList())
                .hasSize(2)
                .anyMatch(line -> line.contains("C0") && line.contains("15.0 kg; the other cow 40.0 kg"));
    }

    @Test
    void aBullNeitherCalvesNorGivesMilkAndMayLeaveAndBeTreated() {
        TestHerd herd = TestHerd.make().withAnimal("BULL", ",\"sex\":\"male\"");
        String bull = "{\"animal\":" + TestHerd.animal("BULL") + ",\"date\":\"2026-01-10\"";
        for (String record : List.of(
                "calvings|}",
                "test-days|,\"milkKg\":20}",
                "services|}",
                "pregnancy-checks|,\"result\":\"empty\"}",
                "dry-offs|}")) {
            String[] part = record.split("\\|");
            Answer refused = herd.post(part[0], bull + part[1]).expecting(422);
            assertThat(refused.text()).as(part[0]).contains("male-animal");
        }
        herd.post("departures", bull + ",\"kind\":\"sale\"}").expecting(201);
    }

    @Test
    void aCowMayLeaveForThreeReasonsOfWhichTheFirstCounts() {
        TestHerd herd = TestHerd.make()
                .withAnimal("OLD")
                .withCalving("OLD", "2025-06-01", 5)
                .withTestDay("OLD", "2025-07-01", 20);
        String left = "{\"animal\":" + TestHerd.animal("OLD") + ",\"date\":\"2026-01-10\",\"kind\":\"slaughter\"";
        assertThat(herd.post("departures", left + ",\"secondReason\":\"Mastitis\"}")
                        .expecting(422)
                        .text())
                .contains("reason-missing");
        assertThat(herd.post("departures", left + ",\"reason\":\"Mastitis\",\"secondReason\":\"Mastitis\"}")
                        .expecting(422)
                        .text())
                .contains("reason-repeated");
        String three = left + ",\"reason\":\"Age\",\"secondReason\":\"Mastitis\",\"thirdReason\":\"LegOrClaw\"}";
        herd.post("departures", three).expecting(201);
        herd.post("departures", three).expecting(200);
        String csv = herd.get("/departures.csv").expecting(200).text();
        assertThat(csv.lines().findFirst().orElseThrow()).contains("reason", "second_reason", "third_reason");
        assertThat(csv).contains("Age", "Mastitis", "LegOrClaw");
        Answer turnover = herd.get("/summary?asOf=2026-02-01").expecting(200);
        assertThat(turnover.at("/measures/turnover/byReason").findValuesAsText("name"))
                .containsExactly("Age");
        assertThat(turnover.at("/measures/turnover/byAnyReason").findValuesAsText("name"))
                .containsExactlyInAnyOrder("Age", "Mastitis", "LegOrClaw");
        assertThat(turnover.at("/measures/fpcmPerCowYear/status").asText()).isEqualTo("notEnoughData");
    }
}
