package org.pailbook.records;

import io.quarkus.test.common.QuarkusTestResourceLifecycleManager;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * The database all contract tests of one run share: an SQLite file in an empty folder, or an own PostgreSQL server when
 * {@code pailbook.database} says so. One start of the service serves all test classes, so each test makes a herd of its own.
 */
public final class DatabaseForTests implements QuarkusTestResourceLifecycleManager {
    /** An administrator's key, as somebody who runs the service would choose it. */
    static final String ADMIN_KEY = "administrator-of-the-tests-0123456789";

    private EmbeddedPostgres server;

    /** The kind of database this run is for. */
    static String askedFor() {
        return System.getProperty("pailbook.database", "sqlite");
    }

    @Override
    public Map<String, String> start() {
        try {
            return askedFor().equals("postgresql") ? startServer() : makeFolder();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    private Map<String, String> startServer() throws IOException {
        server = EmbeddedPostgres.builder().start();
        return Map.of(
                "quarkus.datasource.jdbc.url",
                server.getJdbcUrl("postgres", "postgres"),
                "quarkus.datasource.username",
                "postgres",
                "quarkus.datasource.password",
                "postgres",
                "pailbook.admin.key",
                ADMIN_KEY);
    }

    private static Map<String, String> makeFolder() throws IOException {
        Path folder = Path.of("target", "test-data").toAbsolutePath();
        if (Files.exists(folder)) {
            try (Stream<Path> old = Files.walk(folder)) {
                List<Path> deepestFirst = old.sorted(Comparator.reverseOrder()).toList();
                for (Path path : deepestFirst) {
                    Files.delete(path);
                }
            }
        }
        Files.createDirectories(folder);
        return Map.of("pailbook.data", folder.toString(), "pailbook.admin.key", ADMIN_KEY);
    }

    @Override
    public void stop() {
        if (server != null) {
            try {
                server.close();
            } catch (IOException failed) {
                throw new UncheckedIOException(failed);
            }
        }
    }
}
