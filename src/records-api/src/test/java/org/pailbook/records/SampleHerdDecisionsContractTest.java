package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * The lists of the invented sample herd read as its manager would: why is she here? Cows are walked through by hand from the files; whole
 * lists are made again from the files by plain rules of this test.
 */
@QuarkusTest
class SampleHerdDecisionsContractTest {
    private static final LocalDate DAY = LocalDate.of(2026, 10, 12);
    private static final int NEVER = 9999;

    private static TestHerd herd;

    @BeforeEach
    void load() {
        if (herd == null) {
            herd = TestHerd.inZone("Atlantic/Azores");
            SampleHerdContractTest.KINDS.forEach(
                    kind -> herd.bulk(kind, TestHerd.CSV, SampleBook.file(kind)).expecting(200));
        }
    }

    private static JsonNode worklist(LocalDate day, String name) {
        for (JsonNode list :
                herd.get("/breeding-worklist?asOf=" + day).expecting(200).at("/lists")) {
            if (list.path("list").asText().equals(name)) {
                return list.path("cows");
            }
        }
        throw new AssertionError(name);
    }

    private static Set<String> ids(JsonNode cows) {
        Set<String> ids = new TreeSet<>();
        cows.forEach(cow -> ids.add(cow.at("/animal/id").asText()));
        return ids;
    }

    private static JsonNode one(JsonNode cows, String id) {
        for (JsonNode cow : cows) {
            if (cow.at("/animal/id").asText().equals(id)) {
                return cow;
            }
        }
        throw new AssertionError(id + " is not on the list: " + ids(cows));
    }

    /** Rows of a file about a cow between two days, both included. */
    private static List<String[]> rows(String kind, String cow, LocalDate from, LocalDate to) {
        return SampleBook.rows(kind).stream()
                .filter(cells -> cells[1].equals(cow))
                .filter(cells -> !LocalDate.parse(cells[2]).isBefore(from)
                        && !LocalDate.parse(cells[2]).isAfter(to))
                .sorted((one, other) -> one[2].compareTo(other[2]))
                .toList();
    }

    private static long daysSince(List<String[]> rows, LocalDate day) {
        return rows.isEmpty()
                ? NEVER
                : day.toEpochDay()
                        - LocalDate.parse(rows.get(rows.size() - 1)[2]).toEpochDay();
    }

    @Test
    void trigueiraWasServedThreeTimesFoundOpenAndNobodyDecided() {
        // calved 2025-12-10; served 28 February, 21 March, 11 April; found empty on 16 May; no decision on record
        JsonNode trigueira = one(worklist(DAY, "toBreed"), "PT-BA-0275");
        assertThat(trigueira.path("name").asText()).isEqualTo("Trigueira");
        assertThat(trigueira.path("daysSinceCalving").asInt()).isEqualTo(306);
        assertThat(trigueira.path("why").asText())
                .isEqualTo("Calved 2025-12-10, 306 days ago (waiting period 60 days); last served 2026-04-11,"
                        + " found open or back in heat.");
        assertThat(one(worklist(DAY, "repeatBreeder"), "PT-BA-0275").path("why").asText())
                .isEqualTo("3 services since calving did not take.");
        // month 11, fifth lactation, open: the last of the herd, though she milks above her group
        JsonNode ranked =
                herd.get("/culling-ranking?asOf=" + DAY).expecting(200).at("/cows/0");
        assertThat(ranked.at("/animal/id").asText()).isEqualTo("PT-BA-0275");
        assertThat(ranked.path("suggestion").asText()).isNotEqualTo("worth-keeping");
        assertThat(ranked.at("/reasons/0/about").asText()).isEqualTo("pregnancy");
        assertThat(ranked.at("/reasons/0/difference").asDouble()).isNegative();
        assertThat(ranked.path("levelPct").asDouble()
                        + ranked.path("milkLevelPct").asDouble())
                .isGreaterThan(100);
    }

    @Test
    void theReadmeShowsTheFirstCowOfTheRanking() throws IOException {
        String readme = Files.readString(Path.of("..", "..", "README.md"));
        int begin = readme.indexOf("```json", readme.indexOf("## Decide with it")) + "```json".length();
        JsonNode shown = new ObjectMapper().readTree(readme.substring(begin, readme.indexOf("```", begin)));
        SampleHerdContractTest.assertShown(
                "", shown, herd.get("/culling-ranking?asOf=" + DAY).at("/cows/0"));
    }

    @Test
    void serenaIsNotToBeBredByChoiceAndStillInTheRanking() {
        // breeding-decisions.csv: 2026-06-08, day 165
        JsonNode serena = one(worklist(DAY, "notToBreed"), "PT-BA-0284");
        assertThat(serena.path("why").asText())
                .isEqualTo("Not to be bred since 2026-06-08, by the farm's choice: not in calf by day 165.");
        assertThat(ids(worklist(DAY, "toBreed"))).doesNotContain("PT-BA-0284");
        assertThat(ids(worklist(LocalDate.of(2026, 6, 7), "toBreed"))).contains("PT-BA-0284");
        JsonNode ranked = one(herd.get("/culling-ranking?asOf=" + DAY).at("/cows"), "PT-BA-0284");
        assertThat(ranked.path("notToBeBred").booleanValue()).isTrue();
        assertThat(ranked.path("daysSinceCalving").asInt()).isEqualTo(291);
    }

    @Test
    void giestaOfJerseysIsDueBy280DaysAndCalvedTwoDaysLater() {
        // served 2026-01-11, found pregnant 14 February; Jersey cows go 280.0 days (Norman et al. 2009, abstract read)
        JsonNode giesta = one(worklist(DAY, "dueToCalve"), "PT-BA-0406");
        assertThat(giesta.path("day").asText()).isEqualTo("2026-10-18");
        assertThat(giesta.path("why").asText()).startsWith("Pregnant since 2026-01-11");
        // the file has her calving on 20 October
        assertThat(ids(worklist(LocalDate.of(2026, 10, 20), "dueToCalve"))).doesNotContain("PT-BA-0406");
    }

    @Test
    void theCowWithoutANameIsTreatedStillInflamedAndNearHerDryOff() {
        // treated 2026-10-10, end entered 16 October; flakes in a hard RF that nobody cleared; served 7 March: due 11
        // December, dry 12 October
        JsonNode withheld = one(herd.get("/milk-withheld?asOf=" + DAY).at("/cows"), "PT-BA-0240");
        assertThat(withheld.path("isEndKnown").booleanValue()).isFalse();
        assertThat(withheld.at("/reasons/0/kind").asText()).isEqualTo("treatment");
        assertThat(withheld.at("/reasons/0/until").asText()).isEqualTo("2026-10-16");
        assertThat(withheld.at("/reasons/1/kind").asText()).isEqualTo("foremilk");
        assertThat(one(worklist(DAY, "dueToDryOff"), "PT-BA-0240").path("day").asText())
                .isEqualTo("2026-10-12");
        assertThat(herd.get("/udder-health?asOf=" + DAY).at("/seeVeterinarian").toString())
                .contains("PT-BA-0240");
    }

    @Test
    void amoraHasATreatmentWithoutAnEndAndCountsAsWithheld() {
        JsonNode amora = one(herd.get("/milk-withheld?asOf=" + DAY).at("/cows"), "PT-BA-0263");
        assertThat(amora.at("/reasons/0/kind").asText()).isEqualTo("treatmentEndNotEntered");
        assertThat(amora.has("until")).isFalse();
        // her 535 thousand cells are in no tank figure
        JsonNode tank = herd.get("/udder-health?asOf=" + DAY).at("/tank");
        assertThat(tank.path("withheld").findValuesAsText("id")).contains("PT-BA-0263");
        assertThat(tank.path("shares").findValuesAsText("id")).doesNotContain("PT-BA-0263");
    }

    @Test
    void tormentaHasTheHighestCountAndATenthOfTheTanksCells() {
        // 10.5 kg with 2,121 thousand on 12 October; 331 thousand on 12 September: high both times
        Answer udder = herd.get("/udder-health?asOf=" + DAY).expecting(200);
        assertThat(udder.textAt("/cows/0/animal/id")).isEqualTo("PT-BA-0364");
        assertThat(udder.numberAt("/cows/0/sccThousandPerMl")).isEqualTo(2121);
        assertThat(udder.textAt("/cows/0/state")).isEqualTo("chronic");
        JsonNode share = one(udder.at("/tank/shares"), "PT-BA-0364");
        double sum = 0;
        for (JsonNode cow : udder.at("/tank/shares")) {
            sum += cow.path("milkKg").asDouble() * cow.path("sccThousandPerMl").asDouble();
        }
        assertThat(share.path("sharePct").asDouble()).isCloseTo(100 * 10.5 * 2121 / sum, within(1e-9));
    }

    /** By this test: in the herd, calved long enough ago, no decision against, not found pregnant since she was last served, not served lately. */
    @Test
    void theListToBreedIsTheOneMadeFromTheFilesOnEveryDay() {
        for (String text : List.of("2025-02-20", "2025-03-10", "2026-02-15", "2026-04-20", "2026-10-12")) {
            LocalDate day = LocalDate.parse(text);
            int waiting = day.isBefore(LocalDate.of(2026, 1, 1)) ? 50 : 60; // settings.csv
            SampleBook book = new SampleBook(day);
            Set<String> expected = new TreeSet<>();
            Set<String> aside = new TreeSet<>();
            Set<String> watched = new TreeSet<>();
            for (String cow : book.animals()) {
                if (book.calved(cow) == null || book.state(cow).equals("left")) {
                    continue;
                }
                LocalDate calved = book.calved(cow);
                List<String[]> services = rows("services", cow, calved, day);
                List<String[]> checks = rows("pregnancy-checks", cow, calved, day);
                List<String[]> decisions = rows("breeding-decisions", cow, LocalDate.MIN, day);
                boolean isPregnant = checks.stream().anyMatch(cells -> cells[3].equals("pregnant"));
                boolean isAside = !decisions.isEmpty() && decisions.get(decisions.size() - 1)[3].equals("doNotBreed");
                long served = daysSince(services, day);
                if (!isPregnant && isAside) {
                    aside.add(cow);
                }
                if (!isPregnant && !isAside && book.daysInMilk(cow) >= waiting && served >= 18) {
                    expected.add(cow);
                }
                if (checks.isEmpty() && served >= 18 && served <= 24) {
                    watched.add(cow);
                }
            }
            assertThat(ids(worklist(day, "toBreed"))).as(text).isEqualTo(expected);
            assertThat(ids(worklist(day, "notToBreed"))).as(text).isEqualTo(aside);
            assertThat(ids(worklist(day, "watchForReturn"))).as(text).isEqualTo(watched);
        }
    }

    /** By this test: a treatment whose end is not over or not entered, a finding nobody cleared in that quarter, a calving of the last four days. */
    @Test
    void theMilkThatStaysOutIsTheOneMadeFromTheFiles() {
        SampleBook book = new SampleBook(DAY);
        Set<String> expected = new TreeSet<>();
        for (String cow : book.animals()) {
            if (book.state(cow).equals("left")) {
                continue;
            }
            boolean isTreated = rows("treatments", cow, LocalDate.MIN, DAY).stream()
                    .anyMatch(cells -> cells[6].isEmpty()
                            || LocalDate.parse(cells[6]).plusDays(1).isAfter(DAY));
            List<String[]> foremilk = rows("foremilk-checks", cow, LocalDate.MIN, DAY);
            boolean isAbnormal = foremilk.stream()
                    .anyMatch(cells -> !cells[5].equals("normal")
                            && foremilk.stream()
                                    .noneMatch(later -> later[4].equals(cells[4])
                                            && later[2].compareTo(cells[2]) > 0
                                            && later[5].equals("normal")
                                            && later[8].equals("none")));
            boolean isFresh = book.calved(cow) != null && book.daysInMilk(cow) <= 4;
            if (isTreated || isAbnormal || isFresh) {
                expected.add(cow);
            }
        }
        Answer withheld = herd.get("/milk-withheld?asOf=" + DAY).expecting(200);
        assertThat(ids(withheld.at("/cows"))).isEqualTo(expected).hasSizeBetween(5, 20);
        assertThat(withheld.textAt("/caution")).isNotBlank();
        List<String> lookedAt = new ArrayList<>();
        book.animals().stream()
                .filter(cow -> book.state(cow).equals("inMilk"))
                .filter(cow -> rows("foremilk-checks", cow, DAY, DAY).isEmpty())
                .forEach(lookedAt::add);
        assertThat(withheld.at("/foremilkNotRecorded").findValuesAsText("id"))
                .as("not recorded is not normal")
                .containsExactlyInAnyOrderElementsOf(lookedAt);
    }
}
