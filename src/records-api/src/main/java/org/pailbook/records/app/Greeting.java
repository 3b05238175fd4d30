package org.pailbook.records.app;

import io.quarkus.vertx.http.HttpServer;
import io.quarkus.vertx.http.HttpServerStart;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.ObservesAsync;
import jakarta.inject.Inject;

/** Tells on the terminal what to open, once requests are answered. */
@ApplicationScoped
class Greeting {
    private final SampleHerd sampleHerd;
    private final HttpServer server;

    @Inject
    Greeting(SampleHerd sampleHerd, HttpServer server) {
        this.sampleHerd = sampleHerd;
        this.server = server;
    }

    void onHttp(@ObservesAsync HttpServerStart start) {
        // the options of the server keep what was asked for, and with port 0 the machine chooses
        int port = start.options().isSsl() ? server.getSecurePort() : server.getPort();
        String base = "http://localhost:" + port;
        StringBuilder words = new StringBuilder("\nPailbook answers at " + base + ". Open it in a browser, or:\n");
        sampleHerd
                .openCode()
                .ifPresent(code -> words.append("Sample herd, readable from this machine without a key. Open:\n  ")
                        .append(base)
                        .append("/v1/herds/")
                        .append(code)
                        .append("/summary?asOf=")
                        .append(sampleHerd.lastDay())
                        .append("\n  ")
                        .append(base)
                        .append("/v1/herds/")
                        .append(code)
                        .append("/animals\n"));
        words.append("All addresses: ").append(base).append("/v1/openapi\n");
        System.out.println(words);
    }
}
