package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import org.junit.jupiter.api.Test;

@QuarkusTest
class CullingRankingContractTest {
    private static final String PRICES =
            "{\"validFrom\":\"2025-01-01\",\"currency\":\"EUR\",\"milkPricePerKg\":0.45,\"heiferPrice\":1700,\"cullPrice\":832,"
                    + "\"calfPrice\":120,\"feedPricePerKgDryMatter\":0.26,\"servicePrice\":25,\"fixedCostPerCowMonth\":45}";
    private static final String RANKING = "/culling-ranking?asOf=2026-01-01";

    /** Three cows that calved on one day: one pregnant, one open, one served; the open one gives the least. */
    private static TestHerd threeCows() {
        TestHerd herd = TestHerd.make();
        double[] kg = {30, 22, 29};
        for (int i = 1; i <= 3; i++) {
            String cow = "C" + i;
            herd.withAnimal(cow).withCalving(cow, "2025-03-01", 3);
            for (String date : new String[] {"2025-04-05", "2025-05-10", "2025-06-14", "2025-09-20"}) {
                herd.withTestDay(cow, date, kg[i - 1]);
            }
        }
        serve(herd, "C1", "2025-06-01");
        serve(herd, "C2", "2025-06-03");
        serve(herd, "C3", "2025-11-01");
        check(herd, "C1", "2025-07-15", "pregnant");
        check(herd, "C2", "2025-07-15", "empty");
        return herd;
    }

    private static void serve(TestHerd herd, String cow, String date) {
        herd.post("services", "{\"animal\":" + TestHerd.animal(cow) + ",\"date\":\"" + date + "\"}")
                .expecting(201);
    }

    private static void check(TestHerd herd, String cow, String date, String result) {
        herd.post(
                        "pregnancy-checks",
                        "{\"animal\":" + TestHerd.animal(cow) + ",\"date\":\"" + date + "\",\"result\":\"" + result
                                + "\"}")
                .expecting(201);
    }

    @Test
    void theOpenLowCowComesFirstAndThePregnantOneLast() {
        TestHerd herd = threeCows();
        herd.post("prices", PRICES).expecting(201);
        Answer answer = herd.get(RANKING).expecting(200);
        assertThat(answer.textAt("/basis")).isEqualTo("money");
        assertThat(answer.textAt("/currency")).isEqualTo("EUR");
        assertThat(answer.textAt("/method/name")).isEqualTo("retention-payoff");
        assertThat(answer.textAt("/caution")).contains("veterinarian", "meat withholding on the label");
        assertThat(answer.at("/cows").findValuesAsText("id")).containsExactly("C2", "C3", "C1");
        assertThat(answer.at("/cows").findValuesAsText("pregnancy")).containsExactly("open", "inseminated", "pregnant");
        for (int i = 0; i < 3; i++) {
            String cow = "/cows/" + i;
            assertThat(answer.countAt(cow + "/rank")).isEqualTo(i + 1);
            double payoff = answer.numberAt(cow + "/retentionPayoff");
            assertThat(payoff).isBetween(answer.numberAt(cow + "/low"), answer.numberAt(cow + "/high"));
            assertThat(answer.countAt(cow + "/lowestRank")).isLessThanOrEqualTo(i + 1);
            assertThat(answer.at(cow + "/reasons")).isNotEmpty();
            assertThat(answer.at(cow + "/warnings").toString()).contains("health-not-valued");
            // from 1 March to 1 January
            assertThat(answer.countAt(cow + "/daysSinceCalving")).isEqualTo(306);
        }
        assertThat(answer.at("/cows/1/warnings").toString()).contains("pregnancy-not-checked");
        assertThat(answer.at("/cows/0/withoutBreeding/untilMonthInMilk").asInt())
                .isGreaterThanOrEqualTo(12);
        assertThat(answer.numberAt("/cows/2/pregnancyValue")).isGreaterThan(100);
        assertThat(answer.numberAt("/meanNewPregnancy/value")).isPositive();
        assertThat(answer.at("/warnings").findValuesAsText("code")).contains("reference-value-used");
        assertThat(answer.at("/assumed").findValuesAsText("pointer"))
                .contains("/parity 1/bodyWeightKg", "/prices/interestPctPerYear")
                .doesNotContain("/prices/calfPrice");
    }

    private static double pregnancyValue(Answer worklist, String list, String cow) {
        for (JsonNode one : worklist.at("/lists")) {
            for (JsonNode line : one.path("cows")) {
                if (one.path("list").asText().equals(list)
                        && line.at("/animal/id").asText().equals(cow)) {
                    assertThat(line.has("pregnancyValue")).isTrue();
                    return line.path("pregnancyValue").doubleValue();
                }
            }
        }
        throw new AssertionError(cow + " is not on " + list + ": " + worklist.text());
    }

    @Test
    void theBreedingListsSayWhatAPregnancyIsWorthAsTheRankingDoes() {
        TestHerd herd = threeCows().withAnimal("HEIFER");
        Answer none = herd.get("/breeding-worklist?asOf=2026-01-01").expecting(200);
        assertThat(none.textAt("/pregnancyWorth/status")).isEqualTo("notEnoughData");
        assertThat(none.at("/pregnancyWorth/warnings").findValuesAsText("code")).containsExactly("prices-needed");
        assertThat(none.text()).doesNotContain("pregnancyValue");
        herd.post("prices", PRICES).expecting(201);
        Answer ranking = herd.get(RANKING).expecting(200);
        Answer lists = herd.get("/breeding-worklist?asOf=2026-01-01").expecting(200);
        // open, served 61 days ago, seven months pregnant: each on the list her record puts her on
        assertThat(pregnancyValue(lists, "toBreed", "C2")).isEqualTo(ranking.numberAt("/cows/0/pregnancyValue"));
        assertThat(pregnancyValue(lists, "toCheck", "C3")).isEqualTo(ranking.numberAt("/cows/1/pregnancyValue"));
        assertThat(pregnancyValue(lists, "dueToDryOff", "C1")).isEqualTo(ranking.numberAt("/cows/2/pregnancyValue"));
        assertThat(lists.textAt("/pregnancyWorth/currency")).isEqualTo("EUR");
        assertThat(lists.textAt("/pregnancyWorth/method/name")).isEqualTo("pregnancy-value");
        assertThat(lists.at("/pregnancyWorth/warnings")).isEqualTo(ranking.at("/warnings"));
        Answer summary = herd.get("/breeding-summary?asOf=2026-01-01").expecting(200);
        assertThat(summary.at("/pregnancyWorth/meanNewPregnancy")).isEqualTo(ranking.at("/meanNewPregnancy"));
        assertThat(summary.at("/pregnancyWorth/meanPregnancyLoss")).isEqualTo(ranking.at("/meanPregnancyLoss"));
        assertThat(summary.at("/pregnancyWorth/assumed")).isEqualTo(ranking.at("/assumed"));
        // a heifer that costs less than a cow sells for: no value, and it is said
        herd.post("prices", PRICES.replace("1700", "500").replace("2025-01-01", "2025-12-01"))
                .expecting(201);
        assertThat(herd.get("/breeding-summary?asOf=2026-01-01")
                        .at("/pregnancyWorth/warnings")
                        .findValuesAsText("code"))
                .containsExactly("prices-needed");
    }

    @Test
    void withoutPricesItIsByMilkAndWithPartOfThemToo() {
        TestHerd herd = threeCows();
        Answer none = herd.get(RANKING).expecting(200);
        assertThat(none.textAt("/basis")).isEqualTo("milk");
        assertThat(none.at("/warnings").findValuesAsText("code")).contains("prices-not-set");
        assertThat(none.textAt("/warnings/0/message")).isEqualTo("Prices are not set: the list is by milk only.");
        assertThat(none.at("/cows").findValuesAsText("id")).containsExactly("C2", "C3", "C1");
        assertThat(none.numberAt("/cows/0/milkLevelPct")).isLessThan(100);
        assertThat(none.at("/cows/0/retentionPayoff").isMissingNode()).isTrue();
        assertThat(none.textAt("/caution")).isNotBlank();
        herd.post("prices", "{\"validFrom\":\"2025-01-01\",\"currency\":\"EUR\",\"milkPricePerKg\":0.45}")
                .expecting(201);
        assertThat(herd.get(RANKING).expecting(200).textAt("/basis")).isEqualTo("milk");
        // prices of later take no part
        herd.post("prices", PRICES.replace("2025-01-01", "2026-01-02")).expecting(201);
        assertThat(herd.get(RANKING).expecting(200).textAt("/basis")).isEqualTo("milk");
        assertThat(herd.get("/culling-ranking?asOf=2026-01-02").expecting(200).textAt("/basis"))
                .isEqualTo("money");
    }

    @Test
    void aHeiferCheaperThanTheSaleIsToldAndTheListIsByMilk() {
        TestHerd herd = threeCows();
        herd.post("prices", PRICES.replace("1700", "500")).expecting(201);
        Answer answer = herd.get(RANKING).expecting(200);
        assertThat(answer.textAt("/basis")).isEqualTo("milk");
        assertThat(answer.at("/warnings").findValuesAsText("code")).contains("prices-contradict");
    }

    @Test
    void anEmptyHerdAndAHerdInItsFirstWeekHaveAList() {
        TestHerd empty = TestHerd.make();
        empty.post("prices", PRICES).expecting(201);
        Answer none = empty.get(RANKING).expecting(200);
        assertThat(none.textAt("/status")).isEqualTo("notEnoughData");
        assertThat(none.at("/cows")).isEmpty();
        assertThat(none.textAt("/caution")).isNotBlank();
        assertThat(none.at("/warnings").findValuesAsText("code")).contains("curve-not-of-herd");
        TestHerd first = TestHerd.make()
                .withAnimal("N1")
                .withCalving("N1", "2025-12-20", 1)
                .withAnimal("N2");
        first.post("prices", PRICES).expecting(201);
        Answer week = first.get(RANKING).expecting(200);
        assertThat(week.at("/cows").findValuesAsText("id")).containsExactly("N1");
        assertThat(week.at("/cows/0/warnings").toString()).contains("milk-level-assumed");
        assertThat(week.at("/cows/0/milkLevelPct").isMissingNode()).isTrue();
        // by milk there is nothing to rank by yet, and that is told
        Answer later = TestHerd.make()
                .withAnimal("N1")
                .withCalving("N1", "2025-12-20", 1)
                .get(RANKING)
                .expecting(200);
        assertThat(later.at("/cows")).isEmpty();
        assertThat(later.at("/notRanked").findValuesAsText("id")).containsExactly("N1");
        assertThat(later.at("/notRanked/0/warnings").toString()).contains("no-test-days");
    }

    @Test
    void whoLeftIsNotListedAndWhoIsDryIs() {
        TestHerd herd = threeCows();
        herd.post("prices", PRICES).expecting(201);
        herd.withDeparture("C2", "2025-12-01", "sale").withDryOff("C1", "2025-12-28");
        Answer answer = herd.get(RANKING).expecting(200);
        assertThat(answer.at("/cows").findValuesAsText("id")).containsExactlyInAnyOrder("C1", "C3");
        // the day before she left she was in it
        assertThat(herd.get("/culling-ranking?asOf=2025-11-30")
                        .expecting(200)
                        .at("/cows")
                        .findValuesAsText("id"))
                .contains("C2");
    }

    @Test
    void aKeyOfAnotherHerdSeesNothing() {
        TestHerd herd = threeCows();
        TestHerd other = TestHerd.make();
        assertThat(herd.withKey(TestHerd.key("read", other.code(), null))
                        .get(RANKING)
                        .expecting(404)
                        .textAt("/code"))
                .isEqualTo("not-found");
        assertThat(herd.get("/culling-ranking?asOf=2026-13-01").expecting(400).textAt("/code"))
                .isEqualTo("bad-parameter");
    }

    // Cull price 832 = 1.30 a kg of 640 kg, the mean weight of the reference set; a fresh heifer of the herd is worth
    // keeping
    @Test
    void aPregnancyFoundWithoutAServiceIsCountedFromTheCheck() {
        TestHerd herd = TestHerd.make().withAnimal("P1").withCalving("P1", "2025-03-01", 2);
        herd.withTestDay("P1", "2025-05-10", 30).withTestDay("P1", "2025-06-14", 30);
        check(herd, "P1", "2025-08-01", "pregnant");
        herd.post("prices", PRICES).expecting(201);
        Answer answer = herd.get(RANKING).expecting(200);
        assertThat(answer.textAt("/cows/0/pregnancy")).isEqualTo("pregnant");
        assertThat(answer.at("/cows/0/warnings").toString()).contains("conception-assumed");
        assertThat(answer.numberAt("/cows/0/milkLevelPct")).isCloseTo(100, within(1e-9));
    }

    @Test
    void aCowsOutlookIsThatOfTheRankingWithEveryFigureExplained() {
        TestHerd herd = threeCows();
        herd.post("prices", PRICES).expecting(201);
        Answer ranking = herd.get(RANKING);
        for (int i = 0; i < 3; i++) {
            String cow = ranking.textAt("/cows/" + i + "/animal/id");
            Answer outlook = herd.getAnimal(cow, "/outlook?asOf=2026-01-01").expecting(200);
            assertThat(outlook.textAt("/status")).isEqualTo("ok");
            assertThat(outlook.textAt("/caution")).isEqualTo(ranking.textAt("/caution"));
            assertThat(outlook.numberAt("/outlook/retentionPayoff/value"))
                    .isEqualTo(ranking.numberAt("/cows/" + i + "/retentionPayoff"));
            assertThat(outlook.textAt("/outlook/suggestion/code"))
                    .isEqualTo(ranking.textAt("/cows/" + i + "/suggestion"));
            assertThat(outlook.at("/outlook/retentionPayoff/explanation")).isNotEmpty();
            assertThat(outlook.at("/assumed")).isEqualTo(ranking.at("/assumed"));
        }
        herd.withAnimal("HEIFER");
        Answer heifer = herd.getAnimal("HEIFER", "/outlook?asOf=2026-01-01").expecting(200);
        assertThat(heifer.textAt("/status")).isEqualTo("notEnoughData");
        assertThat(heifer.at("/outlook").isMissingNode()).isTrue();
        assertThat(heifer.at("/warnings").findValuesAsText("code")).contains("no-calving");
    }

    // The three cows of parity 3 in 2025: rates as in breeding-summary; 60 cycles would weigh as much as the reference
    // (ours).
    @Test
    void theHerdsOwnPregnanciesMoveTheReferenceAndAreNamed() {
        TestHerd herd = threeCows();
        herd.post("prices", PRICES).expecting(201);
        Answer answer = herd.get(RANKING);
        assertThat(answer.at("/ownPregnancies").findValuesAsText("parity")).containsExactly("3");
        int cycles = answer.countAt("/ownPregnancies/0/eligibleCycles");
        int pregnancies = answer.countAt("/ownPregnancies/0/pregnancies");
        assertThat(pregnancies).isEqualTo(1);
        double weight = cycles / (cycles + 60.0);
        assertThat(answer.numberAt("/ownPregnancies/0/weightPct")).isCloseTo(100 * weight, within(1e-9));
        // decisions.md 1.3: 19 % is the reference for parity 3
        assertThat(answer.numberAt("/ownPregnancies/0/pregnancyRate21DayPct"))
                .isCloseTo((1 - weight) * 19 + weight * 100 * pregnancies / cycles, within(1e-9));
        assertThat(answer.at("/assumed").findValuesAsText("pointer"))
                .contains("/parity 2/pregnancyRate21DayPct", "/parity 3/unplannedExitPctPerMonth")
                .doesNotContain("/parity 3/pregnancyRate21DayPct");
        // nothing of it is learned where no service is recorded
        TestHerd silent = TestHerd.make().withAnimal("A").withCalving("A", "2025-03-01", 3);
        silent.post("prices", PRICES).expecting(201);
        Answer none = silent.get(RANKING);
        assertThat(none.at("/ownPregnancies")).isEmpty();
        assertThat(none.at("/assumed").findValuesAsText("pointer")).contains("/parity 3/pregnancyRate21DayPct");
    }

    // A cow of parity 3 died on day 100 of 2025: decisions.md 1.3, own exits per cow-month, weight n / (n + 60) (ours).
    @Test
    void theHerdsOwnExitsMoveTheReferenceAndAreNamed() {
        TestHerd herd = threeCows();
        herd.post("prices", PRICES).expecting(201);
        assertThat(herd.get(RANKING).at("/ownExits")).isEmpty();
        herd.withAnimal("C4").withCalving("C4", "2025-03-01", 3).withDeparture("C4", "2025-06-09", "death");
        herd.withAnimal("C5").withCalving("C5", "2025-03-01", 3).withDeparture("C5", "2025-06-09", "sale");
        Answer answer = herd.get(RANKING).expecting(200);
        assertThat(answer.at("/ownExits").findValuesAsText("parity")).containsExactly("3");
        assertThat(answer.countAt("/ownExits/0/exits")).isEqualTo(1);
        // three cows from 1 March to 1 January, both days counted, and two of 100 days; 61 of each are fresh and count
        // twice
        double days = 3 * 307 + 2 * 100;
        double months = days / 30.4375;
        double weight = months / (months + 60);
        assertThat(answer.numberAt("/ownExits/0/cowMonths")).isCloseTo(months, within(1e-9));
        assertThat(answer.numberAt("/ownExits/0/weightPct")).isCloseTo(100 * weight, within(1e-9));
        // 1.5 % is the reference for parity 3
        double own = 1 / ((days + 5 * 61) / 30.4375);
        assertThat(answer.numberAt("/ownExits/0/unplannedExitPctPerMonth"))
                .isCloseTo((1 - weight) * 1.5 + weight * 100 * own, within(1e-9));
        assertThat(answer.at("/assumed").findValuesAsText("pointer"))
                .contains("/parity 2/unplannedExitPctPerMonth")
                .doesNotContain("/parity 3/unplannedExitPctPerMonth");
    }
}
