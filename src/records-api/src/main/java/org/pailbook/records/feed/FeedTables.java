package org.pailbook.records.feed;

import io.quarkus.arc.All;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.pailbook.records.exchange.HerdTable;

/** The tables a feed can show: every table of a herd there is, by its name. */
@ApplicationScoped
class FeedTables {
    private final Map<String, HerdTable> byName = new TreeMap<>();

    @Inject
    FeedTables(@All List<HerdTable> tables) {
        tables.forEach(table -> byName.put(table.name(), table));
    }

    Optional<HerdTable> named(String name) {
        return Optional.ofNullable(byName.get(name));
    }

    String names() {
        return String.join(", ", byName.keySet());
    }
}
