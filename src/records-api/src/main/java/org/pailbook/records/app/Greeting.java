package org.pailbook.records.app;

import io.quarkus.vertx.http.HttpServerStart;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.ObservesAsync;
import jakarta.inject.Inject;

/** Tells on the terminal what to open, once requests are answered. */
@ApplicationScoped
class Greeting {
    private final SampleHerd sampleHerd;

    @Inject
    Greeting(SampleHerd sampleHerd) {
        this.sampleHerd = sampleHerd;
    }

    void onHttp(@ObservesAsync HttpServerStart start) {
        String base = "http://localhost:" + start.options().getPort();
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
