package org.pailbook.records.culling;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.pailbook.lactation.culling.CullingCaution;
import org.pailbook.lactation.culling.CullingCow;
import org.pailbook.lactation.culling.CullingRanking;
import org.pailbook.lactation.culling.KeepOrReplace;
import org.pailbook.lactation.culling.MilkOnlyRanking;
import org.pailbook.lactation.culling.PregnancyValue;
import org.pailbook.lactation.culling.RetentionPayoff;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.records.computed.AssumedView;
import org.pailbook.records.computed.HerdValuation;
import org.pailbook.records.computed.OwnPregnanciesView;
import org.pailbook.records.computed.UsedSettingsView;
import org.pailbook.records.culling.CullingRankingView.CowLineView;
import org.pailbook.records.culling.CullingRankingView.NotRankedView;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.wire.AsOf;
import org.pailbook.records.wire.FigureView;
import org.pailbook.records.wire.FigureView.MethodView;
import org.pailbook.records.wire.FigureView.WarningView;

/** Sets a herd in the order of what keeping each cow is worth, from what is recorded. */
@ApplicationScoped
class CullingRankingQueries {
    private final HerdValuation valuation;

    @Inject
    CullingRankingQueries(HerdValuation valuation) {
        this.valuation = valuation;
    }

    CullingRankingView of(HerdRow herd, AsOf asOf) {
        HerdValuation.Valued valued = valuation.of(herd, asOf.day());
        List<CullingCow> cows = valued.herd().cows();
        CullingLines lines = new CullingLines(
                valued.herd().byId(), cows.stream().collect(Collectors.toMap(CullingCow::cow, Function.identity())));
        return valued.money()
                .map(money -> byMoney(herd, asOf, cows, lines, money, valued))
                .orElseGet(() -> byMilk(herd, asOf, cows, lines, valued));
    }

    private static CullingRankingView byMoney(
            HerdRow herd,
            AsOf asOf,
            List<CullingCow> cows,
            CullingLines lines,
            HerdValuation.ByMoney money,
            HerdValuation.Valued valued) {
        KeepOrReplace keepOrReplace = money.keepOrReplace().get();
        CullingRanking ranking = CullingRanking.of(cows, keepOrReplace, asOf.day());
        PregnancyValue pregnancies = PregnancyValue.PREGNANT_OVER_OPEN;
        return view(
                herd,
                asOf,
                "money",
                money.currency(),
                RetentionPayoff.BY_DYNAMIC_PROGRAMMING,
                valued.used(),
                FigureView.of(pregnancies.meanOfNewPregnancies(keepOrReplace.herd(), asOf.day()), false),
                FigureView.of(pregnancies.meanCostOfLosses(keepOrReplace.herd(), asOf.day()), false),
                money.assumed(),
                money.ownPregnancies(),
                Stream.concat(valued.about().stream(), keepOrReplace.about().stream())
                        .toList(),
                ranking.cows().stream().map(lines::byMoney).toList(),
                ranking.notRanked().stream()
                        .map(outlook -> lines.without(outlook.cow(), outlook.retentionPayoff()))
                        .toList());
    }

    private static CullingRankingView byMilk(
            HerdRow herd, AsOf asOf, List<CullingCow> cows, CullingLines lines, HerdValuation.Valued valued) {
        List<CowLineView> listed = new ArrayList<>();
        List<NotRankedView> notRanked = new ArrayList<>();
        for (MilkOnlyRanking.Listed one : MilkOnlyRanking.LOWEST_FIRST.of(cows, asOf.day())) {
            if (one.levelPct().value().isPresent()) {
                listed.add(lines.byMilk(listed.size() + 1, one));
            } else {
                notRanked.add(lines.without(one.cow(), one.levelPct()));
            }
        }
        return view(
                herd,
                asOf,
                "milk",
                null,
                MilkOnlyRanking.LOWEST_FIRST,
                valued.used(),
                null,
                null,
                List.of(),
                List.of(),
                valued.why().stream().toList(),
                listed,
                notRanked);
    }

    private static CullingRankingView view(
            HerdRow herd,
            AsOf asOf,
            String basis,
            String currency,
            PublishedMethod method,
            UsedSettingsView used,
            FigureView meanNewPregnancy,
            FigureView meanPregnancyLoss,
            List<AssumedView> assumed,
            List<OwnPregnanciesView> ownPregnancies,
            List<Finding> findings,
            List<CowLineView> cows,
            List<NotRankedView> notRanked) {
        return new CullingRankingView(
                herd.code,
                asOf.day().toString(),
                asOf.knownAtText(),
                asOf.computedAt().toString(),
                cows.isEmpty() ? "notEnoughData" : "ok",
                CullingCaution.TEXT,
                basis,
                currency,
                MethodView.of(method),
                used,
                meanNewPregnancy,
                meanPregnancyLoss,
                assumed,
                ownPregnancies,
                findings.stream().map(WarningView::of).toList(),
                cows,
                notRanked);
    }
}
