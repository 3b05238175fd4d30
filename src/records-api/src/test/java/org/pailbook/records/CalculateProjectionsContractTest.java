package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.reference.LactationTrait;

/** Projections of what is posted: as JSON, as a table, and what is refused. */
@QuarkusTest
class CalculateProjectionsContractTest {
    private static final String HEADER =
            "animal,parity,breed,calving_date,test_date,dim,milk_kg,fat_pct,protein_pct,scc_thousand\n";
    private static final LocalDate CALVING = LocalDate.of(2001, 1, 10);

    @Inject
    DataSource database;

    private static Answer project(String body) {
        return Posts.calculate("projections", body);
    }

    private static Answer projectTable(String query, String body) {
        return TestHerd.make().send("POST", "/v1/calculate/projections" + query, TestHerd.CSV, body);
    }

    private static String testDay(int day, double milkKg) {
        return "{\"date\":\"%s\",\"milkKg\":%s,\"fatPct\":4.1,\"proteinPct\":3.3,\"sccThousandPerMl\":85}"
                .formatted(CALVING.plusDays(day), milkKg);
    }

    /** Monthly tests of a Holstein in her second lactation that gives so much on her first test and loses 1.5 kg a month. */
    private static String lactation(String id, String animal, double firstKg, int tests) {
        List<String> days = new ArrayList<>();
        for (int i = 0; i < tests; i++) {
            days.add(testDay(20 + 30 * i, firstKg - 1.5 * i));
        }
        return "{\"id\":\"%s\",\"animal\":\"%s\",\"parity\":2,\"breed\":\"HOL\",\"calvingDate\":\"%s\",\"testDays\":[%s]}"
                .formatted(id, animal, CALVING, String.join(",", days));
    }

    private static String history(int cows, double firstKg) {
        List<String> lactations = new ArrayList<>();
        for (int i = 0; i < cows; i++) {
            lactations.add(lactation("h" + i, "a" + i, firstKg + i % 5 - 2, 10));
        }
        return String.join(",", lactations);
    }

    private static String body(String history, String lactations) {
        return "{\"history\":[" + history + "],\"lactations\":[" + lactations + "]}";
    }

    private static List<String> findings(Answer answer, int result) {
        return answer.at("/results/" + result + "/findings").findValuesAsText("code");
    }

    @Test
    void theAgreedBodyIsAnsweredWithTheAgreedMembers() {
        Answer answer = project("""
                {"asOf": "2002-06-30",
                 "history":    [{"id": "h1", "animal": "a7", "parity": 2, "breed": "HOL", "calvingDate": "2001-01-10",
                                 "testDays": [{"date": "2001-01-30", "milkKg": 31.2, "fatPct": 4.1, "proteinPct": 3.3, "sccThousandPerMl": 85}]}],
                 "lactations": [{"id": "p1", "animal": "b3", "parity": 1, "breed": "JER", "calvingDate": "2002-03-01", "testDays": []}]}""").expecting(200);
        assertThat(answer.header("content-type").orElse("")).startsWith("application/json");
        assertThat(answer.textAt("/results/0/id")).isEqualTo("p1");
        // 1 March to 30 June is 121 days
        assertThat(answer.countAt("/results/0/daysInMilk")).isEqualTo(121);
        for (String figure : List.of("milkKg", "fatKg", "proteinKg")) {
            String at = "/results/0/" + figure;
            double value = answer.numberAt(at + "/value");
            assertThat(answer.numberAt(at + "/interval80/low")).as(figure).isLessThan(value);
            assertThat(answer.numberAt(at + "/interval80/high")).as(figure).isGreaterThan(value);
            assertThat(answer.numberAt(at + "/interval95/low")).isLessThan(answer.numberAt(at + "/interval80/low"));
            assertThat(answer.numberAt(at + "/reliability")).isZero();
        }
        assertThat(answer.at("/results/0/cellScore").isMissingNode()).isTrue();
        assertThat(answer.numberAt("/results/0/soFarMilkKg")).isZero();
        assertThat(answer.textAt("/results/0/method/name")).isEqualTo("best-prediction-vanraden-1997");
        assertThat(findings(answer, 0)).contains("no-test-yet", "standard-learned", "if-milked-to-305");
        assertThat(answer.countAt("/learnedFrom/lactations")).isEqualTo(1);
        assertThat(answer.countAt("/learnedFrom/testDays")).isEqualTo(1);
    }

    @Test
    void withoutHistoryAndTestsTheFigureIsTheShippedReference() {
        Answer answer = project(
                        "{\"lactations\":[{\"id\":\"p\",\"parity\":1,\"breed\":\"JER\",\"calvingDate\":\"2002-03-01\",\"testDays\":[]}]}")
                .expecting(200);
        double reference =
                LactationStandards.refinedForCow("JER", 1, LactationTrait.MILK).meanTotalKg(305);
        assertThat(answer.numberAt("/results/0/milkKg/value")).isCloseTo(reference, within(1e-6));
        assertThat(findings(answer, 0)).doesNotContain("standard-learned", "reference-of-other-breed");
    }

    @Test
    void idsAndOrderAreKept() {
        Answer answer = project(body(
                        "",
                        lactation("z", "c", 30, 3) + "," + lactation("a", "c2", 20, 1) + ","
                                + lactation("z", "c3", 25, 10)))
                .expecting(200);
        assertThat(answer.at("/results").findValuesAsText("id")).containsExactly("z", "a", "z");
        assertThat(answer.countAt("/results/2/testDays")).isEqualTo(10);
        // without asOf a lactation is looked at on its own last day
        assertThat(answer.countAt("/results/1/daysInMilk")).isEqualTo(20);
        assertThat(answer.countAt("/results/2/daysInMilk")).isEqualTo(290);
        assertThat(answer.at("/results/0/cellScore").isObject()).isTrue();
    }

    @Test
    void theHistoryMovesWhatIsExpectedTowardsTheHerd() {
        String fresh =
                "{\"id\":\"p\",\"animal\":\"new\",\"parity\":2,\"breed\":\"HOL\",\"calvingDate\":\"2001-12-01\",\"testDays\":[]}";
        double nothing = project(body("", fresh)).expecting(200).numberAt("/results/0/milkKg/value");
        Answer high = project(body(history(40, 50), fresh)).expecting(200);
        Answer low = project(body(history(40, 20), fresh)).expecting(200);
        assertThat(high.numberAt("/results/0/milkKg/value")).isGreaterThan(nothing);
        assertThat(low.numberAt("/results/0/milkKg/value")).isLessThan(nothing);
        assertThat(high.countAt("/learnedFrom/completedLactations")).isEqualTo(40);
    }

    @Test
    void aCowsOwnOtherLactationDoesNotTeachHerStandard() {
        String hers = lactation("p", "she", 30, 2);
        String others = history(10, 35);
        Answer without = project(body(others, hers)).expecting(200);
        Answer with = project(body(others + "," + lactation("old", "she", 60, 10), hers))
                .expecting(200);
        assertThat(with.numberAt("/results/0/milkKg/value"))
                .isCloseTo(without.numberAt("/results/0/milkKg/value"), within(1e-6));
        assertThat(with.countAt("/learnedFrom/lactations")).isEqualTo(11);
    }

    @Test
    void testDaysAfterTheDayTakeNoPartAndAreCounted() {
        String asOf = "\"asOf\":\"" + CALVING.plusDays(60) + "\",";
        Answer cut = project("{" + asOf
                        + body(history(3, 30), lactation("p", "c", 30, 10)).substring(1))
                .expecting(200);
        assertThat(cut.countAt("/results/0/testDays")).isEqualTo(2);
        assertThat(cut.countAt("/results/0/daysInMilk")).isEqualTo(60);
        JsonNode finding = cut.at("/results/0/findings/0");
        assertThat(finding.path("code").asText()).isEqualTo("tests-after-as-of");
        assertThat(finding.path("seen").asText()).isEqualTo("8 test days");
        assertThat(cut.textAt("/warnings/0/code")).isEqualTo("tests-after-as-of");
        assertThat(cut.textAt("/warnings/0/seen")).isEqualTo("24 test days");
        Answer known = project(body("", lactation("p", "c", 30, 2))).expecting(200);
        Answer alone = project(
                        "{" + asOf + body("", lactation("p", "c", 30, 10)).substring(1))
                .expecting(200);
        assertThat(alone.at("/results/0/milkKg")).isEqualTo(known.at("/results/0/milkKg"));
    }

    @Test
    void aCalvingAfterTheDayIsSaidToBeSo() {
        Answer answer = project("{\"asOf\":\"2000-12-01\","
                        + body("", lactation("p", "c", 30, 3)).substring(1))
                .expecting(200);
        assertThat(findings(answer, 0)).contains("calving-after-as-of", "tests-after-as-of", "no-test-yet");
        assertThat(answer.at("/results/0/daysInMilk").isMissingNode()).isTrue();
    }

    @Test
    void anUnknownBreedAndParityAreSaidToBeSo() {
        Answer answer = project(
                        "{\"lactations\":[{\"id\":\"p\",\"breed\":\"unheard of\",\"calvingDate\":\"2002-03-01\",\"testDays\":[]}]}")
                .expecting(200);
        assertThat(findings(answer, 0)).contains("reference-of-other-breed", "parity-counted");
    }

    @Test
    void whatEachTestContributesAddsUpToTheFigure() {
        Answer answer = Posts.calculate("projections?explain=true", body(history(3, 30), lactation("p", "c", 30, 4)))
                .expecting(200);
        for (String figure : List.of("milkKg", "fatKg", "cellScore")) {
            double sum = 0;
            for (JsonNode part : answer.at("/results/0/" + figure + "/explanation")) {
                sum += part.path("amount").doubleValue();
            }
            assertThat(sum).isCloseTo(answer.numberAt("/results/0/" + figure + "/value"), within(1e-6));
        }
        assertThat(answer.at("/results/0/milkKg/explanation")).hasSize(5);
    }

    @Test
    void faultsHaveTheirPlaces() {
        Answer answer = project("""
                {"asof":"2002-06-30","history":[{"animal":"a","calvingDate":"2001-02-30","testDays":[]}, 7],
                 "lactations":[{"animal":"b","calvingDate":"2001-01-01","parity":0,"endDate":"2000-12-31",
                                "testDays":[{"milkKg":"31","date":"2001-02-01","fat":4}]}]}""").expecting(422);
        assertThat(answer.at("/errors").findValuesAsText("pointer"))
                .containsExactlyInAnyOrder(
                        "/asof",
                        "/history/0/calvingDate",
                        "/history/1",
                        "/lactations/0/id",
                        "/lactations/0/parity",
                        "/lactations/0/endDate",
                        "/lactations/0/testDays/0/milkKg",
                        "/lactations/0/testDays/0/fat");
        assertThat(project("{}").expecting(422).at("/errors").findValuesAsText("pointer"))
                .containsExactly("/lactations");
        assertThat(project("{\"lactations\":null}").expecting(422).textAt("/errors/0/code"))
                .isEqualTo("null-value");
        assertThat(project("{\"lactations\":{}}").expecting(422).textAt("/errors/0/code"))
                .isEqualTo("not-an-array");
        assertThat(project("[]").expecting(422).textAt("/errors/0/code")).isEqualTo("not-an-object");
        assertThat(project("").expecting(400).textAt("/code")).isEqualTo("empty-body");
        assertThat(project("{\"lactations\":[").expecting(400).textAt("/code")).isEqualTo("malformed-json");
        assertThat(project("{\"lactations\":[]} x").expecting(400).textAt("/code"))
                .isEqualTo("malformed-json");
        assertThat(project("{\"lactations\":[],\"lactations\":[]}")
                        .expecting(400)
                        .textAt("/code"))
                .isEqualTo("malformed-json");
        assertThat(Posts.calculate("projections?asOf=2002-01-01", "{\"lactations\":[]}")
                        .expecting(400)
                        .textAt("/code"))
                .isEqualTo("bad-parameter");
        assertThat(project("{\"lactations\":[]}").expecting(200).at("/results")).isEmpty();
    }

    @Test
    void aThousandFaultsAreNotAllRead() {
        StringBuilder many = new StringBuilder("{\"lactations\":[");
        for (int i = 0; i < 1000; i++) {
            many.append(i == 0 ? "{}" : ",{}");
        }
        assertThat(project(many + "]}").expecting(422).at("/errors").size()).isLessThanOrEqualTo(100);
    }

    private static String line(String animal, int parity, int day, String milkKg) {
        return "%s,%d,Holstein,%s,%s,%d,%s,4.1,3.3,85\n"
                .formatted(animal, parity, CALVING, CALVING.plusDays(day), day, milkKg);
    }

    @Test
    void aTableIsAnsweredWithATableOfTheSameFigures() {
        StringBuilder table = new StringBuilder(HEADER);
        for (int cow = 0; cow < 3; cow++) {
            for (int i = 0; i < 3; i++) {
                table.append(line("cow" + cow, 2, 20 + 30 * i, Double.toString(30 + cow - i)));
            }
        }
        Answer answer = projectTable("", table.toString()).expecting(200);
        assertThat(answer.header("content-type").orElse("")).startsWith("text/csv");
        String[] lines = answer.text().split("\r\n");
        assertThat(lines).hasSize(4);
        assertThat(lines[0])
                .isEqualTo("animal,parity,calving_date,days_in_milk,tests,projected_305_milk_kg,"
                        + "projected_305_milk_kg_low80,projected_305_milk_kg_high80,projected_305_milk_kg_low95,"
                        + "projected_305_milk_kg_high95,reliability,projected_305_fat_kg,projected_305_protein_kg,"
                        + "so_far_milk_kg,method,method_version,findings");
        assertThat(lines[1]).startsWith("cow0,2,2001-01-10,80,3,").contains("best-prediction-vanraden-1997,3,");
        // the same as JSON, the other two being her history
        List<String> others = new ArrayList<>();
        for (int cow = 1; cow < 3; cow++) {
            others.add(jsonOf(cow));
        }
        Answer json = project(body(String.join(",", others), jsonOf(0))).expecting(200);
        String[] cells = lines[1].split(",");
        assertThat(Double.parseDouble(cells[5])).isCloseTo(json.numberAt("/results/0/milkKg/value"), within(0.0005));
        assertThat(Double.parseDouble(cells[6]))
                .isCloseTo(json.numberAt("/results/0/milkKg/interval80/low"), within(0.0005));
        assertThat(Double.parseDouble(cells[9]))
                .isCloseTo(json.numberAt("/results/0/milkKg/interval95/high"), within(0.0005));
        assertThat(Double.parseDouble(cells[11])).isCloseTo(json.numberAt("/results/0/fatKg/value"), within(0.0005));
    }

    private static String jsonOf(int cow) {
        List<String> days = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            days.add(testDay(20 + 30 * i, 30 + cow - i));
        }
        return "{\"id\":\"%d\",\"animal\":\"cow%d\",\"parity\":2,\"breed\":\"Holstein\",\"calvingDate\":\"%s\",\"testDays\":[%s]}"
                .formatted(cow, cow, CALVING, String.join(",", days));
    }

    @Test
    void aTableMayLeaveCellsAndTestsOut() {
        Answer answer = projectTable(
                        "?asOf=" + CALVING.plusDays(40),
                        HEADER + line("c", 1, 20, "30") + line("c", 1, 50, "28") + "d,2,,2001-01-10,,,,,,\n")
                .expecting(200);
        String[] lines = answer.text().split("\r\n");
        assertThat(lines[1]).startsWith("c,1,2001-01-10,40,1,").contains("tests-after-as-of");
        assertThat(lines[2]).startsWith("d,2,2001-01-10,40,0,").contains("no-test-yet", "reference-of-other-breed");
    }

    @Test
    void wrongTablesAreRefusedWithLineAndColumn() {
        Answer answer = projectTable(
                        "",
                        HEADER + line("c", 1, 20, "30")
                                + "c,1,HOL,2001-01-10,2001-02-10,30,x,,,-4\n,,,,2001-02-10,,,,,\n")
                .expecting(422);
        assertThat(answer.at("/errors").findValuesAsText("pointer"))
                .containsExactlyInAnyOrder(
                        "/rows/1/dim",
                        "/rows/1/milk_kg",
                        "/rows/1/scc_thousand",
                        "/rows/2/animal",
                        "/rows/2/parity",
                        "/rows/2/calving_date");
        assertThat(answer.textAt("/errors/0/message")).startsWith("line 3: ");
        assertThat(projectTable("", "animal,milk\n").expecting(400).textAt("/code"))
                .isEqualTo("malformed-csv");
        assertThat(projectTable("?explain=true", HEADER).expecting(400).textAt("/code"))
                .isEqualTo("bad-parameter");
        assertThat(projectTable("", HEADER).expecting(200).text().split("\r\n")).hasSize(1);
    }

    @Test
    void aNameThatASpreadsheetWouldRunIsMadeHarmless() {
        Answer answer = projectTable("", HEADER + line("=1+1", 1, 20, "30") + line("-7", 1, 20, "30"))
                .expecting(200);
        assertThat(answer.text()).contains("\r\n'=1+1,").contains("\r\n-7,");
    }

    @Test
    void theScopeIsNeededOtherMediaAreRefusedAndNothingIsKept() {
        TestHerd herd = TestHerd.make();
        StoredRows before = StoredRows.in(database);
        project(body(history(5, 30), lactation("p", "c", 30, 3))).expecting(200);
        assertThat(StoredRows.in(database)).isEqualTo(before);
        TestHerd reader = herd.withKey(TestHerd.key("read write", herd.code(), null));
        assertThat(Posts.calculate(reader, "projections", "{").expecting(403).textAt("/code"))
                .isEqualTo("scope-missing");
        assertThat(herd.send("POST", "/v1/calculate/projections", "text/plain", "x")
                        .expecting(415)
                        .textAt("/code"))
                .isEqualTo("unsupported-media-type");
        herd.send("GET", "/v1/calculate/projections", null, null).expecting(405);
    }

    @Test
    void twoThousandLactationsWithAsManyInTheirHistoryAreAnswered() {
        List<String> history = new ArrayList<>();
        List<String> lactations = new ArrayList<>();
        for (int i = 0; i < 2000; i++) {
            history.add(lactation("h" + i, "a" + i, 25 + i % 17, 10));
            lactations.add(lactation("p" + i, String.format(Locale.ROOT, "b%d", i), 25 + i % 13, i % 11));
        }
        Answer answer = project(body(String.join(",", history), String.join(",", lactations)))
                .expecting(200);
        assertThat(answer.at("/results")).hasSize(2000);
        assertThat(answer.textAt("/results/1999/id")).isEqualTo("p1999");
        assertThat(answer.textAt("/learnedFrom/calibratedBy")).isEqualTo("herd");
    }

    /** A cow weighed on the herd's test days, the last of them read so many times too high. */
    private static String weighed(String id, int calvedOnDay, int tests, double lastTimes) {
        List<String> days = new ArrayList<>();
        LocalDate calving = CALVING.plusDays(calvedOnDay);
        for (int i = 0; i < tests; i++) {
            LocalDate date = CALVING.plusDays(110 + 30 * i);
            double kg = (34 - 0.04 * (date.toEpochDay() - calving.toEpochDay()) + (calvedOnDay * 7 + i * 5) % 9 - 4)
                    * (i == tests - 1 ? lastTimes : 1);
            days.add("{\"date\":\"%s\",\"milkKg\":%.1f}".formatted(date, kg));
        }
        return "{\"id\":\"%s\",\"animal\":\"%s\",\"parity\":2,\"breed\":\"HOL\",\"calvingDate\":\"%s\",\"testDays\":[%s]}"
                .formatted(id, id, calving, String.join(",", days));
    }

    private static Answer herdWeighed(int cows, double lastTimes, double hersTimes) {
        List<String> herd = new ArrayList<>();
        for (int i = 0; i < cows; i++) {
            herd.add(weighed("w" + i, 2 * i, 4, lastTimes));
        }
        return project(body(String.join(",", herd), weighed("c", 71, 4, hersTimes)))
                .expecting(200);
    }

    /** A scale that reads a fifth too much for all cows is seen in the others; ours, made up. */
    @Test
    void aWrongScaleIsTakenOutOfTheProjectionAndSaid() {
        double right = herdWeighed(50, 1, 1).numberAt("/results/0/milkKg/value");
        double onlyHers = herdWeighed(50, 1, 1.2).numberAt("/results/0/milkKg/value");
        Answer wrongForAll = herdWeighed(50, 1.2, 1.2);
        assertThat(Math.abs(wrongForAll.numberAt("/results/0/milkKg/value") - right))
                .isLessThan(0.5 * Math.abs(onlyHers - right));
        assertThat(findings(wrongForAll, 0)).contains("herd-test-day-effect");
        assertThat(findings(herdWeighed(50, 1, 1.2), 0)).doesNotContain("herd-test-day-effect");
        // of so few cows it cannot be told
        assertThat(findings(herdWeighed(9, 1.2, 1.2), 0)).doesNotContain("herd-test-day-effect");
    }
}
