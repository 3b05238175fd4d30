package org.pailbook.records.feed;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** The tables a feed can hold. */
enum FeedReport {
    ANIMALS,
    TEST_DAYS,
    LACTATIONS,
    PROJECTIONS;

    String onWire() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    static Optional<FeedReport> named(String name) {
        return Arrays.stream(values())
                .filter(report -> report.onWire().equals(name))
                .findFirst();
    }

    static String names() {
        return String.join(", ", Arrays.stream(values()).map(FeedReport::onWire).toList());
    }
}
