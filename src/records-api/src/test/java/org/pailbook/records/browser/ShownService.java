package org.pailbook.records.browser;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.pailbook.records.problem.PackagedService;

/** The packaged service as the pages of the tests are read from it. */
final class ShownService {
    private static final Path JAR = Path.of("target", "quarkus-app", "quarkus-run.jar");
    private static final List<String> JVM = List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC");

    private static PackagedService withSampleHerd;

    private ShownService() {}

    /** One with the sample herd for all tests that leave it as it is; ended with the tests. */
    static synchronized PackagedService withSampleHerd() throws IOException {
        if (withSampleHerd == null) {
            Path data = Files.createTempDirectory(Files.createDirectories(Path.of("target", "browser")), "sample");
            PackagedService service = start(data, Map.of("PAILBOOK_SAMPLE_HERD", "true"));
            Runtime.getRuntime().addShutdownHook(new Thread(service::close));
            withSampleHerd = service;
        }
        return withSampleHerd;
    }

    /** A fresh one with nothing in it, for tests that write; to be closed by the caller. */
    static PackagedService empty(Path data) throws IOException {
        return start(data, Map.of());
    }

    /** The one that was at that port, started again on its data. */
    static PackagedService again(Path data, int port) throws IOException {
        return PackagedService.start(JAR, data, JVM, withoutLimits(Map.of()), port);
    }

    private static PackagedService start(Path data, Map<String, String> settings) throws IOException {
        return PackagedService.start(JAR, data, JVM, withoutLimits(settings));
    }

    private static Map<String, String> withoutLimits(Map<String, String> settings) {
        Map<String, String> all = new HashMap<>(settings);
        // a browser in a test asks faster than people
        for (String limit : List.of("REQUESTS", "BULKS", "FEED_REQUESTS", "FAILED_LOGINS")) {
            all.put("PAILBOOK_" + limit + "_PER_MINUTE", "0");
        }
        return all;
    }
}
