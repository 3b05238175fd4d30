package org.pailbook.records.app;

import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.pailbook.records.access.KeyStore;
import org.pailbook.records.store.ServiceSecrets;

/** What happens once when the service starts: the first key, the sample herd, and a word on where to look. */
@ApplicationScoped
class Startup {
    private final KeyStore keys;
    private final ServiceSecrets secrets;
    private final SampleHerd sampleHerd;
    private final Optional<String> chosenKey;
    private final boolean wantsSampleHerd;

    @Inject
    Startup(
            KeyStore keys,
            ServiceSecrets secrets,
            SampleHerd sampleHerd,
            @ConfigProperty(name = "pailbook.admin.key") Optional<String> chosenKey,
            @ConfigProperty(name = "pailbook.sample.herd", defaultValue = "false") boolean wantsSampleHerd) {
        this.keys = keys;
        this.secrets = secrets;
        this.sampleHerd = sampleHerd;
        this.chosenKey = chosenKey;
        this.wantsSampleHerd = wantsSampleHerd;
    }

    void onStart(@Observes StartupEvent event) {
        secrets.prepare();
        Optional<String> made = keys.ensureAdministrator(chosenKey);
        // the key goes to the terminal of whoever starts the service first, never to a log or file
        made.ifPresent(key -> System.out.println("Administrator key, shown this once: " + key));
        if (wantsSampleHerd) {
            sampleHerd.loadIfEmpty();
        }
    }
}
