package org.pailbook.records.culling;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.pailbook.lactation.breeding.BreedingRecord;
import org.pailbook.lactation.culling.CowOutlook;
import org.pailbook.lactation.culling.CullingCow;
import org.pailbook.lactation.culling.CullingRanking;
import org.pailbook.lactation.culling.MilkLevel;
import org.pailbook.lactation.culling.MilkOnlyRanking;
import org.pailbook.lactation.culling.PregnancyState;
import org.pailbook.lactation.figure.Figure;
import org.pailbook.records.computed.CowOutlookView.ReasonView;
import org.pailbook.records.computed.RankedHerd.Candidate;
import org.pailbook.records.culling.CullingRankingView.CowLineView;
import org.pailbook.records.culling.CullingRankingView.NotRankedView;
import org.pailbook.records.culling.CullingRankingView.WithoutBreedingView;

/** Writes the lines of a ranking. */
final class CullingLines {
    private static final double PERCENT = 100;

    private final Map<String, Candidate> candidates;
    private final Map<String, CullingCow> cows;

    CullingLines(Map<String, Candidate> candidates, Map<String, CullingCow> cows) {
        this.candidates = candidates;
        this.cows = cows;
    }

    CowLineView byMoney(CullingRanking.Ranked ranked) {
        CowOutlook outlook = ranked.outlook();
        Candidate candidate = candidates.get(outlook.cow());
        CullingCow cow = cows.get(outlook.cow());
        return new CowLineView(
                ranked.rank(),
                ranked.lowestRank(),
                ranked.highestRank(),
                candidate.record().shownIdentifier(),
                candidate.record().name().orElse(null),
                candidate.parity(),
                days(candidate.breeding()),
                pregnancy(cow.pregnancy()),
                levelPct(cow),
                outlook.retentionPayoff().orThrow(),
                outlook.range().orElseThrow().lowCu(),
                outlook.range().orElseThrow().highCu(),
                outlook.suggestion().orElseThrow().code(),
                outlook.reasons().stream()
                        .map(reason -> new ReasonView(reason.about().code(), reason.words(), reason.differenceCu()))
                        .toList(),
                outlook.alternative()
                        .map(other -> new WithoutBreedingView(
                                other.payoff().orThrow(),
                                other.untilMonthInMilk(),
                                other.until().toString(),
                                other.isBetter()))
                        .orElse(null),
                outlook.pregnancyValue().map(Figure::orThrow).orElse(null),
                codes(outlook.retentionPayoff()));
    }

    CowLineView byMilk(int rank, MilkOnlyRanking.Listed listed) {
        Candidate candidate = candidates.get(listed.cow());
        return new CowLineView(
                rank,
                null,
                null,
                candidate.record().shownIdentifier(),
                candidate.record().name().orElse(null),
                candidate.parity(),
                days(candidate.breeding()),
                pregnancy(cows.get(listed.cow()).pregnancy()),
                listed.levelPct().orThrow(),
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                codes(listed.levelPct()));
    }

    NotRankedView without(String cow, Figure figure) {
        Candidate candidate = candidates.get(cow);
        return new NotRankedView(
                candidate.record().shownIdentifier(), candidate.record().name().orElse(null), codes(figure));
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
