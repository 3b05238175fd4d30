package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.List;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;

/** Ten thousand test days in one request: ten chunks of a thousand. */
@QuarkusTest
class BigBatchContractTest {
    private static final int COWS = 200;
    private static final int TESTS = 50;

    @Inject
    DataSource database;

    @Test
    void tenThousandTestDaysAreTakenAtOnceAndAResendWritesNothing() throws SQLException {
        TestHerd herd = TestHerd.make();
        StringBuilder animals = new StringBuilder();
        StringBuilder calvings = new StringBuilder();
        StringBuilder days = new StringBuilder();
        for (int cow = 0; cow < COWS; cow++) {
            String animal = TestHerd.animal("C" + cow);
            animals.append("{\"identifiers\":[").append(animal).append("]}\n");
            calvings.append("{\"animal\":").append(animal).append(",\"date\":\"2024-01-01\",\"parity\":2}\n");
            for (int test = 0; test < TESTS; test++) {
                LocalDate date = LocalDate.of(2024, 1, 10).plusDays(test * 6L);
                days.append(TestHerd.testDayJson("C" + cow, date.toString(), 20 + (cow + test) % 30 / 2.0))
                        .append('\n');
            }
        }
        assertThat(herd.bulk("animals", TestHerd.NDJSON, animals.toString()).countAt("/created"))
                .isEqualTo(COWS);
        assertThat(herd.bulk("calvings", TestHerd.NDJSON, calvings.toString()).countAt("/created"))
                .isEqualTo(COWS);

        Answer first = herd.bulk("test-days", TestHerd.NDJSON, days.toString()).expecting(200);
        assertThat(first.countAt("/received")).isEqualTo(COWS * TESTS);
        assertThat(first.countAt("/created")).isEqualTo(COWS * TESTS);
        assertThat(first.countAt("/rowsReported")).isZero();

        StoredRows before = StoredRows.in(database);
        Answer second = herd.bulk("test-days", TestHerd.NDJSON, days.toString()).expecting(200);
        assertThat(second.countAt("/unchanged")).isEqualTo(COWS * TESTS);
        assertThat(second.countAt("/updated") + second.countAt("/created")).isZero();
        assertThat(StoredRows.in(database)).isEqualTo(before);
        assertThat(highestVersion(herd.code())).isEqualTo(1);
    }

    /** 80,000 identifiers in one transaction: more values than PostgreSQL takes in one statement (65,535). */
    @Test
    void asManyAnimalsAsAllOrNothingAllowsAreTakenWithFourIdentifiersEach() {
        TestHerd herd = TestHerd.make();
        StringBuilder animals = new StringBuilder();
        for (int cow = 0; cow < 20_000; cow++) {
            animals.append("{\"identifiers\":[");
            for (String letter : List.of("A", "B", "C", "D")) {
                animals.append(letter.equals("A") ? "" : ",").append(TestHerd.animal(letter + cow));
            }
            animals.append("]}\n");
        }
        Answer first = herd.bulk("animals", TestHerd.NDJSON, animals.toString(), "?atomic=true")
                .expecting(200);
        assertThat(first.countAt("/created")).isEqualTo(20_000);
        assertThat(herd.getAnimal("D19999", "").expecting(200).textAt("/record/identifiers/0/id"))
                .isEqualTo("A19999");
    }

    @Test
    void aBodyOfOneRowTooManyForAllOrNothingStoresNothing() {
        TestHerd herd = TestHerd.make();
        String animals = "{\"identifiers\":[" + TestHerd.animal("C1") + "]}\n";
        StringBuilder tooMany = new StringBuilder();
        for (int cow = 0; cow <= 20_000; cow++) {
            tooMany.append(animals.replace("C1", "C" + cow));
        }
        herd.bulk("animals", TestHerd.NDJSON, tooMany.toString(), "?atomic=true")
                .expecting(413);
        herd.getAnimal("C1", "").expecting(404);
    }

    @Test
    void aRowIsCheckedAgainstThoseOfEarlierChunksOfItsBody() {
        TestHerd herd = TestHerd.make();
        StringBuilder animals = new StringBuilder();
        StringBuilder calvings = new StringBuilder();
        for (int cow = 0; cow < 1_000; cow++) {
            String animal = TestHerd.animal("C" + cow);
            animals.append("{\"identifiers\":[").append(animal).append("]}\n");
            calvings.append("{\"animal\":").append(animal).append(",\"date\":\"2024-01-01\"}\n");
        }
        herd.bulk("animals", TestHerd.NDJSON, animals.toString()).expecting(200);
        calvings.append("{\"animal\":").append(TestHerd.animal("C0")).append(",\"date\":\"2024-03-01\"}\n");
        Answer answer =
                herd.bulk("calvings", TestHerd.NDJSON, calvings.toString()).expecting(200);
        assertThat(answer.countAt("/created")).isEqualTo(1_000);
        assertThat(answer.textAt("/rows/0/findings/0/code")).isEqualTo("calvings-too-close");
    }

    private int highestVersion(String herdCode) throws SQLException {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(
                        "select max(t.version), count(*) from test_day t join herd h on h.id = t.herd_id where h.code = '"
                                + herdCode + "'")) {
            result.next();
            assertThat(result.getInt(2)).isEqualTo(COWS * TESTS);
            return result.getInt(1);
        }
    }
}
