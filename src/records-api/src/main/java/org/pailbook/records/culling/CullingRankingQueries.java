package org.pailbook.records.culling;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.pailbook.lactation.culling.CullingCaution;
import org.pailbook.lactation.culling.KeepOrReplace;
import org.pailbook.lactation.culling.MilkOnlyRanking;
import org.pailbook.lactation.culling.PregnancyValue;
import org.pailbook.lactation.culling.RetentionPayoff;
import org.pailbook.records.computed.DecisionLists;
import org.pailbook.records.computed.Yardstick;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;
import org.pailbook.records.wire.FigureView;
import org.pailbook.records.wire.FigureView.MethodView;
import org.pailbook.records.wire.FigureView.WarningView;

/** Sets a herd in the order of what keeping each cow is worth, from what is recorded. */
@ApplicationScoped
class CullingRankingQueries {
    private final DecisionLists lists;

    @Inject
    CullingRankingQueries(DecisionLists lists) {
        this.lists = lists;
    }

    CullingRankingView of(HerdRow herd, AsOf asOf) {
        DecisionLists.RankedLines ranked = lists.ranked(herd, asOf.day());
        Yardstick by = ranked.by();
        Optional<Yardstick.ByMoney> money = by.money();
        Optional<KeepOrReplace> values = money.map(one -> one.keepOrReplace().get());
        PregnancyValue pregnancies = PregnancyValue.PREGNANT_OVER_OPEN;
        return new CullingRankingView(
                herd.code,
                asOf.day().toString(),
                asOf.knownAtText(),
                asOf.computedAt().toString(),
                ranked.lines().isEmpty() ? "notEnoughData" : "ok",
                CullingCaution.TEXT,
                money.isPresent() ? "money" : "milk",
                money.map(Yardstick.ByMoney::currency).orElse(null),
                MethodView.of(
                        money.isPresent() ? RetentionPayoff.BY_DYNAMIC_PROGRAMMING : MilkOnlyRanking.LOWEST_FIRST),
                by.used(),
                values.map(one -> FigureView.of(pregnancies.meanOfNewPregnancies(one.herd(), asOf.day()), false))
                        .orElse(null),
                values.map(one -> FigureView.of(pregnancies.meanCostOfLosses(one.herd(), asOf.day()), false))
                        .orElse(null),
                money.map(Yardstick.ByMoney::assumed).orElse(List.of()),
                money.map(Yardstick.ByMoney::ownPregnancies).orElse(List.of()),
                money.map(Yardstick.ByMoney::ownExits).orElse(List.of()),
                Stream.of(
                                by.why().stream(),
                                by.about().stream(),
                                values.map(KeepOrReplace::about).orElse(List.of()).stream())
                        .flatMap(Function.identity())
                        .map(WarningView::of)
                        .toList(),
                ranked.lines().stream().map(CullingLines::line).toList(),
                ranked.notRanked().stream().map(CullingLines::without).toList());
    }
}
