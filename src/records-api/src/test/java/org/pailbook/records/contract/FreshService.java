package org.pailbook.records.contract;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.pailbook.records.problem.PackagedService;

/** A packaged service with nothing stored, on either database. */
record FreshService(PackagedService service, EmbeddedPostgres server) implements AutoCloseable {
    enum Database {
        SQLITE,
        POSTGRESQL
    }

    static FreshService start(Database database, Path data) throws IOException {
        if (database == Database.SQLITE) {
            return new FreshService(start("quarkus-app", data, Map.of()), null);
        }
        EmbeddedPostgres server = EmbeddedPostgres.builder().start();
        Map<String, String> settings = Map.of(
                "QUARKUS_DATASOURCE_JDBC_URL",
                server.getJdbcUrl("postgres", "postgres"),
                "QUARKUS_DATASOURCE_USERNAME",
                "postgres",
                "QUARKUS_DATASOURCE_PASSWORD",
                "postgres");
        return new FreshService(start("quarkus-app-postgresql", data, settings), server);
    }

    private static PackagedService start(String folder, Path data, Map<String, String> settings) throws IOException {
        return PackagedService.start(Path.of("target", folder, "quarkus-run.jar"), data, List.of(), settings);
    }

    /** One that may do everything. */
    ApiCaller caller() {
        return new ApiCaller(service.address(), PackagedService.KEY);
    }

    ApiCaller caller(String key) {
        return new ApiCaller(service.address(), key);
    }

    @Override
    public void close() throws IOException {
        service.close();
        if (server != null) {
            server.close();
        }
    }
}
