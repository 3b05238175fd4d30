package org.pailbook.records.page;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.pailbook.lactation.culling.CowOutlook;
import org.pailbook.records.computed.HerdValuation;
import org.pailbook.records.computed.KnownCow;
import org.pailbook.records.computed.Yardstick;
import org.pailbook.records.store.InForce;
import org.pailbook.records.store.PriceRow;

/** What keeping a cow is worth, with its reasons, where the herd's prices are known. */
@ApplicationScoped
class CowWorth {
    private final HerdValuation valuation;
    private final InForce inForce;

    @Inject
    CowWorth(HerdValuation valuation, InForce inForce) {
        this.valuation = valuation;
        this.inForce = inForce;
    }

    /** As shown, with the caution that goes with it. */
    record Worth(String value, String suggestion, List<String> reasons, ShownFigure figure, String caution) {
        static Worth of(CowOutlook outlook, String currency, Shown shown) {
            return new Worth(
                    Shown.number(outlook.retentionPayoff().value(), 0) + "\u00a0" + currency + " ("
                            + outlook.range()
                                    .map(range -> PageWords.with(
                                            "interval",
                                            Shown.number(OptionalDouble.of(range.lowCu()), 0),
                                            Shown.number(OptionalDouble.of(range.highCu()), 0)))
                                    .orElse(Shown.NONE)
                            + ")",
                    outlook.suggestion()
                            .map(suggestion -> PageWords.word("suggestion." + suggestion.code()))
                            .orElse(Shown.NONE),
                    outlook.reasons().stream()
                            .map(reason -> Said.in(reason.said(), shown))
                            .toList(),
                    ShownFigure.of("list.culling", outlook.retentionPayoff(), 0, shown),
                    Said.coded("caution.culling", outlook.caution()));
        }
    }

    /** Empty without prices, or for a cow that cannot be valued. */
    Optional<Worth> of(KnownCow cow, Shown shown) {
        if (inForce.on(PriceRow.class, shown.herd(), shown.asOf()).isEmpty()
                || cow.onDay().hasLeft()) {
            return Optional.empty();
        }
        Yardstick by = valuation.yardstick(shown.herd(), shown.asOf());
        return by.money()
                .flatMap(money -> valuation
                        .cow(shown.herd(), cow.record(), shown.asOf(), by)
                        .map(hers -> money.keepOrReplace().get().of(hers, shown.asOf()))
                        .filter(outlook -> outlook.retentionPayoff().value().isPresent())
                        .map(outlook -> Worth.of(outlook, money.currency(), shown)));
    }
}
