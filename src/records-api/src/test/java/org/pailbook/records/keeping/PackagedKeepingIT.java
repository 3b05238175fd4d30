package org.pailbook.records.keeping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The database as a whole, over the packaged service: an old one brought up to date, copied while in use, put back, refused. */
class PackagedKeepingIT {
    private static final String HERD = "/v1/herds/old-lane";

    @TempDir
    Path folder;

    private PackagedRun on(String kind) throws IOException {
        return kind.equals("sqlite")
                ? PackagedRun.onSqlite(Files.createDirectories(folder.resolve("data")))
                : PackagedRun.onPostgresql();
    }

    @ParameterizedTest
    @ValueSource(strings = {"sqlite", "postgresql"})
    void aDatabaseOfTheFirstSchemaIsBroughtUpToDateWithAllItHolds(String kind) throws Exception {
        try (PackagedRun run = on(kind)) {
            Flyway.configure()
                    .dataSource(run.url(), "postgres", "postgres")
                    .locations("filesystem:src/main/resources/db/migration")
                    .target("1")
                    .load()
                    .migrate();
            fill(run);
            run.startService();
            assertThat(run.get(HERD).path("name").asText()).isEqualTo("Old Lane");
            JsonNode animal = run.get(HERD + "/animals/example.eartag:OL-1");
            assertThat(animal.at("/record/name").asText()).isEqualTo("Rosie");
            JsonNode tests = run.get(HERD + "/test-days").path("items");
            assertThat(tests).hasSize(1);
            assertThat(tests.at("/0/version").intValue()).isEqualTo(2);
            assertThat(tests.at("/0/record/milkKg").doubleValue()).isEqualTo(27.4);
            assertThat(run.get(HERD + "/animals/example.eartag:OL-1/lactations/current?asOf=2025-11-30")
                            .path("parity")
                            .intValue())
                    .isEqualTo(3);
            // and it goes on from there
            run.post(
                    HERD + "/test-days",
                    "{\"animal\":{\"scheme\":\"example.eartag\",\"id\":\"OL-1\"},\"date\":\"2025-11-12\",\"milkKg\":26}",
                    201);
        }
    }

    /** Rows as the first build of the service wrote them. */
    private static void fill(PackagedRun run) throws SQLException {
        String herd = "'01980000-0000-7000-8000-000000000001'";
        String cow = "'01980000-0000-7000-8000-000000000002'";
        String test = "'01980000-0000-7000-8000-000000000003'";
        String noted = "'2025-11-01T08:00:00.000Z', 'key'";
        try (Connection database = run.connect();
                Statement statement = database.createStatement()) {
            for (String row : List.of(
                    "insert into herd values (" + herd + ", 'old-lane', 'Old Lane', 'Europe/Dublin', 4, " + noted + ")",
                    "insert into animal values (" + cow + ", " + herd
                            + ", 'Rosie', 'HOL', 'female', '2020-01-01', 1, 1, " + noted + ", null, null, false)",
                    "insert into animal_identifier values ('01980000-0000-7000-8000-000000000004', " + herd + ", " + cow
                            + ", 'example.eartag', 'OL-1', 0)",
                    "insert into calving values ('01980000-0000-7000-8000-000000000005', " + herd + ", " + cow
                            + ", '2025-08-19', 3, null, 1, 2, " + noted + ", null, null, false)",
                    "insert into test_day values (" + test + ", " + herd + ", " + cow
                            + ", '2025-09-16', 27.4, 4.1, 3.3, null, 84, 2, 4, " + noted + ", 'scale', 't-1', false)",
                    "insert into superseded_version values (" + test + ", 1, " + herd + ", 'test-days', 3, " + noted
                            + ", false, '{\"date\":\"2025-09-16\",\"milkKg\":24.7}')",
                    "insert into api_key values ('01980000-0000-7000-8000-000000000006', 'x', 'old', 'read', '*',"
                            + " '2025-11-01T08:00:00.000Z', null, null)")) {
                statement.executeUpdate(row);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"sqlite", "postgresql"})
    void aCopyMadeWhileWritingGoesOnHoldsWhatWasAcknowledgedBeforeAndComesBack(String kind) throws Exception {
        Path copy = folder.resolve("copy");
        try (PackagedRun run = on(kind)) {
            assumeTrue(
                    run.canDump(),
                    "pg_dump, pg_restore and psql are not installed: backup on PostgreSQL is not tested");
            run.set("PAILBOOK_REQUESTS_PER_MINUTE", "0");
            run.startService();
            run.post("/v1/herds", "{\"code\":\"old-lane\",\"name\":\"Old Lane\",\"timeZone\":\"UTC\"}", 201);
            AtomicInteger acknowledged = new AtomicInteger();
            AtomicBoolean stop = new AtomicBoolean();
            List<Throwable> failures = new ArrayList<>();
            Thread writer = new Thread(() -> {
                try {
                    while (!stop.get()) {
                        post(run, acknowledged.get());
                        acknowledged.incrementAndGet();
                    }
                } catch (IOException | InterruptedException | AssertionError failed) {
                    failures.add(failed);
                }
            });
            writer.start();
            while (acknowledged.get() < 20 && writer.isAlive()) {
                Thread.sleep(20);
            }
            int before = acknowledged.get();
            PackagedRun.Ended backup = run.command("backup", copy.toString());
            int after = acknowledged.get();
            stop.set(true);
            writer.join();
            assertThat(failures).isEmpty();
            assertThat(backup.code()).as(backup.said()).isZero();
            assertThat(after).as("rows acknowledged while the copy was made").isGreaterThan(before);

            assertThat(run.command("backup", copy.toString()).said()).contains("overwrites nothing");
            PackagedRun.Ended inUse = run.command("restore", copy.toString(), "--replace");
            assertThat(inUse.code()).isEqualTo(1);
            assertThat(inUse.said()).contains("stop the service first");
            run.stopService();
            PackagedRun.Ended notTold = run.command("restore", copy.toString());
            assertThat(notTold.code()).isEqualTo(1);
            assertThat(notTold.said()).contains("--replace").doesNotContain("\tat ");
            PackagedRun.Ended restored = run.command("restore", copy.toString(), "--replace");
            assertThat(restored.code()).as(restored.said()).isZero();
            run.startService();
            int found = run.get(HERD + "/animals?limit=1000").path("items").size();
            assertThat(found).isBetween(before, after + 1);
        }
        try (PackagedRun elsewhere = kind.equals("sqlite") ? PackagedRun.onSqlite(folder.resolve("other")) : on(kind)) {
            assertThat(elsewhere.command("restore", copy.toString()).code()).isZero();
            elsewhere.startService();
            assertThat(elsewhere.get(HERD + "/animals?limit=20").path("items")).hasSize(20);
        }
    }

    private static void post(PackagedRun run, int number) throws IOException, InterruptedException {
        run.post(
                HERD + "/animals",
                "{\"identifiers\":[{\"scheme\":\"example.eartag\",\"id\":\"W-" + number + "\"}]}",
                201);
    }

    @ParameterizedTest
    @ValueSource(strings = {"sqlite", "postgresql"})
    void aDatabaseOfANewerBuildIsRefusedInOneLine(String kind) throws Exception {
        try (PackagedRun run = on(kind)) {
            Flyway.configure()
                    .dataSource(run.url(), "postgres", "postgres")
                    .locations("filesystem:src/main/resources/db/migration")
                    .load()
                    .migrate();
            try (Connection database = run.connect();
                    Statement statement = database.createStatement()) {
                statement.executeUpdate("update flyway_schema_history set version = '999' where version = '1'");
            }
            assertRefused(run, "schema version 999");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"sqlite", "postgresql"})
    void aDatabaseOfTheOtherKindIsRefusedInOneLine(String kind) throws Exception {
        try (PackagedRun run = on(kind)) {
            run.set(
                    "QUARKUS_DATASOURCE_JDBC_URL",
                    kind.equals("sqlite") ? "jdbc:postgresql://localhost/x?password=hidden" : "jdbc:sqlite:x.db");
            assertThat(assertRefused(run, "built for " + kind)).doesNotContain("hidden");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = "sqlite")
    void aDamagedFileAndAFolderThatCannotBeMadeAreRefusedInOneLine(String kind) throws Exception {
        try (PackagedRun run = on(kind)) {
            Files.write(folder.resolve("data").resolve("pailbook.db"), new byte[] {1, 2, 3, 4, 5, 6, 7, 8, 9, 10});
            assertRefused(run, "is damaged");
            Path file = Files.writeString(folder.resolve("file"), "no folder");
            run.set("PAILBOOK_DATA", file.toString());
            assertRefused(run, "PAILBOOK_DATA");
        }
    }

    private static String assertRefused(PackagedRun run, String words) throws IOException, InterruptedException {
        PackagedRun.Ended ended = run.command();
        assertThat(ended.code()).as(ended.said()).isEqualTo(1);
        assertThat(ended.said().strip())
                .startsWith("Pailbook does not start: ")
                .contains(words)
                .hasLineCount(1);
        return ended.said();
    }
}
