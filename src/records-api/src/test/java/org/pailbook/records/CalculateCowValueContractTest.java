package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.quarkus.test.junit.QuarkusTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
class CalculateCowValueContractTest {
    private static final double MONEY = 1e-6;

    private static Answer value(String query, String cow, String more) {
        return Posts.calculate("cow-value" + query, "{\"asOf\":\"2026-01-10\",\"cow\":{" + cow + "}" + more + "}");
    }

    // Rows of the output of a reference program for the invented reference set (Python, numpy); 30.4375 days a month,
    // so that day
    // 228 lies in month 8
    @ParameterizedTest
    @CsvSource({
        "'\"parity\":2,\"daysInMilk\":228,\"monthsPregnant\":4,\"milkLevel\":1', 701.869624, 554.913233, worth-keeping",
        "'\"parity\":2,\"daysInMilk\":137,\"monthsPregnant\":1,\"milkLevel\":1', 826.329656, 289.137014, worth-keeping",
        "'\"parity\":3,\"daysInMilk\":289,\"monthsPregnant\":3,\"milkLevel\":0.85', 97.416791, 97.416791, close-call",
        "'\"parity\":9,\"daysInMilk\":350,\"monthsPregnant\":9', 712.656290, 712.656290, worth-keeping"
    })
    void aPregnantCowUnderTheReferencePrices(String cow, double payoff, double pregnancy, String suggestion) {
        Answer answer = value("?explain=true", cow, "").expecting(200);
        assertThat(answer.numberAt("/retentionPayoff/value")).isCloseTo(payoff, within(MONEY));
        assertThat(answer.textAt("/retentionPayoff/method/name")).isEqualTo("retention-payoff");
        assertThat(answer.numberAt("/pregnancyValue/value")).isCloseTo(pregnancy, within(MONEY));
        assertThat(answer.textAt("/suggestion/code")).isEqualTo(suggestion);
        assertThat(answer.numberAt("/meanNewPregnancy/value")).isCloseTo(255.506516, within(MONEY));
        assertThat(answer.numberAt("/meanPregnancyLoss/value")).isCloseTo(442.010381, within(MONEY));
        double sum = 0;
        for (int i = 0; i < answer.at("/retentionPayoff/explanation").size(); i++) {
            sum += answer.numberAt("/retentionPayoff/explanation/" + i + "/amount");
        }
        assertThat(sum).isCloseTo(payoff, within(MONEY));
    }

    @Test
    void everyAnswerHasItsCautionAndNamesWhatWasAssumed() {
        Answer answer = value(
                        "",
                        "\"id\":\"112\",\"parity\":1,\"calvingDate\":\"2025-09-01\",\"inseminatedOn\":\"2025-12-01\"",
                        ",\"prices\":{\"milkCuPerKg\":0.5,\"heiferCu\":1900}")
                .expecting(200);
        assertThat(answer.textAt("/id")).isEqualTo("112");
        assertThat(answer.textAt("/caution")).contains("veterinarian", "meat withholding on the label");
        assertThat(answer.at("/assumed").findValuesAsText("pointer"))
                .contains("/prices/calfCu", "/closeCallCu")
                .doesNotContain("/prices/milkCuPerKg", "/prices/heiferCu");
        assertThat(answer.at("/retentionPayoff/warnings").findValuesAsText("code"))
                .contains("reference-value-used", "pregnancy-not-checked", "milk-level-assumed", "health-not-valued");
        assertThat(answer.at("/retentionPayoff/warnings").toString()).contains("62.5 %");
        assertThat(answer.numberAt("/range/low")).isLessThan(answer.numberAt("/retentionPayoff/value"));
        assertThat(answer.numberAt("/range/high")).isGreaterThan(answer.numberAt("/retentionPayoff/value"));
        assertThat(answer.at("/range/shifts")).hasSize(4);
        assertThat(answer.at("/suggestion/words").asText()).isIn("worth keeping", "close call", "consider replacing");
    }

    @Test
    void anOpenCowIsToldTheOtherWayOfKeepingHerAndWhy() {
        Answer answer = value(
                        "",
                        "\"parity\":4,\"daysInMilk\":200,\"pregnancy\":\"open\",\"projected305Kg\":6500,\"groupMean305Kg\":7200,"
                                + "\"projected305StandardErrorKg\":300,\"testDays\":6",
                        "")
                .expecting(200);
        assertThat(answer.countAt("/alternative/untilMonthInMilk")).isGreaterThan(7);
        assertThat(answer.textAt("/alternative/payoff/method/name")).isEqualTo("retention-payoff-without-breeding");
        assertThat(answer.at("/reasons")).hasSize(2);
        assertThat(answer.at("/reasons").findValuesAsText("about")).contains("pregnancy");
        assertThat(answer.at("/range/shifts")).hasSize(6);
        assertThat(answer.at("/simplerRules").findValuesAsText("name"))
                .contains("income-over-feed-cost", "marginal-net-revenue");
        Answer unbred = value(
                        "",
                        "\"parity\":4,\"daysInMilk\":200,\"pregnancy\":\"open\",\"projected305Kg\":6500,\"groupMean305Kg\":7200,"
                                + "\"testDays\":6,\"isToBeBred\":false",
                        "")
                .expecting(200);
        assertThat(unbred.numberAt("/retentionPayoff/value"))
                .isCloseTo(answer.numberAt("/alternative/payoff/value"), within(MONEY));
        assertThat(unbred.at("/alternative").isMissingNode()).isTrue();
    }

    @Test
    void theHerdsOwnFiguresAndAHealthBurdenMoveTheAnswer() {
        String cow = "\"parity\":2,\"daysInMilk\":137,\"pregnancy\":\"open\",\"milkLevel\":1";
        double before = value("", cow, "").expecting(200).numberAt("/retentionPayoff/value");
        assertThat(before).isCloseTo(537.192642, within(MONEY));
        Answer fertile = value("", cow, ",\"parities\":[{\"parity\":2,\"pregnancyRate21DayPct\":30}]")
                .expecting(200);
        assertThat(fertile.numberAt("/retentionPayoff/value")).isGreaterThan(before);
        Answer curve = value("", cow, ",\"parities\":[{\"parity\":2,\"woodA\":25,\"woodB\":0.17,\"woodC\":0.0034}]")
                .expecting(200);
        assertThat(curve.numberAt("/retentionPayoff/value")).isGreaterThan(before);
        Answer ill = value("", cow + ",\"health\":{\"extraCostCuPerMonth\":30,\"unplannedExitFactor\":2}", "")
                .expecting(200);
        assertThat(ill.numberAt("/retentionPayoff/value")).isLessThan(before);
        assertThat(ill.at("/retentionPayoff/warnings").findValuesAsText("code")).doesNotContain("health-not-valued");
        assertThat(ill.at("/reasons").findValuesAsText("about")).contains("health");
    }

    @Test
    void aCowWithoutACalvingGetsNoValueAndIsToldWhy() {
        Answer answer = value("", "\"parity\":2", "").expecting(200);
        assertThat(answer.textAt("/status")).isEqualTo("notEnoughData");
        assertThat(answer.at("/retentionPayoff/warnings").findValuesAsText("code"))
                .contains("no-calving");
        assertThat(answer.at("/suggestion").isMissingNode()).isTrue();
        assertThat(answer.textAt("/caution")).isNotBlank();
    }

    // Odd but possible: no answer may break
    @ParameterizedTest
    @ValueSource(
            strings = {
                "\"prices\":{\"milkCuPerKg\":0,\"calfCu\":0,\"saleCuPerKgLive\":0,\"unplannedSaleShare\":1}",
                "\"prices\":{\"milkCuPerKg\":1e9,\"heiferCu\":1e9}",
                "\"prices\":{\"interestPctPerYear\":0.1}",
                "\"prices\":{\"interestPctPerYear\":50,\"heiferCu\":728.001}",
                "\"parities\":[{\"parity\":2,\"pregnancyRate21DayPct\":100,\"unplannedExitPctPerMonth\":0}]",
                "\"parities\":[{\"parity\":1,\"pregnancyRate21DayPct\":0},{\"parity\":2,\"unplannedExitPctPerMonth\":100}]",
                "\"closeCallCu\":0"
            })
    void oddPricesAndHerdsAreAnswered(String odd) {
        for (String cow : new String[] {
            "\"parity\":2,\"daysInMilk\":0",
            "\"parity\":1,\"daysInMilk\":3000,\"milkLevel\":0",
            "\"parity\":99,\"daysInMilk\":640,\"monthsPregnant\":9,\"milkLevel\":3"
        }) {
            Answer answer = value("", cow, "," + odd).expecting(200);
            assertThat(answer.textAt("/status")).isEqualTo("ok");
        }
    }

    @Test
    void everyFaultIsToldAtOnceWithItsPlace() {
        Answer answer = value(
                        "",
                        "\"daysInMilk\":-1,\"monthsPregnant\":10,\"milkLevel\":4,\"projected305Kg\":8000,\"age\":3",
                        ",\"prices\":{\"interestPctPerYear\":0,\"milk\":1},\"parities\":[{\"parity\":6}]")
                .expecting(422);
        assertThat(answer.at("/errors").findValuesAsText("pointer"))
                .contains(
                        "/cow/parity",
                        "/cow/daysInMilk",
                        "/cow/monthsPregnant",
                        "/cow/milkLevel",
                        "/cow/projected305Kg",
                        "/cow/groupMean305Kg",
                        "/cow/age",
                        "/prices/interestPctPerYear",
                        "/prices/milk",
                        "/parities/0/parity");
        assertThat(value("", "\"parity\":2,\"daysInMilk\":20,\"monthsPregnant\":5", "")
                        .expecting(422)
                        .textAt("/errors/0/code"))
                .isEqualTo("dates-out-of-order");
    }
}
