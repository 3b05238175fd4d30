package org.pailbook.records.culling;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.pailbook.lactation.culling.CowValueTable;
import org.pailbook.lactation.culling.CullingCaution;
import org.pailbook.lactation.culling.CullingCow;
import org.pailbook.lactation.culling.CullingRanking;
import org.pailbook.lactation.culling.HerdParameters;
import org.pailbook.lactation.culling.KeepOrReplace;
import org.pailbook.lactation.culling.MilkOnlyRanking;
import org.pailbook.lactation.culling.PregnancyValue;
import org.pailbook.lactation.culling.RetentionPayoff;
import org.pailbook.lactation.finding.Finding;
import org.pailbook.lactation.finding.FindingCode;
import org.pailbook.lactation.method.PublishedMethod;
import org.pailbook.records.computed.AssumedView;
import org.pailbook.records.computed.HerdLearning;
import org.pailbook.records.culling.CullingRankingView.CowLineView;
import org.pailbook.records.culling.CullingRankingView.NotRankedView;
import org.pailbook.records.store.BreedingRecords;
import org.pailbook.records.store.CowRecord;
import org.pailbook.records.store.CowRecords;
import org.pailbook.records.store.HerdRow;
import org.pailbook.records.store.Prices;
import org.pailbook.records.wire.AsOf;
import org.pailbook.records.wire.FigureView;
import org.pailbook.records.wire.FigureView.MethodView;
import org.pailbook.records.wire.FigureView.WarningView;

/** Sets a herd in the order of what keeping each cow is worth, from what is recorded. */
@ApplicationScoped
class CullingRankingQueries {
    private final CowRecords records;
    private final BreedingRecords breeding;
    private final Prices prices;
    private final HerdLearning learning;

    @Inject
    CullingRankingQueries(CowRecords records, BreedingRecords breeding, Prices prices, HerdLearning learning) {
        this.records = records;
        this.breeding = breeding;
        this.prices = prices;
        this.learning = learning;
    }

    CullingRankingView of(HerdRow herd, AsOf asOf) {
        LocalDate day = asOf.day();
        List<CowRecord> all = records.ofHerd(herd, day).stream()
                .filter(record -> record.isBornBy(day))
                .toList();
        RankedHerd ranked = RankedHerd.of(
                all,
                learning.teach(
                        herd, day, all.stream().map(record -> record.onDay(day)).toList()),
                breeding.ofHerd(herd, all, day));
        List<CullingCow> cows = ranked.cows();
        CullingLines lines = new CullingLines(
                ranked.byId(), cows.stream().collect(Collectors.toMap(CullingCow::cow, Function.identity())));
        HerdParameters parameters = ranked.parameters();
        Optional<HerdPrices> known = prices.on(herd, day).flatMap(HerdPrices::of);
        if (known.isEmpty() || !CowValueTable.hasValue(known.get().prices(), parameters)) {
            FindingCode why = known.isEmpty() ? FindingCode.PRICES_NOT_SET : FindingCode.PRICES_CONTRADICT;
            return byMilk(herd, asOf, cows, lines, Finding.of(why));
        }
        return byMoney(herd, asOf, cows, lines, known.get(), parameters, ranked.hasOwnCurve());
    }

    private static CullingRankingView byMoney(
            HerdRow herd,
            AsOf asOf,
            List<CullingCow> cows,
            CullingLines lines,
            HerdPrices known,
            HerdParameters parameters,
            boolean hasOwnCurve) {
        List<AssumedView> assumed = new ArrayList<>(known.assumed());
        for (int parity = 1; parity <= parameters.groups().size(); parity++) {
            assumed.addAll(AssumedView.ofGroup("/parity " + parity, parameters.group(parity)));
        }
        List<Finding> about = new ArrayList<>(AssumedView.findings(assumed));
        if (!hasOwnCurve) {
            about.add(Finding.of(FindingCode.CURVE_NOT_OF_HERD));
        }
        KeepOrReplace keepOrReplace = KeepOrReplace.with(known.prices(), parameters, List.of());
        CullingRanking ranking = CullingRanking.of(cows, keepOrReplace, asOf.day());
        PregnancyValue pregnancies = PregnancyValue.PREGNANT_OVER_OPEN;
        return view(
                herd,
                asOf,
                "money",
                known.currency(),
                RetentionPayoff.BY_DYNAMIC_PROGRAMMING,
                FigureView.of(pregnancies.meanOfNewPregnancies(keepOrReplace.herd(), asOf.day()), false),
                FigureView.of(pregnancies.meanCostOfLosses(keepOrReplace.herd(), asOf.day()), false),
                assumed,
                Stream.concat(about.stream(), keepOrReplace.about().stream()).toList(),
                ranking.cows().stream().map(lines::byMoney).toList(),
                ranking.notRanked().stream()
                        .map(outlook -> lines.without(outlook.cow(), outlook.retentionPayoff()))
                        .toList());
    }

    private static CullingRankingView byMilk(
            HerdRow herd, AsOf asOf, List<CullingCow> cows, CullingLines lines, Finding why) {
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
                null,
                null,
                List.of(),
                List.of(why),
                listed,
                notRanked);
    }

    private static CullingRankingView view(
            HerdRow herd,
            AsOf asOf,
            String basis,
            String currency,
            PublishedMethod method,
            FigureView meanNewPregnancy,
            FigureView meanPregnancyLoss,
            List<AssumedView> assumed,
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
                meanNewPregnancy,
                meanPregnancyLoss,
                assumed,
                findings.stream().map(WarningView::of).toList(),
                cows,
                notRanked);
    }
}
