package org.pailbook.records.withheld;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.OptionalInt;
import org.pailbook.lactation.event.WithholdingEnd;
import org.pailbook.lactation.summary.CowState;
import org.pailbook.lactation.withheld.WithheldCow;
import org.pailbook.lactation.withheld.WithheldMilk;
import org.pailbook.lactation.withheld.WithheldReason;
import org.pailbook.records.computed.DecisionLists;
import org.pailbook.records.exchange.KnownHerd;
import org.pailbook.records.store.CowRecord;

/** Finds the cows whose milk must stay out. */
@ApplicationScoped
class MilkWithheldQueries {
    private final DecisionLists lists;

    @Inject
    MilkWithheldQueries(DecisionLists lists) {
        this.lists = lists;
    }

    MilkWithheldView at(KnownHerd known, LocalDateTime moment, OptionalInt colostrumDays) {
        DecisionLists.WithheldLines withheld = lists.withheld(known.herd(), moment, colostrumDays);
        return new MilkWithheldView(
                known.herd().code,
                moment.truncatedTo(ChronoUnit.SECONDS).toString(),
                known.asOf().knownAtText(),
                known.asOf().computedAt().toString(),
                withheld.isAnyThere() ? "ok" : "notEnoughData",
                withheld.used(),
                withheld.rules().colostrumDays(),
                withheld.lines().stream()
                        .map(line -> view(line.cow(), line.record(), line.state()))
                        .toList(),
                withheld.foremilkNotRecorded().stream()
                        .map(CowRecord::shownIdentifier)
                        .toList(),
                WithheldMilk.CAUTION);
    }

    private static MilkWithheldView.CowView view(WithheldCow cow, CowRecord record, CowState state) {
        Optional<WithholdingEnd> until = cow.until();
        return new MilkWithheldView.CowView(
                record.shownIdentifier(),
                record.name().orElse(null),
                state.wireName(),
                until.map(WithholdingEnd::text).orElse(null),
                until.isPresent(),
                cow.reasons().stream().map(MilkWithheldQueries::view).toList());
    }

    private static MilkWithheldView.ReasonView view(WithheldReason reason) {
        return new MilkWithheldView.ReasonView(
                reason.kind().wireName(),
                reason.since().toLocalDate().toString(),
                reason.until().map(WithholdingEnd::text).orElse(null),
                reason.saidBy().isEmpty() ? null : reason.saidBy(),
                reason.words());
    }
}
