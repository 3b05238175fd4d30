package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.quarkus.test.junit.QuarkusTest;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.pailbook.lactation.reference.LactationStandards;
import org.pailbook.lactation.reference.LactationTrait;

/** Projections of stored cows: several traits, dry-off, days, what the herd teaches, and how right it was. */
@QuarkusTest
class ProjectionContractTest {
    private static final LocalDate CALVING = LocalDate.of(2023, 1, 10);
    private static final String LATER = "2024-06-01";

    /** A herd of Holsteins in their second lactation with ten monthly tests each. */
    private static TestHerd herd(int cows, double firstKg) {
        TestHerd herd = TestHerd.make();
        List<String> tests = new ArrayList<>();
        for (int cow = 0; cow < cows; cow++) {
            String id = "C" + cow;
            herd.withAnimal(id).withCalving(id, CALVING.plusDays(cow).toString(), 2);
            for (int i = 0; i < 10; i++) {
                tests.add(
                        "{\"animal\":%s,\"date\":\"%s\",\"milkKg\":%s,\"fatPct\":4.1,\"proteinPct\":3.3,\"sccThousandPerMl\":85}"
                                .formatted(
                                        TestHerd.animal(id),
                                        CALVING.plusDays(cow + 15 + 30 * i),
                                        firstKg + cow % 7 - 3 - 1.5 * i + (cow * 7 + i * 3) % 5 * 0.4));
            }
        }
        if (!tests.isEmpty()) {
            herd.bulk("test-days", TestHerd.NDJSON, String.join("\n", tests)).expecting(200);
        }
        return herd;
    }

    @Test
    void aLactationIsProjectedInFourTraits() {
        Answer answer = herd(2, 35)
                .getAnimal("C0", "/lactations/current?asOf=2023-04-20&explain=true")
                .expecting(200);
        for (String figure :
                List.of("projected305", "projected305Fat", "projected305Protein", "projected305CellScore")) {
            double value = answer.numberAt("/" + figure + "/value");
            assertThat(answer.numberAt("/" + figure + "/interval80/low"))
                    .as(figure)
                    .isLessThan(value);
            assertThat(answer.textAt("/" + figure + "/method/name")).isEqualTo("best-prediction-vanraden-1997");
            double parts = 0;
            for (var part : answer.at("/" + figure + "/explanation")) {
                parts += part.path("amount").doubleValue();
            }
            assertThat(parts).as(figure).isCloseTo(value, within(1e-6));
        }
        assertThat(answer.textAt("/projected305CellScore/unit")).isEqualTo("score");
        assertThat(answer.numberAt("/producedKg") + answer.numberAt("/expectedRestKg"))
                .isCloseTo(answer.numberAt("/projected305/value"), within(1e-6));
        assertThat(answer.at("/projectedToDryOff").isMissingNode()).isTrue();
        assertThat(answer.at("/dailyExpectation").isMissingNode()).isTrue();
    }

    @Test
    void whatTheOtherCowsTaughtIsSaidAndChangesWithTheHerd() {
        TestHerd herd = herd(6, 45).withAnimal("NEW").withCalving("NEW", "2024-05-01", 2);
        Answer answer =
                herd.getAnimal("NEW", "/lactations/current?asOf=" + LATER).expecting(200);
        double reference =
                LactationStandards.refinedForCow("HOL", 2, LactationTrait.MILK).meanTotalKg(305);
        assertThat(answer.numberAt("/projected305/value")).isGreaterThan(reference + 500);
        assertThat(answer.at("/projected305/warnings").findValuesAsText("seen")).contains("6 lactations, 60 test days");
        // a change of the herd is seen at once
        herd.withTestDay("C0", CALVING.plusDays(320).toString(), 20);
        assertThat(herd.getAnimal("NEW", "/lactations/current?asOf=" + LATER)
                        .at("/projected305/warnings")
                        .findValuesAsText("seen"))
                .contains("6 lactations, 61 test days");
        // cow, herd and lactation tell the same figure
        double now = herd.getAnimal("NEW", "/lactations/current?asOf=" + LATER).numberAt("/projected305/value");
        assertThat(herd.getAnimal("NEW", "/summary?asOf=" + LATER).numberAt("/projected305/value"))
                .isCloseTo(now, within(1e-6));
        Answer summary = herd.get("/summary?asOf=" + LATER).expecting(200);
        for (var line : summary.at("/cowsInMilk")) {
            if (line.at("/animal/id").asText().equals("NEW")) {
                assertThat(line.at("/projected305Kg").doubleValue()).isCloseTo(now, within(1e-6));
            }
        }
    }

    @Test
    void aHerdOfOneCowIsProjectedFromTheReferenceAlone() {
        Answer answer = herd(1, 45)
                .getAnimal("C0", "/lactations/current?asOf=" + CALVING)
                .expecting(200);
        double reference =
                LactationStandards.refinedForCow("HOL", 2, LactationTrait.MILK).meanTotalKg(305);
        assertThat(answer.numberAt("/projected305/value")).isCloseTo(reference, within(1e-6));
        assertThat(answer.at("/projected305/warnings").findValuesAsText("code")).doesNotContain("standard-learned");
    }

    @Test
    void theExpectationToAPlannedDryOffStandsBesideTheOneTo305Days() {
        TestHerd herd = herd(1, 35);
        LocalDate dryOff = CALVING.plusDays(250);
        Answer answer = herd.getAnimal("C0", "/lactations/current?asOf=2023-04-20&dryOffDate=" + dryOff)
                .expecting(200);
        assertThat(answer.textAt("/projectedToDryOff/dryOffDate")).isEqualTo(dryOff.toString());
        assertThat(answer.countAt("/projectedToDryOff/daysInMilk")).isEqualTo(250);
        assertThat(answer.numberAt("/projectedToDryOff/milk/value"))
                .isLessThan(answer.numberAt("/projected305/value"))
                .isGreaterThan(answer.numberAt("/producedKg"));
        assertThat(answer.textAt("/projectedToDryOff/milk/unit")).isEqualTo("kg");
        assertThat(answer.numberAt("/projectedToDryOff/fat/value"))
                .isLessThan(answer.numberAt("/projected305Fat/value"));
        Answer to305 = herd.getAnimal("C0", "/lactations/2?asOf=2023-04-20&dryOffDate=" + CALVING.plusDays(305));
        assertThat(to305.numberAt("/projectedToDryOff/milk/value"))
                .isCloseTo(to305.numberAt("/projected305/value"), within(1e-6));
        for (String wrong : List.of("2023-01-10", "2029-01-01", "soon")) {
            assertThat(herd.getAnimal("C0", "/lactations/2?asOf=2023-04-20&dryOffDate=" + wrong)
                            .expecting(400)
                            .textAt("/code"))
                    .as(wrong)
                    .isEqualTo("bad-parameter");
        }
        // in a list it belongs to the lactation it lies in
        Answer list = herd.getAnimal("C0", "/lactations?asOf=2023-04-20&dryOffDate=2022-01-10")
                .expecting(200);
        assertThat(list.at("/items/0/projectedToDryOff").isMissingNode()).isTrue();
    }

    @Test
    void daysAddUpToTheProjectionAndHaveABand() {
        Answer answer = herd(1, 35)
                .getAnimal("C0", "/lactations/current?asOf=2023-04-20&daily=true")
                .expecting(200);
        assertThat(answer.at("/dailyExpectation")).hasSize(305);
        double sum = 0;
        for (var day : answer.at("/dailyExpectation")) {
            sum += day.path("milkKg").doubleValue();
            assertThat(day.at("/interval80/low").doubleValue())
                    .isLessThanOrEqualTo(day.path("milkKg").doubleValue());
        }
        assertThat(sum).isCloseTo(answer.numberAt("/projected305/value"), within(1e-6));
        assertThat(answer.countAt("/dailyExpectation/304/daysInMilk")).isEqualTo(305);
    }

    @Test
    void anEmptyHerdHasAnEmptyAccuracyTable() {
        Answer answer = TestHerd.make().get("/projection-accuracy").expecting(200);
        assertThat(answer.textAt("/status")).isEqualTo("notEnoughData");
        assertThat(answer.at("/rows").isArray()).isTrue();
        assertThat(answer.at("/rows")).isEmpty();
        assertThat(answer.countAt("/completedLactations")).isZero();
        assertThat(answer.textAt("/calibratedBy")).isEqualTo("shipped");
    }

    @Test
    void theAccuracyTableCountsCompletedLactationsByNumberOfTests() {
        TestHerd herd = herd(8, 35);
        Answer answer = herd.get("/projection-accuracy?asOf=" + LATER).expecting(200);
        assertThat(answer.textAt("/status")).isEqualTo("ok");
        assertThat(answer.countAt("/completedLactations")).isEqualTo(8);
        assertThat(answer.countAt("/lactationsLearnedFrom")).isEqualTo(8);
        assertThat(answer.countAt("/testDaysLearnedFrom")).isEqualTo(80);
        assertThat(answer.at("/rows")).hasSize(10);
        for (int row = 0; row < 10; row++) {
            String at = "/rows/" + row;
            assertThat(answer.countAt(at + "/tests")).isEqualTo(row);
            assertThat(answer.countAt(at + "/lactations")).isEqualTo(8);
            // 80 in 100: never more cows outside the wider interval
            assertThat(answer.numberAt(at + "/coverage95Share"))
                    .isGreaterThanOrEqualTo(answer.numberAt(at + "/coverage80Share"));
            double n = 8;
            double sd = answer.numberAt(at + "/errorSdKg");
            double bias = answer.numberAt(at + "/biasKg");
            double rmse = answer.numberAt(at + "/rootMeanSquareErrorKg");
            assertThat(rmse * rmse).isCloseTo(bias * bias + sd * sd * (n - 1) / n, within(1e-6 * rmse * rmse));
            assertThat(answer.numberAt(at + "/meanAbsoluteErrorPct"))
                    .isCloseTo(
                            100 * answer.numberAt(at + "/meanAbsoluteErrorKg") / answer.numberAt(at + "/meanTrueKg"),
                            within(1e-9));
            assertThat(answer.numberAt(at + "/calibrationFactor")).isPositive();
        }
        assertThat(answer.numberAt("/rows/9/meanAbsoluteErrorKg"))
                .isLessThan(answer.numberAt("/rows/0/meanAbsoluteErrorKg"));
        assertThat(answer.textAt("/calibratedBy")).isEqualTo("shipped");
        assertThat(answer.at("/notes/0").asText()).startsWith("Completed lactations only");
        // before day 275 nothing is completed
        Answer early = herd.get("/projection-accuracy?asOf=2023-09-01").expecting(200);
        assertThat(early.textAt("/status")).isEqualTo("notEnoughData");
        assertThat(early.countAt("/lactationsLearnedFrom")).isEqualTo(8);
        assertThat(herd.get("/projection-accuracy?asof=2023-09-01")
                        .expecting(400)
                        .textAt("/code"))
                .isEqualTo("unknown-parameter");
        assertThat(herd.get("/projection-accuracy?asOf=yesterday")
                        .expecting(400)
                        .textAt("/code"))
                .isEqualTo("bad-parameter");
        TestHerd stranger = herd.withKey(TestHerd.key("read", TestHerd.make().code(), null));
        stranger.get("/projection-accuracy").expecting(404);
    }

    /** Cows weighed on the same four days, the last of them read so many times too high; the last cow is asked about. Ours, made up. */
    private static Answer weighedTogether(int cows, double lastTimes, double hersTimes) {
        TestHerd herd = TestHerd.make();
        List<String> animals = new ArrayList<>();
        List<String> calvings = new ArrayList<>();
        List<String> tests = new ArrayList<>();
        for (int cow = 0; cow < cows; cow++) {
            String animal = TestHerd.animal("C" + cow);
            LocalDate calved = CALVING.plusDays(2L * cow);
            animals.add("{\"identifiers\":[%s],\"breed\":\"HOL\",\"sex\":\"female\"}".formatted(animal));
            calvings.add("{\"animal\":%s,\"date\":\"%s\",\"parity\":2}".formatted(animal, calved));
            for (int i = 0; i < 4; i++) {
                LocalDate day = CALVING.plusDays(110 + 30L * i);
                double kg = 34 - 0.04 * (day.toEpochDay() - calved.toEpochDay()) + (cow * 14 + i * 5) % 9 - 4;
                double times = i < 3 ? 1 : cow == cows - 1 ? hersTimes : lastTimes;
                tests.add("{\"animal\":%s,\"date\":\"%s\",\"milkKg\":%.1f}".formatted(animal, day, kg * times));
            }
        }
        herd.bulk("animals", TestHerd.NDJSON, String.join("\n", animals)).expecting(200);
        herd.bulk("calvings", TestHerd.NDJSON, String.join("\n", calvings)).expecting(200);
        herd.bulk("test-days", TestHerd.NDJSON, String.join("\n", tests)).expecting(200);
        return herd.getAnimal("C" + (cows - 1), "/lactations/current?asOf=" + CALVING.plusDays(201))
                .expecting(200);
    }

    private static List<String> codes(Answer answer) {
        return answer.at("/projected305/warnings").findValuesAsText("code");
    }

    @Test
    void aWrongScaleIsTakenOutOfAStoredCowsProjectionAndSaid() {
        double right = weighedTogether(51, 1, 1).numberAt("/projected305/value");
        Answer onlyHers = weighedTogether(51, 1, 1.2);
        Answer wrongForAll = weighedTogether(51, 1.2, 1.2);
        assertThat(Math.abs(wrongForAll.numberAt("/projected305/value") - right))
                .isLessThan(0.5 * Math.abs(onlyHers.numberAt("/projected305/value") - right));
        assertThat(codes(wrongForAll)).contains("herd-test-day-effect");
        assertThat(codes(onlyHers)).doesNotContain("herd-test-day-effect");
    }
}
