package org.pailbook.records.problem;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** The packaged service, started as a user starts it, with a data folder of its own. */
public final class PackagedService implements AutoCloseable {
    /** The administrator's key of every packaged service of the tests. */
    public static final String KEY = "packaged-service-test-key";

    private static final String STARTED = "Listening on:";

    private final Process process;
    private final int port;

    private PackagedService(Process process, int port) {
        this.process = process;
        this.port = port;
    }

    /** Starts it and waits until it answers. */
    static PackagedService start(Path jar, Path data) throws IOException {
        return start(jar, data, List.of(), Map.of());
    }

    /**
     * Starts it and waits until it answers.
     *
     * @param jvmOptions of its Java machine, as its time zone
     * @param settings environment variables
     */
    public static PackagedService start(Path jar, Path data, List<String> jvmOptions, Map<String, String> settings)
            throws IOException {
        return start(jar, data, jvmOptions, settings, freePort());
    }

    private static int freePort() throws IOException {
        try (ServerSocket free = new ServerSocket(0)) {
            return free.getLocalPort();
        }
    }

    /** The same at a port, where one was before. */
    public static PackagedService start(
            Path jar, Path data, List<String> jvmOptions, Map<String, String> settings, int port) throws IOException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(jvmOptions);
        command.addAll(List.of("-jar", jar.toString()));
        ProcessBuilder builder = new ProcessBuilder(command);
        builder.redirectErrorStream(true);
        builder.environment().put("PAILBOOK_DATA", data.toString());
        builder.environment().put("PAILBOOK_ADMIN_KEY", KEY);
        builder.environment().put("QUARKUS_HTTP_PORT", Integer.toString(port));
        builder.environment().put("PAILBOOK_REHEARSAL", "false");
        builder.environment().putAll(settings);
        Process process = builder.start();
        StringBuilder said = new StringBuilder();
        BufferedReader log = process.inputReader(StandardCharsets.UTF_8);
        for (String line = log.readLine(); line != null; line = log.readLine()) {
            said.append(line).append('\n');
            if (line.contains(STARTED)) {
                Thread rest = new Thread(() -> readToTheEnd(log), "log of the packaged service");
                rest.setDaemon(true);
                rest.start();
                return new PackagedService(process, port);
            }
        }
        throw new IllegalStateException("the packaged service did not start:\n" + said);
    }

    private static void readToTheEnd(BufferedReader log) {
        try {
            while (log.readLine() != null) {
                // a service whose output nobody takes would stand still
            }
        } catch (IOException closed) {
            // the service was ended
        }
    }

    /** Its address, without a slash at the end. */
    public String address() {
        return "http://127.0.0.1:" + port;
    }

    public int port() {
        return port;
    }

    /** Sends bytes as they are and gives back all that comes until the service closes. */
    public String exchange(String request) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            socket.setSoTimeout(30_000);
            OutputStream out = socket.getOutputStream();
            out.write(request.getBytes(StandardCharsets.ISO_8859_1));
            out.flush();
            InputStream in = socket.getInputStream();
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Override
    public void close() {
        process.destroy();
        try {
            if (!process.waitFor(30, TimeUnit.SECONDS)) {
                process.destroyForcibly();
            }
        } catch (InterruptedException interrupted) {
            process.destroyForcibly();
            Thread.currentThread().interrupt();
        }
    }
}
