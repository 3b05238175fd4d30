package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

@QuarkusTest
class CalculatePersistencyContractTest {
    private static final double[] MONTHLY = {15, 45, 75, 105, 135, 165, 195, 225, 255, 285};

    private static Answer ask(String body) {
        return Posts.calculate("persistency?explain=true", body);
    }

    private static String onCurve(String members, DoubleUnaryOperator kgOnDay) {
        return Posts.lactation(
                members, MONTHLY, Arrays.stream(MONTHLY).map(kgOnDay).toArray());
    }

    private static JsonNode measure(Answer answer, String name) {
        for (JsonNode figure : answer.at("/measures")) {
            if (figure.at("/method/name").asText().equals(name)) {
                return figure;
            }
        }
        throw new AssertionError("no measure " + name + " in " + answer.text());
    }

    private static double value(Answer answer, String name) {
        JsonNode value = measure(answer, name).at("/value");
        assertThat(value.isNumber()).as(name + " of " + answer.text()).isTrue();
        return value.doubleValue();
    }

    // derived from the definitions outside this project: Wood (15, 0.2, 0.004), sums of days; S = -1.2 ln 0.004
    @Test
    void tenTestsOnAWoodCurve() {
        Answer answer = ask(onCurve("\"breed\":\"HOL\",", day -> 15 * Math.pow(day, 0.2) * Math.exp(-0.004 * day)))
                .expecting(200);
        assertThat(value(answer, "persistency-p2-1")).isCloseTo(87.8293, within(0.00005));
        assertThat(value(answer, "persistency-p3-1")).isCloseTo(65.4381, within(0.00005));
        assertThat(value(answer, "persistency-wood-1967")).isCloseTo(6.625753, within(5e-7));
        assertThat(answer.textAt("/curve/method/name")).isEqualTo("wood-1967");
        assertThat(answer.textAt("/status")).isEqualTo("ok");
        assertThat(measure(answer, "persistency-p2-1").at("/explanation")).hasSize(1);
        assertThat(answer.numberAt("/reliabilityShare")).isBetween(0.3, 1.0);
        assertThat(measure(answer, "best-prediction-persistency").at("/unit").asText())
                .isEqualTo("SD");
    }

    // derived likewise: Wilmink (30, -10, -0.04, 0.05), sums 2604.2725, 2396.6947, 1997.9912; day 280 less day 60 by
    // hand
    @Test
    void tenTestsOnAWilminkCurve() {
        Answer answer = ask(onCurve("\"model\":\"wilmink-1987\",", day -> 30 - 10 * Math.exp(-0.05 * day) - 0.04 * day))
                .expecting(200);
        assertThat(value(answer, "persistency-p2-1")).isCloseTo(92.0293, within(0.00005));
        assertThat(value(answer, "persistency-p3-1")).isCloseTo(76.7197, within(0.00005));
        assertThat(value(answer, "persistency-decline-60-280")).isCloseTo(-8.30214, within(5e-6));
        // Wood's own measure needs Wood's curve
        assertThat(measure(answer, "persistency-wood-1967").at("/status").asText())
                .isEqualTo("notEnoughData");
        assertThat(measure(answer, "persistency-wood-1967").at("/warnings").findValuesAsText("code"))
                .contains("persistency-refused");
    }

    // common practice; derived: 100 (29.8 / 32.0)^(30 / 33) = 93.730, drawn straight 93.75
    @Test
    void monthlyPersistencyOfTheLastTwoTests() {
        Answer answer = ask(Posts.lactation("", new double[] {60, 90, 123}, new double[] {40, 32.0, 29.8}))
                .expecting(200);
        assertThat(value(answer, "monthly-persistency-power")).isCloseTo(93.730, within(0.0005));
        assertThat(value(answer, "monthly-persistency-linear")).isCloseTo(93.75, within(1e-9));
        // three tests: nothing is read off a curve, and no best prediction is given
        for (String refused :
                new String[] {"persistency-p2-1", "persistency-wood-1967", "best-prediction-persistency"}) {
            assertThat(measure(answer, refused).at("/value").isMissingNode())
                    .as(refused)
                    .isTrue();
            assertThat(measure(answer, refused).at("/warnings").findValuesAsText("code"))
                    .as(refused)
                    .contains("too-few-tests");
        }
        assertThat(measure(answer, "first-test-yield").at("/warnings").findValuesAsText("code"))
                .contains("first-test-too-late");
        assertThat(value(answer, "peak-test-150")).isEqualTo(40);
        // the mean of the two highest of the first three, by hand
        assertThat(value(answer, "summit-milk")).isEqualTo(36);
    }

    @Test
    void aShortLactationHasNoMeasureOfDays201To300() {
        double[] days = {15, 45, 75, 105, 135};
        Answer answer = ask(Posts.lactation("", days, new double[] {24, 30, 29, 28, 26}))
                .expecting(200);
        assertThat(measure(answer, "persistency-p3-1").at("/warnings").findValuesAsText("code"))
                .contains("lactation-too-short");
        assertThat(value(answer, "persistency-wood-1967")).isPositive();
    }

    @Test
    void withoutTestsEveryMeasureIsRefusedAndNoneFails() {
        Answer answer = ask("{\"calvingDate\":\"2025-01-01\",\"parity\":2,\"testDays\":[]}")
                .expecting(200);
        assertThat(answer.textAt("/status")).isEqualTo("notEnoughData");
        assertThat(answer.at("/measures")).hasSizeGreaterThan(10);
        for (JsonNode figure : answer.at("/measures")) {
            assertThat(figure.at("/value").isMissingNode()).isTrue();
            assertThat(figure.at("/warnings").findValuesAsText("effect")).contains("blocks");
        }
    }

    @Test
    void faultsHaveTheirPlaces() {
        Answer answer =
                ask("{\"model\":\"wood\",\"parity\":\"2\",\"testDays\":{}}").expecting(422);
        assertThat(answer.at("/errors").findValuesAsText("pointer"))
                .containsExactlyInAnyOrder("/model", "/calvingDate", "/parity", "/testDays");
    }
}
