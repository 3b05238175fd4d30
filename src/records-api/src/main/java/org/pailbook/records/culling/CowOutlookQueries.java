package org.pailbook.records.culling;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.pailbook.lactation.culling.CowOutlook;
import org.pailbook.lactation.culling.CullingCaution;
import org.pailbook.lactation.culling.CullingCow;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.records.computed.CowOutlookView;
import org.pailbook.records.computed.HerdValuation;
import org.pailbook.records.computed.Yardstick;
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
        Yardstick by = valuation.yardstick(known.herd(), asOf.day());
        List<Finding> findings = new ArrayList<>(by.about());
        by.why().ifPresent(findings::add);
        Optional<CullingCow> cow = valuation.cow(known.herd(), record, asOf.day(), by);
        if (cow.isEmpty()) {
            findings.add(Finding.of(FindingCode.NO_CALVING));
        }
        Optional<CowOutlook> outlook = by.money()
                .flatMap(money -> cow.map(one -> money.keepOrReplace().get().of(one, asOf.day())));
        return new CowOutlookAnswerView(
                known.herd().code,
                record.shownIdentifier(),
                record.name().orElse(null),
                asOf.day().toString(),
                asOf.knownAtText(),
                asOf.computedAt().toString(),
                outlook.filter(one -> one.range().isPresent()).isPresent() ? "ok" : "notEnoughData",
                CullingCaution.TEXT,
                by.money().map(Yardstick.ByMoney::currency).orElse(null),
                by.used(),
                outlook.map(one -> CowOutlookView.of(one, true)).orElse(null),
                by.money().map(Yardstick.ByMoney::assumed).orElse(List.of()),
                by.money().map(Yardstick.ByMoney::ownPregnancies).orElse(List.of()),
                by.money().map(Yardstick.ByMoney::ownExits).orElse(List.of()),
                findings.stream().map(WarningView::of).toList());
    }
}
