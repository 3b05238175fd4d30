package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Five cows walked through by hand: why is she on this list, whose milk stays out, and what is counted over what. */
@QuarkusTest
class HerdListsContractTest {
    private static final String DAY = "2026-03-10";

    private static void service(TestHerd herd, String cow, String date) {
        herd.post("services", "{\"animal\":" + TestHerd.animal(cow) + ",\"date\":\"" + date + "\"}")
                .expecting(201);
    }

    private static void check(TestHerd herd, String cow, String date, String result) {
        herd.post(
                        "pregnancy-checks",
                        "{\"animal\":%s,\"date\":\"%s\",\"result\":\"%s\"}"
                                .formatted(TestHerd.animal(cow), date, result))
                .expecting(201);
    }

    private static void treatment(TestHerd herd, String cow, String startedOn, String until) {
        herd.post(
                        "treatments",
                        "{\"animal\":%s,\"startedOn\":\"%s\",\"productName\":\"a product\",\"prescriber\":\"the vet\"%s}"
                                .formatted(
                                        TestHerd.animal(cow),
                                        startedOn,
                                        until == null ? "" : ",\"milkWithheldUntil\":\"" + until + "\""))
                .expecting(201);
    }

    private static void foremilk(TestHerd herd, String cow, String date, String finding, String action) {
        herd.post(
                        "foremilk-checks",
                        "{\"animal\":%s,\"date\":\"%s\",\"milkingOfDay\":\"am\",\"quarter\":\"LF\",\"finding\":\"%s\"%s}"
                                .formatted(
                                        TestHerd.animal(cow),
                                        date,
                                        finding,
                                        action == null ? "" : ",\"action\":\"" + action + "\""))
                .expecting(201);
    }

    /** Ash never served, Birch late, Cedar served 20 days ago, Dogwood found pregnant once, Elm near her dry-off. */
    private static TestHerd fiveCows() {
        TestHerd herd = TestHerd.make();
        for (String cow : List.of("ASH", "BIRCH", "CEDAR", "DOGWOOD", "ELM")) {
            herd.withAnimal(cow);
        }
        herd.withCalving("ASH", "2025-12-20", 1)
                .withCalving("BIRCH", "2025-11-01", 2)
                .withCalving("CEDAR", "2025-12-01", 3)
                .withCalving("DOGWOOD", "2025-10-01", 2)
                .withCalving("ELM", "2025-06-01", 4);
        service(herd, "CEDAR", "2026-02-18");
        service(herd, "DOGWOOD", "2025-12-20");
        check(herd, "DOGWOOD", "2026-01-28", "pregnant");
        service(herd, "ELM", "2025-08-05");
        check(herd, "ELM", "2025-09-15", "pregnant");
        check(herd, "ELM", "2025-10-20", "pregnant");
        return herd;
    }

    private static List<String> on(Answer worklist, String list) {
        List<String> cows = new ArrayList<>();
        for (JsonNode one : worklist.at("/lists")) {
            if (one.path("list").asText().equals(list)) {
                one.path("cows").forEach(cow -> cows.add(cow.at("/animal/id").asText()));
            }
        }
        return cows;
    }

    private static JsonNode cow(Answer worklist, String list, String id) {
        for (JsonNode one : worklist.at("/lists")) {
            if (one.path("list").asText().equals(list)) {
                for (JsonNode cow : one.path("cows")) {
                    if (cow.at("/animal/id").asText().equals(id)) {
                        return cow;
                    }
                }
            }
        }
        throw new AssertionError(id + " is not on " + list + ": " + worklist.text());
    }

    private static JsonNode measure(Answer answer, String list, String name) {
        for (JsonNode one : answer.at(list)) {
            if (one.path("measure").asText().equals(name)) {
                return one;
            }
        }
        throw new AssertionError(name + " is not in " + list + ": " + answer.text());
    }

    private static List<String> codes(Answer answer) {
        return answer.at("/warnings").findValuesAsText("code");
    }

    @Test
    void everyOfTheFiveCowsIsWhereHerRecordPutsHer() {
        Answer lists = fiveCows()
                .get("/breeding-worklist?asOf=" + DAY + "&waitingDays=60")
                .expecting(200);
        assertThat(lists.textAt("/status")).isEqualTo("ok");
        assertThat(on(lists, "toBreed")).containsExactly("BIRCH", "CEDAR", "ASH");
        assertThat(on(lists, "notYetServedLate")).containsExactly("BIRCH");
        assertThat(on(lists, "watchForReturn")).containsExactly("CEDAR");
        assertThat(on(lists, "toCheck")).isEmpty();
        assertThat(on(lists, "recheck")).containsExactly("DOGWOOD");
        assertThat(on(lists, "repeatBreeder")).isEmpty();
        assertThat(on(lists, "dueToDryOff")).containsExactly("ELM");
        assertThat(on(lists, "dueToCalve")).isEmpty();
        assertThat(cow(lists, "toBreed", "ASH").path("why").asText())
                .isEqualTo("Calved 2025-12-20, 80 days ago (waiting period 60 days); not served since.");
        assertThat(cow(lists, "toBreed", "CEDAR").path("why").asText())
                .contains("last served 2026-02-18")
                .contains("make sure she is open");
        JsonNode elm = cow(lists, "dueToDryOff", "ELM");
        // conceived 5 August, 279 days: 11 May; 60 days before it 12 March
        assertThat(elm.at("/expectedCalving/due").asText()).isEqualTo("2026-05-11");
        assertThat(elm.path("day").asText()).isEqualTo("2026-03-12");
        assertThat(elm.path("state").asText()).isEqualTo("pregnant");
        assertThat(lists.at("/settings/isWaitingAssumed").booleanValue()).isFalse();
        assertThat(lists.at("/cautions").size()).isPositive();
        for (JsonNode list : lists.at("/lists")) {
            assertThat(list.path("rule").asText()).isNotBlank();
            assertThat(list.path("source").asText()).isNotBlank();
        }
    }

    @Test
    void theListsOfAnEarlierDayKnowNothingOfWhatCameLater() {
        TestHerd herd = fiveCows();
        Answer lists = herd.get("/breeding-worklist?asOf=2026-01-20&waitingDays=60&checkDays=28")
                .expecting(200);
        // 31 days after her service, and the check of 28 January has not happened
        assertThat(on(lists, "toCheck")).containsExactly("DOGWOOD");
        assertThat(on(lists, "toBreed")).containsExactly("DOGWOOD", "BIRCH");
        assertThat(on(lists, "recheck")).isEmpty();
        assertThat(on(
                        herd.get("/breeding-worklist?asOf=2026-01-20&waitingDays=60")
                                .expecting(200),
                        "toCheck"))
                .isEmpty();
    }

    @Test
    void aRecordSentAgainOrACheckThatFindsHerOpenChangesTheListsAsItShould() {
        TestHerd herd = fiveCows();
        String body = "{\"animal\":" + TestHerd.animal("CEDAR") + ",\"date\":\"2026-02-18\"}";
        herd.post("services", body).expecting(200);
        check(herd, "DOGWOOD", "2026-03-09", "empty");
        Answer lists = herd.get("/breeding-worklist?asOf=" + DAY + "&waitingDays=60");
        assertThat(on(lists, "watchForReturn")).containsExactly("CEDAR");
        assertThat(on(lists, "recheck")).isEmpty();
        assertThat(on(lists, "toBreed")).contains("DOGWOOD");
        Answer summary = herd.get("/breeding-summary?asOf=" + DAY).expecting(200);
        JsonNode loss = measure(summary, "/measures", "pregnancy-loss");
        assertThat(loss.at("/numerator/value").doubleValue()).isEqualTo(1);
        assertThat(loss.at("/denominator/value").doubleValue()).isEqualTo(2);
        assertThat(loss.at("/figure/warnings").findValuesAsText("code")).contains("small-number");
    }

    @Test
    void theSummaryCountsWhatWasCountedByHand() {
        Answer summary = fiveCows()
                .get("/breeding-summary?asOf=" + DAY + "&waitingDays=60")
                .expecting(200);
        JsonNode risk = measure(summary, "/measures", "conception-risk");
        // services of Dogwood and Elm took; Cedar's is too young to be asked for
        assertThat(risk.at("/numerator/value").doubleValue()).isEqualTo(2);
        assertThat(risk.at("/denominator/value").doubleValue()).isEqualTo(2);
        assertThat(risk.at("/figure/interval95/low").doubleValue()).isBetween(0.0, 100.0);
        // calving to expected calving: 359 and 344 days
        assertThat(measure(summary, "/measures", "projected-calving-interval")
                        .at("/figure/value")
                        .doubleValue())
                .isCloseTo(351.5, within(1e-9));
        // 80 and 65 days
        JsonNode open = measure(summary, "/measures", "mean-days-open");
        assertThat(open.at("/figure/value").doubleValue()).isCloseTo(72.5, within(1e-9));
        assertThat(open.at("/figure/warnings").findValuesAsText("code")).contains("open-cows-left-out");
        assertThat(summary.at("/cycles")).hasSize(17);
        assertThat(summary.textAt("/cycles/16/last")).isEqualTo(DAY);
        assertThat(summary.countAt("/timeToPregnancy/pregnant")).isEqualTo(2);
        assertThat(summary.countAt("/timeToPregnancy/cows")).isEqualTo(5);
        for (JsonNode one : summary.at("/measures")) {
            assertThat(one.at("/numerator/what").asText()).isNotBlank();
            assertThat(one.at("/denominator/what").asText()).isNotBlank();
            assertThat(one.at("/figure/method/sourceKnown").asText()).isNotBlank();
        }
    }

    @Test
    void aHerdWithoutServicesOrWithoutChecksSaysWhatItLacks() {
        TestHerd herd = TestHerd.make();
        assertThat(codes(herd.get("/breeding-worklist?asOf=" + DAY).expecting(200)))
                .containsExactly("waiting-period-assumed", "services-needed");
        herd.withAnimal("ASH").withCalving("ASH", "2025-12-20", 1);
        Answer noServices = herd.get("/breeding-summary?asOf=" + DAY).expecting(200);
        assertThat(noServices.textAt("/status")).isEqualTo("notEnoughData");
        assertThat(noServices.at("/pregnancyRateOfLateCycles/figure/value").isMissingNode())
                .isTrue();
        // she is to be bred all the same: calving and waiting period are known
        assertThat(on(herd.get("/breeding-worklist?asOf=" + DAY), "toBreed")).containsExactly("ASH");
        service(herd, "ASH", "2026-02-20");
        Answer noChecks =
                herd.get("/breeding-summary?asOf=" + DAY + "&waitingDays=50").expecting(200);
        assertThat(codes(noChecks)).containsExactly("pregnancy-checks-needed");
        assertThat(measure(noChecks, "/measures", "insemination-risk-21")
                        .at("/numerator/value")
                        .doubleValue())
                .isEqualTo(1);
    }

    @Test
    void milkStaysOutByWhatWasEnteredAndUntilSomebodyClearsIt() {
        TestHerd herd = fiveCows();
        treatment(herd, "BIRCH", "2026-03-08", null);
        treatment(herd, "CEDAR", "2026-03-08", DAY);
        foremilk(herd, "ASH", "2026-03-09", "flakes", "withheld");
        foremilk(herd, "ASH", "2026-03-10", "normal", null);
        Answer out = herd.get("/milk-withheld?at=2026-03-10T06:00:00Z").expecting(200);
        assertThat(out.at("/cows").findValuesAsText("kind"))
                .containsExactlyInAnyOrder("foremilk", "treatmentEndNotEntered", "treatment");
        JsonNode birch = withheld(out, "BIRCH");
        assertThat(birch.path("isEndKnown").booleanValue()).isFalse();
        assertThat(birch.has("until")).isFalse();
        assertThat(birch.at("/reasons/0/saidBy").asText()).isEqualTo("the vet");
        assertThat(birch.at("/reasons/0/since").asText()).isEqualTo("2026-03-08");
        assertThat(withheld(out, "CEDAR").path("until").asText()).isEqualTo(DAY);
        assertThat(out.at("/foremilkNotRecorded").findValuesAsText("id"))
                .containsExactlyInAnyOrder("BIRCH", "CEDAR", "DOGWOOD", "ELM");
        assertThat(out.textAt("/caution")).contains("does not say it is safe");
        // the day entered is withheld to its end in Dublin, and a person clears the quarter
        foremilk(herd, "ASH", "2026-03-11", "normal", "none");
        Answer after = herd.get("/milk-withheld?at=2026-03-11T00:00:00Z").expecting(200);
        assertThat(after.at("/cows").findValuesAsText("kind")).containsExactly("treatmentEndNotEntered");
        assertThat(herd.get("/milk-withheld?asOf=" + DAY).expecting(200).at("/cows"))
                .hasSize(3);
        assertThat(herd.get("/milk-withheld?asOf=2026-03-07").expecting(200).at("/cows"))
                .isEmpty();
    }

    private static JsonNode withheld(Answer answer, String id) {
        for (JsonNode cow : answer.at("/cows")) {
            if (cow.at("/animal/id").asText().equals(id)) {
                return cow;
            }
        }
        throw new AssertionError(id + " is not withheld: " + answer.text());
    }

    @Test
    void aFreshCowStaysOutForTheColostrumDaysOfTheSetting() {
        TestHerd herd = TestHerd.make().withAnimal("ASH").withCalving("ASH", "2026-03-06", 1);
        assertThat(herd.get("/milk-withheld?asOf=2026-03-10").at("/cows").findValuesAsText("kind"))
                .containsExactly("colostrum");
        assertThat(herd.get("/milk-withheld?asOf=2026-03-11").at("/cows")).isEmpty();
        assertThat(herd.get("/milk-withheld?asOf=2026-03-11&colostrumDays=8").at("/cows"))
                .hasSize(1);
        herd.withDeparture("ASH", "2026-03-08", "sale");
        assertThat(herd.get("/milk-withheld?asOf=2026-03-10").at("/cows")).isEmpty();
    }

    private static void tested(TestHerd herd, String cow, double milkKg, double before, double now) {
        for (String[] test :
                new String[][] {{"2026-02-01", Double.toString(before)}, {"2026-03-01", Double.toString(now)}}) {
            herd.post(
                            "test-days",
                            "{\"animal\":%s,\"date\":\"%s\",\"milkKg\":%s,\"sccThousandPerMl\":%s}"
                                    .formatted(TestHerd.animal(cow), test[0], milkKg, test[1]))
                    .expecting(201);
        }
    }

    private static TestHerd fiveTested() {
        TestHerd herd = fiveCows();
        tested(herd, "ASH", 30, 80, 300);
        tested(herd, "BIRCH", 25, 300, 90);
        tested(herd, "CEDAR", 20, 400, 500);
        tested(herd, "DOGWOOD", 28, 90, 80);
        tested(herd, "ELM", 15, 100, 110);
        return herd;
    }

    @Test
    void fiveCowsHaveTheirStatesAndTheirPartOfTheTank() {
        TestHerd herd = fiveTested();
        Answer udders = herd.get("/udder-health?asOf=" + DAY).expecting(200);
        assertThat(udders.textAt("/status")).isEqualTo("ok");
        assertThat(udders.at("/cows").findValuesAsText("state"))
                .containsExactly("chronic", "new", "clean", "cured", "clean");
        counted(udders, "cell-count-prevalence", 2, 5);
        counted(udders, "new-infection-risk", 1, 3);
        counted(udders, "cure-risk", 1, 2);
        counted(udders, "chronic-share", 1, 5);
        // (30 x 300 + 25 x 90 + 20 x 500 + 28 x 80 + 15 x 110) / 118
        assertThat(udders.numberAt("/tank/estimate/value")).isCloseTo(25140 / 118.0, within(1e-9));
        assertThat(udders.textAt("/tank/shares/0/animal/id")).isEqualTo("CEDAR");
        assertThat(udders.numberAt("/tank/shares/0/tankWithoutHer")).isCloseTo(15140 / 98.0, within(1e-9));
        // withheld on the day of the test she is not in the tank
        treatment(herd, "CEDAR", "2026-02-28", "2026-03-04");
        Answer without = herd.get("/udder-health?asOf=" + DAY);
        assertThat(without.numberAt("/tank/estimate/value")).isCloseTo(15140 / 98.0, within(1e-9));
        assertThat(without.at("/tank/withheld").findValuesAsText("id")).containsExactly("CEDAR");
        assertThat(without.at("/cautions").size()).isPositive();
    }

    private static void counted(Answer answer, String measure, int numerator, int denominator) {
        JsonNode one = measure(answer, "/lastTest", measure);
        assertThat(one.at("/numerator/value").doubleValue()).as(measure).isEqualTo(numerator);
        assertThat(one.at("/denominator/value").doubleValue()).as(measure).isEqualTo(denominator);
        assertThat(one.at("/figure/warnings").findValuesAsText("code")).contains("small-number");
    }

    @Test
    void theTankIsHeldAgainstTheLimitChosenAndNoOther() {
        TestHerd herd = fiveTested();
        assertThat(herd.get("/udder-health?asOf=" + DAY).at("/tank/standing").isMissingNode())
                .isTrue();
        Answer few = herd.get("/udder-health?asOf=" + DAY + "&tankLimit=eu-853-2004");
        assertThat(few.textAt("/tank/standing/standing")).isEqualTo("tooFewSamples");
        double[] counts = {350, 420, 460};
        String[] days = {"2026-01-05", "2026-02-05", "2026-03-05"};
        for (int i = 0; i < 3; i++) {
            herd.post(
                            "tank-pickups",
                            "{\"tank\":\"main\",\"pickedUpAt\":\"%sT08:00:00Z\",\"milkKg\":400,\"sccThousandPerMl\":%s}"
                                    .formatted(days[i], counts[i]))
                    .expecting(201);
        }
        Answer above = herd.get("/udder-health?asOf=" + DAY + "&tankLimit=eu-853-2004");
        assertThat(above.textAt("/tank/standing/standing")).isEqualTo("above");
        assertThat(above.numberAt("/tank/standing/valueThousandPerMl")).isCloseTo(407.403781, within(1e-6));
        assertThat(above.textAt("/tank/standing/words")).contains("Ask your buyer or authority");
        assertThat(above.at("/seeVeterinarian").findValuesAsText("trigger")).contains("tankAboveLimit");
        assertThat(above.numberAt("/tank/measured/sccThousandPerMl")).isEqualTo(460);
    }

    @Test
    void aSoreQuarterIsForTheVeterinarianToday() {
        TestHerd herd = fiveCows();
        herd.post(
                        "foremilk-checks",
                        "{\"animal\":%s,\"date\":\"%s\",\"milkingOfDay\":\"pm\",\"quarter\":\"RR\",\"finding\":\"watery\",\"udder\":\"hot\"}"
                                .formatted(TestHerd.animal("ASH"), DAY))
                .expecting(201);
        Answer udders = herd.get("/udder-health?asOf=" + DAY).expecting(200);
        assertThat(udders.textAt("/seeVeterinarian/0/trigger")).isEqualTo("today");
        assertThat(udders.textAt("/seeVeterinarian/0/animal/id")).isEqualTo("ASH");
        assertThat(udders.textAt("/status")).isEqualTo("notEnoughData");
        assertThat(codes(udders)).containsExactly("scc-needed");
    }

    @Test
    void oldTestsAreSaidToBeOld() {
        Answer old = fiveTested().get("/udder-health?asOf=2026-06-15").expecting(200);
        assertThat(codes(old)).containsExactly("no-recent-test", "low-count-is-no-proof");
        assertThat(old.textAt("/warnings/0/seen")).isEqualTo("106 days ago");
    }

    @Test
    void theSummaryHasMeasuresWithTheirCountsAndTheYearBefore() {
        TestHerd herd = fiveTested().withDeparture("BIRCH", "2026-03-05", "slaughter");
        Answer summary = herd.get("/summary?asOf=" + DAY).expecting(200);
        assertThat(summary.numberAt("/measures/milkPerCow/figure/value")).isCloseTo(118 / 5.0, within(1e-9));
        assertThat(summary.at("/measures/lactationGroups").findValuesAsText("lactations"))
                .containsExactly("1", "2", "3+");
        assertThat(summary.countAt("/measures/lactationGroups/2/cows")).isEqualTo(2);
        assertThat(summary.numberAt("/measures/turnover/rate/numerator/value")).isEqualTo(1);
        // Ash 81 days, Birch 124, Cedar 100, Dogwood 161, Elm 283
        assertThat(summary.countAt("/measures/turnover/cowDays")).isEqualTo(81 + 124 + 100 + 161 + 283);
        assertThat(summary.textAt("/measures/turnover/byDestination/0/name")).isEqualTo("slaughter");
        assertThat(summary.textAt("/measures/turnover/byReason/0/name")).isEqualTo("unknown");
        // Elm of 2025-06-01 was served and found pregnant: due 2026-05-11, to dry off 2026-03-12
        assertThat(summary.textAt("/measures/dueByMonth/0/month")).isEqualTo("2026-03");
        assertThat(summary.at("/measures/yearBefore").findValuesAsText("measure"))
                .contains(
                        "milk-per-cow",
                        "annualised-milk",
                        "pregnancy-rate-21",
                        "mean-days-open",
                        "peak-milk",
                        "age-at-first-calving",
                        "stayability-to-third-lactation",
                        "rolling-herd-average");
        for (JsonNode compared : summary.at("/measures/yearBefore")) {
            assertThat(compared.has("difference")).isFalse();
            assertThat(compared.at("/yearBefore/status").asText()).isEqualTo("notEnoughData");
        }
        Answer empty = TestHerd.make().get("/summary?asOf=" + DAY).expecting(200);
        assertThat(empty.at("/measures/milkPerCow/figure/value").isMissingNode())
                .isTrue();
        assertThat(empty.at("/measures/turnover/rate/figure/value").isMissingNode())
                .isTrue();
    }

    @Test
    void anAnswerIsRepeatedByKnownAt() {
        TestHerd herd = fiveCows();
        Answer before = herd.get("/breeding-worklist?asOf=" + DAY).expecting(200);
        String knownAt = before.textAt("/knownAt");
        check(herd, "CEDAR", "2026-03-09", "empty");
        Answer now = herd.get("/breeding-worklist?asOf=" + DAY).expecting(200);
        assertThat(on(now, "watchForReturn")).isEmpty();
        Answer again = herd.get("/breeding-worklist?asOf=" + DAY + "&knownAt=" + knownAt)
                .expecting(200);
        assertThat(again.at("/lists")).isEqualTo(before.at("/lists"));
    }

    @Test
    void badRequestsAreRefusedInWords() {
        TestHerd herd = TestHerd.make();
        for (String wrong : List.of(
                "/breeding-worklist?waitingDays=-1",
                "/breeding-worklist?waitingDays=301",
                "/breeding-worklist?waitingDays=sixty",
                "/breeding-worklist?checkDays=17",
                "/breeding-summary?dryDays=121",
                "/breeding-summary?asOf=2026-02-30",
                "/udder-health?highFrom=99",
                "/udder-health?tankLimit=none",
                "/milk-withheld?at=2026-03-10",
                "/milk-withheld?at=2026-03-10T06:00:00Z&asOf=2026-03-10",
                "/milk-withheld?colostrumDays=31",
                "/milk-withheld?colostrumDays=99999999999")) {
            assertThat(herd.get(wrong).expecting(400).textAt("/code")).as(wrong).isEqualTo("bad-parameter");
        }
        assertThat(herd.get("/udder-health?high=200").expecting(400).textAt("/code"))
                .isEqualTo("unknown-parameter");
        String other = TestHerd.key("read", TestHerd.make().code(), null);
        for (String path : List.of("/breeding-worklist", "/breeding-summary", "/udder-health", "/milk-withheld")) {
            herd.withKey(other).get(path).expecting(404);
        }
    }

    @Test
    void aCowsSummaryTellsWhatIsToBeDecidedOfHerAsTheListsDo() {
        TestHerd herd = fiveCows();
        treatment(herd, "CEDAR", "2026-03-08", "2026-03-14");
        Answer worklist = herd.get("/breeding-worklist?asOf=" + DAY);
        for (String id : List.of("ASH", "BIRCH", "CEDAR", "DOGWOOD", "ELM")) {
            Answer cow = herd.getAnimal(id, "/summary?asOf=" + DAY).expecting(200);
            List<String> lists = new ArrayList<>();
            worklist.at("/lists").forEach(list -> {
                if (on(worklist, list.path("list").asText()).contains(id)) {
                    lists.add(list.path("list").asText());
                }
            });
            assertThat(cow.at("/decisions/breeding/lists").findValuesAsText("list"))
                    .as(id)
                    .isEqualTo(lists);
            assertThat(cow.at("/decisions/cautions")).hasSize(2);
        }
        Answer cedar = herd.getAnimal("CEDAR", "/summary?asOf=" + DAY);
        assertThat(cedar.textAt("/decisions/breeding/state")).isEqualTo("served");
        assertThat(cedar.at("/decisions/milkWithheld").findValuesAsText("until"))
                .containsExactly("2026-03-14");
        assertThat(herd.getAnimal("ASH", "/summary?asOf=" + DAY).at("/decisions/milkWithheld"))
                .isEmpty();
        assertThat(herd.getAnimal("ELM", "/summary?asOf=" + DAY).textAt("/decisions/breeding/dryOff"))
                .isNotEmpty();
        // the address it names answers
        herd.get(cedar.textAt("/decisions/outlook").replaceFirst("/v1/herds/[^/]+", ""))
                .expecting(200);
    }

    /** Nothing at all, a week of it, no services, no prices, no tests for 90 days: each answer says what it lacks. */
    @Test
    void everySummarySaysWhatItLacks() {
        List<String> all = List.of(
                "/summary",
                "/culling-ranking",
                "/breeding-worklist",
                "/breeding-summary",
                "/udder-health",
                "/milk-withheld");
        TestHerd empty = TestHerd.make();
        for (String path : all) {
            assertThat(empty.get(path + "?asOf=" + DAY).expecting(200).textAt("/status"))
                    .as(path)
                    .isEqualTo("notEnoughData");
        }
        TestHerd week = TestHerd.make().withAnimal("ASH").withCalving("ASH", "2026-03-05", 1);
        for (String path : all) {
            week.get(path + "?asOf=" + DAY).expecting(200);
        }
        assertThat(week.get("/culling-ranking?asOf=" + DAY).at("/warnings").findValuesAsText("code"))
                .contains("prices-not-set");
        assertThat(week.get("/udder-health?asOf=" + DAY).textAt("/status")).isEqualTo("notEnoughData");
        assertThat(codes(week.get("/breeding-summary?asOf=" + DAY))).isNotEmpty();
        assertThat(week.get("/milk-withheld?asOf=" + DAY).at("/foremilkNotRecorded"))
                .hasSize(1);
        TestHerd old = TestHerd.make()
                .withAnimal("ASH")
                .withCalving("ASH", "2025-10-01", 1)
                .withTestDay("ASH", "2025-12-01", 24);
        assertThat(old.get("/summary?asOf=" + DAY).textAt("/lastTestDate")).isEqualTo("2025-12-01");
        assertThat(old.get("/udder-health?asOf=" + DAY).textAt("/status")).isEqualTo("notEnoughData");
        // 99 days without a test: the herd's summary and the ranking say so, with and without prices
        assertThat(codes(old.get("/summary?asOf=" + DAY))).contains("no-recent-test");
        assertThat(codes(old.get("/culling-ranking?asOf=" + DAY))).contains("prices-not-set", "no-recent-test");
        assertThat(codes(old.get("/summary?asOf=2026-02-28"))).doesNotContain("no-recent-test");
        assertThat(codes(empty.get("/summary?asOf=" + DAY))).contains("no-cows-in-milk", "no-test-days");
        assertThat(codes(week.get("/summary?asOf=" + DAY))).containsExactly("no-test-days");
    }
}
