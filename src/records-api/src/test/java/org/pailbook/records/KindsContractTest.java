package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import javax.sql.DataSource;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds for every kind of record, one example each. */
@QuarkusTest
class KindsContractTest {
    @Inject
    DataSource database;

    static List<RecordExamples> kinds() {
        return RecordExamples.ALL;
    }

    private static TestHerd herd() {
        return TestHerd.make().withAnimal("A1").withCalving("A1", "2025-08-19", 3);
    }

    @ParameterizedTest
    @MethodSource("kinds")
    void aRecordIsKeptOnceFetchedAndListed(RecordExamples example) {
        TestHerd herd = herd();
        Answer created = herd.post(example.kind(), example.json()).expecting(201);
        assertThat(created.header("Location").orElseThrow())
                .endsWith(herd.path("/" + example.kind() + "/" + created.textAt("/id")));
        StoredRows before = StoredRows.in(database);
        Answer again = herd.post(example.kind(), example.json()).expecting(200);
        assertThat(again.textAt("/outcome")).isEqualTo("unchanged");
        assertThat(StoredRows.in(database)).isEqualTo(before);
        Answer fetched =
                herd.get("/" + example.kind() + "/" + created.textAt("/id")).expecting(200);
        assertThat(fetched.at("/record")).isEqualTo(created.at("/record"));
        assertThat(fetched.header("ETag")).contains("\"1\"");
        Answer listed = herd.get("/" + example.kind()).expecting(200);
        assertThat(listed.at("/items/0/record")).isEqualTo(created.at("/record"));
        assertThat(listed.at("/items").size()).isEqualTo(1);
    }

    @ParameterizedTest
    @MethodSource("kinds")
    void whatWasFetchedGoesInAgainUnchanged(RecordExamples example) {
        TestHerd herd = herd();
        Answer created = herd.post(example.kind(), example.json()).expecting(201);
        Answer again =
                herd.post(example.kind(), created.at("/record").toString()).expecting(200);
        assertThat(again.textAt("/outcome")).isEqualTo("unchanged");
    }

    @ParameterizedTest
    @MethodSource("kinds")
    void theSameKeyReplacesAndAnotherKeyAdds(RecordExamples example) {
        TestHerd herd = herd();
        Answer first = herd.post(example.kind(), example.json()).expecting(201);
        Answer changed =
                herd.post(example.kind(), "{" + example.changed() + "}").expecting(200);
        assertThat(changed.textAt("/outcome")).isEqualTo("updated");
        assertThat(changed.textAt("/id")).isEqualTo(first.textAt("/id"));
        assertThat(changed.countAt("/version")).isEqualTo(2);
        Answer other = herd.post(example.kind(), "{" + example.other() + "}").expecting(201);
        assertThat(other.textAt("/id")).isNotEqualTo(first.textAt("/id"));
        assertThat(herd.get("/" + example.kind()).at("/items").size()).isEqualTo(2);
    }

    @ParameterizedTest
    @MethodSource("kinds")
    void manyGoInTogetherAndTwoOfOneKeyAreOne(RecordExamples example) {
        TestHerd herd = herd();
        Answer answer = herd.bulk(
                        example.kind(),
                        TestHerd.NDJSON,
                        example.json() + "\n{" + example.changed() + "}\n{" + example.other() + "}\n")
                .expecting(200);
        assertThat(answer.countAt("/created")).as(answer.text()).isEqualTo(2);
        assertThat(answer.countAt("/superseded")).isEqualTo(1);
    }

    @ParameterizedTest
    @MethodSource("kinds")
    void theListIsCutByDays(RecordExamples example) {
        TestHerd herd = herd();
        herd.post(example.kind(), example.json()).expecting(201);
        String path = "/" + example.kind();
        JsonNode record = herd.get(path).at("/items/0/record");
        String day = record.path(example.day()).asText().substring(0, 10);
        assertThat(herd.get(path + "?from=" + day + "&to=" + day).at("/items").size())
                .isEqualTo(1);
        assertThat(herd.get(path + "?to=2025-08-31").at("/items").size()).isZero();
        assertThat(herd.get(path + "?from=2026-08-31").at("/items").size()).isZero();
    }
}
