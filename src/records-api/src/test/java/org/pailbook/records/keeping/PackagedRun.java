package org.pailbook.records.keeping;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.BufferedReader;
import java.io.IOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;

/** One of the two packages with a database of its own, run as a user runs it: as a command, or as a service. */
final class PackagedRun implements AutoCloseable {
    private static final String KEY = "packaged-run-administrator-key";
    private static final long LONGEST_SECONDS = 180;

    private final Path jar;
    private final String url;
    private final Map<String, String> environment = new TreeMap<>();
    private final AutoCloseable server;
    private Process service;
    private int port;

    private PackagedRun(String folder, String url, AutoCloseable server) {
        this.jar = Path.of("target", folder, "quarkus-run.jar");
        this.url = url;
        this.server = server;
        environment.put("PAILBOOK_ADMIN_KEY", KEY);
        environment.put("PATH", System.getenv("PATH") + postgresqlPrograms());
    }

    /** What a command said and how it ended. */
    record Ended(int code, String said) {}

    static PackagedRun onSqlite(Path folder) {
        PackagedRun run = new PackagedRun("quarkus-app", "jdbc:sqlite:" + folder.resolve("pailbook.db"), () -> {});
        run.environment.put("PAILBOOK_DATA", folder.toString());
        return run;
    }

    static PackagedRun onPostgresql() throws IOException {
        EmbeddedPostgres own = EmbeddedPostgres.builder().start();
        PackagedRun run = new PackagedRun(
                "quarkus-app-postgresql", "jdbc:postgresql://localhost:" + own.getPort() + "/postgres", own);
        run.environment.put("QUARKUS_DATASOURCE_JDBC_URL", run.url);
        run.environment.put("QUARKUS_DATASOURCE_USERNAME", "postgres");
        run.environment.put("QUARKUS_DATASOURCE_PASSWORD", "postgres");
        return run;
    }

    /** Debian keeps pg_dump of each version in a folder that is not on the PATH. */
    private static String postgresqlPrograms() {
        StringBuilder folders = new StringBuilder();
        for (int version = 17; version >= 14; version--) {
            Path folder = Path.of("/usr/lib/postgresql/" + version + "/bin");
            if (Files.isExecutable(folder.resolve("pg_dump"))) {
                folders.append(':').append(folder);
            }
        }
        return folders.toString();
    }

    boolean canDump() {
        return url.startsWith("jdbc:sqlite")
                || List.of(environment.get("PATH").split(":")).stream()
                        .anyMatch(folder -> Files.isExecutable(Path.of(folder, "pg_dump"))
                                && Files.isExecutable(Path.of(folder, "psql")));
    }

    void set(String name, String value) {
        environment.put(name, value);
    }

    String url() {
        return url;
    }

    Connection connect() throws SQLException {
        return DriverManager.getConnection(url, "postgres", "postgres");
    }

    /** Runs the jar with these words behind it to its end. */
    Ended command(String... words) throws IOException, InterruptedException {
        Process process = start(words);
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (!process.waitFor(LONGEST_SECONDS, TimeUnit.SECONDS)) {
            process.destroyForcibly();
            throw new AssertionError("did not end: " + said);
        }
        return new Ended(process.exitValue(), said);
    }

    void startService() throws IOException {
        try (ServerSocket free = new ServerSocket(0)) {
            port = free.getLocalPort();
        }
        environment.put("QUARKUS_HTTP_PORT", Integer.toString(port));
        service = start();
        StringBuilder said = new StringBuilder();
        BufferedReader log = service.inputReader(StandardCharsets.UTF_8);
        for (String line = log.readLine(); line != null; line = log.readLine()) {
            said.append(line).append('\n');
            if (line.contains("Listening on:")) {
                Thread rest = new Thread(() -> log.lines().forEach(ignored -> {}), "log of the packaged service");
                rest.setDaemon(true);
                rest.start();
                return;
            }
        }
        throw new AssertionError("the service did not start:\n" + said);
    }

    void stopService() throws InterruptedException {
        if (service != null) {
            service.destroy();
            if (!service.waitFor(LONGEST_SECONDS, TimeUnit.SECONDS)) {
                service.destroyForcibly();
            }
            service = null;
        }
    }

    private Process start(String... words) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx256m",
                "-jar",
                jar.toString()));
        command.addAll(List.of(words));
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().put("PAILBOOK_REHEARSAL", "false");
        builder.environment().putAll(environment);
        return builder.start();
    }

    JsonNode get(String path) throws IOException, InterruptedException {
        return send(request(path).GET().build(), 200);
    }

    JsonNode post(String path, String json, int status) throws IOException, InterruptedException {
        return send(
                request(path)
                        .header("Content-Type", "application/json")
                        .POST(HttpRequest.BodyPublishers.ofString(json))
                        .build(),
                status);
    }

    private HttpRequest.Builder request(String path) {
        return HttpRequest.newBuilder(URI.create("http://localhost:" + port + path))
                .header("X-API-Key", KEY);
    }

    private static JsonNode send(HttpRequest request, int status) throws IOException, InterruptedException {
        HttpResponse<String> answer = HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofString());
        if (answer.statusCode() != status) {
            throw new AssertionError(request.uri() + ": " + answer.statusCode() + " " + answer.body());
        }
        return new ObjectMapper().readTree(answer.body());
    }

    @Override
    public void close() throws Exception {
        stopService();
        server.close();
    }
}
