package org.pailbook.records.culling;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.culling.CowOutlook;
import org.pailbook.lactation.culling.CullingCaution;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.records.computed.CowOutlookView;
import org.pailbook.records.computed.HerdValuation;
import org.pailbook.records.exchange.KnownHerd;
import org.pailbook.records.store.AnimalRow;
import org.pailbook.records.store.CowRecord;
import org.pailbook.records.store.CowRecords;
import org.pailbook.records.wire.AsOf;
import org.pailbook.records.wire.FigureView.WarningView;

/** What keeping one cow is worth, held against her herd as in the ranking. */
@ApplicationScoped
class CowOutlookQueries {
    private final HerdValuation valuation;
    private final CowRecords records;

    @Inject
    CowOutlookQueries(HerdValuation valuation, CowRecords records) {
        this.valuation = valuation;
        this.records = records;
    }

    CowOutlookAnswerView of(KnownHerd known, AnimalRow animal) {
        AsOf asOf = known.asOf();
        CowRecord record = records.ofAnimal(known.herd(), animal, asOf.day());
        HerdValuation.Valued valued = valuation.of(known.herd(), asOf.day());
        List<Finding> findings = new ArrayList<>(valued.about());
        valued.why().ifPresent(findings::add);
        boolean isThere = valued.herd().byId().containsKey(animal.id);
        if (!isThere) {
            findings.add(Finding.of(FindingCode.NO_CALVING));
        }
        Optional<CowOutlook> outlook = valued.money()
                .filter(any -> isThere)
                .flatMap(money -> valued.herd().cows().stream()
                        .filter(cow -> cow.cow().equals(animal.id))
                        .map(cow -> money.keepOrReplace().get().of(cow, asOf.day()))
                        .findFirst());
        return new CowOutlookAnswerView(
                known.herd().code,
                record.shownIdentifier(),
                record.name().orElse(null),
                asOf.day().toString(),
                asOf.knownAtText(),
                asOf.computedAt().toString(),
                outlook.filter(one -> one.range().isPresent()).isPresent() ? "ok" : "notEnoughData",
                CullingCaution.TEXT,
                valued.money().map(HerdValuation.ByMoney::currency).orElse(null),
                valued.used(),
                outlook.map(one -> CowOutlookView.of(one, true)).orElse(null),
                valued.money().map(HerdValuation.ByMoney::assumed).orElse(List.of()),
                valued.money().map(HerdValuation.ByMoney::ownPregnancies).orElse(List.of()),
                findings.stream().map(WarningView::of).toList());
    }
}
