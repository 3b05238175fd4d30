package org.pailbook.records.exchange;

import io.micrometer.core.instrument.MeterRegistry;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.EnumMap;
import java.util.Map;
import java.util.stream.Collectors;
import org.pailbook.records.access.AuditFilter;
import org.pailbook.records.intake.Outcome;
import org.pailbook.records.intake.RowOutcome;

/** Keeps count of what became of posted rows: for the audit line of the request, and for the meters of the service. */
@ApplicationScoped
class WriteLog {
    private final MeterRegistry meters;
    private final RoutingContext routing;

    @Inject
    WriteLog(MeterRegistry meters, RoutingContext routing) {
        this.meters = meters;
        this.routing = routing;
    }

    /** One row that was posted alone. */
    void single(String kind, RowOutcome<?> outcome) {
        Map<Outcome, Integer> counts = new EnumMap<>(Outcome.class);
        counts.put(outcome.outcome(), 1);
        many(kind, counts, true);
    }

    /** Rows posted together; {@code stored} is false if they were only judged. */
    void many(String kind, Map<Outcome, Integer> counts, boolean stored) {
        counts.forEach((outcome, rows) -> meters.counter(
                        outcome == Outcome.REFUSED ? "pailbook.rows.refused" : "pailbook.rows.taken",
                        "kind",
                        kind,
                        "outcome",
                        stored ? outcome.onWire() : "judged")
                .increment(rows));
        AuditFilter.note(
                routing,
                counts.entrySet().stream()
                                .map(count -> count.getKey().onWire() + "=" + count.getValue())
                                .collect(Collectors.joining(" "))
                        + (stored ? "" : " stored=nothing"));
    }

    static Map<Outcome, Integer> countsOf(BulkReport report) {
        Map<Outcome, Integer> counts = new EnumMap<>(Outcome.class);
        for (Outcome outcome : Outcome.OF_ROWS) {
            counts.put(outcome, report.count(outcome));
        }
        return counts;
    }
}
