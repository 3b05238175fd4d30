package org.pailbook.records.app;

import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.time.Clock;

/** The only clock; everything that needs the time takes it from here, so that tests can hold it. */
final class ServiceClock {
    @Produces
    @Singleton
    Clock clock() {
        return Clock.systemUTC();
    }
}
