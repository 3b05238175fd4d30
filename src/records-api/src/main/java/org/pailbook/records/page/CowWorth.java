package org.pailbook.records.page;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.pailbook.lactation.culling.CowOutlook;
import org.pailbook.lactation.culling.CullingCow;
import org.pailbook.lactation.culling.KeepOrReplace;
import org.pailbook.lactation.culling.Reason;
import org.pailbook.records.computed.HerdValuation;
import org.pailbook.records.computed.KnownCow;
import org.pailbook.records.store.InForce;
import org.pailbook.records.store.PriceRow;

/**
 * What keeping a cow is worth, with its reasons, where the herd's prices are known. A herd is valued once for a state and a day: that takes longer
 * than a page may.
 */
@ApplicationScoped
class CowWorth {
    private static final int MOST_KEPT = 8;

    private final HerdValuation valuation;
    private final InForce inForce;
    private final Map<Key, Valued> kept = new LinkedHashMap<>(16, 0.75f, true);

    @Inject
    CowWorth(HerdValuation valuation, InForce inForce) {
        this.valuation = valuation;
        this.inForce = inForce;
    }

    private record Key(String herdId, long changeSeq, LocalDate day) {}

    private record Valued(String currency, KeepOrReplace rule, Map<String, CullingCow> cows) {}

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
                    outlook.reasons().stream().map(Reason::words).toList(),
                    ShownFigure.of("list.culling", outlook.retentionPayoff(), 0, shown),
                    outlook.caution());
        }
    }

    /** Empty without prices, or for a cow that cannot be valued. */
    Optional<Worth> of(KnownCow cow, Shown shown) {
        if (inForce.on(PriceRow.class, shown.herd(), shown.asOf()).isEmpty()
                || cow.onDay().hasLeft()) {
            return Optional.empty();
        }
        return valued(shown)
                .flatMap(valued -> Optional.ofNullable(
                                valued.cows().get(cow.record().id()))
                        .map(hers -> valued.rule().of(hers, shown.asOf()))
                        .filter(outlook -> outlook.retentionPayoff().value().isPresent())
                        .map(outlook -> Worth.of(outlook, valued.currency(), shown)));
    }

    private synchronized Optional<Valued> valued(Shown shown) {
        Key key = new Key(shown.herd().id, shown.herd().changeSeq, shown.asOf());
        if (!kept.containsKey(key)) {
            kept.keySet().removeIf(old -> old.herdId().equals(key.herdId()) && old.changeSeq() < key.changeSeq());
            kept.put(key, value(shown));
            if (kept.size() > MOST_KEPT) {
                kept.remove(kept.keySet().iterator().next());
            }
        }
        return Optional.ofNullable(kept.get(key));
    }

    private Valued value(Shown shown) {
        HerdValuation.Valued herd = valuation.of(shown.herd(), shown.asOf());
        return herd.money()
                .map(money -> new Valued(
                        money.currency(),
                        money.keepOrReplace().get(),
                        herd.herd().cows().stream().collect(Collectors.toMap(CullingCow::cow, Function.identity()))))
                .orElse(null);
    }
}
