package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is odd about a record is told with it, and the record is kept. */
@QuarkusTest
class EventChecksContractTest {
    private static TestHerd herd() {
        return TestHerd.make().withAnimal("A1").withCalving("A1", "2025-01-10", 3);
    }

    private static Answer post(TestHerd herd, String kind, String members) {
        return herd.post(kind, "{\"animal\":" + TestHerd.animal("A1") + "," + members + "}");
    }

    private static Answer service(TestHerd herd, String date) {
        return post(herd, "services", "\"date\":\"" + date + "\",\"method\":\"insemination\"")
                .expecting(201);
    }

    @Test
    void aServiceBeforeDayTwentyIsWarnedOfAndOneOnDayTwentyIsNot() {
        TestHerd herd = herd();
        assertThat(service(herd, "2025-01-29").findingCodes()).contains("implausible");
        assertThat(service(herd, "2025-01-30").findingCodes()).isEmpty();
    }

    @Test
    void aCheckBeforeAnyServiceOrTooSoonAfterOneIsWarnedOf() {
        TestHerd herd = herd();
        String check = "\"result\":\"pregnant\",\"date\":\"2025-04-%s\"";
        assertThat(post(herd, "pregnancy-checks", check.formatted("01")).findingCodes())
                .containsExactly("check-before-service");
        service(herd, "2025-04-02");
        assertThat(post(herd, "pregnancy-checks", check.formatted("19")).findingCodes())
                .containsExactly("implausible");
        assertThat(post(herd, "pregnancy-checks", check.formatted("20")).findingCodes())
                .isEmpty();
    }

    @Test
    void gestationIsHeldAgainstTheServicesRecorded() {
        TestHerd herd = herd();
        service(herd, "2025-03-01");
        service(herd, "2025-08-01");
        // 279 days after the first service, the mean of Norman et al. 2009, J. Dairy Sci. 92:2259
        assertThat(post(herd, "calvings", "\"date\":\"2025-12-05\"")
                        .expecting(201)
                        .findingCodes())
                .doesNotContain("implausible");
        TestHerd other = herd();
        service(other, "2025-06-01");
        assertThat(post(other, "calvings", "\"date\":\"2025-12-05\"")
                        .expecting(201)
                        .findingCodes())
                .contains("implausible");
    }

    @Test
    void aTestAfterTheDryOffIsWarnedOf() {
        TestHerd herd = herd().withDryOff("A1", "2025-11-01");
        assertThat(post(herd, "test-days", "\"date\":\"2025-11-01\",\"milkKg\":12")
                        .findingCodes())
                .isEmpty();
        assertThat(post(herd, "test-days", "\"date\":\"2025-11-02\",\"milkKg\":12")
                        .expecting(201)
                        .findingCodes())
                .containsExactly("test-after-dry-off");
        herd.withCalving("A1", "2025-12-28", 4);
        assertThat(post(herd, "test-days", "\"date\":\"2026-01-05\",\"milkKg\":32")
                        .findingCodes())
                .isEmpty();
    }

    @Test
    void ofTwoDryOffsTheLastOneTellsWhetherATestCameAfterIt() {
        TestHerd herd = herd().withDryOff("A1", "2025-11-01").withDryOff("A1", "2025-11-20");
        assertThat(post(herd, "test-days", "\"date\":\"2025-11-10\",\"milkKg\":12")
                        .findingCodes())
                .isEmpty();
        assertThat(post(herd, "test-days", "\"date\":\"2025-11-21\",\"milkKg\":12")
                        .findingCodes())
                .containsExactly("test-after-dry-off");
    }

    @Test
    void aCalvingMovedToALaterDayIsHeldAgainstTheDryOffToo() {
        TestHerd herd = herd().withDryOff("A1", "2025-11-01");
        Answer calved =
                post(herd, "calvings", "\"date\":\"2025-12-28\",\"parity\":4").expecting(201);
        assertThat(calved.findingCodes()).isEmpty();
        // 1 November to 20 March is 139 days
        Answer moved = herd.patch("/calvings/" + calved.textAt("/id"), "\"1\"", "{\"date\":\"2026-03-20\"}")
                .expecting(200);
        assertThat(moved.findingCodes()).as(moved.text()).containsExactly("implausible");
        assertThat(moved.textAt("/findings/0/value")).isEqualTo("139");
    }

    /** 20 to 120 days are usual: ours. */
    @Test
    void anUnusualDryPeriodIsWarnedOfWhicheverEndComesLater() {
        TestHerd herd = herd().withDryOff("A1", "2025-11-01");
        // 1 to 20 November is 19 days
        Answer calving = post(herd, "calvings", "\"date\":\"2025-11-20\"").expecting(201);
        assertThat(calving.findingCodes()).containsExactly("implausible");
        assertThat(calving.textAt("/findings/0/value")).isEqualTo("19");
        TestHerd usual = herd().withDryOff("A1", "2025-11-01");
        assertThat(post(usual, "calvings", "\"date\":\"2025-11-21\"").findingCodes())
                .isEmpty();
        TestHerd late = herd().withCalving("A1", "2026-02-01", 4);
        // 3 October to 1 February is 121 days
        assertThat(post(late, "dry-offs", "\"date\":\"2025-10-03\"")
                        .expecting(201)
                        .findingCodes())
                .containsExactly("implausible");
        assertThat(post(late, "dry-offs", "\"date\":\"2025-10-04\"").findingCodes())
                .isEmpty();
    }

    /** 18 to 48 months: common practice, no source. */
    @Test
    void anUnusualAgeAtTheFirstCalvingIsWarnedOf() {
        TestHerd herd = TestHerd.make().withAnimal("A1", ",\"birthDate\":\"2023-01-10\"");
        String first = "\"parity\":1,\"date\":\"%s\"";
        assertThat(post(herd, "calvings", first.formatted("2024-07-09")).findingCodes())
                .containsExactly("implausible");
        TestHerd other = TestHerd.make().withAnimal("A1", ",\"birthDate\":\"2023-01-10\"");
        assertThat(post(other, "calvings", first.formatted("2024-07-10")).findingCodes())
                .isEmpty();
        // of a cow that was bought nothing is known of her first calving
        TestHerd bought = TestHerd.make().withAnimal("A1", ",\"birthDate\":\"2018-01-10\"");
        assertThat(post(bought, "calvings", "\"date\":\"2025-01-10\"").findingCodes())
                .isEmpty();
    }

    @Test
    void whatIsOddAboutATestDayNamesAMemberThatWasSent() {
        TestHerd herd = herd();
        Answer ratio = post(herd, "test-days", "\"date\":\"2025-03-01\",\"fatPct\":2.2,\"proteinPct\":3.3");
        assertThat(ratio.textAt("/findings/0/pointer")).isEqualTo("/fatPct");
        assertThat(ratio.textAt("/findings/0/message")).contains("fat over protein");
        Answer heavy = post(herd, "test-days", "\"date\":\"2025-03-02\",\"milkKg\":70.5");
        assertThat(heavy.findingCodes()).containsExactly("implausible");
        assertThat(heavy.textAt("/findings/0/pointer")).isEqualTo("/milkKg");
    }

    @Test
    void aTreatmentSaysThatNothingIsComputedAndWarnsOfWhatIsMissing() {
        TestHerd herd = herd();
        String treatment = "\"startedOn\":\"2025-03-01\",\"productName\":\"p\",\"endedOn\":\"2025-03-03\"";
        Answer bare = post(herd, "treatments", treatment).expecting(201);
        assertThat(bare.findingCodes())
                .containsExactly("withholding-as-entered", "withholding-missing", "withholding-missing");
        assertThat(bare.textAt("/record/caution")).contains("none is computed", "veterinarian");
        assertThat(bare.at("/record/milkWithheldUntil").isMissingNode()).isTrue();
        Answer early = post(
                        herd,
                        "treatments",
                        treatment + ",\"milkWithheldUntil\":\"2025-03-02\",\"meatWithheldUntil\":\"2025-03-20\"")
                .expecting(200);
        assertThat(early.findingCodes()).containsExactly("withholding-as-entered", "withholding-before-treatment");
    }

    @Test
    void abnormalForemilkOfAHardQuarterSendsForTheVeterinarian() {
        TestHerd herd = herd();
        String check =
                "\"date\":\"2025-03-01\",\"milkingOfDay\":\"am\",\"quarter\":\"%s\",\"finding\":\"%s\",\"udder\":\"%s\"";
        assertThat(post(herd, "foremilk-checks", check.formatted("LF", "normal", "normal"))
                        .findingCodes())
                .isEmpty();
        assertThat(post(herd, "foremilk-checks", check.formatted("RF", "flakes", "normal"))
                        .findingCodes())
                .containsExactly("foremilk-abnormal");
        assertThat(post(herd, "foremilk-checks", check.formatted("LR", "flakes", "hard"))
                        .findingCodes())
                .containsExactly("foremilk-abnormal", "see-veterinarian");
    }

    @Test
    void aWarmTankIsWarnedOf() {
        TestHerd herd = TestHerd.make();
        String reading = "{\"tank\":\"main\",\"readAt\":\"2025-03-01T0%d:00:00Z\",\"temperatureC\":%s}";
        assertThat(herd.post("tank-readings", reading.formatted(7, "8")).findingCodes())
                .isEmpty();
        assertThat(herd.post("tank-readings", reading.formatted(8, "8.1")).findingCodes())
                .containsExactly("implausible");
    }

    @Test
    void anAnimalThatCameBackHasRecordsAgainAndMayLeaveAgain() {
        TestHerd herd = herd().withDeparture("A1", "2025-03-01", "transfer");
        String test = "\"date\":\"2025-05-01\",\"milkKg\":25";
        assertThat(post(herd, "test-days", test).expecting(422).text()).contains("after-departure");
        String again = "\"date\":\"2025-06-01\",\"kind\":\"sale\"";
        assertThat(post(herd, "departures", again).expecting(422).text()).contains("departed-already");
        post(herd, "departures", "\"date\":\"2025-03-01\",\"kind\":\"transfer\",\"returnedOn\":\"2025-04-15\"")
                .expecting(200);
        post(herd, "test-days", test).expecting(201);
        assertThat(post(herd, "test-days", "\"date\":\"2025-04-01\",\"milkKg\":25")
                        .expecting(422)
                        .text())
                .contains("after-departure");
        assertThat(herd.get("/summary?asOf=2025-05-02").countAt("/animals/inMilk"))
                .isEqualTo(1);
        assertThat(herd.get("/summary?asOf=2025-04-01").countAt("/animals/left"))
                .isEqualTo(1);
        post(herd, "departures", again).expecting(201);
        assertThat(herd.get("/summary?asOf=2025-06-02").countAt("/animals/left"))
                .isEqualTo(1);
        assertThat(post(
                                herd,
                                "departures",
                                "\"date\":\"2025-03-01\",\"kind\":\"transfer\",\"returnedOn\":\"2025-02-15\"")
                        .expecting(422)
                        .text())
                .contains("return-before-departure");
    }

    @Test
    void calvesStayWithTheirCalving() {
        TestHerd herd = herd();
        Answer posted = post(
                        herd,
                        "calvings",
                        "\"date\":\"2024-01-05\",\"ease\":2,\"calves\":[{\"sex\":\"female\",\"status\":\"alive\",\"weightKg\":41.5,\"identifier\":\"K-7\"},{\"sex\":\"male\",\"status\":\"stillborn\"}]")
                .expecting(201);
        assertThat(posted.at("/record/calves").size()).isEqualTo(2);
        assertThat(posted.numberAt("/record/calves/0/weightKg")).isEqualTo(41.5);
        assertThat(post(herd, "calvings", "\"date\":\"2023-01-05\",\"calves\":[{\"sex\":\"heifer\"}]")
                        .expecting(422)
                        .at("/errors")
                        .findValuesAsText("pointer"))
                .isEqualTo(List.of("/calves/0/sex"));
    }

    @Test
    void anAnimalIsFoundByEachOfItsIdentifiersAndMayGetMore() {
        TestHerd herd = TestHerd.make();
        String both = "{\"identifiers\":[{\"scheme\":\"a\",\"id\":\"1\"},{\"scheme\":\"b\",\"id\":\"2\"}]}";
        String id = herd.post("animals", both).expecting(201).textAt("/id");
        herd.post("animals", "{\"identifiers\":[{\"scheme\":\"b\",\"id\":\"2\"},{\"scheme\":\"c\",\"id\":\"3\"}]}")
                .expecting(200);
        for (String one : List.of("a:1", "b:2", "c:3", id)) {
            assertThat(herd.get("/animals/" + one).expecting(200).textAt("/id")).isEqualTo(id);
        }
    }
}
