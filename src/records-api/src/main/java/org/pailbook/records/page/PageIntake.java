package org.pailbook.records.page;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.pailbook.records.access.Caller;
import org.pailbook.records.exchange.KindTables;
import org.pailbook.records.intake.Outcome;
import org.pailbook.records.intake.PostedRow;
import org.pailbook.records.intake.RecordIntake;
import org.pailbook.records.intake.RecordKind;
import org.pailbook.records.intake.RowOutcome;
import org.pailbook.records.problem.Fault;
import org.pailbook.records.store.DatedRecord;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.InForce;
import org.pailbook.records.wire.FindingView;

/** Takes what was typed into a form through the same intake that takes what tools post. */
@ApplicationScoped
class PageIntake {
    private final RecordIntake intake;
    private final InForce inForce;
    private final Caller caller;
    private final KindTables kinds;

    @Inject
    PageIntake(RecordIntake intake, InForce inForce, Caller caller, KindTables kinds) {
        this.intake = intake;
        this.inForce = inForce;
        this.caller = caller;
        this.kinds = kinds;
    }

    /** Stores one record; what is wrong with it, if it was refused. */
    List<Fault> take(String kind, HerdRow herd, ObjectNode content) {
        RowOutcome<?> outcome =
                intake.takeOne(kinds.kind(kind).orElseThrow(), herd, caller.keyId(), PostedRow.single(content));
        return outcome.outcome() == Outcome.REFUSED
                ? outcome.findings().stream()
                        .filter(FindingView::isError)
                        .map(FindingView::asFault)
                        .toList()
                : List.of();
    }

    /** What holds on a day of a kind that holds from a day on, member by member as text; empty if nothing does. */
    <E extends DatedRecord> Map<String, String> inForce(String kind, Class<E> entity, HerdRow herd, LocalDate day) {
        Map<String, String> values = new HashMap<>();
        inForce.on(entity, herd, day).ifPresent(record -> {
            @SuppressWarnings("unchecked") // the kind of that name is the one of that entity
            RecordKind<E> known = (RecordKind<E>) kinds.kind(kind).orElseThrow();
            known.wire(record, animal -> null)
                    .properties()
                    .forEach(member ->
                            values.put(member.getKey(), member.getValue().asText()));
        });
        return values;
    }
}
