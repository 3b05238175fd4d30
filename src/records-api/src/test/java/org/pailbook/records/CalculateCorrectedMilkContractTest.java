package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.quarkus.test.junit.QuarkusTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@QuarkusTest
class CalculateCorrectedMilkContractTest {
    private static Answer correct(String query, String body) {
        return Posts.calculate("corrected-milk" + query, body);
    }

    // Each worked by hand from the published form (sources in the library's test of the same figures); half the last
    // digit
    @ParameterizedTest
    @CsvSource({
        "fcm-4, 33.95, 0.005, ''",
        "fcm-3-5, 36.7059, 0.00005, ''",
        "fpcm-2015, 33.8660, 0.00005, ''",
        "fpcm-2022, 33.8651, 0.00005, ',\"lactosePct\":4.8'",
        "ecm-35-32, 36.7325, 0.00005, ''",
        "ecm-35-32-323, 36.3412, 0.00005, ''",
        "ecm-35-32-nrc, 36.3496, 0.00005, ''",
        "scm-1965, 33.9318, 0.00005, ',\"solidsNotFatPct\":8.8'"
    })
    void thirtyFiveKgOfMilk(String method, double kg, double tolerance, String more) {
        Answer answer = correct(
                        "?explain=true",
                        "{\"method\":\"%s\",\"milkKg\":35,\"fatPct\":3.8,\"proteinPct\":3.2%s}".formatted(method, more))
                .expecting(200);
        assertThat(answer.numberAt("/corrected/value")).isCloseTo(kg, within(tolerance));
        assertThat(answer.textAt("/corrected/method/name")).isEqualTo(method);
        assertThat(answer.textAt("/formula/name")).isEqualTo(method);
        double sum = 0;
        for (int i = 0; i < answer.at("/corrected/explanation").size(); i++) {
            sum += answer.numberAt("/corrected/explanation/" + i + "/amount");
        }
        assertThat(sum).isCloseTo(answer.numberAt("/corrected/value"), within(1e-12));
    }

    // Sjaunja 1990 (formula from memory) without and with lactose; 4.0/3.3 form
    @Test
    void theNordicFormsDifferByName() {
        String milk = ",\"milkKg\":35,\"fatPct\":3.8,\"proteinPct\":3.2";
        assertThat(correct("", "{\"method\":\"ecm-sjaunja-1990\"" + milk + "}")
                        .expecting(200)
                        .numberAt("/corrected/value"))
                .isCloseTo(33.5844, within(0.00005));
        assertThat(correct("", "{\"method\":\"ecm-sjaunja-lactose-1990\"" + milk + ",\"lactosePct\":4.8}")
                        .expecting(200)
                        .numberAt("/corrected/value"))
                .isCloseTo(33.9346, within(0.00005));
        assertThat(correct("", "{\"method\":\"ecm-4-3-3\"" + milk + "}")
                        .expecting(200)
                        .numberAt("/corrected/value"))
                .isCloseTo(33.8670, within(0.00005));
    }

    @Test
    void aFormulaIsNeverAssumed() {
        Answer answer = correct("", "{\"milkKg\":35,\"fatPct\":3.8}").expecting(422);
        assertThat(answer.textAt("/errors/0/pointer")).isEqualTo("/method");
        assertThat(answer.textAt("/errors/0/message")).contains("never assumed", "fpcm-2022", "ecm-35-32-323");
        Answer unknown = correct("", "{\"method\":\"ecm\",\"milkKg\":35}").expecting(422);
        assertThat(unknown.textAt("/errors/0/code")).isEqualTo("unknown-code");
        assertThat(unknown.textAt("/errors/0/message")).contains("fcm-4");
    }

    @Test
    void rowsAreAnsweredInTheirOrderEachWithItsRefusal() {
        Answer answer = correct("", """
                {"method":"fpcm-2022","rows":[{"milkKg":35,"fatPct":3.8,"proteinPct":3.2,"lactosePct":4.8},
                 {"milkKg":35,"fatPct":3.8},{"milkKg":35,"fatPct":150,"proteinPct":3.2},{"milkKg":0,"fatPct":3,"proteinPct":3},
                 {"milkKg":35,"fatPct":3.8,"proteinPct":3.2}]}""").expecting(200);
        assertThat(answer.at("/rows")).hasSize(5);
        assertThat(answer.numberAt("/rows/0/value")).isCloseTo(33.8651, within(0.00005));
        assertThat(answer.at("/rows/1/warnings").findValuesAsText("code")).contains("protein-needed");
        assertThat(answer.textAt("/rows/1/status")).isEqualTo("notEnoughData");
        assertThat(answer.at("/rows/2/warnings").findValuesAsText("code")).contains("value-impossible");
        assertThat(answer.numberAt("/rows/3/value")).isZero();
        assertThat(answer.at("/rows/4/warnings").findValuesAsText("code")).contains("lactose-assumed");
        assertThat(answer.at("/corrected").isMissingNode()).isTrue();
        assertThat(correct("", "{\"method\":\"fcm-4\",\"rows\":[]}")
                        .expecting(200)
                        .at("/rows"))
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "fcm-4, '', fat-needed",
        "fpcm-2015, ',\"fatPct\":4', protein-needed",
        "ecm-sjaunja-lactose-1990, ',\"fatPct\":4,\"proteinPct\":3.3', lactose-needed",
        "scm-1965, ',\"fatPct\":4', solids-not-fat-needed"
    })
    void whatWasNotMeasuredIsNotMadeUp(String method, String composition, String code) {
        Answer answer = correct("", "{\"method\":\"" + method + "\",\"milkKg\":30" + composition + "}")
                .expecting(200);
        assertThat(answer.textAt("/corrected/status")).isEqualTo("notEnoughData");
        assertThat(answer.at("/corrected/warnings").findValuesAsText("code")).contains(code);
    }

    @Test
    void aFormulaThatIsNotOneAtItsStandardSaysSo() {
        // 0.327 + 12.95 x 0.035 + 7.2 x 0.032 = 1.01065, so that 40 kg at 3.5/3.2 % become 40.43
        Answer answer = correct("", "{\"method\":\"ecm-35-32\",\"milkKg\":40,\"fatPct\":3.5,\"proteinPct\":3.2}")
                .expecting(200);
        assertThat(answer.numberAt("/corrected/value")).isCloseTo(40.43, within(0.005));
        assertThat(answer.numberAt("/formula/factorAtStandard")).isCloseTo(1.01065, within(5e-6));
        assertThat(answer.numberAt("/formula/standard/fatPct")).isEqualTo(3.5);
        assertThat(answer.at("/corrected/warnings").findValuesAsText("code")).contains("formula-not-normalised");
    }

    @Test
    void faultsOfRowsHaveTheirPlaces() {
        Answer answer = correct("", """
                {"method":"fcm-4","milkKg":3,"rows":[{"milkKg":30,"fatPct":4},{"fatPct":4},{"milkKg":-1,"fat":4},[]]}""").expecting(422);
        assertThat(answer.at("/errors").findValuesAsText("pointer"))
                .containsExactlyInAnyOrder("/milkKg", "/rows/1/milkKg", "/rows/2/milkKg", "/rows/2/fat", "/rows/3");
    }

    @Test
    void twentyThousandRowsPassAndOneMoreDoesNot() {
        String row = "{\"milkKg\":31.25,\"fatPct\":4.0,\"proteinPct\":3.3,\"lactosePct\":4.8}";
        String rows = (row + ",").repeat(19_999) + row;
        Answer answer =
                correct("", "{\"method\":\"fcm-4\",\"rows\":[" + rows + "]}").expecting(200);
        assertThat(answer.at("/rows")).hasSize(20_000);
        assertThat(answer.numberAt("/rows/19999/value")).isCloseTo(31.25, within(1e-12));
        assertThat(correct("", "{\"method\":\"fcm-4\",\"rows\":[" + rows + "," + row + "]}")
                        .expecting(422)
                        .textAt("/errors/0/code"))
                .isEqualTo("too-many");
    }

    // a body of 31 MB of empty objects once ended in a failure for want of memory
    @Test
    void aMillionEmptyObjectsAreTooMuchToHoldAtOnce() {
        Answer answer = correct("", "{\"method\":\"fcm-4\",\"rows\":[" + "{},".repeat(600_000) + "{}]}")
                .expecting(413);
        assertThat(answer.textAt("/code")).isEqualTo("too-large");
        assertThat(answer.textAt("/detail")).contains("send it in parts");
    }
}
