package org.pailbook.records.culling;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.pailbook.lactation.breeding.BreedingRecord;
import org.pailbook.lactation.culling.CowOutlook;
import org.pailbook.lactation.culling.CullingCow;
import org.pailbook.lactation.culling.CullingRanking;
import org.pailbook.lactation.culling.MilkLevel;
import org.pailbook.lactation.culling.PayoffRange;
import org.pailbook.lactation.culling.PregnancyState;
import org.pailbook.lactation.culling.Suggestion;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.records.computed.CowOutlookView.ReasonView;
import org.pailbook.records.computed.DecisionLists.NotRanked;
import org.pailbook.records.computed.DecisionLists.RankedLine;
import org.pailbook.records.computed.RankedHerd.Candidate;
import org.pailbook.records.culling.CullingRankingView.CowLineView;
import org.pailbook.records.culling.CullingRankingView.NotRankedView;
import org.pailbook.records.culling.CullingRankingView.WithoutBreedingView;

/** Writes the lines of a ranking. */
final class CullingLines {
    private static final double PERCENT = 100;

    private CullingLines() {}

    static CowLineView line(RankedLine line) {
        Candidate candidate = line.candidate();
        Optional<CullingRanking.Ranked> ranked = line.ranked();
        Optional<CowOutlook> outlook = line.outlook();
        return new CowLineView(
                line.rank(),
                ranked.map(CullingRanking.Ranked::lowestRank).orElse(null),
                ranked.map(CullingRanking.Ranked::highestRank).orElse(null),
                candidate.record().shownIdentifier(),
                candidate.record().name().orElse(null),
                candidate.parity(),
                days(candidate.breeding()),
                pregnancy(line.cow().pregnancy()),
                candidate.breeding().now().notToBeBred().isPresent() ? Boolean.TRUE : null,
                outlook.isPresent()
                        ? levelPct(line.cow())
                        : (Double) line.figure().orThrow(),
                outlook.map(one -> one.retentionPayoff().orThrow()).orElse(null),
                outlook.flatMap(CowOutlook::range).map(PayoffRange::lowCu).orElse(null),
                outlook.flatMap(CowOutlook::range).map(PayoffRange::highCu).orElse(null),
                outlook.flatMap(CowOutlook::suggestion).map(Suggestion::code).orElse(null),
                outlook.map(one -> one.reasons().stream()
                                .map(reason ->
                                        new ReasonView(reason.about().code(), reason.words(), reason.differenceCu()))
                                .toList())
                        .orElse(null),
                outlook.flatMap(CowOutlook::alternative)
                        .map(other -> new WithoutBreedingView(
                                other.payoff().orThrow(),
                                other.untilMonthInMilk(),
                                other.until().toString(),
                                other.isBetter()))
                        .orElse(null),
                outlook.flatMap(CowOutlook::pregnancyValue).map(Figure::orThrow).orElse(null),
                codes(line.figure()));
    }

    static NotRankedView without(NotRanked one) {
        return new NotRankedView(
                one.candidate().record().shownIdentifier(),
                one.candidate().record().name().orElse(null),
                codes(one.figure()));
    }

    private static int days(BreedingRecord breeding) {
        return breeding.daysSinceCalving().orElseThrow();
    }

    private static Double levelPct(CullingCow cow) {
        return cow.milk().equals(MilkLevel.NOT_KNOWN)
                ? null
                : (Double) (PERCENT * cow.milk().ratio());
    }

    private static String pregnancy(PregnancyState state) {
        return state.kind() == PregnancyState.Kind.PREGNANT_SINCE_ASSUMED
                ? "pregnant"
                : state.kind().name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static List<String> codes(Figure figure) {
        return figure.findings().stream()
                .map(finding -> finding.code().code())
                .distinct()
                .toList();
    }
}
