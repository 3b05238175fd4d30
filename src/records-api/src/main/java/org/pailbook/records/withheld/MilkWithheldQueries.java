package org.pailbook.records.withheld;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.pailbook.lactation.event.WithholdingEnd;
import org.pailbook.lactation.summary.CowOnDay;
import org.pailbook.lactation.summary.CowState;
import org.pailbook.lactation.withheld.MilkedCow;
import org.pailbook.lactation.withheld.WithheldCow;
import org.pailbook.lactation.withheld.WithheldMilk;
import org.pailbook.lactation.withheld.WithheldReason;
import org.pailbook.records.computed.HerdMilkRecords;
import org.pailbook.records.computed.HerdSettings;
import org.pailbook.records.computed.SettingsInForce;
import org.pailbook.records.exchange.KnownHerd;
import org.pailbook.records.store.AnimalIdentifier;
import org.pailbook.records.store.CowRecord;
import org.pailbook.records.store.CowRecords;

/** Finds the cows whose milk must stay out. */
@ApplicationScoped
class MilkWithheldQueries {
    private final CowRecords records;
    private final HerdMilkRecords milk;
    private final HerdSettings settings;

    @Inject
    MilkWithheldQueries(CowRecords records, HerdMilkRecords milk, HerdSettings settings) {
        this.records = records;
        this.milk = milk;
        this.settings = settings;
    }

    MilkWithheldView at(KnownHerd known, LocalDateTime moment, OptionalInt colostrumDays) {
        SettingsInForce inForce = settings.on(known.herd(), moment.toLocalDate());
        WithheldMilk rules = inForce.withheld(colostrumDays);
        List<CowRecord> animals = records.ofHerd(known.herd(), moment.toLocalDate()).stream()
                .filter(record -> record.isBornBy(moment.toLocalDate()))
                .toList();
        List<MilkedCow> cows = milk.of(known.herd(), animals, moment.toLocalDate());
        List<MilkWithheldView.CowView> withheld = new ArrayList<>();
        List<AnimalIdentifier> notRecorded = new ArrayList<>();
        boolean anyThere = false;
        for (int i = 0; i < cows.size(); i++) {
            CowRecord record = animals.get(i);
            CowOnDay onDay = record.onDay(moment.toLocalDate());
            if (onDay.state() == CowState.LEFT) {
                continue;
            }
            anyThere = true;
            rules.of(cows.get(i), moment)
                    .map(cow -> view(cow, record, onDay.state()))
                    .ifPresent(withheld::add);
            boolean lookedAt = !WithheldMilk.lookedAt(
                            cows.get(i), moment.toLocalDate().atStartOfDay(), moment)
                    .isEmpty();
            if (onDay.state() == CowState.IN_MILK && !lookedAt) {
                notRecorded.add(record.shownIdentifier());
            }
        }
        return new MilkWithheldView(
                known.herd().code,
                moment.truncatedTo(ChronoUnit.SECONDS).toString(),
                known.asOf().knownAtText(),
                known.asOf().computedAt().toString(),
                anyThere ? "ok" : "notEnoughData",
                inForce.used(),
                rules.colostrumDays(),
                withheld,
                notRecorded,
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
