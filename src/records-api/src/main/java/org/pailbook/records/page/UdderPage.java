package org.pailbook.records.page;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.pailbook.lactation.testday.TestDay;
import org.pailbook.lactation.udderhealth.CellCountCut;
import org.pailbook.lactation.udderhealth.CowCellCounts;
import org.pailbook.lactation.udderhealth.HerdCellCounts;
import org.pailbook.lactation.udderhealth.SomaticCellScore;
import org.pailbook.lactation.udderhealth.TankStanding;
import org.pailbook.lactation.udderhealth.VeterinaryTrigger;
import org.pailbook.records.computed.KnownCow;

/**
 * Cell counts of the herd's last test, highest first, with the rates of that test.
 *
 * @param highFrom count from which a cow is called high
 * @param calls what speaks for seeing the veterinarian
 */
record UdderPage(
        Shown shown,
        String highFrom,
        List<ShownFigure> figures,
        List<String> calls,
        Part<CellLine> part,
        String caution) {

    /** A cow's count. */
    record CellLine(DecisionPages.Listed cow, int parity, String test, String scc, String score, String state) {}

    private record Counted(KnownCow cow, CowCellCounts counts, TestDay test) {
        double scc() {
            return test.sccThousandPerMl().orElseThrow();
        }
    }

    static UdderPage of(Shown shown, List<KnownCow> cows, CellCountCut cut, Optional<TankStanding> tank, int number) {
        LocalDate day = shown.asOf();
        List<CowCellCounts> counts = counts(cows);
        HerdCellCounts herd = HerdCellCounts.of(counts, cut, day);
        List<Counted> counted = new ArrayList<>();
        for (int i = 0; i < cows.size(); i++) {
            KnownCow cow = cows.get(i);
            CowCellCounts hers = counts.get(i);
            hers.lastCounted(day)
                    .filter(test -> !hers.hasLeft() && herd.isOfLastTest(test.date()))
                    .ifPresent(test -> counted.add(new Counted(cow, hers, test)));
        }
        counted.sort(Comparator.comparingDouble(Counted::scc).reversed());
        return new UdderPage(
                shown,
                Shown.number(cut.highFromThousandPerMl(), 0),
                Stream.concat(Stream.of(herd.prevalence()), herd.ratesOfLastTest().stream())
                        .map(measured -> ShownFigure.named(measured.measure().what(), measured.figure(), 1, shown))
                        .toList(),
                Stream.concat(
                                VeterinaryTrigger.ofHerd(
                                                herd.newInfectionRisksOfLastTwoTests(), herd.freshHeifersHigh(), tank)
                                        .stream()
                                        .map(VeterinaryTrigger::words),
                                tank.map(TankStanding::words).stream())
                        .toList(),
                Part.of(counted, number).as(one -> line(one, cut, shown)),
                VeterinaryTrigger.CAUTION);
    }

    private static List<CowCellCounts> counts(List<KnownCow> cows) {
        return cows.stream()
                .map(cow -> new CowCellCounts(
                        cow.record().id(),
                        cow.onDay().hasLeft(),
                        cow.onDay().lactations().lactations()))
                .toList();
    }

    private static CellLine line(Counted one, CellCountCut cut, Shown shown) {
        String high = PageWords.word(cut.isHigh(one.test()) ? "udder.high" : "udder.low");
        return new CellLine(
                DecisionPages.Listed.of(one.cow().record(), shown),
                one.cow()
                        .onDay()
                        .lactations()
                        .latest()
                        .orElseThrow()
                        .lactation()
                        .parity(),
                one.test().date().toString(),
                Shown.number(one.scc(), 0),
                Shown.number(SomaticCellScore.score(one.scc()), 1),
                one.counts()
                        .lastPair(cut, shown.asOf())
                        .map(pair -> high + ", "
                                + PageWords.word("udder.state." + pair.state().wireName()))
                        .orElse(high));
    }
}
