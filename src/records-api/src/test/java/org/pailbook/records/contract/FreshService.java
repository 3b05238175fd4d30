package org.pailbook.records.contract;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.pailbook.records.problem.PackagedService;

/** A packaged service with nothing stored, on either database. */
record FreshService(PackagedService service, EmbeddedPostgres server) implements AutoCloseable {
    enum Database {
        SQLITE,
        POSTGRESQL
    }

    static FreshService start(Database database, Path data, String... jvmOptions) throws IOException {
        if (database == Database.SQLITE) {
            return new FreshService(start("quarkus-app", data, Map.of(), List.of(jvmOptions)), null);
        }
        EmbeddedPostgres server = EmbeddedPostgres.builder().start();
        Map<String, String> settings = Map.of(
                "QUARKUS_DATASOURCE_JDBC_URL",
                server.getJdbcUrl("postgres", "postgres"),
                "QUARKUS_DATASOURCE_USERNAME",
                "postgres",
                "QUARKUS_DATASOURCE_PASSWORD",
                "postgres");
        return new FreshService(start("quarkus-app-postgresql", data, settings, List.of(jvmOptions)), server);
    }

    private static PackagedService start(
            String folder, Path data, Map<String, String> settings, List<String> jvmOptions) throws IOException {
        Map<String, String> all = new HashMap<>(settings);
        // the tests ask more often than any tool
        for (String limit : List.of("REQUESTS", "BULKS", "FEED_REQUESTS", "FAILED_LOGINS")) {
            all.put("PAILBOOK_" + limit + "_PER_MINUTE", "0");
        }
        List<String> options = new ArrayList<>(jvmOptions);
        // the service of a test lives too briefly for the second compiler to pay
        options.add("-XX:TieredStopAtLevel=1");
        options.add("-XX:+UseSerialGC");
        return PackagedService.start(Path.of("target", folder, "quarkus-run.jar"), data, options, all);
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
