package org.pailbook.records.app;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.pailbook.records.access.OpenSampleHerd;
import org.pailbook.records.exchange.BulkIntake;
import org.pailbook.records.herd.HerdIntake;
import org.pailbook.records.intake.RecordKind;
import org.pailbook.records.store.Events;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.Herds;
import org.pailbook.records.store.TestDayRow;
import org.pailbook.records.wire.StrictJson;

/** Loads the invented herd of the folder {@code sample-herd} through the same intake that takes posted files. */
@ApplicationScoped
class SampleHerd {
    private static final String FOLDER = "sample-herd/";
    /** Files in the order in which they go in: what a check looks back at comes first. */
    private static final List<String> NAMES_IN_ORDER = List.of(
            "animals",
            "calvings",
            "test-days",
            "dry-offs",
            "departures",
            "services",
            "pregnancy-checks",
            "breeding-decisions",
            "treatments",
            "foremilk-checks",
            "milkings",
            "tank-readings",
            "tank-pickups",
            "prices",
            "settings");

    private static final String WRITTEN_BY = "sample-herd";

    private final Herds herds;
    private final Events events;
    private final HerdIntake herdIntake;
    private final BulkIntake bulk;
    private final OpenSampleHerd open;
    private final List<RecordKind<?>> kindsInOrder;
    private volatile String openCode;
    private volatile LocalDate lastDay;

    @Inject
    SampleHerd(
            Herds herds,
            Events events,
            HerdIntake herdIntake,
            BulkIntake bulk,
            OpenSampleHerd open,
            Instance<RecordKind<?>> kinds) {
        this.herds = herds;
        this.events = events;
        this.herdIntake = herdIntake;
        this.bulk = bulk;
        this.open = open;
        Map<String, RecordKind<?>> byName = kinds.stream().collect(Collectors.toMap(RecordKind::name, kind -> kind));
        this.kindsInOrder =
                NAMES_IN_ORDER.stream().<RecordKind<?>>map(byName::get).toList();
    }

    Optional<String> openCode() {
        return Optional.ofNullable(openCode);
    }

    /** The last day on which the sample herd has a test. */
    LocalDate lastDay() {
        return lastDay;
    }

    /** Loads the herd if there is no herd at all, and opens it for reading from this machine. */
    void loadIfEmpty() {
        ObjectNode herd = StrictJson.object(file("herd.json"));
        String code = herd.get("code").textValue();
        boolean empty = herds.count() == 0;
        HerdRow row = empty
                ? herdIntake.take(herd, WRITTEN_BY).herd()
                : herds.byCode(code).orElse(null);
        if (row == null) {
            System.out.println("The sample herd was not loaded: the database holds other herds.");
            return;
        }
        // a start that was killed half way left a part of it; loading again completes it and changes nothing else
        for (RecordKind<?> kind : kindsInOrder) {
            load(row, kind);
        }
        open.open(code);
        openCode = code;
        lastDay = events.lastDay(TestDayRow.class, row.id).orElse(null);
    }

    private void load(HerdRow herd, RecordKind<?> kind) {
        try (InputStream rows = file(kind.name() + ".csv")) {
            BulkIntake.Counts counts = bulk.takeFile(kind, herd, WRITTEN_BY, BulkIntake.CSV, rows);
            if (counts.refused() > 0) {
                throw new IllegalStateException(
                        "sample herd: " + counts.refused() + " rows of " + kind.name() + ".csv were refused");
            }
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static InputStream file(String name) {
        InputStream found = Thread.currentThread().getContextClassLoader().getResourceAsStream(FOLDER + name);
        if (found == null) {
            throw new IllegalStateException("the package lacks " + FOLDER + name);
        }
        return found;
    }
}
