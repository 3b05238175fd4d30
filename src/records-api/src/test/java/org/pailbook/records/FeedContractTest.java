package org.pailbook.records;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;

/** Feeds: one table of one herd at an address with a secret in it. */
@QuarkusTest
class FeedContractTest {
    private static final String UNTIL =
            LocalDate.now(ZoneOffset.UTC).plusDays(30).toString();

    @Inject
    DataSource database;

    private static Answer make(TestHerd as, String herd, String report, String expiresOn) {
        return as.send(
                "POST",
                "/v1/feeds",
                TestHerd.JSON,
                "{\"herd\":\"%s\",\"report\":\"%s\",\"expiresOn\":\"%s\"}".formatted(herd, report, expiresOn));
    }

    private static Answer open(String address) {
        return new RawRequest("GET", address, List.of(), null).send(Map.of());
    }

    private static TestHerd herd() {
        return TestHerd.make()
                .withAnimal("=FB-1", ",\"breed\":\"HOL\",\"name\":\"Dolly, \\\"the\\\" first\"")
                .withCalving("=FB-1", "2025-08-19", 2)
                .withTestDay("=FB-1", "2025-09-16", 31.2, 4.1)
                .withTestDay("=FB-1", "2025-10-14", 33);
    }

    @Test
    void aFeedShowsItsTableWithoutAKey() {
        TestHerd herd = herd();
        Answer made = make(herd, herd.code(), "test-days", UNTIL).expecting(201);
        assertThat(made.textAt("/address")).matches("/feeds/[0-9A-Za-z]{43}/test-days\\.csv");
        Answer table = open(made.textAt("/address") + "?asOf=2025-11-30").expecting(200);
        assertThat(table.header("Content-Type").orElse("").toLowerCase()).startsWith("text/csv;charset=utf-8");
        assertThat(table.header("Referrer-Policy")).contains("no-referrer");
        assertThat(table.header("Cache-Control")).contains("private, no-store");
        assertThat(table.header("Content-Disposition").orElse("")).contains(herd.code() + "-test-days-2025-11-30.csv");
        // a cell that a spreadsheet would take for a formula is made text: OWASP, CSV Injection
        assertThat(table.text())
                .isEqualTo(
                        "\uFEFFanimal_scheme,animal_id,name,date,parity,days_in_milk,milk_kg,fat_pct,protein_pct,lactose_pct,"
                                + "scc_thousand_per_ml,as_of,method,method_version,warnings\r\n"
                                + "example.eartag,'=FB-1,\"Dolly, \"\"the\"\" first\",2025-09-16,2,28,31.2,4.1,,,,2025-11-30,,,\r\n"
                                + "example.eartag,'=FB-1,\"Dolly, \"\"the\"\" first\",2025-10-14,2,56,33,,,,,2025-11-30,,,\r\n");
        assertThat(open(made.textAt("/address") + "?asOf=2025-09-30&locale=semicolon")
                        .expecting(200)
                        .text())
                .endsWith("first\";2025-09-16;2;28;31,2;4,1;;;;2025-09-30;;;\r\n");
    }

    @Test
    void everyTableHasItsHeaderAlsoForAnEmptyHerd() {
        TestHerd empty = TestHerd.make();
        for (String report : List.of("animals", "events", "findings", "lactations", "projections", "test-days")) {
            String address =
                    make(empty, empty.code(), report, UNTIL).expecting(201).textAt("/address");
            assertThat(open(address).expecting(200).text())
                    .isEqualTo(empty.get("/reports/" + report + ".csv")
                            .expecting(200)
                            .text())
                    .startsWith("\uFEFFanimal_scheme,animal_id,")
                    .endsWith(",as_of,method,method_version,warnings\r\n")
                    .hasLineCount(1);
        }
    }

    @Test
    void lactationsAndProjectionsAreTheFiguresOfTheLactationItself() {
        TestHerd herd = herd();
        String id = "%3DFB-1";
        Answer lactation = herd.getAnimal(id, "/lactations/2?asOf=2025-11-30").expecting(200);
        Map<String, String> line =
                row(make(herd, herd.code(), "lactations", UNTIL).textAt("/address"));
        assertThat(Double.parseDouble(line.get("accumulated_milk_kg")))
                .isCloseTo(lactation.numberAt("/accumulated/value"), org.assertj.core.api.Assertions.within(0.05));
        assertThat(line)
                .containsEntry("days_in_milk", "103") // 19 August to 30 November 2025
                .containsEntry("method", lactation.textAt("/accumulated/method/name"));
        Map<String, String> projected =
                row(make(herd, herd.code(), "projections", UNTIL).textAt("/address"));
        assertThat(Double.parseDouble(projected.get("projected_305_kg")))
                .isCloseTo(lactation.numberAt("/projected305/value"), org.assertj.core.api.Assertions.within(0.5));
        assertThat(Double.parseDouble(projected.get("projected_305_low_kg")))
                .isCloseTo(
                        lactation.numberAt("/projected305/interval80/low"),
                        org.assertj.core.api.Assertions.within(0.5));
        assertThat(projected.get("warnings")).contains("few-test-days");
        String animals = open(make(herd, herd.code(), "animals", UNTIL).textAt("/address"))
                .expecting(200)
                .text();
        assertThat(animals).contains("example.eartag,'=FB-1,\"Dolly, \"\"the\"\" first\",HOL,,,");
    }

    /** The first row by column name; the name of the cow has no quotes here. */
    private static Map<String, String> row(String address) {
        String[] lines = open(address + "?asOf=2025-11-30")
                .expecting(200)
                .text()
                .replace("\"Dolly, \"\"the\"\" first\"", "Dolly")
                .substring(1)
                .split("\r\n");
        String[] names = lines[0].split(",", -1);
        String[] cells = lines[1].split(",", -1);
        assertThat(cells).hasSameSizeAs(names);
        Map<String, String> row = new HashMap<>();
        for (int i = 0; i < names.length; i++) {
            row.put(names[i], cells[i]);
        }
        return row;
    }

    @Test
    void aFeedReadsItsOneTableAndNothingElse() {
        TestHerd herd = herd();
        String address = make(herd, herd.code(), "test-days", UNTIL).textAt("/address");
        String secret = address.split("/")[2];
        assertThat(open("/feeds/" + secret + "/animals.csv").expecting(404).text())
                .doesNotContain(secret);
        assertThat(new RawRequest("POST", address, List.of("Content-Type", "text/csv"), new byte[] {1})
                        .send(Map.of())
                        .expecting(405)
                        .text())
                .doesNotContain(secret);
        assertThat(RawRequest.get("/v1/herds/" + herd.code())
                        .keyed("X-API-Key", secret)
                        .send(Map.of())
                        .expecting(401)
                        .text())
                .doesNotContain(secret);
        assertThat(open(address + "?limit=1").expecting(400).text()).doesNotContain(secret);
        open("/feeds/" + "x".repeat(43) + "/test-days.csv").expecting(404);
    }

    @Test
    void aFeedStopsWhenRevokedWhenExpiredAndWhenItsKeyStops() throws SQLException {
        TestHerd herd = herd();
        Answer key = TestHerd.newKey("read", herd.code(), null).expecting(201);
        TestHerd reader = herd.withKey(key.textAt("/key"));
        Answer first = make(reader, herd.code(), "animals", UNTIL).expecting(201);
        Answer second = make(reader, herd.code(), "animals", UNTIL).expecting(201);
        Answer third = make(reader, herd.code(), "animals", UNTIL).expecting(201);
        reader.send("DELETE", "/v1/feeds/" + first.textAt("/id"), null, null).expecting(204);
        assertThat(open(first.textAt("/address")).expecting(410).textAt("/code"))
                .isEqualTo("feed-ended");
        try (Connection connection = database.getConnection();
                PreparedStatement past = connection.prepareStatement("update feed set expires_on = ? where id = ?")) {
            past.setString(1, "2020-01-01");
            past.setString(2, second.textAt("/id"));
            assertThat(past.executeUpdate()).isEqualTo(1);
        }
        assertThat(open(second.textAt("/address")).expecting(410).textAt("/code"))
                .isEqualTo("feed-ended");
        open(third.textAt("/address")).expecting(200);
        herd.send("DELETE", "/v1/keys/" + key.textAt("/id"), null, null).expecting(204);
        assertThat(open(third.textAt("/address")).expecting(410).textAt("/code"))
                .isEqualTo("feed-ended");
    }

    @Test
    void aKeyMakesFeedsOfItsHerdsOnlyAndSeesItsOwnOnly() {
        TestHerd herd = herd();
        TestHerd other = TestHerd.make();
        TestHerd reader = herd.withKey(TestHerd.key("read", herd.code(), null));
        TestHerd stranger = herd.withKey(TestHerd.key("read", other.code(), null));
        TestHerd writer = herd.withKey(TestHerd.key("write", herd.code(), null));
        Answer made = make(reader, herd.code(), "animals", UNTIL).expecting(201);
        make(stranger, herd.code(), "animals", UNTIL).expecting(404);
        make(writer, herd.code(), "animals", UNTIL).expecting(403);
        stranger.send("DELETE", "/v1/feeds/" + made.textAt("/id"), null, null).expecting(404);
        assertThat(stranger.send("GET", "/v1/feeds", null, null).expecting(200).at("/items"))
                .isEmpty();
        Answer own = reader.send("GET", "/v1/feeds", null, null).expecting(200);
        assertThat(own.at("/items")).hasSize(1);
        assertThat(own.text())
                .doesNotContain("/feeds/" + made.textAt("/address").split("/")[2]);
        assertThat(herd.send("GET", "/v1/feeds?limit=1000", null, null)
                        .expecting(200)
                        .text())
                .contains(made.textAt("/id"));
    }

    @Test
    void aFeedForLongerThan400DaysOrOfAnUnknownTableIsRefused() {
        TestHerd herd = TestHerd.make();
        LocalDate today = LocalDate.now(ZoneOffset.UTC);
        make(herd, herd.code(), "animals", today.plusDays(400).toString()).expecting(201);
        assertThat(make(herd, herd.code(), "animals", today.plusDays(402).toString())
                        .expecting(422)
                        .textAt("/errors/0/pointer"))
                .isEqualTo("/expiresOn");
        assertThat(make(herd, herd.code(), "cheese", UNTIL).expecting(422).textAt("/errors/0/pointer"))
                .isEqualTo("/report");
    }

    @Test
    void theSecretOfAFeedIsNeverLogged() {
        TestHerd herd = herd();
        String address = make(herd, herd.code(), "test-days", UNTIL).textAt("/address");
        String secret = address.split("/")[2];
        List<String> lines = new ArrayList<>();
        try (LogTap tap = new LogTap("", lines)) {
            open(address).expecting(200);
            open(address + "?asOf=never").expecting(400);
            open("/feeds/" + secret + "/nothing.csv").expecting(404);
            open("/feeds/" + secret).expecting(404);
        }
        assertThat(String.join("\n", lines)).doesNotContain(secret);
    }
}
