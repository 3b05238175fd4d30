package org.pailbook.records.summary;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import org.pailbook.lactation.breeding.BreedingRecord;
import org.pailbook.lactation.breeding.BreedingSettings;
import org.pailbook.lactation.breeding.BreedingWorklist;
import org.pailbook.lactation.breeding.PutAside;
import org.pailbook.lactation.event.WithholdingEnd;
import org.pailbook.lactation.summary.CowOnDay;
import org.pailbook.lactation.withheld.WithheldCow;
import org.pailbook.lactation.withheld.WithheldMilk;
import org.pailbook.records.computed.HerdBreeding;
import org.pailbook.records.computed.HerdMilkRecords;
import org.pailbook.records.computed.HerdSettings;
import org.pailbook.records.computed.SettingsInForce;
import org.pailbook.records.store.CowRecord;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.summary.CowDecisionsView.BreedingView;
import org.pailbook.records.summary.CowDecisionsView.OnListView;
import org.pailbook.records.summary.CowDecisionsView.WithheldView;

/** What is to be decided of one cow, from what is recorded of her. */
@ApplicationScoped
class CowDecisionQueries {
    private static final List<String> CAUTIONS = List.of(
            "Nothing recorded against her milk does not say that it is safe. Withholding days are shown as entered; ask your veterinarian and read the label.",
            "A cow nobody checked is neither pregnant nor open. A sick or lame cow is a matter for the veterinarian.");

    private final HerdBreeding breeding;
    private final HerdMilkRecords milk;
    private final HerdSettings settings;

    @Inject
    CowDecisionQueries(HerdBreeding breeding, HerdMilkRecords milk, HerdSettings settings) {
        this.breeding = breeding;
        this.milk = milk;
        this.settings = settings;
    }

    CowDecisionsView of(HerdRow herd, CowRecord record, CowOnDay cow, LocalDate day) {
        SettingsInForce inForce = settings.on(herd, day);
        BreedingSettings bred = inForce.breeding();
        WithheldMilk rules = inForce.withheld(OptionalInt.empty());
        return new CowDecisionsView(
                view(breeding.of(herd, record, day), bred),
                cow.hasLeft()
                        ? List.of()
                        : rules.of(milk.of(herd, record, day), WithheldMilk.endOf(day))
                                .map(CowDecisionQueries::views)
                                .orElse(List.of()),
                "/v1/herds/" + herd.code + "/animals/"
                        + record.shownIdentifier().pathSegment() + "/outlook?asOf=" + day,
                inForce.used(),
                CAUTIONS);
    }

    private static BreedingView view(BreedingRecord cow, BreedingSettings settings) {
        return new BreedingView(
                cow.state().name().toLowerCase(Locale.ROOT),
                cow.now()
                        .lastService()
                        .map(service -> service.date().toString())
                        .orElse(null),
                cow.expectedCalving().map(expected -> expected.due().toString()).orElse(null),
                cow.expectedCalving()
                        .map(expected -> expected.dryOff(settings.dryDays()).toString())
                        .orElse(null),
                cow.now().notToBeBred().map(time -> time.from().toString()).orElse(null),
                cow.now()
                        .notToBeBred()
                        .map(PutAside::reason)
                        .filter(reason -> !reason.isBlank())
                        .orElse(null),
                BreedingWorklist.with(settings).ofCow(cow).stream()
                        .map(listed -> new OnListView(
                                listed.list().wireName(), listed.day().toString(), listed.why()))
                        .toList());
    }

    private static List<WithheldView> views(WithheldCow cow) {
        return cow.reasons().stream()
                .map(reason -> new WithheldView(
                        reason.kind().wireName(),
                        reason.since().toLocalDate().toString(),
                        reason.until().map(WithholdingEnd::text).orElse(null),
                        reason.words()))
                .toList();
    }
}
