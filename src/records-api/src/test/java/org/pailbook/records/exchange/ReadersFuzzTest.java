package org.pailbook.records.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.pailbook.records.intake.Column;
import org.pailbook.records.intake.PostedRow;
import org.pailbook.records.problem.Problem;
import org.pailbook.records.wire.Fields;
import org.pailbook.records.wire.StrictJson;
import org.pailbook.records.wire.WireDates;

/**
 * Whatever bytes come in, a reader ends with rows or with a refusal in our words. In the suite the kept inputs run; with the environment
 * variable {@code JAZZER_FUZZ=1} and one method named, new ones are searched.
 */
class ReadersFuzzTest {
    private static final List<Column> COLUMNS = List.of(
            Column.text("animal_scheme", "animal", "scheme"),
            Column.text("animal_id", "animal", "id"),
            Column.text("date", "date"),
            Column.number("milk_kg", "milkKg"));
    private static final int MOST_ROWS = 10_000;

    /** Makes a reader of the bytes. */
    private interface Opening {
        RowReader open(ByteArrayInputStream body) throws IOException;
    }

    @FuzzTest(maxDuration = "10m")
    void tablesEndInRowsOrInARefusal(byte[] body) {
        readAll(body, stream -> new CsvRows(stream, COLUMNS));
    }

    @FuzzTest(maxDuration = "10m")
    void linesOfJsonEndInRowsOrInARefusal(byte[] body) {
        readAll(body, NdjsonRows::new);
    }

    @FuzzTest(maxDuration = "10m")
    void jsonEndsInRowsOrInARefusal(byte[] body) {
        readAll(body, JsonRows::new);
    }

    @FuzzTest(maxDuration = "10m")
    void oneRecordIsReadOrRefused(byte[] body) {
        try {
            judge(StrictJson.object(new ByteArrayInputStream(body)));
        } catch (Problem refused) {
            assertInOurWords(refused);
        }
    }

    @FuzzTest(maxDuration = "10m")
    void aDateThatIsReadIsWrittenTheSame(byte[] text) {
        String date = new String(text, StandardCharsets.UTF_8);
        WireDates.parse(date).ifPresent(read -> assertThat(read.toString()).isEqualTo(date));
    }

    private static void readAll(byte[] body, Opening opening) {
        try {
            RowReader reader = opening.open(new ByteArrayInputStream(body));
            int rows = 0;
            for (PostedRow row = reader.next(); row != null && rows < MOST_ROWS; row = reader.next()) {
                rows++;
                assertThat(row.row()).isEqualTo(rows);
                if (row.content() == null) {
                    assertThat(row.unreadable()).isNotEmpty();
                } else {
                    judge(row.content());
                }
            }
        } catch (IOException unreadable) {
            assertInOurWords(StrictJson.unreadable(unreadable));
        } catch (Problem refused) {
            assertInOurWords(refused);
        }
    }

    /** Reads the members as a kind of record would. */
    private static void judge(ObjectNode content) {
        Fields fields = new Fields(content, "");
        Fields animal = fields.object("animal");
        if (animal != null) {
            animal.requiredText("scheme", 100);
            animal.requiredText("id", 100);
            animal.finish();
        }
        fields.requiredDate("date");
        Double milkKg = fields.number("milkKg");
        assertThat(milkKg == null || Double.isFinite(milkKg)).isTrue();
        fields.integer("parity", 1, 25);
        fields.texts("herds", 10, 40);
        fields.objects("identifiers", 10).forEach(Fields::finish);
        fields.finish();
        fields.findings().forEach(finding -> assertThat(finding.message()).isNotBlank());
    }

    private static void assertInOurWords(Problem refused) {
        assertThat(refused.code().status()).isBetween(400, 499);
        assertThat(refused.getMessage())
                .isNotBlank()
                .doesNotContain("com.fasterxml", "org.apache", "java.", "Exception");
    }
}
